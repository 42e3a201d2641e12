import { describe, expect, it } from 'vitest';
import {
  askedIn,
  between,
  chanceWords,
  differenceWords,
  disagreeWords,
  dispersionWords,
  filterWords,
  groupWords,
  inOrder,
  marks,
  type Named,
  NOTHING,
  percent,
  periodsQuery,
  queryOf,
  rulesAt,
  searchOf,
  shareWords,
  signsOf,
  verdictWords,
  yearBefore,
} from './model.ts';

describe('the address of the page', () => {
  it('shows the same again and keeps what else stands in it', () => {
    const asked = askedIn('?suite=east&room=3&weekday=monday&period=month');
    expect(asked.room).toBe('3');
    expect(asked.before).toBe('20');
    expect(searchOf(asked, '?suite=east')).toBe('?suite=east&room=3&weekday=monday&period=month');
    expect(searchOf({ ...asked, ...NOTHING }, '?suite=east&room=3')).toBe('?suite=east');
  });

  it('asks for the filter and what a figure needs beside it', () => {
    const query = queryOf({ ...NOTHING, room: '3', change: '2026-03-02' }, 'period', 'change');
    expect(query.toString()).toBe('room=3&period=week&change=2026-03-02');
    expect(queryOf(NOTHING).toString()).toBe('');
  });

  it('says what is looked at', () => {
    expect(filterWords(NOTHING)).toBe('all first cases');
    expect(filterWords({ ...NOTHING, from: '2026-01-01', weekday: 'monday' })).toBe(
      'first cases from 2026-01-01, mondays',
    );
    expect(filterWords({ ...NOTHING, technique: 'spinal' })).toBe('first cases spinal');
  });

  it('asks about two periods by their own dates and the other filters', () => {
    const asked = {
      ...NOTHING,
      from: '2025-09-01',
      room: '3',
      'first-from': '2026-01-01',
      'first-to': '2026-03-31',
      'second-from': '2025-01-01',
      'second-to': '2025-03-31',
    };
    expect(periodsQuery(asked, 'by').toString()).toBe(
      'room=3&first-from=2026-01-01&first-to=2026-03-31&second-from=2025-01-01&second-to=2025-03-31&by=section',
    );
    expect(askedIn(searchOf(asked, ''))).toEqual(asked);
    expect(yearBefore('2026-03-31')).toBe('2025-03-31');
    expect(yearBefore('2024-02-29')).toBe('2023-02-28');
    expect(yearBefore('')).toBe('');
  });
});

