import { html, nothing, type TemplateResult } from 'lit';
import type { Section } from '../generated/wire.ts';
import { count, personName, sectionName, SET_UP } from '../hands/words.ts';
import { frame } from './frame.ts';
import type { Station } from './main.ts';
import type { HandingOver } from './sides.ts';
import { openNames } from '../hands/items.ts';
import type { StationView } from './model.ts';

/** What was only reported, section by section; airway, drugs and machine are always named. */
export function handOverSheet(at: Station, view: StationView, over: HandingOver): TemplateResult {
  const named: readonly Section[] = ['machine', 'airway', 'drugs'];
  const rows = SET_UP.map((section) => ({
    section,
    good: view.items.filter((i) => i.section === section && i.state === 'good'),
    open: view.open.filter((i) => i.section === section),
  })).filter((r) => named.includes(r.section) || r.good.length > 0);
  const controlled = at.drugs.ofCase?.open ?? [];
  const names = [personName(over.from), personName(over.to)] as const;
  return frame(
    at,
    `${names[0]} hands over to ${names[1]}`,
    html`<p class="dim">${openNames(view.open)}. Only reported; what do you want to see again?</p>
      ${controlled.length > 0 ? html`<p><b>Controlled:</b> ${controlled.join(' · ')}</p>` : nothing}
      <div class="col">
        ${rows.map((r) => {
          const again = over.again.has(r.section);
          const last = Math.max(...r.good.map((i) => i.since));
          return html`<button
            aria-pressed=${again}
            ?disabled=${r.good.length === 0}
            @click=${() => {
              over.again[again ? 'delete' : 'add'](r.section);
              at.requestUpdate();
            }}
          >
            ${sectionName(r.section)}${again ? ': see again' : ''}<small
              >${
                r.good.length === 0
                  ? 'nothing reported'
                  : `${count(r.good.length, 'thing')} reported, last ${at.hhmm(last)}`
              }${r.open.length > 0 ? ` · ${r.open.length} open` : ''}</small
            >
          </button>`;
        })}
      </div>
      <div class="col">
        <button
          aria-pressed=${over.gives}
          class=${over.gives ? '' : 'main'}
          @click=${() => {
            over.gives = !over.gives;
            at.requestUpdate();
          }}
        >
          ${names[0]}: I hand over${over.gives ? ', signed' : ''}
        </button>
        <button
          class=${over.gives ? 'main' : ''}
          ?disabled=${!over.gives}
          @click=${() => at.handOver(over)}
        >
          ${names[1]}: I take over
        </button>
      </div>`,
  );
}
