import { html, nothing, type TemplateResult } from 'lit';
import { onSubmit, textField } from '../hands/forms.ts';
import { roleName } from '../hands/words.ts';
import type { Desk } from './main.ts';
import { notesInOrder } from './model.ts';
import { goesForm } from './needs.ts';

const KINDS: Record<string, string> = {
  taken: 'said',
  help: 'asks for help',
  reason: 'reason',
  note: 'note',
};

/** What was said and noted, the newest first. */
export function notesPanel(at: Desk): TemplateResult {
  const notes = notesInOrder(at.list('note'));
  return html`<h2>Notes</h2>
    <form
      class="card"
      @submit=${onSubmit((fields, form) => {
        const text = fields['text'] ?? '';
        if (text !== '') {
          at.tell('note on the morning', { type: 'add-note', text });
          form.reset();
        }
      })}
    >
      <div class="do">
        ${textField('text', 'note on the morning, no names')}
        <button>Note</button>
      </div>
    </form>
    ${notes.length === 0 ? html`<p class="dim">nothing noted yet</p>` : ''}
    ${notes.map(
      (n) =>
        html`<div class="line">
            <span class="grow"
              >${n.text}<small
                >${n.room ? `room ${n.room} · ` : ''}${KINDS[n.kind] ?? n.kind} ·
                ${n.by ? roleName(n.by) : nothing}${n.at > 0 ? ` ${at.hhmm(n.at)}` : ''}</small
              ></span
            >
            ${
              n.kind === 'help' && n.room
                ? html`<button
                    aria-label="Someone goes to room ${n.room}"
                    @click=${() => at.toggle(`goes/${n.key}`)}
                  >
                    Someone goes
                  </button>`
                : ''
            }
          </div>
          ${n.room && at.form === `goes/${n.key}` ? goesForm(at, n.room) : nothing}`,
    )}`;
}