describe('what a manager reads', () => {
  it('gives the interval by mornings beside a share', () => {
    const interval = { lower: 0.5, upper: 0.7 };
    const wide = { lower: 0.42, upper: 0.77 };
    expect(shareWords({ x: 60, n: 100, share: 0.6, interval, byMornings: wide, effect: 3 })).toBe(
      '60 % (60 of 100; 95 % interval 42 to 77 %)',
    );
    expect(shareWords({ x: 0, n: 0, effect: 1 })).toBe('none');
    expect(percent(undefined)).toBe('none');
  });

  it('never says that there is no difference', () => {
    const value = { verdict: 'NONE_SEEN', value: 0.04, interval: { lower: -0.02, upper: 0.09 } };
    const seen = value as Parameters<typeof verdictWords>[0];
    expect(differenceWords(seen, 100)).toBe('+4.0 (−2.0 to +9.0)');
    expect(verdictWords(seen)).toContain('what can hide');
    const alone = { ...seen, interval: { lower: 0.01, upper: 0.09 } };
    expect(verdictWords(alone)).toContain('among so many');
    expect(verdictWords({ verdict: 'TOO_FEW' })).toBe('too few to say');
    expect(differenceWords({ verdict: 'TOO_FEW' }, 1)).toBe('');
  });

  it('says why an interval and a corrected chance seem to say two things', () => {
    const wide = { verdict: 'NONE_SEEN', value: 1, interval: { lower: -1, upper: 3 }, p: 0.4 };
    const alone = { ...wide, interval: { lower: 0.2, upper: 2 }, p: 0.02, adjusted: 0.24 };
    const border = { ...wide, verdict: 'DIFFERS', p: 0.01, adjusted: 0.04 };
    const clear = { ...alone, verdict: 'DIFFERS', adjusted: 0.001 };
    const looked = { wide, alone, border, clear, few: { verdict: 'TOO_FEW' } };
    const words = disagreeWords(Object.entries(looked) as unknown as Named[]);
    expect(words).toHaveLength(2);
    expect(words[0]).toMatch(/^The interval of “alone” leaves 0 out.* of 4 that are looked at/);
    expect(words[1]).toMatch(/^“border”: called a difference, though the interval just holds 0/);
    const four = ['a', 'b', 'c', 'd'].map((name): Named => [name, alone as Named[1]]);
    expect(disagreeWords(four)[0]).toMatch(
      /^The interval of 4 of them leaves 0 out.*more than chance/,
    );
    const many = new Array<Named>(40).fill(['wide', wide as Named[1]]);
    expect(disagreeWords([...many, ...four])[0]).not.toContain('more than chance');
    expect(disagreeWords([['wide', wide as Named[1]]])).toEqual([]);
  });

  it('gives an interval a digit more rather than none', () => {
    expect(between({ lower: 0, upper: 0.0012 })).toBe('0.0 to 0.1 %');
    expect(between({ lower: 0.3, upper: 0.33 })).toBe('30 to 33 %');
    expect(chanceWords(0.0001)).toBe('p under 0.001');
    expect(chanceWords(0.0123)).toBe('p 0.012');
  });

  it('names and sorts groups as people do', () => {
    expect(groupWords('1 Monday')).toBe('Monday');
    expect(groupWords('10')).toBe('10');
    const rooms = ['10', '2', '1'].map((first) => ({ first }));
    expect(rooms.sort(inOrder).map((r) => r.first)).toEqual(['1', '2', '10']);
  });

  it('tells a run as one sign, whatever rules it meets', () => {
    const signs = signsOf([
      { rule: 'BEYOND_LIMITS', from: 3, to: 3 },
      { rule: 'FOUR_OF_FIVE_BEYOND_ONE_SIGMA', from: 2, to: 9 },
      { rule: 'EIGHT_ON_ONE_SIDE', from: 1, to: 10 },
      { rule: 'BEYOND_LIMITS', from: 11, to: 11 },
      { rule: 'BEYOND_LIMITS', from: 12, to: 12 },
    ]);
    expect(signs.map((s) => [s.from, s.to, s.rules.length])).toEqual([
      [1, 10, 3],
      [11, 11, 1],
      [12, 12, 1],
    ]);
  });

  it('says what the test for more than chance found, and why limits are as they are', () => {
    const said = (p: number, sigmaZ: number, degrees = 40, adjusted = false): string => {
      const dispersion = { statistic: 63.25, degrees, p };
      const phase = { from: 0, to: 9, centre: 0.5, sigmaZ, adjusted, dispersion };
      return dispersionWords({ points: [], phases: [phase], signals: [] })[0]!;
    };
    expect(said(0.2, 1.1)).toContain('chi-square 63.3 on 40 degrees of freedom, p 0.200');
    expect(said(0.2, 1.1)).toContain('not adjusted');
    expect(said(0.01, 1.3, 11)).toContain('because wider limits need 20 periods and there are 12');
    expect(said(0.01, 0.9)).toContain('Mark the change');
    expect(said(0.01, 1.36, 40, true)).toContain('the limits are 1.36 times as wide');
    const none = { from: 0, to: 1, centre: 1, sigmaZ: 1, adjusted: false };
    expect(dispersionWords({ points: [], phases: [none], signals: [] })[0]).toContain(
      "can't be tested",
    );
  });

  it('marks points beyond a limit before those of a run', () => {
    const signals = [
      { rule: 'EIGHT_ON_ONE_SIDE', from: 1, to: 3 },
      { rule: 'BEYOND_LIMITS', from: 3, to: 3 },
    ];
    expect(marks(5, signals)).toEqual(['plain', 'run', 'run', 'beyond', 'plain']);
    const rules = [{ rule: 'BEYOND_LIMITS', words: 'beyond a limit', source: '' }];
    expect(rulesAt(3, signals, rules)).toEqual(['beyond a limit']);
  });
});
