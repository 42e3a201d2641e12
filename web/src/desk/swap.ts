import { html, nothing, type TemplateResult } from 'lit';
import type { CasePart } from '../generated/wire.ts';
import { onSubmit } from '../hands/forms.ts';
import { keyWords } from '../hands/items.ts';
import type { Desk } from './main.ts';
import { caseOf, type DeskRow, voidedBySwap } from './model.ts';

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
    <p>Talk about it with both teams first. What was made ready for a case is void where it is:</p>
    ${nothingLost ? html`<p class="dim">nothing has been made ready for either case yet</p>` : nothing}
    ${lost
      .filter((l) => l.items.length > 0)
      .map((l) => html`<p><b>room ${l.room}:</b> ${l.items.map(keyWords).join(', ')}</p>`)}
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
