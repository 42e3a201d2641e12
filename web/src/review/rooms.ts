import { html, type TemplateResult } from 'lit';
import type { Rooms } from './api.ts';
import { how } from './defined.ts';
import { dayWords, percent, roundTop } from './model.ts';
import { filesOf } from './tables.ts';

/** Each room on each weekday: how far its mean start hangs below its horizon. */
export function roomsPanel(rooms: Rooms): TemplateResult {
  if (rooms.rooms.length === 0) return html`<p class="withheld">No starts.</p>`;
  if (rooms.rooms.length > 80) {
    return html`<p class="withheld">More than 80 rooms: choose some first.</p>`;
  }
  const most = roundTop(Math.max(1, ...rooms.cells.map((c) => c.meanLate ?? 0)));
  return html`<p>
      Mean minutes late per start, hanging from the target's line; the scale ends at ${most}. Many
      cells are looked at together: one that stands out is a question. Compare it below before
      anything is said of it.
    </p>
    <div class="scroll" tabindex="0" role="region" aria-label="Rooms by weekday">
      <table class="rooms">
        <thead>
          <tr>
            <th scope="col">room</th>
            ${rooms.days.map((day) => html`<th scope="col">${dayWords(day)}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rooms.rooms.map(
            (room, r) =>
              html`<tr>
                <th scope="row">${room}</th>
                ${rooms.days.map((_, d) => {
                  const cell = rooms.cells[r * rooms.days.length + d];
                  return html`<td>
                    ${
                      cell?.meanLate === undefined
                        ? html`<span class="few">${cell?.starts ?? 0} starts</span>`
                        : html`<svg viewBox="0 0 40 22" aria-hidden="true">
                              <line x1="0" x2="40" y1="3" y2="3" />
                              <rect x="12" y="3" width="16" height=${(18 * cell.meanLate) / most} />
                            </svg>
                            ${cell.meanLate.toFixed(1)}
                            <span class="quiet">${percent(cell.onTime)}</span>`
                    }
                  </td>`;
                })}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    ${how('rooms')}
    ${filesOf(
      'Rooms by weekday',
      ['room', 'weekday', 'starts', 'minutes late per start', 'on time, %'],
      rooms.cells.map((c) => [
        c.room,
        dayWords(c.day),
        c.starts,
        c.meanLate?.toFixed(2),
        c.onTime === undefined ? undefined : (100 * c.onTime).toFixed(1),
      ]),
    )}`;
}
