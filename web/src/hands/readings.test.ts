import { expect, it } from 'vitest';
import { type Series, slowWords } from './readings.ts';

const series: Series = {
  room: '1',
  item: 'machine.cylinder',
  name: 'backup oxygen cylinder opened, read, closed again',
  unit: 'psi',
  low: 1000,
  days: [],
};

it('should say how a reading goes slowly to the worse, and nothing of one that does not', () => {
  const slow = { from: 1893.4, to: 1704.1, perMorning: -27, mornings: 8 };
  expect(slowWords({ ...series, slow })).toBe('falls slowly, 1,890 to 1,700 psi in 8 mornings');
  expect(slowWords(series)).toBe('');
});
