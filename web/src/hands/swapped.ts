import type { Section, SwapPart } from '../generated/wire.ts';
import { wordsOfKey } from './items.ts';

/** What becomes of what was made ready for a case that changes rooms. */
type After = 'discard' | 'move' | 'redo';

/** In the order in which it is said. */
const AFTERS: readonly After[] = ['discard', 'move', 'redo'];

/**
 * An item of a case: its key on the sheet, the section that it stands in, and the room that its
 * case is in; undefined if that is cancelled.
 */
export interface LeftItem {
  readonly key: string;
  readonly section: Section;
  readonly to?: string;
}

/** What differs from its section: an opened field travels no more than a drawn syringe. */
const BY_KEY: Readonly<Record<string, After>> = {
  'instruments.field': 'discard',
  'instruments.count': 'redo',
  'room.table': 'move',
};

/**
 * Whether it is thrown away, goes with the case, or is done again in the room for the case that is
 * there now (common practice). Drawn drugs and opened sterile goods are of one patient; trays,
 * implants, table and equipment were fetched for the case; sizes and settings are looked at anew.
 */
function afterSwap({ key, section }: LeftItem): After {
  const own = BY_KEY[key];
  if (own !== undefined) return own;
  if (section === 'drugs') return 'discard';
  return section === 'instruments' || section === 'special' ? 'move' : 'redo';
}

/** What is said to be done with some things of a room. */
export interface ToDeal {
  readonly words: string;
  readonly things: readonly string[];
}

/**
 * What a room does with what was left in it, in words. Each thing follows its own case: two swaps
 * may have left things of two cases here, and one of them may have come back.
 *
 * @param here the room that the things are in
 * @param way of the room's case: in a room that its case has left there is nothing to do again
 */
export function toDealWith(
  left: readonly LeftItem[],
  here: string,
  way?: SwapPart['way'],
): readonly ToDeal[] {
  const deals = new Map<string, LeftItem[]>();
  for (const after of AFTERS) {
    for (const item of left.filter((one) => afterIn(one, here) === after)) {
      const words = afterWords(after, item.to, way);
      deals.set(words, [...(deals.get(words) ?? []), item]);
    }
  }
  return [...deals].map(([words, items]) => ({ words, things: things(items) }));
}

/** What was fetched for a case that is here again stays, and is looked at anew. */
function afterIn(item: LeftItem, here: string): After {
  const after = afterSwap(item);
  return after === 'move' && item.to === here ? 'redo' : after;
}

function afterWords(after: After, to: string | undefined, way: SwapPart['way']): string {
  switch (after) {
    case 'discard':
      return 'discard';
    case 'move':
      return to === undefined ? 'put away' : `take to ${to}`;
    case 'redo':
      return way === 'went' ? 'counts no more' : 'do again';
  }
}

/** What happened to a room's case, as the room and the desk read it. */
export function wayWords(swap: Pick<SwapPart, 'way' | 'with'>, at: string): string {
  switch (swap.way) {
    case 'went':
      return `The case of this room was moved to ${swap.with} at ${at}`;
    case 'came':
      return `Another case is here: moved from ${swap.with} at ${at}`;
    default:
      return `Another case is here: swapped with ${swap.with} at ${at}`;
  }
}

/**
 * What goes with a case beside what was ticked for it, and was perhaps on its way to this room. No
 * room is named: the case may have been moved on, or cancelled, since.
 */
export function withTheCase(swap: Pick<SwapPart, 'way'>): string {
  return swap.way === 'went'
    ? 'patient, papers and printed labels go with the case: see where it is now, tell who brings them'
    : '';
}

/** What was made ready for the case where it was, and is open here. */
export function lacksWords(swap: Pick<SwapPart, 'lacks'>): string {
  const lacks = swap.lacks ?? [];
  return lacks.length === 0 ? '' : `not yet done here: ${lacks.map(wordsOfKey).join(', ')}`;
}

/** "swap" or "move": what is confirmed. */
export function changeWord(swap: Pick<SwapPart, 'way'>): string {
  return swap.way === undefined ? 'swap' : 'move';
}

/** Each once; of what is thrown away or put away for two cases it is said, it is there twice. */
function things(items: readonly LeftItem[]): string[] {
  return [...new Set(items.map((item) => item.key))].map((key) => {
    const same = items.filter((item) => item.key === key);
    const twice = same.length > 1 && afterSwap(same[0]!) !== 'redo';
    return wordsOfKey(key) + (twice ? ` of ${same.length} cases` : '');
  });
}
