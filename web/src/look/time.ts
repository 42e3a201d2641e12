type Kind = 'clock' | 'day' | 'date';

const SHAPES: Readonly<Record<Kind, Intl.DateTimeFormatOptions>> = {
  clock: { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' },
  day: { weekday: 'long', day: 'numeric', month: 'long' },
  date: { year: 'numeric', month: '2-digit', day: '2-digit' },
};

const formats = new Map<string, Intl.DateTimeFormat>();

function format(zone: string, kind: Kind): Intl.DateTimeFormat {
  const key = `${kind} ${zone}`;
  let found = formats.get(key);
  if (!found) {
    // The Swedish way of writing a date is year, month, day.
    const language = kind === 'date' ? 'sv-SE' : 'en-GB';
    found = new Intl.DateTimeFormat(language, { ...SHAPES[kind], timeZone: zone });
    formats.set(key, found);
  }
  return found;
}

/**
 * Time of day in the site's zone, whole minutes cut: `07:04`.
 *
 * @param at epoch milliseconds
 * @param zone the site's zone, for example `Europe/London`
 */
export function clockTime(at: number, zone: string): string {
  return format(zone, 'clock').format(at);
}

/** A date in words in the site's zone: `Wednesday 25 November`. */
export function dayWords(at: number, zone: string): string {
  return format(zone, 'day').format(at).replace(',', '');
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
