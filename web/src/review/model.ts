import type { Difference, Interval, Rule, Share, ShareChart, Signal, ValueChart } from './api.ts';

/** What the page asks about; kept in its address, so that a link shows the same. */
export interface Asked {
  from: string;
  to: string;
  room: string;
  service: string;
  technique: string;
  weekday: string;
  period: string;
  grace: string;
  change: string;
  by: string;
  split: string;
  before: string;
  each: string;
  'first-from': string;
  'first-to': string;
  'second-from': string;
  'second-to': string;
}

export const NOTHING: Asked = {
  from: '',
  to: '',
  room: '',
  service: '',
  technique: '',
  weekday: '',
  period: 'week',
  grace: '',
  change: '',
  by: 'section',
  split: 'room',
  before: '20',
  each: 'room',
  'first-from': '',
  'first-to': '',
  'second-from': '',
  'second-to': '',
};

/** The dates of two periods that are compared; they stand in the place of from and to. */
export const ENDS = ['first-from', 'first-to', 'second-from', 'second-to'] as const;

const FILTERS = ['from', 'to', 'room', 'service', 'technique', 'weekday'] as const;

export function askedIn(search: string): Asked {
  const given = new URLSearchParams(search);
  const asked = { ...NOTHING };
  for (const key of Object.keys(NOTHING) as (keyof Asked)[]) {
    asked[key] = given.get(key) ?? NOTHING[key];
  }
  return asked;
}

/** The page's address for this, beside what else stands in it. */
export function searchOf(asked: Asked, search: string): string {
  const given = new URLSearchParams(search);
  for (const key of Object.keys(NOTHING) as (keyof Asked)[]) {
    if (asked[key] === NOTHING[key]) given.delete(key);
    else given.set(key, asked[key]);
  }
  const words = given.toString();
  return words === '' ? '' : `?${words}`;
}

/** Parameters of a question: the filter and these. */
export function queryOf(asked: Asked, ...also: (keyof Asked)[]): URLSearchParams {
  const query = new URLSearchParams();
  for (const key of [...FILTERS, ...also]) {
    if (asked[key] !== '') query.set(key, asked[key]);
  }
  return query;
}

/** The question about two periods: their dates, and what else is looked at. */
export function periodsQuery(asked: Asked, ...also: (keyof Asked)[]): URLSearchParams {
  return queryOf({ ...asked, from: '', to: '' }, ...ENDS, ...also);
}

/** The same date a year before; of a leap day the day before it. */
export function yearBefore(date: string): string {
  const day = new Date(`${date}T00:00:00Z`);
  if (Number.isNaN(day.getTime())) return '';
  const month = day.getUTCMonth();
  day.setUTCFullYear(day.getUTCFullYear() - 1);
  if (day.getUTCMonth() !== month) day.setUTCDate(0);
  return day.toISOString().slice(0, 10);
}

/** What is shown, in a sentence; it heads the printed page. */
export function filterWords(asked: Asked): string {
  const parts = [
    asked.from === '' ? '' : `from ${asked.from}`,
    asked.to === '' ? '' : `to ${asked.to}`,
    asked.room === '' ? '' : `room ${asked.room}`,
    asked.service === '' ? '' : asked.service === 'none' ? 'no service named' : asked.service,
    asked.technique === ''
      ? ''
      : asked.technique === 'none'
        ? 'no technique named'
        : asked.technique,
    asked.weekday === '' ? '' : `${asked.weekday}s`,
  ].filter((words) => words !== '');
  return parts.length === 0 ? 'all first cases' : `first cases ${parts.join(', ')}`;
}

export const percent = (share: number | undefined, digits = 0): string =>
  share === undefined ? 'none' : `${(share * 100).toFixed(digits)} %`;

export const minutes = (value: number | undefined): string =>
  value === undefined ? 'none' : value.toFixed(1);

/** "1.2 to 3.4", of minutes. */
export const span = ({ lower, upper }: Interval): string =>
  `${minutes(lower)} to ${minutes(upper)}`;

/** "61 to 72 %"; with a digit more where both ends would read the same: "0.0 to 0.1 %". */
export function between(interval: Interval | undefined): string {
  if (interval === undefined) return '';
  const [lower, upper] = [100 * interval.lower, 100 * interval.upper];
  const digits = lower.toFixed(0) === upper.toFixed(0) ? 1 : 0;
  return `${lower.toFixed(digits)} to ${upper.toFixed(digits)} %`;
}

