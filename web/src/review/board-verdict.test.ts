import { describe, expect, it } from 'vitest';
import type { Difference, Score, Skill, Trial } from './api.ts';
import { callingOf, guidingOf, plainWords } from './board-verdict.ts';

const off = (value: number, differs: boolean): Difference => ({
  verdict: differs ? 'DIFFERS' : 'NONE_SEEN',
  value,
  interval: { lower: value - 0.1, upper: value + 0.1 },
  p: 0.5,
  adjusted: 0.5,
});

const skill = (value: number, reach = 0.1): Skill => ({
  n: 400,
  board: 0.2,
  other: 0.2,
  skill: value,
  interval: { lower: value - reach, upper: value + reach },
});

function trial(
  minutesBefore: number,
  said: number,
  differs: boolean,
  average: Skill | undefined,
  done: Skill | undefined,
  acted = 0,
): Trial {
  const all = {
    n: 400,
    large: { said, came: 0.42, off: off(said - 0.42, differs) },
    overAverage: average,
    overPercentDone: done,
  } as unknown as Score;
  const deskActed = acted === 0 ? {} : { deskActed: { n: acted } as unknown as Score };
  return { minutesBefore, forecasts: 400, recomputed: 0, all, ...deskActed };
}

describe('the verdict on the board', () => {
  it('says in plain words when it was too hopeful and when it was the better guide', () => {
    const words = plainWords([
      trial(60, 0.65, true, skill(-0.2), skill(-0.05)),
      trial(40, 0.61, true, skill(-0.02), skill(0.01)),
      trial(20, 0.45, false, skill(0.33), skill(0.2)),
      trial(10, 0.43, false, skill(0.48), skill(0.3)),
    ]);
    expect(words).toEqual([
      "At 60 minutes before the target it was too hopeful: it said on time for 65 in 100, and 42 came. The site's average was the better guide; beside percent done it is not seen to be better or worse.",
      "At 40 minutes before the target it was too hopeful: it said on time for 61 in 100, and 42 came. Beside the site's average and percent done it is not seen to be better or worse.",
      "At 20 and 10 minutes before the target as many came on time as it said, as far as can be seen: it said on time for 45 and 43 in 100, and 42 came. It was a better guide than the site's average and than percent done.",
    ]);
  });

  it('says that who acts on a forecast makes it look gloomy', () => {
    const [words] = plainWords([trial(40, 0.2, true, skill(0.4), undefined, 31)]);
    expect(words).toContain('too gloomy: it said on time for 20 in 100, and 42 came.');
    expect(words).toContain('After 31 of these forecasts the desk acted');
  });

  it('says too few where it is', () => {
    const none: Trial = { minutesBefore: 60, forecasts: 3, recomputed: 0 };
    expect(plainWords([none]).join(' ')).toMatch(/too few forecasts .* Too few to say which/);
    expect(callingOf({ verdict: 'TOO_FEW' })).toBe('few');
    expect(guidingOf(undefined)).toBe('few');
    expect(guidingOf(skill(0.05))).toBe('unseen');
  });
});
