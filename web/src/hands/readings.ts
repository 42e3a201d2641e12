import { ask } from '../live/index.ts';
import { shown, shownUnit, toldIn, withUnit } from '../words/index.ts';

/** A machine's reading over mornings, as `ReadingsApi` writes it; today's is the last. */
export interface Series {
  room: string;
  item: string;
  name: string;
  unit: string;
  low?: number;
  high?: number;
  days: { date: string; value: number }[];
  slow?: { from: number; to: number; perMorning: number; mornings: number };
}

/** Those of one room, or of all rooms those that change slowly to the worse. */
export async function fetchReadings(room?: string): Promise<Series[]> {
  const query = room === undefined ? '' : `?room=${encodeURIComponent(room)}`;
  const { series } = await ask<{ series: Series[] }>(`/api/readings${query}`);
  return toldIn(series, new Set(['name']));
}

/** "falls slowly, 1,890 to 1,700 psi in 8 mornings"; empty if it does not change slowly. */
export function slowWords(series: Series): string {
  const slow = series.slow;
  if (!slow) {
    return '';
  }
  const way = slow.perMorning < 0 ? 'falls' : 'rises';
  const near = (value: number) => nearest(shown(value, series.unit));
  const to = withUnit(near(slow.to), shownUnit(series.unit));
  return `${way} slowly, ${withUnit(near(slow.from), '')} to ${to} in ${slow.mornings} mornings`;
}

/** To what a gauge is read. */
function nearest(value: number): number {
  const step = Math.abs(value) >= 500 ? 10 : 1;
  return Math.round(value / step) * step;
}
