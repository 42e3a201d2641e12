import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { MovePart, NeedPart, PersonPart } from '../generated/wire.ts';
import { short } from '../hands/items.ts';
import { fetchReadings, type Series, slowWords } from '../hands/readings.ts';
import {
  boardWords,
  clockWords,
  goingWords,
  refusals,
  saidWords,
  sentWords,
} from '../hands/bands.ts';
import { moveAnswers, moveWords } from '../hands/moves.ts';
import { keepOwnFiles } from '../hands/own-files.ts';
import { BoardPage, TAKE_BACK_MS } from '../hands/page.ts';
import { shared } from '../hands/style.ts';
import { caution, personName } from '../hands/words.ts';
import { proof } from '../look/index.ts';
import {
  askedOf,
  callsFor,
  choices,
  type MyRoom,
  myRooms,
  nobodyWaits,
  roomWords,
  Whose,
} from './model.ts';
import { screenName, suiteOfThisPhone } from './phone.ts';
import { pocketStyle } from './style.ts';
import { Telling, thisBrowser } from './telling.ts';

/** How often a technician's phone asks which readings change slowly. */
const SLOW_EVERY_MS = 60_000;

/** On a phone: whose rooms, in which order, and what is asked of this person. */
@customElement('sunup-pocket')
export class Pocket extends BoardPage {
  static override styles = [shared, pocketStyle];

  private readonly whose = new Whose();
  private readonly telling: Telling;
  /** Machines' readings that change slowly, for technicians; asked for now and then. */
  private slow: readonly Series[] = [];
  private slowAt = -SLOW_EVERY_MS;

  constructor() {
    super('pocket', screenName());
    this.telling = new Telling(thisBrowser, this.live.entry, () => this.requestUpdate());
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('pointerdown', this.onTouched, { capture: true });
    addEventListener('keydown', this.onTouched, { capture: true });
    this.live.addEventListener('state', this.onState);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('pointerdown', this.onTouched, { capture: true });
    removeEventListener('keydown', this.onTouched, { capture: true });
    this.live.removeEventListener('state', this.onState);
  }

  override get person(): string | undefined {
    return this.me?.person;
  }

  private get me(): PersonPart | undefined {
    const { paired, signed } = this.live.state.entry;
    const chosen = paired ? signed?.as : this.whose.person(performance.now());
    const here = this.list('person').find((p) => p.person === chosen);
    return here?.leftAt === undefined ? here : undefined;
  }

  private readonly onTouched = (): void => this.whose.touched(performance.now());

  private readonly onState = (): void => this.telling.follow(this.live.state.entry);

  private iAm(person: PersonPart): void {
    if (this.paired) {
      this.signing?.open(person);
    } else {
      this.choose(person.person);
    }
  }

  private choose(person: string | undefined): void {
    if (this.paired) void this.live.entry.signOff();
    this.whose.choose(person, performance.now());
    this.requestUpdate();
  }

  override render() {
    const me = this.me;
    return html`
      <header>
        <h1>${me ? personName(me) : 'Pocket'}</h1>
        <sunup-sign-on .live=${this.live}></sunup-sign-on>
        ${proof(this.live)}<b class="clock">${clockWords(this)}</b>
      </header>
      <sunup-banner .live=${this.live}></sunup-banner>
      ${refusals(this)}
      <main>${me ? this.mine(me) : this.who()}</main>
      <footer>
        ${this.lastSaid()}
        <p>${caution()}</p>
        <p>
          ${this.live.unsent > 0 ? html`<b>${sentWords(this)}</b>` : sentWords(this)} ·
          ${boardWords(this)}
        </p>
      </footer>
    `;
  }

  private who(): TemplateResult {
    const people = choices(this.list('person'));
    if (people.length === 0) {
      const words = this.live.state.everSeen
        ? 'Nobody is planned for this morning yet. The desk plans it.'
        : 'Looking for the board. Nothing is shown until it answers.';
      return html`<p class="empty">${words}</p>`;
    }
    return html`<h2>Who are you?</h2>
      <div class="who">
        ${people.map((p) => html`<button @click=${() => this.iAm(p)}>${personName(p)}</button>`)}
      </div>`;
  }

  private mine(me: PersonPart): TemplateResult {
    if (me.role === 'technician') this.askSlow();
    const asked = askedOf(me, this.list('move'));
    const calls = callsFor(me, this.list('need'));
    const rooms = myRooms(me, this.list('room'), this.list('need'), this.list('move'));
    const waits = rooms.filter((r) => r.waits).map((r) => r.room.room);
    return html`
      <div class="do">
        ${
          me.arrivedAt === undefined
            ? html`<button
                class="main"
                @click=${() =>
                  this.tell('here', {
                    type: 'arrive',
                    person: me.person,
                    ...(me.ownRoom === undefined ? {} : { room: me.ownRoom }),
                  })}
              >
                I am here
              </button>`
            : nothing
        }
        <button class="soft" @click=${() => this.choose(undefined)}>Not me</button>
      </div>
      <h2>Asked of you</h2>
      ${asked.length + calls.length === 0 ? html`<p class="dim">nothing is asked of you</p>` : nothing}
      ${asked.map((m) => this.asked(m))} ${calls.map((n) => this.call(me, n))} ${this.told()}
      ${
        me.role === 'technician' && this.slow.length > 0
          ? html`<h2>Slow changes</h2>
              ${this.slow.map(
                (s) =>
                  html`<section class="card" aria-label="room ${s.room} ${short(s.name)}">
                    <p>
                      <b>Room ${s.room}: ${short(s.name)} ${slowWords(s)}</b
                      ><small>more than chance; look for a leak before it is a fault</small>
                    </p>
                  </section>`,
              )}`
          : nothing
      }
      <h2>Your rooms</h2>
      ${
        waits.length === 0
          ? html`<p class="dim">${nobodyWaits(rooms)}</p>`
          : html`<p><b>Waits for you: ${waits.map((r) => `room ${r}`).join(', ')}</b></p>`
      }
      ${
        rooms.length === 0
          ? html`<p class="dim">no room is yours; calls and moves come here</p>`
          : html`<ol>
              ${rooms.map((r) => this.room(r))}
            </ol>`
      }
    `;
  }

