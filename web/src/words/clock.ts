import { style } from './style.ts';

/** The one place that writes and reads times of day. */

const formats = new Map<string, Intl.DateTimeFormat>();

function format(zone: string): Intl.DateTimeFormat {
  let found = formats.get(zone);
  if (!found) {
    found = new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      hour: '2-digit',
      minute: '2-digit',
      second: '2-digit',
      hourCycle: 'h23',
    });
    formats.set(zone, found);
  }
  return found;
}

/** `07:04:12` by 24 hours, whatever the site's clock. */
function of(at: number, zone: string): string {
  return format(zone).format(at);
}

/** A time of 24 hours (`07:04`, `07:04:12`) as the site writes it: the same, or `7:04 am`. */
function written(time: string, am = ' am', pm = ' pm'): string {
  if (style().clock === 24) return time;
  const hour = Number(time.slice(0, 2));
  return `${hour % 12 === 0 ? 12 : hour % 12}${time.slice(2)}${hour < 12 ? am : pm}`;
}

/**
 * Time of day in the site's zone, whole minutes cut: `07:04` or `7:04 am`.
 *
 * @param at epoch milliseconds
 * @param zone the site's zone, for example `Europe/London`
 */
export function clockTime(at: number, zone: string): string {
  return written(of(at, zone).slice(0, 5));
}

/** `07:04:12` or `7:04:12 am`. */
export function clockSeconds(at: number, zone: string): string {
  return written(of(at, zone));
}

/** Where there is no room: `07:04` or `7:04a`. */
export function clockBrief(at: number, zone: string): string {
  return written(of(at, zone).slice(0, 5), 'a', 'p');
}

/** Minutes since midnight in the zone. */
export function minuteOfDay(at: number, zone: string): number {
  const time = of(at, zone);
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
}

/** A time by this machine's own zone, before the site's is known. */
export function clockHere(at: number): string {
  return written(new Date(at).toTimeString().slice(0, 5));
}

/** Times in a sentence of the server, which writes them by 24 hours, as the site writes them. */
export function timesIn(text: string, brief = false): string {
  const halves = brief ? (['a', 'p'] as const) : ([' am', ' pm'] as const);
  return style().clock === 24
    ? text
    : text.replace(/(?<![\d:])(?:[01]\d|2[0-3]):[0-5]\d(?![\d:]| ?[ap]m?\b)/g, (time) =>
        written(time, ...halves),
      );
}

/** How a time is written, for fields. */
export function timeExample(): string {
  return written('07:20');
}

/** The widest time that is written. */
export function widestTime(): string {
  return style().clock === 24 ? '00:00' : '00:00 pm';
}

const TIME = /^\s*(\d{1,2})[:.h ]?(\d{2})\s*(?:([ap])\.?\s*(?:m\.?)?)?\s*$/i;

/**
 * Minutes since midnight that somebody means by `7:20`, `0720`, `7:20 am` or `720p`. Where the clock
 * has 12 hours a time that may be of the morning or the evening has to say which.
 */
export function timeOfDay(text: string): number | undefined {
  const match = TIME.exec(text);
  if (!match) return undefined;
  const hour = Number(match[1]);
  const minute = Number(match[2]);
  const half = match[3]?.toLowerCase();
  if (hour > 23 || minute > 59) return undefined;
  if (half === undefined) {
    const twice = style().clock === 12 && hour >= 1 && hour <= 12;
    return twice ? undefined : hour * 60 + minute;
  }
  if (hour < 1 || hour > 12) return undefined;
  return ((hour % 12) + (half === 'p' ? 12 : 0)) * 60 + minute;
}
