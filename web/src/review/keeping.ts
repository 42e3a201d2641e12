import { html, nothing, type TemplateResult } from 'lit';
import type { Progress, Taken } from './api.ts';

/** What can be done about what the figures rest on. */
export interface Keeping {
  save(): Promise<void>;
  remake(): Promise<void>;
  bring(event: Event): Promise<void>;
}

/** What the figures rest on: how far facts are made, rows as a file, history from a file. */
export function keepingPart(
  progress: Progress | undefined,
  taken: Taken | undefined,
  acts: Keeping,
): TemplateResult {
  return html`<section class="noprint">
    <h2>What this rests on</h2>
    <p role="status">
      ${
        progress === undefined
          ? ''
          : progress.working
            ? html`Making facts from the journal: ${progress.done} of ${progress.of} mornings.
                <progress
                  max=${Math.max(1, progress.of)}
                  value=${progress.done}
                  aria-label="mornings"
                ></progress>`
            : `Facts are in step with the journal${
                progress.unreadable === 0
                  ? ''
                  : `, but for ${progress.unreadable} mornings that can't be read`
              }.`
      }
      ${progress?.trouble ?? ''}
    </p>
    <div class="filters">
      <button type="button" @click=${acts.save}>Rows as CSV</button>
      <button type="button" @click=${acts.remake}>Make the facts anew</button>
      <label>
        history before Sunup (CSV: date, room, booked, started)
        <input type="file" accept=".csv,text/csv" @change=${acts.bring} />
      </label>
    </div>
    ${
      taken === undefined
        ? nothing
        : html`<p role="status">${taken.words}</p>
            <ul>
              ${taken.problems.map((p) => html`<li>line ${p.line}, ${p.field}: ${p.message}</li>`)}
            </ul>`
    }
  </section>`;
}
