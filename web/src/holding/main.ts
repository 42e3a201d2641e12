import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import { repeat } from 'lit/directives/repeat.js';
import type { ItemPart, PersonPart } from '../generated/wire.ts';
import {
  boardWords,
  clockWords,
  goingWords,
  refusals,
  saidWords,
  sentWords,
} from '../hands/bands.ts';
import { minutesTo } from '../hands/clock.ts';
import { isDone, keyOf, wantsAnswer } from '../hands/items.ts';
import { keepOwnFiles } from '../hands/own-files.ts';
import { BoardPage, TAKE_BACK_MS } from '../hands/page.ts';
import { shared } from '../hands/style.ts';
import { caution, stateName } from '../hands/words.ts';
import { oldFigures, proof } from '../look/index.ts';
import {
  BLOCK,
  cellWord,
  COLUMNS,
  EXPECTED_GRACE_MS,
  minutesSentFor,
  type Row,
  rows,
} from './model.ts';
import { itemPanel, rowPanel } from './panel.ts';
import { holdingStyle } from './style.ts';

/** The holding area: one row a first case, no names, eight touches. */
@customElement('sunup-holding')
export class Holding extends BoardPage {
  static override styles = [shared, holdingStyle];

  /** The item whose panel is open. */
  opened: string | undefined;
  /** The room whose items are listed for choosing one. */
  openedRoom: string | undefined;

  /** Who did what a second person is about to witness, where nobody signs on. */
  private named: string | undefined;

  constructor() {
    super('holding', 'holding');
  }

  get rows(): Row[] {
    return rows(this.list('room'), this.list('case'), this.list('item'), this.list('unit'));
  }

  item(ref: string | undefined): ItemPart | undefined {
    return ref === undefined ? undefined : this.list('item').find((i) => i.item === ref);
  }

  override render() {
    const list = this.rows;
    const suite = this.suite;
    const old = oldFigures(suite);
    const open = this.item(this.opened);
    const row = list.find((r) => r.room.room === this.openedRoom);
    const panel = open ? itemPanel(this, open) : row ? rowPanel(this, row) : undefined;
    return html`
      <header>
        <h1>Holding</h1>
        <span class="dim">${suite ? `${suite.hospital} · ${suite.suite}` : ''}</span>
        ${old === '' ? nothing : html`<span class="old-figures">${old}</span>`}
        <sunup-sign-on .live=${this.live}></sunup-sign-on>
        <span class="when">${clockWords(this)}</span>${proof(this.live)}
      </header>
      <sunup-banner hands .live=${this.live}></sunup-banner>
      ${refusals(this)}
      <main>${list.length === 0 ? this.nothingYet() : this.table(list)} ${panel ?? nothing}</main>
      <footer>${this.lastSaid()}${this.foot()}</footer>
    `;
  }

  /** Who did what a second person is about to witness; where people sign on, who is signed on. */
  get signer(): string | undefined {
    return this.paired ? this.live.state.entry.signed?.as : this.named;
  }

  sign(person: PersonPart): void {
    if (this.paired) this.signing?.open(person);
    else this.named = person.person;
    this.requestUpdate();
  }

