import { describe, expect, it } from 'vitest';
import type { ItemPart, SignPart } from '../generated/wire.ts';
import { item, second } from '../hands/made/parts.ts';
import { signsInOrder } from './model.ts';
import { nextWords } from './next.ts';

describe('a room at work on its next case', () => {
  const of = (key: string, state: ItemPart['state']) => ({
    part: 'next-item' as const,
    key: `next-item/case:5.2/${key}`,
    room: '5',
    carried: false,
    item: item(`case:5.2/${key}`, { room: '5', state }),
  });

  it('should be said at the desk, with what is open and at fault', () => {
    const items = [of('machine.bag', 'good'), of('suction.strong', 'fault'), of('iv.set', 'open')];
    expect(nextWords('5', [second], items)).toBe('next case: general, 2 of 3 open, 1 fault');
    expect(nextWords('5', [second], [items[0]!])).toBe('next case: general, nothing open');
    expect(nextWords('6', [second], items)).toBe('');
  });
});

describe('early signs', () => {
  it('should sink once the time by which they were to be mended is past', () => {
    const sign = (words: string, actBy: number) => ({ words, actBy }) as SignPart;
    const signs = [sign('long past', 10), sign('past', 50), sign('later', 90), sign('soon', 70)];
    expect(signsInOrder(signs, 60).map((s) => s.words)).toEqual([
      'soon',
      'later',
      'past',
      'long past',
    ]);
  });
});
