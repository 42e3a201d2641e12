import { both } from '../words/index.ts';
import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { guard } from 'lit/directives/guard.js';
import type { CasePart, ItemPart, RoomPart } from '../generated/wire.ts';
import { bandWords, readIn, evidenceWords, isDone } from '../hands/items.ts';
import { BoardPage } from '../hands/page.ts';
import { shared } from '../hands/style.ts';
import {
  caution,
  roleName,
  SET_UP,
  sectionName,
  stateName,
  stepName,
  STEPS,
  techniqueWords,
} from '../hands/words.ts';
import '../look/index.ts';
import { roomSheets } from './model.ts';
import { paperStyle } from './style.ts';

/**
 * One sheet a room, of two sides, for when everything is down: what is asked, room for the time and the hand, and
 * what was known when it was printed. Nothing about the patient stands on it.
 */
@customElement('sunup-paper')
export class Paper extends BoardPage {
  static override styles = [shared, paperStyle];

  private readonly only = new URLSearchParams(location.search).get('room') ?? undefined;

  constructor() {
    super('desk', 'paper');
  }

  override render() {
    const [rooms, cases, items] = [this.list('room'), this.list('case'), this.list('item')];
    const sheets = roomSheets(rooms, cases, items, this.only);
    const known = this.hhmm(this.live.lastLiveAt ?? this.now);
    document.title = 'Paper · Sunup';
    return html`
      <header class="screen">
        <h1>Paper</h1>
        <p>
          One sheet a room, both sides, for when everything is down. Print when the morning is
          opened and again when something has changed.
        </p>
        <button
          class="main"
          ?disabled=${sheets.length === 0 || this.live.state.stale}
          @click=${() => print()}
        >
          Print ${sheets.length === 1 ? '1 sheet' : `${sheets.length} sheets`}
        </button>
      </header>
      <sunup-banner class="screen" .live=${this.live}></sunup-banner>
      <main>
        ${
          sheets.length === 0
            ? html`<p class="empty">
                ${
                  this.live.state.everSeen
                    ? 'There is no first case to print a sheet for.'
                    : 'Looking for the board. Nothing is printed until it answers.'
                }
              </p>`
            : nothing
        }
        ${
          // Drawn anew when something on them changed, not with each second of the clock.
          guard([rooms, cases, items, this.suite, known], () =>
            sheets.map((s) => this.sheet(s.room, s.plan, s.items, known)),
          )
        }
      </main>
    `;
  }

  /** Two sides of one sheet: the set-up, then what stands beside it and the start. */
  private sheet(
    room: RoomPart,
    plan: CasePart,
    items: readonly ItemPart[],
    known: string,
  ): TemplateResult {
    const setUp = items.filter((i) => SET_UP.includes(i.section));
    const beside = items.filter((i) => !SET_UP.includes(i.section));
    return html`<article aria-label="room ${room.room}">
      ${this.side(room, `${this.hhmm(room.target)} · ${techniqueWords(plan)}`, known, this.rows(setUp))}
      ${this.side(
        room,
        'other side: room, team, patient, start',
        known,
        html`${this.rows(beside)}
          <tr class="section">
            <th scope="rowgroup" colspan="6">Start</th>
          </tr>
          ${STEPS.map((step) => {
            const at = plan.steps.find((s) => s.step === step)?.at;
            return html`<tr>
              <th scope="row">${stepName(step)}</th>
              <td></td>
              <td></td>
              <td>${at === undefined ? '' : this.hhmm(at)}</td>
              <td class="write"></td>
              <td class="write"></td>
            </tr>`;
          })}`,
      )}
    </article>`;
  }

  private side(
    room: RoomPart,
    what: string,
    known: string,
    rows: TemplateResult | TemplateResult[],
  ): TemplateResult {
    return html`<section class="side">
      <h2>Room ${room.room}<span>${what}</span></h2>
      <p class="known">
        ${this.suite?.hospital ?? ''} · ${this.suite?.date ?? ''} · known at ${known}.
        ${both('record.not')}
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">room ${room.room}: what</th>
            <th scope="col">reads</th>
            <th scope="col">before</th>
            <th scope="col">known</th>
            <th scope="col">done at</th>
            <th scope="col">by</th>
          </tr>
        </thead>
        <tbody>
          ${rows}
        </tbody>
      </table>
      <p class="known">
        Afterwards: at the station touch your name, then “Enter from paper”, with the time done.
        Emergency: the wall button. ${caution()}
      </p>
    </section>`;
  }

  private rows(items: readonly ItemPart[]): TemplateResult[] {
    let section = '';
    return items.map((item) => {
      const head = sectionName(item.section);
      const first = head !== section;
      section = head;
      return html`${
          first
            ? html`<tr class="section">
                <th scope="rowgroup" colspan="6">${head}</th>
              </tr>`
            : nothing
        }
        <tr>
          <th scope="row">${item.name}<small>${whoWords(item)}</small></th>
          <td>${asks(item)}</td>
          <td class="step">${item.gates ? stepName(item.gates) : ''}</td>
          <td>${this.known(item)}</td>
          <td class="write"></td>
          <td class="write"></td>
        </tr>`;
    });
  }

  private known(item: ItemPart): string {
    if (item.state === 'open') {
      return '';
    }
    const by = evidenceWords(item);
    return `${stateName(item.state)} ${this.hhmm(item.since)}${isDone(item) && by ? ` ${by}` : ''}`;
  }
}

/** Who does it; a trainee stands where the anaesthetist does, and need not be said on paper. */
function whoWords(item: ItemPart): string {
  const trainee = (role: string) => role === 'trainee' && item.who.includes('anaesthetist');
  return item.who
    .filter((role) => !trainee(role))
    .map(roleName)
    .join(' or ');
}

/** What is to be written beside the time: a number with its unit, a choice, a second hand. */
function asks(item: ItemPart): string {
  const { kind, choices, witness, undo } = item.asks;
  const bits: string[] = [];
  if (kind === 'number') bits.push(`____ ${readIn(item)} (${bandWords(item)})`);
  if (kind === 'choice') bits.push(choices.map((c) => c.replace(/^!/, '')).join(' / '));
  if (witness) bits.push('second person: ____');
  if (undo) bits.push(undo);
  return bits.join('; ');
}