  open(item: ItemPart): void {
    this.named = undefined;
    this.opened = item.item;
    this.requestUpdate();
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('.panel [data-first]')?.focus(),
    );
  }

  openRow(room: string): void {
    this.openedRoom = room;
    this.opened = undefined;
    this.requestUpdate();
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('.panel [data-first]')?.focus(),
    );
  }

  close(): void {
    const back = this.opened;
    this.opened = undefined;
    this.openedRoom = undefined;
    this.requestUpdate();
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>(`[data-item="${back ?? ''}"]`)?.focus(),
    );
  }

  /** One touch on a cell: good if it can be said by a touch, else its panel. */
  touch(item: ItemPart): void {
    if (isDone(item) || item.state === 'fault' || wantsAnswer(item)) {
      this.open(item);
      return;
    }
    this.good(item);
  }

  good(item: ItemPart): void {
    const step = item.marks;
    const plan = this.rows.find((r) => r.room.room === item.room)?.plan;
    const label = `room ${item.room}: ${cellWord(item)}`;
    const about = { about: [item.item] };
    if (step && plan) {
      this.tell(label, { type: 'reach', caseId: plan.caseId, step }, about);
    } else {
      this.tell(
        label,
        { type: 'good', item: item.item, evidence: { kind: 'touch' } },
        { ...about, seen: item.revision },
      );
    }
  }

  private nothingYet(): TemplateResult {
    const planned = this.suite?.phase !== 'none';
    const none = planned ? 'no first cases on this morning' : 'nothing is planned yet';
    return html`<p class="empty">${this.live.state.everSeen ? none : 'looking for the board'}</p>`;
  }

  private table(list: Row[]): TemplateResult {
    return html`<div class="scroll" tabindex="0" role="group" aria-label="first cases">
      <table>
        <thead>
          <tr>
            <th scope="col">room</th>
            ${COLUMNS.map((c) => html`<th scope="col">${c.head}</th>`)}
            <th scope="col">also</th>
            <th scope="col"><span class="vh">more</span></th>
          </tr>
        </thead>
        <tbody>
          ${repeat(
            list,
            (r) => r.plan.caseId,
            (r) => this.row(r),
          )}
        </tbody>
      </table>
    </div>`;
  }

  private row(row: Row): TemplateResult {
    const target = row.room.target;
    const minutes = target === undefined ? undefined : minutesTo(target, this.now);
    return html`<tr class=${classMap({ left: row.left })}>
      <th scope="row">
        <b>${row.room.room}</b>
        <span
          >${this.hhmm(target)}${row.room.agreed ? html`<small>agreed</small>` : nothing}<small
            >${
              row.left
                ? 'in the room'
                : minutes === undefined
                  ? ''
                  : minutes >= 0
                    ? `${minutes} min`
                    : `${-minutes} min past`
            }</small
          ></span
        >
      </th>
      ${row.cells.map((item, i) => html`<td>${item ? this.cell(row, item, i) : nothing}</td>`)}
      <td class="also">${row.more.map((item) => html`<div>${this.cell(row, item, -1)}</div>`)}</td>
      <td class="more">
        <button
          aria-label="room ${row.room.room}: more"
          @click=${() => this.openRow(row.room.room)}
        >
          …
        </button>
      </td>
    </tr>`;
  }

  private cell(row: Row, item: ItemPart, column: number): TemplateResult {
    const name = column < 0 ? cellWord(item) : COLUMNS[column]!.head;
    const small = goingWords(this, item.item) || this.cellSmall(row, item);
    const going = this.said.pending(item.item) !== undefined;
    return html`<button
      class=${classMap({ cell: true, rise: true, [item.state]: true, going })}
      data-item=${item.item}
      @click=${() => this.touch(item)}
    >
      <span class="mark ${item.state}"></span>
      <span class="words"
        ><span class="vh">room ${row.room.room} </span>${name}${
          small ? html`<small>${small}</small>` : nothing
        }</span
      >
    </button>`;
  }

  /** What a cell says in few letters. */
  private cellSmall(row: Row, item: ItemPart): string {
    switch (item.state) {
      case 'good':
        return this.hhmm(item.since);
      case 'fault':
        return item.what ?? 'fault';
      case 'left-out':
        return 'left out';
      default: {
        if (item.expectedAt === undefined) {
          return item.state === 'open' ? this.openSmall(row, item) : stateName(item.state);
        }
        const passed = this.now > item.expectedAt + EXPECTED_GRACE_MS;
        return `${passed ? 'was due' : 'says'} ${this.hhmm(item.expectedAt)}`;
      }
    }
  }

  /** Of what is open: what a block waits for, and since when a porter is. */
  private openSmall(row: Row, item: ItemPart): string {
    const key = keyOf(item);
    if (key === BLOCK) return row.block;
    const minutes = key === 'start.transport' ? minutesSentFor(row, this.now) : undefined;
    return minutes === undefined ? '' : `waiting ${minutes} min`;
  }

  private lastSaid(): TemplateResult {
    const last = this.said.list.filter((s) => !s.undone).at(-1);
    const back = this.said.lastToUndo(this.now, TAKE_BACK_MS * this.live.rate);
    return html`<div class=${last ? 'undo' : ''} role="status">
      ${last ? html`<span>${last.label} · <span class="dim">${saidWords(last)}</span></span>` : nothing}
      ${back ? html`<button @click=${() => this.takeBack(back)}>Take back</button>` : nothing}
    </div>`;
  }

  private foot(): TemplateResult {
    const unsent = this.live.unsent;
    const words = sentWords(this);
    return html`<p class="foot">
      <span>${caution()}</span>
      <span
        >${unsent > 0 ? html`<b>${words}</b>` : words} ·
        ${boardWords(this)}${this.suite?.demo ? ' · demo' : ''}</span
      >
    </p>`;
  }
}

keepOwnFiles('/holding');
