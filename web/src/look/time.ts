import { style } from '../words/index.ts';

export { clockTime } from '../words/index.ts';

type Kind = 'day' | 'date';

const SHAPES: Readonly<Record<Kind, Intl.DateTimeFormatOptions>> = {
  day: { weekday: 'long', day: 'numeric', month: 'long' },
  date: { year: 'numeric', month: '2-digit', day: '2-digit' },
};

const formats = new Map<string, Intl.DateTimeFormat>();

function format(zone: string, kind: Kind): Intl.DateTimeFormat {
  // The Swedish way of writing a date is year, month, day.
  const days = style().english === 'american' ? 'en-US' : 'en-GB';
  const language = kind === 'date' ? 'sv-SE' : days;
  const key = `${kind} ${zone} ${language}`;
  let found = formats.get(key);
  if (!found) {
    found = new Intl.DateTimeFormat(language, { ...SHAPES[kind], timeZone: zone });
    formats.set(key, found);
  }
  return found;
}

/** A date in words in the site's zone: `Wednesday 25 November`, `Wednesday, November 25`. */
export function dayWords(at: number, zone: string): string {
  const words = format(zone, 'day').format(at);
  return style().english === 'american' ? words : words.replace(',', '');
}

/** The date in the site's zone as mornings carry it: `2026-11-25`. */
export function dateOf(at: number, zone: string): string {
  return format(zone, 'date').format(at);
}

/** The date of a morning (`2026-11-25`) in words. */
export function dateWords(date: string): string {
  return dayWords(Date.parse(`${date}T12:00:00Z`), 'UTC');
}

/** Whole minutes from `from` to `to`, rounded. */
export function minutesBetween(from: number, to: number): number {
  return Math.round((to - from) / 60_000);
}
