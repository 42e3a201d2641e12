import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import { boardWords, clockWords, refusals, saidWords, sentWords } from '../hands/bands.ts';
import { isBack } from '../hands/moves.ts';
import { BoardPage, TAKE_BACK_MS } from '../hands/page.ts';
import { headStyle, shared } from '../hands/style.ts';
import { caution } from '../hands/words.ts';
import type { SuitePart } from '../generated/wire.ts';
import { inSuite, type TroubleEvent } from '../live/index.ts';
import { dateWords, oldFigures, proof } from '../look/index.ts';
import { type Change, changes, Looked, type Mark, markOf, type Seen } from './changes.ts';
import { copyPanel, CopyState } from './copy.ts';
import { eveOpen, evePanel } from './eve.ts';
import { listPanel, ListState } from './list.ts';
import {
  dateIn,
  dayAfter,
  type DeskRow,
  deskRows,
  heardWords,
  onTimeWords,
  uncountedWords,
} from './model.ts';
import { movesPanel } from './moves.ts';
import { needsPanel } from './needs.ts';
import { notesPanel } from './notes.ts';
import { peoplePanel } from './people.ts';
import { AccessState, screensPanel } from './screens.ts';
import { roomPanel } from './room.ts';
import { roomsTable } from './rooms.ts';
import { sincePanel } from './since.ts';
import { copyStyle } from './style-copy.ts';
import { deskStyle } from './style.ts';
import { thingsPanel } from './things.ts';

/** What the right-hand side shows. */
export type Panel =
  | 'needs'
  | 'eve'
  | 'since'
  | 'moves'
  | 'copy'
  | 'room'
  | 'people'
  | 'things'
  | 'list'
  | 'notes'
  | 'screens';

const PANELS: readonly [Panel, string][] = [
  ['needs', 'needs'],
  ['eve', 'evening look'],
  ['since', 'changed'],
  ['moves', 'moves'],
  ['copy', 'try on a copy'],
  ['room', 'room'],
  ['people', 'people'],
  ['things', 'equipment'],
  ['list', 'case list'],
  ['notes', 'notes'],
];

/** Entries of what was said here that are shown. */
const SAID_SHOWN = 4;

/** The desk: all rooms with their figures, and hands for everything that can be arranged. */
@customElement('sunup-desk')
export class Desk extends BoardPage {
  static override styles = [shared, headStyle, deskStyle, copyStyle];

  panel: Panel = 'needs';
  /** The room that is open on the right. */
  room: string | undefined;
  /** The room whose swap with the open one is being looked at. */
  swapWith: string | undefined;
  /** The form that is open in a panel, by key. */
  form: string | undefined;
  readonly listState = new ListState(this);
  readonly copyState = new CopyState(this);
  private readonly access = new AccessState(this);
  readonly looked = new Looked();
  /** The morning that the marks are of; another one begins with a mark of its own. */
  private markedOn: string | undefined;
  /** The date that this desk has chosen; none while it follows the morning that is on. */
  readonly chosen: string | undefined;

