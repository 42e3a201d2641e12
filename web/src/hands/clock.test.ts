import { describe, expect, it } from 'vitest';
import { hhmm, minutesTo, nextTimes, timeOn } from './clock.ts';

const LONDON = 'Europe/London';

describe('times of day', () => {
  it('should read the ways in which people write a time', () => {
    const at = Date.UTC(2026, 10, 26, 7, 20);
    for (const text of ['7:20', '07:20', '0720', '720', ' 7.20 ', '7h20']) {
      expect(timeOn('2026-11-26', text, LONDON), text).toBe(at);
    }
  });

  it('should refuse what is no time of day', () => {
    for (const text of ['', 'later', '25:00', '7:60', '7', '12345']) {
      expect(timeOn('2026-11-26', text, LONDON), text).toBeUndefined();
    }
  });

  // Summer time ends in the United Kingdom on 25 October 2026 at 02:00 (last Sunday of October).
  it('should mean the zone’s own time on both sides of a change of the clocks', () => {
    expect(timeOn('2026-10-24', '07:30', LONDON)).toBe(Date.UTC(2026, 9, 24, 6, 30));
    expect(timeOn('2026-10-25', '07:30', LONDON)).toBe(Date.UTC(2026, 9, 25, 7, 30));
    expect(hhmm(Date.UTC(2026, 9, 25, 7, 30), LONDON)).toBe('07:30');
  });

  it('should offer the next times on five minutes, never now', () => {
    const at = Date.UTC(2026, 10, 26, 7, 20);
    expect(nextTimes(at, 2).map((t) => hhmm(t, 'UTC'))).toEqual(['07:25', '07:30']);
    expect(minutesTo(at + 90_000, at)).toBe(1);
    expect(minutesTo(at - 1, at)).toBe(-1);
  });
});