  /** Whether this phone is told while it is locked, and the one button for it. */
  private told(): TemplateResult {
    const { entry } = this.live.state;
    const state = this.telling.state(entry);
    const words = {
      'not-here': 'This site tells no locked phones: look at this page.',
      cannot:
        'This browser can’t be told while it is locked. With the page on the home screen it may.',
      refused: 'Your browser refuses: allow notifications for this page in its settings.',
      asking: 'Your browser asks you now.',
      off: '',
      on: 'This phone is told, locked too. It may come late or never: it is no call.',
    }[state];
    const text = [words, this.telling.wrong].filter((w) => w !== '').join(' ');
    return html`<div class="told" role="group" aria-label="told while locked">
      <p class="dim" role="status">${text}</p>
      ${
        state === 'off'
          ? html`<button class="soft" @click=${() => void this.telling.turnOn(entry)}>
              Tell me when something is asked
            </button>`
          : state === 'on'
            ? html`<button class="soft" @click=${() => void this.telling.turnOff()}>
                Tell me no more
              </button>`
            : nothing
      }
    </div>`;
  }

  private askSlow(): void {
    if (performance.now() - this.slowAt < SLOW_EVERY_MS) return;
    this.slowAt = performance.now();
    void fetchReadings().then(
      (found) => {
        this.slow = found;
        this.requestUpdate();
      },
      () => undefined,
    );
  }

  private asked(move: MovePart): TemplateResult {
    return html`<section class="card ${move.state}" aria-label=${move.words}>
      <p><b>${move.words}</b><small>${moveWords(move, (t) => this.hhmm(t), this.now)}</small></p>
      <div class="do">
        ${moveAnswers(move).map(
          (a) =>
            html`<button
              class=${a.word === 'Accept' || a.word === 'Done' ? 'main' : ''}
              aria-label="${a.word}: ${move.words}"
              @click=${() =>
                this.tell(`${a.word.toLowerCase()}: ${move.words}`, a.command, {
                  about: [move.key],
                })}
            >
              ${a.word}
            </button>`,
        )}
      </div>
      ${this.going(move.key)}
    </section>`;
  }

  private call(me: PersonPart, need: NeedPart): TemplateResult {
    return html`<section class="card asked" aria-label="room ${need.room} asks for someone">
      <p><b>Room ${need.room} asks for someone</b><small>send someone, not urgent</small></p>
      <div class="do">
        <button
          class="main"
          aria-label="I go to room ${need.room}"
          @click=${() =>
            this.tell(
              `you go to room ${need.room}`,
              { type: 'answer-help', room: need.room, by: me.person },
              { about: [need.key] },
            )}
        >
          I go
        </button>
      </div>
      ${this.going(need.key)}
    </section>`;
  }

  private going(key: string): TemplateResult | typeof nothing {
    const words = goingWords(this, key);
    return words === '' ? nothing : html`<p class="dim">${words}</p>`;
  }

  private room(r: MyRoom): TemplateResult {
    const { room } = r;
    const times = [
      room.target === undefined
        ? ''
        : `${room.agreed ? 'agreed' : 'booked'} ${this.hhmm(room.target)}`,
      room.startedAt !== undefined
        ? `started ${room.startInferred ? 'by ' : ''}${this.hhmm(room.startedAt)}`
        : room.start50 === undefined
          ? ''
          : `about ${this.hhmm(room.start50)}`,
    ].filter((w) => w !== '');
    return html`<li class=${r.waits ? 'waits' : ''}>
      <b>${room.room}</b>
      <span
        >${roomWords(r)}<small
          >${times.join(' · ')}${r.waits ? ' · waits for you' : ''}</small
        ></span
      >
    </li>`;
  }

  private lastSaid(): TemplateResult {
    const last = this.said.list.filter((s) => !s.undone).at(-1);
    const back = this.said.lastToUndo(this.now, TAKE_BACK_MS * this.live.rate);
    return html`<div class="said" role="status">
      ${last ? html`<span>${last.label} · ${saidWords(last)}</span>` : nothing}
      ${back ? html`<button @click=${() => this.takeBack(back)}>Take back</button>` : nothing}
    </div>`;
  }
}

suiteOfThisPhone();
keepOwnFiles('/pocket');
