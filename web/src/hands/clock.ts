import { clockTime, timeOfDay } from '../words/index.ts';

/** Clock times as people say them, in the morning's own time zone. */

/** `07:30`, or as the site writes it; an empty text if there is no time. */
export function hhmm(at: number | undefined, zone: string): string {
  return at === undefined ? '' : clockTime(at, zone);
}

/** Whole minutes from now to then, rounded down; negative once it has passed. */
export function minutesTo(then: number, now: number): number {
  return Math.floor((then - now) / 60_000);
}

/** The zone's offset from UTC at a moment, in milliseconds. */
function offsetAt(at: number, zone: string): number {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(at);
  const of = (type: string) => Number(parts.find((p) => p.type === type)?.value);
  const local = Date.UTC(
    of('year'),
    of('month') - 1,
    of('day'),
    of('hour'),
    of('minute'),
    of('second'),
  );
  return local - Math.floor(at / 1000) * 1000;
}

/**
 * The moment that somebody means by a time of day on this date.
 *
 * @param date `2026-11-26`
 * @returns epoch milliseconds, or undefined if it is no time of day
 */
export function timeOn(date: string, text: string, zone: string): number | undefined {
  const minute = timeOfDay(text);
  const [year, month, day] = date.split('-').map(Number);
  if (minute === undefined || !year || !month || !day) {
    return undefined;
  }
  const local = Date.UTC(year, month - 1, day, 0, minute);
  // Twice, because the first guess may lie on the other side of a change of the clocks.
  const guess = local - offsetAt(local, zone);
  return local - offsetAt(guess, zone);
}

/** The next few times on the five minutes after now, for choosing by touch. */
export function nextTimes(now: number, count: number, stepMinutes = 5): number[] {
  const step = stepMinutes * 60_000;
  const first = (Math.floor(now / step) + 1) * step;
  return Array.from({ length: count }, (_, i) => first + i * step);
}
