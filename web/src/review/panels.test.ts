import { describe, expect, it } from 'vitest';
import type { Difference } from './api.ts';
import { differsMark } from './belief.ts';
import { inLines } from './panels.ts';

describe('a name beside a bar', () => {
  it('stands in one line if it fits, else in two that together hold it from its beginning', () => {
    expect(inLines('work: team brief')).toEqual(['work: team brief']);
    const long = 'work: controlled drugs fetched, counted, signed by two';
    const lines = inLines(long);
    expect(lines).toHaveLength(2);
    expect(lines.join(' ')).toBe(long);
    expect(lines.every((line) => line.length <= 38)).toBe(true);
  });

  it('ends in dots if two lines are too few, and cuts a word only if it has to', () => {
    const lines = inLines(`not-begun: ${'word '.repeat(20)}`);
    expect(lines[0]).toMatch(/^not-begun: word/);
    expect(lines[1]).toMatch(/…$/);
    expect(inLines('x'.repeat(60))[0]).toHaveLength(38);
  });
});

describe('the mark of a difference', () => {
  it('has the colour of what is late only where it is to the worse', () => {
    const d = (value: number, verdict: Difference['verdict'] = 'DIFFERS'): Difference => ({
      verdict,
      value,
    });
    expect(differsMark(d(5), 1)).toBe('differs');
    expect(differsMark(d(-5), 1)).toBe('differs worse');
    expect(differsMark(d(5), -1)).toBe('differs worse');
    expect(differsMark(d(5, 'NONE_SEEN'), -1)).toBe('quiet');
  });
});
