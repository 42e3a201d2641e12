import { describe, expect, it } from 'vitest';
import { csvOf, jsonOf } from './tables.ts';

describe('a table as a file', () => {
  const head = ['minutes', 'starts'];

  it('is CSV that no spreadsheet takes for a formula', () => {
    const rows = [
      ['-30 to -25', 2],
      ['a, "b"', undefined],
      ['-4.5', 1],
    ];
    expect(csvOf(head, rows)).toBe('minutes,starts\r\n\'-30 to -25,2\r\n"a, ""b""",\r\n-4.5,1\r\n');
  });

  it('is JSON by its own heads, with null for what is withheld', () => {
    expect(JSON.parse(jsonOf(head, [['0 to 5', undefined]]))).toEqual([
      { minutes: '0 to 5', starts: null },
    ]);
  });
});