  constructor() {
    const chosen = dateIn(location.search);
    super('desk', 'desk', chosen);
    this.chosen = chosen;
    this.live.addEventListener('trouble', (event) => {
      // The board knows no such date: better the morning that is on than nothing.
      if ((event as TroubleEvent).trouble.code === 'bad-date') this.choose(undefined);
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.live.addEventListener('change', this.firstMark);
    this.live.addEventListener('beat', this.firstMark);
    // Before what the touch does: a mark is of what was on the screen when somebody looked at it.
    addEventListener('pointerdown', this.onTouched, { capture: true });
    addEventListener('keydown', this.onTouched, { capture: true });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.live.removeEventListener('change', this.firstMark);
    this.live.removeEventListener('beat', this.firstMark);
    this.copyState.giveUp();
    removeEventListener('pointerdown', this.onTouched, { capture: true });
    removeEventListener('keydown', this.onTouched, { capture: true });
  }

  /** What changed since somebody looked. */
  get changes(): Change[] {
    const since = this.looked.since(performance.now());
    return since === undefined ? [] : changes(since, this.seen, (at) => this.hhmm(at));
  }

  markSeen(): void {
    this.looked.seen(this.mark, performance.now());
    this.requestUpdate();
  }

  private get seen(): Seen {
    return {
      rooms: this.list('room'),
      chances: this.list('chance'),
      needs: this.list('need'),
      notes: this.list('note'),
      moves: this.list('move'),
      ideas: this.list('idea'),
      cases: this.list('case'),
    };
  }

  private get mark(): Mark {
    return markOf(this.seen, this.now);
  }

  private readonly firstMark = (): void => {
    const date = this.suite?.date;
    // Until the first heartbeat the screen's own clock stands in for the morning's.
    if (date !== undefined && date !== this.markedOn && this.live.lastLiveAt !== null) {
      this.markedOn = date;
      this.looked.begin(this.mark, performance.now());
    }
  };

  private readonly onTouched = (): void => {
    // What is not live was not seen as it is.
    if (this.markedOn !== undefined && !this.live.state.stale) {
      this.looked.touched(this.mark, performance.now());
    }
  };

  /** Opens the desk on the morning of a date, or on the one that is on. */
  choose(date: string | undefined): void {
    location.assign(inSuite(date === undefined ? '/desk' : `/desk?date=${date}`, this.inSuite));
  }

  get rows(): DeskRow[] {
    return deskRows(this.list('room'), this.list('case'), this.list('chance'), this.list('need'));
  }

  override render() {
    const rows = this.rows;
    return html`
      ${this.top()}
      <sunup-banner .live=${this.live}></sunup-banner>
      ${refusals(this)}
      <main>
        <section class="rooms" aria-label="rooms">${roomsTable(this, rows)}</section>
        <div class="side">
          <nav aria-label="what to work on">
            ${this.panels.map(
              ([panel, name]) =>
                html`<button
                  aria-pressed=${this.panel === panel}
                  ?disabled=${panel === 'room' && this.room === undefined}
                  @click=${() => this.go(panel)}
                >
                  ${this.panelName(panel, name)}
                </button>`,
            )}
          </nav>
          <div class="panel">${this.body(rows)}</div>
          ${this.log()}
        </div>
      </main>
      <footer>
        <span>${caution()}</span>
        <span
          >${this.live.unsent > 0 ? html`<b>${sentWords(this)}</b>` : sentWords(this)} ·
          ${boardWords(this)}${this.suite?.demo ? ' · demo' : ''}</span
        >
      </footer>
    `;
  }

  go(panel: Panel): void {
    this.panel = panel;
    this.form = undefined;
    this.swapWith = undefined;
    this.requestUpdate();
  }

  /** The evening look is of a draft; screens are asked of a desk only where they are paired. */
  private get panels(): readonly [Panel, string][] {
    const draft = this.suite?.phase === 'draft';
    const shown = draft ? PANELS : PANELS.filter(([panel]) => panel !== 'eve');
    return this.paired ? [...shown, ['screens', 'screens']] : shown;
  }

  private panelName(panel: Panel, name: string): string {
    if (panel === 'room' && this.room !== undefined) return `room ${this.room}`;
    if (panel === 'moves') return this.movesName();
    if (panel === 'eve') return `${name} (${eveOpen(this.list('eve'), this.list('item'))})`;
    const n = panel === 'since' ? this.changes.length : 0;
    return n === 0 ? name : `${name} (${n})`;
  }

  /** How many moves may help or wait for an answer, so that the list need not be open. */
  private movesName(): string {
    const asked = this.list('move').filter((m) => m.state === 'asked');
    const back = asked.filter((m) => isBack(m, this.now)).length;
    const n = this.list('idea').length + asked.length;
    if (n === 0) return 'moves';
    return back === 0 ? `moves (${n})` : `moves (${n}, ${back} unanswered)`;
  }

  openRoom(room: string): void {
    this.room = room;
    this.go('room');
  }

  /** Opens a form in a panel, or closes it if it is open. */
  toggle(form: string): void {
    this.form = this.form === form ? undefined : form;
    this.requestUpdate();
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('.panel form input, .panel form select')?.focus(),
    );
  }

  /** Closes the form after it was said. */
  done(): void {
    this.form = undefined;
    this.swapWith = undefined;
    this.requestUpdate();
  }

  /** The next day's draft can be worked on while today's morning runs. */
  private otherDate(suite: SuitePart | undefined) {
    if (this.chosen !== undefined) {
      return html`<button @click=${() => this.choose(undefined)}>
        To the morning that is on
      </button>`;
    }
    if (!suite?.date) return nothing;
    const next = dayAfter(suite.date);
    return html`<button @click=${() => this.choose(next)}>To ${dateWords(next)}</button>`;
  }

  private top(): TemplateResult {
    const suite = this.suite;
    const phase = suite?.phase ?? 'none';
    return html`<header>
      <h1>Desk</h1>
      <p>
        ${suite ? `${suite.hospital} · ${suite.suite}` : 'no morning yet'}
        <small>${suite?.date ? dateWords(suite.date) : ''} · ${phaseWords(phase)}</small>
      </p>
      ${
        suite && phase !== 'none'
          ? html`<p>
              <b>${onTimeWords(suite, this.list('room'))}</b>
              <small>${heardWords(suite)}${oldFigures(suite) && ` · ${oldFigures(suite)}`}</small>
            </p>`
          : nothing
      }
      <span class="gap"></span>
      ${this.otherDate(suite)}
      <sunup-sign-on .live=${this.live}></sunup-sign-on>
      ${
        phase === 'draft'
          ? html`<button
              class="first"
              @click=${() => this.tell('the morning is open', { type: 'open-morning' })}
            >
              Open the morning
            </button>`
          : nothing
      }
      ${phase === 'open' ? this.closing() : nothing} ${proof(this.live)}
      <b class="clock">${clockWords(this)}</b>
    </header>`;
  }

  /** Closing asks once more: nobody closes a morning by a slip. */
  private closing(): TemplateResult {
    const uncounted = uncountedWords(this.list('drugs'));
    return this.form === 'close'
      ? html`${uncounted === '' ? nothing : html`<p class="uncounted" role="alert">${uncounted}</p>`}
          <button @click=${() => this.toggle('close')}>Not yet</button>
          <button
            class="first"
            @click=${() => {
              this.tell('the morning is closed', { type: 'close-morning' });
              this.done();
            }}
          >
            Close it
          </button>`
      : html`<button @click=${() => this.toggle('close')}>Close the morning…</button>`;
  }

  private body(rows: DeskRow[]): TemplateResult {
    switch (this.panel) {
      case 'needs':
        return needsPanel(this, rows);
      case 'eve':
        return evePanel(this, rows);
      case 'since':
        return sincePanel(this);
      case 'moves':
        return movesPanel(this);
      case 'copy':
        return copyPanel(this, this.copyState);
      case 'room':
        return roomPanel(this, rows);
      case 'people':
        return peoplePanel(this, rows);
      case 'things':
        return thingsPanel(this);
      case 'list':
        return listPanel(this, this.listState);
      case 'notes':
        return notesPanel(this);
      case 'screens':
        return screensPanel(this, this.access);
    }
  }

  /** What was said from here last, and how far it has come. */
  private log(): TemplateResult {
    const last = this.said.list.slice(-SAID_SHOWN).reverse();
    const back = this.said.lastToUndo(this.now, TAKE_BACK_MS * this.live.rate);
    return html`<div class="log" role="status" aria-label="said here">
      ${last.map(
        (said) =>
          html`<p class=${classMap({ [said.state]: true })}>
            <span>${said.label}</span>
            <span class="dim">${said.undone ? 'taken back' : saidWords(said)}</span>
          </p>`,
      )}
      ${back ? html`<button @click=${() => this.takeBack(back)}>Take back: ${back.label}</button>` : nothing}
    </div>`;
  }
}

function phaseWords(phase: string): string {
  switch (phase) {
    case 'draft':
      return 'draft, not open yet';
    case 'open':
      return 'open';
    case 'closed':
      return 'closed';
    default:
      return 'nothing planned: take a case list';
  }
}
