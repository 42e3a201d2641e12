import { describe, expect, it } from 'vitest';
import type { Section } from '../generated/wire.ts';
import { afterWords, byAfter, type LeftItem } from './swapped.ts';

const left = (...keys: string[]): LeftItem[] =>
  keys.map((key) => ({ key, section: key.split('.')[0] as Section }));

describe('what a swap leaves in a room', () => {
  it('should be discarded if it was drawn or opened, moved if it was fetched, else done again', () => {
    const groups = byAfter(
      left(
        'airway.tubes',
        'drugs.drawn',
        'drugs.controlled',
        'special.ultrasound',
        'room.table',
        'instruments.trays',
        'instruments.field',
        'instruments.count',
        'machine.ventilator',
      ),
    );
    expect(groups.map(({ after, items }) => [after, items.map((item) => item.key)])).toEqual([
      ['discard', ['drugs.drawn', 'drugs.controlled', 'instruments.field']],
      ['move', ['special.ultrasound', 'room.table', 'instruments.trays']],
      ['redo', ['airway.tubes', 'instruments.count', 'machine.ventilator']],
    ]);
    expect(afterWords('move', '7')).toBe('take to 7');
  });

  it('should say nothing of what there is none of', () => {
    expect(byAfter(left('drugs.drawn')).map((group) => group.after)).toEqual(['discard']);
    expect(byAfter([])).toEqual([]);
  });
});
