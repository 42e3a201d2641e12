import { render } from 'lit';
import { describe, expect, it } from 'vitest';
import type { Measures, Share } from './api.ts';
import { graceWords, measureRows, summaryPanel } from './summary.ts';

const SHARE: Share = {
  x: 8,
  n: 12,
  share: 8 / 12,
  interval: { lower: 0.4, upper: 0.86 },
  byMornings: { lower: 0.39, upper: 0.87 },
  effect: 1,
};

/** Twelve starts, of nine of which it is known whether they were on time. */
function fewJudged(): Measures {
  return {
    cases: 12,
    cancelled: 0,
    untold: 0,
    starts: 12,
    inferred: 3,
    mornings: 2,
    figures: {
      graces: [
        { minutes: 0, unjudged: 3 },
        { minutes: 10, onTime: SHARE, unjudged: 0 },
      ],
      minutes: { total: 121, meanOverAll: 10.1, perMorning: 60.5, median: 7, ninth: 20 },
      beside: {
        wheelsInToInductionOf: 4,
        cancelled: { ...SHARE, x: 0, share: 0 },
        leftOut: 0,
        openAtStep: 0,
        together: 0,
        lateEntries: 0,
        faults: 0,
      },
      unjudged: 3,
    },
  };
}

function words(measures: Measures): string {
  const place = document.createElement('div');
  render(summaryPanel({ measures }), place);
  return (place.textContent ?? '').replaceAll(/\s+/g, ' ');
}

describe('a share that is known of fewer than 10 starts', () => {
  it('is said to be withheld, with how many nobody knows, and is no 0', () => {
    const said = words(fewJudged());
    expect(said).toContain('not shown of 9 first cases it is known whether they started on time');
    expect(said).toContain('3 more that nobody told may have been in time');
    expect(said).toContain('minutes late, of the late ones too few');
    expect(said).toContain('too few: told of 4');
    expect(said).not.toContain('NaN');
    expect(said).not.toContain('undefined');
    expect(graceWords(undefined, 9)).toBe('not shown: known of 9');
    expect(graceWords(SHARE, 12)).toBe('67 % (39 to 87 %), 8 of 12');
  });

  it('is empty in the file, beside how many it would be of', () => {
    const measures = fewJudged();
    const rows = measureRows(measures, measures.figures!);
    expect(rows[0]!.slice(0, 6)).toEqual(['on time', undefined, '%', undefined, undefined, 9]);
    const graces = rows.filter((r) => String(r[0]).startsWith('on time within'));
    expect(graces.map((r) => [r[1], r[5]])).toEqual([
      [undefined, 9],
      ['66.7', 12],
    ]);
  });
});
