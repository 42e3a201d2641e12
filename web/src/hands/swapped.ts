import type { Section } from '../generated/wire.ts';

/** What becomes of what was made ready for a case that changes rooms. */
export type After = 'discard' | 'move' | 'redo';

/** In the order in which it is said. */
export const AFTERS: readonly After[] = ['discard', 'move', 'redo'];

/** An item of a case: its key on the sheet, and the section that it stands in. */
export interface LeftItem {
  readonly key: string;
  readonly section: Section;
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
export function afterSwap({ key, section }: LeftItem): After {
  const own = BY_KEY[key];
  if (own !== undefined) return own;
  if (section === 'drugs') return 'discard';
  return section === 'instruments' || section === 'special' ? 'move' : 'redo';
}

/** @param to the room that the case goes to */
export function afterWords(after: After, to: string): string {
  switch (after) {
    case 'discard':
      return 'discard';
    case 'move':
      return `take to ${to}`;
    case 'redo':
      return 'do again';
  }
}

/** What is left, by what becomes of it; kinds of which there is nothing are left out. */
export function byAfter<T extends LeftItem>(
  items: readonly T[],
): readonly { readonly after: After; readonly items: readonly T[] }[] {
  return AFTERS.map((after) => ({
    after,
    items: items.filter((item) => afterSwap(item) === after),
  })).filter((group) => group.items.length > 0);
}
