import { describe, expect, it } from 'vitest';
import type { CausesCompared, Difference } from './api.ts';
import { causeRows, movedWords } from './causes-compared.ts';

const difference = (value: number, verdict: Difference['verdict']): Difference => ({
  verdict,
  value,
  interval: { lower: value - 1.1, upper: value + 1.1 },
  p: 0.001,
  adjusted: 0.004,
});

const causes: CausesCompared['causes'] = {
  first: { name: 'winter', starts: 767, mornings: 64, perStart: 26 },
  second: { name: 'spring', starts: 780, mornings: 65, perStart: 23.5 },
  all: difference(2.5, 'DIFFERS'),
  rows: [
    { label: 'drugs', first: 3.4, second: 0.3, difference: difference(3.1, 'DIFFERS') },
    { label: 'surgeon', first: 4, second: 5.2, difference: difference(-1.2, 'DIFFERS') },
    { label: 'bed', first: 1, second: 0.9, difference: difference(0.1, 'NONE_SEEN') },
  ],
};

describe('causes of two periods', () => {
  it('says first what a period cost more, and where', () => {
    expect(movedWords(causes, (label) => label)).toBe(
      'All minutes late: +2.5 (+1.4 to +3.6) a start. It cost more by drugs +3.1 min a start (+2.0 to +4.2). It cost less by surgeon −1.2 min a start (−2.3 to −0.1).',
    );
    const rows = causes.rows?.slice(2) ?? [];
    expect(movedWords({ ...causes, rows }, (label) => label)).toContain('No one of 1 causes');
    const rare = rows.map((row) => ({ ...row, difference: { verdict: 'TOO_FEW' as const } }));
    expect(movedWords({ ...causes, rows: rare }, (label) => label)).toContain(
      'Each cause came on too few mornings to say.',
    );
    const few: Difference = { verdict: 'TOO_FEW' };
    expect(movedWords({ ...causes, all: few, rows: [] }, (label) => label)).toContain('10 on each');
  });

  it('gives the file figures that can be added up', () => {
    const [drugs] = causeRows(causes.rows ?? [], (label) => label.toUpperCase());
    expect(drugs).toEqual([
      'DRUGS',
      '3.400',
      '0.300',
      '3.100',
      '2.000',
      '4.200',
      '0.0040',
      'differs',
    ]);
  });
});
