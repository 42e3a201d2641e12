import { html, nothing, type TemplateResult } from 'lit';
import type { CasePart, SwapPart } from '../generated/wire.ts';
import { onSubmit } from '../hands/forms.ts';
import { keyOf } from '../hands/items.ts';
import { changeWord, toDealWith } from '../hands/swapped.ts';
import { roleName } from '../hands/words.ts';
import type { Desk } from './main.ts';
import { caseOf, type DeskRow, voidedBySwap } from './model.ts';

/** A swap or a move that was made: which of the two rooms have said that it is dealt with there. */
export function swapped(at: Desk, room: string): TemplateResult | typeof nothing {
  const here = at.list('swap').find((s) => s.room === room);
  if (!here) return nothing;
  const there = at.list('swap').find((s) => s.room === here.with && s.with === room);
  const rooms = [here, ...(there ? [there] : [])];
  return html`<div class="card">
    <h3>${happened(here)} ${at.hhmm(here.at)}</h3>
    <p>
      ${rooms
        .map((s) =>
          s.confirmedAt === undefined
            ? `not yet confirmed in room ${s.room}`
            : `confirmed in room ${s.room} ${at.hhmm(s.confirmedAt)}${s.confirmedBy ? ` by ${roleName(s.confirmedBy)}` : ''}`,
        )
        .join(' · ')}
    </p>
  </div>`;
}

function happened({ way, with: other }: SwapPart): string {
  if (way === undefined) return `Swapped with room ${other} at`;
  return way === 'went'
    ? `Its case was moved to room ${other} at`
    : `Moved here from room ${other} at`;
}

function notConfirmed({ way, with: other }: SwapPart): string {
  if (way === undefined) return `the swap with ${other}`;
  return way === 'went' ? `the move of its case to ${other}` : `the move of its case from ${other}`;
}

/** Rooms whose people have not said yet that a swap or a move is dealt with there. */
export function swapsToConfirm(at: Desk): TemplateResult[] {
  return at
    .list('swap')
    .filter((s) => s.confirmedAt === undefined)
    .map(
      (s) =>
        html`<div class="card">
          <p>
            <b>${s.room}</b> ${notConfirmed(s)} is not yet confirmed in the room<small
              >${changeWord(s) === 'swap' ? 'swapped' : 'moved'} ${at.hhmm(s.at)}</small
            >
          </p>
          <div class="do">
            <button @click=${() => at.openRoom(s.room)}>Open room ${s.room}</button>
          </div>
        </div>`,
    );
}

/** Two cases swap rooms: first what is lost by it, then the swap. Never in one touch. */
export function swapForm(at: Desk, row: DeskRow, plan: CasePart): TemplateResult {
  const others = at.rows.filter(
    (r) => r.room.room !== row.room.room && r.plan && !r.plan.cancelled,
  );
  const other = at.swapWith && caseOf(at.list('case'), at.swapWith);
  if (other) {
    return confirm(at, plan, other);
  }
  return html`<form
    class="card"
    @submit=${onSubmit((fields) => {
      at.swapWith = fields['room'];
      at.requestUpdate();
    })}
  >
    <div class="do">
      <select name="room" aria-label="swap with room">
        ${others.map((r) => html`<option value=${r.room.room}>room ${r.room.room}</option>`)}
      </select>
      <button ?disabled=${others.length === 0}>Look at a swap…</button>
    </div>
  </form>`;
}

function confirm(at: Desk, one: CasePart, other: CasePart): TemplateResult {
  const lost = voidedBySwap(at.list('item'), one, other);
  const nothingLost = lost.every((l) => l.items.length === 0);
  return html`<div class="card ask">
    <h3>Swap the cases of ${one.room} and ${other.room}?</h3>
    <p>
      Talk about it with both teams first; then each room confirms it at its station. What was made
      ready for a case is void where it is:
    </p>
    ${nothingLost ? html`<p class="dim">nothing has been made ready for either case yet</p>` : nothing}
    ${lost
      .filter((l) => l.items.length > 0)
      .map(
        (l) =>
          html`<p>
            <b>room ${l.room}:</b>
            ${toDealWith(
              l.items.map((i) => ({ key: keyOf(i), section: i.section, to: l.to })),
              l.room,
            )
              .map(({ words, things }) => `${words}: ${things.join(', ')}`)
              .join(' · ')}
          </p>`,
      )}
    <div class="do">
      <button
        class="main"
        @click=${() => {
          at.tell(
            `swapped ${one.room} and ${other.room}`,
            { type: 'swap-cases', one: one.caseId, other: other.caseId },
            { seen: Math.max(one.revision, other.revision) },
          );
          at.done();
        }}
      >
        Swap ${one.room} and ${other.room}
      </button>
      <button @click=${() => at.done()}>Leave it</button>
    </div>
  </div>`;
}
