import { afterEach, describe, expect, it } from 'vitest';
import { follow } from '../words/index.ts';
import { legendKeys, legendRows, legendTurn } from './legend.ts';

afterEach(() => follow(undefined));

describe('the legend', () => {
  const all = legendKeys({ bare: true, ticks: true });

  it('should tell of an underlined number and of strokes only where there are some', () => {
    expect(legendKeys({ bare: false, ticks: false })).not.toContain('bare');
    expect(legendKeys({ bare: false, ticks: false })).not.toContain('ticks');
    expect(all).toEqual(expect.arrayContaining(['bare', 'ticks']));
  });

  it('should tell each sign once, in rows that fit', () => {
    for (const letter of [25, 34, 46, 68]) {
      const rows = legendRows(all, letter, 1848);
      expect(rows.flat()).toEqual(all);
      expect(rows.length).toBeLessThan(letter === 68 ? 8 : 6);
    }
  });

  it('should say nothing where a single sign has no room, and take no more rows than are free', () => {
    expect(legendRows(all, 68, 600)).toEqual([]);
    expect(legendTurn([['late'], ['ready'], ['now']], 0, 0)).toEqual([]);
    expect(legendTurn([['late'], ['ready']], 5, 0)).toHaveLength(2);
  });

  it('should let rows take turns until each was seen', () => {
    const rows = [1, 2, 3, 4, 5];
    const seen = [0, 12_000, 24_000].flatMap((at) => legendTurn(rows, 2, at));
    expect(seen).toEqual(rows);
    expect(legendTurn(rows, 2, 36_000)).toEqual([1, 2]);
  });
});
