import { html, type TemplateResult } from 'lit';
import type { Station } from './main.ts';

/** A sheet over the right-hand side, with its title and a way out. */
export function frame(at: Station, title: string, body: unknown): TemplateResult {
  return html`<section
    class="sheet"
    aria-label=${title}
    @keydown=${(e: KeyboardEvent) => {
      if (e.key === 'Escape') {
        at.close();
      }
    }}
  >
    <div class="head">
      <h2>${title}</h2>
      <button @click=${() => at.close()}>Close</button>
    </div>
    ${body}
  </section>`;
}
