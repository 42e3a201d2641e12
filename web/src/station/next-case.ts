import { html, type TemplateResult } from 'lit';
import type { ItemPart } from '../generated/wire.ts';
import { keyWords } from '../hands/items.ts';
import { SET_UP, sectionName } from '../hands/words.ts';
import { frame } from './frame.ts';
import type { Station } from './main.ts';
import type { StationView } from './model.ts';

/** What of a room's set-up is good for its next case too, and what is to be done again. */
export interface NextCase {
  readonly good: readonly ItemPart[];
  /** Sections of which nothing is, in the order of the station. */
  readonly whole: readonly string[];
  /** What is not of the other sections. */
  readonly again: readonly (readonly [section: string, items: readonly ItemPart[]])[];
}

/** @param now what has lapsed by then carries nothing over */
export function nextCase(items: readonly ItemPart[], now: number): NextCase {
  const setUp = items.filter((i) => SET_UP.includes(i.section));
  const carries = (i: ItemPart) => i.goodUntil !== undefined && i.goodUntil > now;
  const sections = SET_UP.map(
    (section) => [sectionName(section), setUp.filter((i) => i.section === section)] as const,
  ).filter(([, items]) => items.length > 0);
  return {
    good: setUp.filter(carries),
    whole: sections.filter(([, items]) => !items.some(carries)).map(([name]) => name),
    again: sections
      .filter(([, items]) => items.some(carries))
      .map(([name, items]) => [name, items.filter((i) => !carries(i))] as const)
      .filter(([, again]) => again.length > 0),
  };
}

/** After the start: what the second case of the day finds done, for whoever sets it up. */
export function nextCaseSheet(at: Station, view: StationView): TemplateResult {
  const { good, whole, again } = nextCase(view.items, at.now);
  return frame(
    at,
    'For the next case here',
    html`<h2>Still good, if nothing was moved or changed</h2>
      ${
        good.length === 0
          ? html`<p class="dim">nothing: all of it is done again</p>`
          : html`<p>
              ${good.map(
                (i, n) =>
                  html`${n === 0 ? '' : ', '}${keyWords(i)}
                    <span class="dim">until ${at.until(i.goodUntil)}</span>`,
              )}
            </p>`
      }
      <h2>To be done again</h2>
      ${again.map(
        ([section, items]) => html`<p><b>${section}</b>: ${items.map(keyWords).join(', ')}</p>`,
      )}
      ${whole.length > 0 ? html`<p>all of <b>${whole.join(', ')}</b></p>` : ''}
      <p class="dim">
        The board follows first cases: the next one is kept in your record and on the printed sheet.
      </p>`,
  );
}
