import { ask } from '../live/index.ts';
import { reading } from './words.ts';

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
  return (await ask<{ series: Series[] }>(`/api/readings${query}`)).series;
}

/** "falls slowly, 1,890 to 1,700 psi in 8 mornings"; empty if it does not change slowly. */
export function slowWords(series: Series): string {
  const slow = series.slow;
  if (!slow) {
    return '';
  }
  const way = slow.perMorning < 0 ? 'falls' : 'rises';
  const from = near(slow.from).toLocaleString('en-US');
  return `${way} slowly, ${from} to ${reading(near(slow.to), series.unit)} in ${slow.mornings} mornings`;
}

/** To what a gauge is read. */
function near(value: number): number {
  const step = Math.abs(value) >= 500 ? 10 : 1;
  return Math.round(value / step) * step;
}
