import { html, type TemplateResult } from 'lit';
import { refusals } from '../hands/bands.ts';
import { drugsPanel } from './drugs/panel.ts';
import { figuresPanel } from './figures/panel.ts';
import { isLeftOver } from './gone.ts';
import type { Station } from './main.ts';
import type { StationView } from './model.ts';
import { left } from './rows.ts';
import { leftOver, right } from './side.ts';

/**
 * The page between its top and its foot: what is open over it, why nothing is asked, or the lines
 * with what stands beside them.
 *
 * @param idle why nothing is asked now; empty if something is
 */
export function middle(at: Station, view: StationView, idle: string): TemplateResult {
  // What is left of a case that is gone is counted and thrown away also where nothing is asked.
  const leftBehind = idle !== '' && isLeftOver(at);
  const open = idle ? leftBehind && at.drugs.shown : at.figures.shown || at.drugs.shown;
  // A sheet that was asked for meanwhile, as who signs on, goes over what is open here.
  const over = at.side.kind === 'waits' && open;
  return html`<main class=${over ? 'over' : at.side.kind === 'waits' ? '' : 'sheeted'}>
    ${
      over
        ? html`${refusals(at)} ${at.drugs.shown ? drugsPanel(at) : figuresPanel(at, view)}`
        : idle
          ? html`<p class="idle">${idle}</p>
              <div class="right">
                ${leftBehind ? leftOver(at, view, refusals(at)) : refusals(at)}
              </div>`
          : html`<div class="left">${left(at, view)}</div>
              <div class="right">${right(at, view, refusals(at))}</div>`
    }
  </main>`;
}