/** The share with the interval to believe: starts of one morning go together. */
export function shareWords(share: Share): string {
  return share.n === 0
    ? 'none'
    : `${percent(share.share)} (${share.x} of ${share.n}; 95 % interval ${between(share.byMornings)})`;
}

/** A difference in words; never that there is none. */
export function verdictWords(difference: Difference): string {
  switch (difference.verdict) {
    case 'TOO_FEW':
      return 'too few to say';
    case 'NONE_SEEN':
      return excludesNone(difference.interval)
        ? 'none seen among so many that are looked at; alone it would stand out'
        : 'none seen; the interval says what can hide';
    case 'DIFFERS':
      return 'differs';
  }
}

/** One interval alone tells more than one of many may. */
const excludesNone = (interval: Interval | undefined): boolean =>
  interval !== undefined && interval.lower * interval.upper > 0;

/** A difference with what it is of. */
export type Named = readonly [name: string, difference: Difference];

/** "60, 40 and 20". */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

/** So many are named; of more only how many there are. */
const NAMED_MOST = 3;

/** Up to so many of them may be chance, however few were looked at. */
const SOME = 2;

/** How many have a chance that was corrected. */
export const told = (looked: readonly Named[]): number =>
  looked.filter(([, d]) => d.p !== undefined).length;

function whose(names: readonly string[]): string {
  return names.length > NAMED_MOST
    ? `${names.length} of them`
    : listed(names.map((name) => `“${name}”`));
}

/**
 * Where an interval and a corrected chance seem to say two things: why, and what to make of it.
 *
 * @param together how many chances were corrected together, and of what
 */
export function disagreeWords(
  looked: readonly Named[],
  together = `${told(looked)} that are looked at together`,
): string[] {
  const of = (verdict: Difference['verdict'], excludes: boolean): string[] =>
    looked
      .filter(([, d]) => d.verdict === verdict && excludesNone(d.interval) === excludes)
      .map(([name]) => name);
  const alone = of('NONE_SEEN', true);
  const border = of('DIFFERS', false);
  return [
    alone.length === 0
      ? ''
      : `The interval of ${whose(alone)} leaves 0 out, and still it is not called a difference: each interval is made as if it alone were looked at, and of ${together} one in twenty does that by chance. The chance p is corrected for all of them (Holm). ${alone.length > SOME && alone.length > told(looked) / 10 ? "These are more than chance makes of so many: some are likely real, but it can't be said which. " : ''}Take it as a question, and ask it alone of later mornings.`,
    border.length === 0
      ? ''
      : `${whose(border)}: called a difference, though the interval just holds 0. The chance p and the interval are made in different ways (by dealing anew, and by how mornings scatter) and part at the border. Take it as undecided until there are more mornings.`,
  ].filter((words) => words !== '');
}

/** "+4 (−2 to +9)" in points of a hundred, or in minutes. */
export function differenceWords(difference: Difference, scale: number): string {
  if (difference.value === undefined || difference.interval === undefined) return '';
  const { lower, upper } = difference.interval;
  return `${signed(difference.value * scale)} (${signed(lower * scale)} to ${signed(upper * scale)})`;
}

export function signed(value: number, digits = 1): string {
  const text = Math.abs(value).toFixed(digits);
  return Number(text) === 0 ? '0' : `${value < 0 ? '−' : '+'}${text}`;
}

/** How a point of a chart is drawn: as one that no chance made, as part of a run, or plain. */
export type Mark = 'beyond' | 'run' | 'plain';

export function marks(count: number, signals: readonly Signal[]): Mark[] {
  const found: Mark[] = new Array<Mark>(count).fill('plain');
  for (const signal of signals) {
    for (let i = signal.from; i <= signal.to && i < count; i++) {
      if (signal.rule === 'BEYOND_LIMITS') found[i] = 'beyond';
      else if (found[i] === 'plain') found[i] = 'run';
    }
  }
  return found;
}

/** The rules that a point completes or lies in, in words. */
export function rulesAt(at: number, signals: readonly Signal[], rules: readonly Rule[]): string[] {
  const met = signals.filter((s) => s.from <= at && at <= s.to).map((s) => s.rule);
  return rules.filter((r) => met.includes(r.rule)).map((r) => r.words);
}

