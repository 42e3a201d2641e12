import { html, nothing, type TemplateResult } from 'lit';
import type {
  CasePart,
  CommandUnion,
  ItemPart,
  NextItemPart,
  NextPart,
} from '../generated/wire.ts';
import { keyWord, keyWords } from '../hands/items.ts';
import { SET_UP, sectionName, techniqueWords } from '../hands/words.ts';
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

/** Lists that fit as buttons at the smallest screen. */
const LISTS = 8;

/** A first case for each list of this morning: the room's own, then those of the most rooms. */
export function listsToChoose(cases: readonly CasePart[], room: string): CasePart[] {
  const of = new Map<string, CasePart[]>();
  for (const one of cases) {
    const words = techniqueWords(one);
    of.set(words, [...(of.get(words) ?? []), one]);
  }
  const own = (same: readonly CasePart[]) => Number(same.some((c) => c.room === room));
  return [...of.values()]
    .sort((a, b) => own(b) - own(a) || b.length - a.length)
    .map((same) => same.find((c) => c.room === room) ?? same[0]!);
}

/** True if an item is good as it came over from the case before. */
export function isCarried(at: Station, item: ItemPart): boolean {
  return at.list('next-item').some((n) => n.carried && n.item.item === item.item);
}

/**
 * The next case is set up, by the list of a first case of this morning.
 *
 * @param shown the next case that the screen showed in the room: no other is put away by this
 */
export function setUpNext(room: string, like: CasePart, shown: NextPart | undefined): CommandUnion {
  const after = shown === undefined ? {} : { after: shown.caseId };
  return { type: 'set-up-next', room, like: like.caseId, ...after };
}

/** What another next case would put away; empty if nothing was done for the one that is shown. */
export function putsAway(shown: NextPart | undefined, items: readonly NextItemPart[]): string {
  const done = items.some((i) => i.room === shown?.room && !i.carried && i.item.state !== 'open');
  return shown && done
    ? `This puts away what was done for ${shown.caseId}, the next case that is set up here.`
    : '';
}

/** Which list the next case goes by. */
export function nextListSheet(at: Station): TemplateResult {
  const { next } = at.view;
  const away = putsAway(next, at.list('next-item'));
  const begin = (like: CasePart) => {
    at.tell(`next case begun: ${techniqueWords(like)}`, setUpNext(at.room, like, next));
    at.showHalf('next');
  };
  const lists = listsToChoose(at.list('case'), at.room);
  const more = lists.length - LISTS;
  return frame(
    at,
    'What is the next case?',
    html`${away ? html`<p role="status"><b>${away}</b></p>` : nothing}
      <div class="col">
        ${lists
          .slice(0, LISTS)
          .map(
            (one, i) =>
              html`<button ?data-first=${i === 0} @click=${() => begin(one)}>
                ${techniqueWords(one)}
              </button>`,
          )}
      </div>
      <p class="dim">
        Lists of this morning's first cases${more > 0 ? `, ${more} more are not shown` : ''}. If
        none is right, take the nearest and leave out what is not needed.
      </p>`,
  );
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
        ([section, items]) => html`<p><b>${section}</b>: ${items.map(keyWord).join(', ')}</p>`,
      )}
      ${whole.length > 0 ? html`<p>all of <b>${whole.join(', ')}</b></p>` : ''}
      <button class="main" data-first @click=${() => at.show({ kind: 'next-list' })}>
        Set the next case up here
      </button>
      <p class="dim">
        The board's figures are of first cases: this one gets no target and no forecast.
      </p>`,
  );
}
