import { html, nothing, type TemplateResult } from 'lit';
import type { PlacePart, UnitPart } from '../generated/wire.ts';
import { onSubmit, timeField, timeIn } from '../hands/forms.ts';
import type { Desk } from './main.ts';

/** Shared equipment and places that open. */
export function thingsPanel(at: Desk): TemplateResult {
  const units = [...at.list('unit')].sort((a, b) => a.label.localeCompare(b.label));
  const places = [...at.list('place')].sort((a, b) => a.opensAt - b.opensAt);
  return html`<h2>Equipment</h2>
    ${units.length === 0 ? html`<p class="dim">no shared equipment on this morning</p>` : nothing}
    ${units.map((u) => unit(at, u))}
    <h2>Places</h2>
    ${places.map((p) => place(at, p))}`;
}

function unit(at: Desk, u: UnitPart): TemplateResult {
  const rooms = at.rows.map((r) => r.room.room);
  const seen = { seen: u.revision };
  const where = u.with ? `with room ${u.with} since ${at.hhmm(u.since)}` : 'free';
  const next = u.promised ? ` · next to room ${u.promised}` : '';
  return html`<form
    class="card"
    @submit=${onSubmit((fields) => {
      const room = fields['room']!;
      at.tell(`${u.label} is with room ${room}`, { type: 'claim', unit: u.unit, room }, seen);
    })}
  >
    <h3>${u.label} · ${where}${next}</h3>
    <div class="do">
      <select name="room" aria-label="${u.label}: room">
        ${rooms.map((r) => html`<option value=${r}>room ${r}</option>`)}
      </select>
      <button>Is there</button>
      <button
        type="button"
        @click=${(e: Event) => {
          const form = (e.target as HTMLElement).closest('form')!;
          const room = (form.elements.namedItem('room') as HTMLSelectElement).value;
          at.tell(`${u.label} goes to ${room} next`, { type: 'promise', unit: u.unit, room }, seen);
        }}
      >
        Goes there next
      </button>
    </div>
    <div class="do">
      ${
        u.with
          ? html`<button
              type="button"
              @click=${() => at.tell(`${u.label} is free`, { type: 'release', unit: u.unit }, seen)}
            >
              Free again
            </button>`
          : nothing
      }
      ${
        u.promised
          ? html`<button
              type="button"
              @click=${() =>
                at.tell(`${u.label} promised to nobody`, { type: 'promise', unit: u.unit }, seen)}
            >
              Take the promise back
            </button>`
          : nothing
      }
    </div>
  </form>`;
}

function place(at: Desk, p: PlacePart): TemplateResult {
  return html`<form
    class="card"
    @submit=${onSubmit((_, form) => {
      const time = timeIn(at, form, 'at');
      if (time !== undefined) {
        at.tell(
          `${p.label} opens ${at.hhmm(time)}`,
          { type: 'place-opens', place: p.place, at: time },
          { seen: p.revision },
        );
        form.reset();
      }
    })}
  >
    <h3>${p.label} · ${p.opensAt > at.now ? 'opens' : 'open since'} ${at.hhmm(p.opensAt)}</h3>
    <div class="do">
      ${timeField('at', `${p.label} opens at`)}
      <button>Opens then</button>
    </div>
  </form>`;
}
