import { html, nothing, type TemplateResult } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { repeat } from 'lit/directives/repeat.js';
import type { ChancePart, ItemPart, RoomPart } from '../generated/wire.ts';
import { lateBy } from '../look/index.ts';
import { openNames, openToReady } from '../hands/items.ts';
import { roleName, standingName, useName } from '../hands/words.ts';
import type { Desk } from './main.ts';
import { type DeskRow, late, percent } from './model.ts';
import { nextWords } from './next.ts';

/** The wall's rooms with the figures that belong to the desk. */
export function roomsTable(at: Desk, rows: DeskRow[]): TemplateResult {
  if (rows.length === 0) {
    return html`<p class="empty">
      ${
        at.live.state.everSeen
          ? html`no rooms yet<br /><button class="main" @click=${() => at.go('list')}>
                Take a case list
              </button>`
          : 'looking for the board'
      }
    </p>`;
  }
  return html`<div class="scroll" tabindex="0" role="group" aria-label="list of rooms">
    <table>
      <thead>
        <tr>
          <th scope="col">room</th>
          <th scope="col">stands</th>
          <th scope="col">target</th>
          <th scope="col">start</th>
          <th scope="col">on time</th>
          <th scope="col">waits for</th>
        </tr>
      </thead>
      <tbody>
        ${repeat(
          rows,
          (r) => r.room.key,
          (r) => row(at, r),
        )}
      </tbody>
    </table>
  </div>`;
}

/** Of a start that nobody told and a later step that somebody did. */
const inferred = html`<small>or earlier, not told</small>`;

function row(at: Desk, r: DeskRow): TemplateResult {
  const { room, chance } = r;
  const current = at.panel === 'room' && at.room === room.room;
  const started = room.startedAt !== undefined;
  return html`<tr class=${classMap({ current, [room.standing]: true })}>
    <th scope="row">
      <button
        aria-pressed=${current}
        aria-label="room ${room.room}"
        @click=${() => at.openRoom(room.room)}
      >
        ${room.room}
      </button>
    </th>
    <td class="stands">
      <div>
        <span class="lens ${room.standing}"></span>
        <span
          >${standingName(room.standing)}${
            room.lateMinutes > 0 && !started
              ? html` <b>${lateBy(room.lateMinutes, room.orMore)}</b>`
              : nothing
          }${
            room.use !== 'free'
              ? html`<small>${useName(room.use)}${until(at, room.useUntil)}</small>`
              : nothing
          }${
            room.readyAt !== undefined && !started
              ? html`<small>ready ${at.hhmm(room.readyAt)}, ${openShort(at, room)}</small>`
              : nothing
          }</span
        >
      </div>
    </td>
    <td>${at.hhmm(room.target)}${room.agreed ? html`<small>agreed</small>` : nothing}</td>
    <td>
      ${
        started
          ? html`<b>${at.hhmm(room.startedAt)}</b>${room.startInferred ? inferred : nothing}`
          : chance
            ? start(at, chance)
            : nothing
      }
    </td>
    <td>
      ${
        chance?.onTime !== undefined && !started
          ? html`${percent(chance.onTime)}<small>${late(chance)}</small>`
          : nothing
      }
    </td>
    <td class="waits">${waits(at, r)}</td>
  </tr>`;
}

/** Names that a line of the table has room for. */
const NAMED_MOST = 2;

function openIn(at: Desk, { room }: RoomPart): ItemPart[] {
  const items = at.list('item').filter((i) => i.room === room);
  return openToReady(items, at.suite?.startEvent ?? 'incision');
}

/** What is open now in a room that reported ready; names only where they are few. */
function openShort(at: Desk, room: RoomPart): string {
  const open = openIn(at, room);
  return open.length > NAMED_MOST ? `${open.length} open` : openNames(open);
}

/** What is open now in a room that reported ready, by name. */
export function openWords(at: Desk, room: RoomPart): string {
  return openNames(openIn(at, room), 6);
}

/** The start as far as it is known. */
function start(at: Desk, chance: ChancePart): TemplateResult {
  if (chance.moreThanHours !== undefined) {
    return html`over ${chance.moreThanHours} h late`;
  }
  return chance.start50 === undefined
    ? html`not known`
    : html`<b>${at.hhmm(chance.start50)}</b
        ><small>${at.hhmm(chance.start10)}–${at.hhmm(chance.start90) || 'later'}</small>`;
}

function until(at: Desk, time: number | undefined): string {
  return time === undefined ? '' : ` until ${at.hhmm(time)}`;
}

function waits(at: Desk, r: DeskRow): TemplateResult | typeof nothing {
  const next = nextWords(r.room.room, at.list('next'), at.list('next-item'));
  if (next !== '') {
    return html`<span>${next}</span>`;
  }
  if (r.room.startedAt !== undefined) {
    return nothing;
  }
  const [first, second] = r.chance?.shares ?? [];
  const taken = r.need?.takenBy;
  const again =
    r.need?.lookAgainAt === undefined ? '' : `, look again ${at.hhmm(r.need.lookAgainAt)}`;
  return html`<span
      >${first ? html`<em>${percent(first.share)}</em> ${first.words}` : (r.need?.words ?? nothing)}</span
    >${
      taken
        ? html`<small>${roleName(taken)} is on it${again}</small>`
        : second
          ? html`<small>${percent(second.share)} ${second.words}</small>`
          : nothing
    }`;
}