/** What a share chart has to say before anybody looks at it. */
export function sharesWords(chart: ShareChart): string {
  const shown = chart.points.filter((p) => p.n > 0).length;
  const last = chart.phases.at(-1);
  if (last === undefined || shown === 0) return 'No period has enough starts.';
  return `${shown} periods, ${percent(last.centre)} on time${
    chart.phases.length > 1 ? ' since the last marked change' : ''
  }; ${signalWords(signsOf(chart.signals).length)}.`;
}

export function valuesWords(chart: ValueChart): string {
  const last = chart.phases.at(-1);
  if (last === undefined || chart.points.length === 0) return 'No period has enough starts.';
  return `${chart.points.length} periods, ${minutes(last.centre)} minutes late per start${
    chart.phases.length > 1 ? ' since the last marked change' : ''
  }; ${signalWords(signsOf(chart.signals).length)}.`;
}

/** Signals that lie in one another: one run, with the rules that it meets. */
export interface Sign {
  from: number;
  to: number;
  rules: Signal[];
}

/** One run is one sign, however many rules tell it; in order of time. */
export function signsOf(signals: readonly Signal[]): Sign[] {
  const signs: Sign[] = [];
  const inTime = [...signals].sort((a, b) => a.from - b.from || b.to - a.to);
  for (const signal of inTime) {
    const last = signs.at(-1);
    if (last === undefined || signal.from > last.to) {
      signs.push({ from: signal.from, to: signal.to, rules: [signal] });
    } else {
      last.to = Math.max(last.to, signal.to);
      last.rules.push(signal);
    }
  }
  return signs;
}

/** From so many points on limits are widened; the server's own number. */
const ADJUST_FROM = 20;

/** What the test for more variation than chance said of each phase, and what was done about it. */
export function dispersionWords(chart: ShareChart): string[] {
  return chart.phases.map((phase) => {
    const label = chart.points[phase.from]?.label ?? '';
    const where = chart.phases.length === 1 ? '' : ` From ${label}:`;
    const test = phase.dispersion;
    if (test === undefined) {
      return `Do the periods vary more than chance would have them?${where} can't be tested, with fewer than two periods or all starts alike.`;
    }
    const { statistic, degrees, p } = test;
    const found = `chi-square ${statistic.toFixed(1)} on ${degrees} degrees of freedom, ${chanceWords(p)} (Wetherill and Brown 1991)`;
    return `Do the periods vary more than chance would have them?${where} ${found}: ${doneAbout(phase, p, degrees)}`;
  });
}

function doneAbout(phase: ShareChart['phases'][number], p: number, degrees: number): string {
  const factor = phase.sigmaZ.toFixed(2);
  if (phase.adjusted) return `yes, so the limits are ${factor} times as wide (Laney 2002).`;
  if (p >= 0.05) return 'not that it could be seen, so the limits are not adjusted.';
  if (degrees + 1 < ADJUST_FROM) {
    return `yes, but not adjusted, because wider limits need ${ADJUST_FROM} periods and there are ${degrees + 1}.`;
  }
  return `yes, but not adjusted, because neighbouring periods differ no more than chance would have them (factor ${factor}): it drifts or shifts. Mark the change.`;
}

const signalWords = (count: number): string =>
  count === 0
    ? 'nothing that chance would not do'
    : `${count} ${count === 1 ? 'sign' : 'signs'} that it is no chance`;

/** A number at or above the largest, easy to divide into four. */
export function roundTop(value: number): number {
  for (const top of [4, 8, 12, 20, 40, 60, 80, 120, 200, 400, 800]) {
    if (value <= top) return top;
  }
  return Math.ceil(value / 1000) * 1000;
}

/** "p 0.012", and never that it is nothing. */
export const chanceWords = (p: number): string =>
  p < 0.0005 ? 'p under 0.001' : `p ${p.toFixed(3)}`;

const NUMBERED = /^[1-7] (?=(?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day$)/;

/** "Mon" of "MONDAY". */
export const dayWords = (day: string): string => day.charAt(0) + day.slice(1, 3).toLowerCase();

/** The name of a group; weekdays come with a number, so that they sort. */
export const groupWords = (name: string): string => name.replace(NUMBERED, '');

/** Groups as people count: room 2 before room 10. */
export const inOrder = (a: { first: string }, b: { first: string }): number =>
  a.first.localeCompare(b.first, 'en', { numeric: true });
