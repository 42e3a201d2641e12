import type { HouseStyle } from '../generated/wire.ts';
import { ask as askBoard, download } from '../live/index.ts';

/** What the server says of the first cases that pass; the records of `/api/review/`. */
export interface Interval {
  lower: number;
  upper: number;
}

export interface Share {
  x: number;
  n: number;
  share?: number;
  interval?: Interval;
  byMornings?: Interval;
  effect: number;
}

export interface Figures {
  /** Withheld if it is known of fewer than 10 starts. */
  onTime?: Share;
  graces: { minutes: number; onTime?: Share; meanOverLate?: number; unjudged: number }[];
  minutes: {
    total: number;
    meanOverAll: number;
    perMorning: number;
    late?: number;
    meanOverLate?: number;
    median: number;
    ninth: number;
    medianOverLate?: number;
    /** 95 %, by mornings. */
    intervals?: {
      meanOverAll?: Interval;
      perMorning?: Interval;
      meanOverLate?: Interval;
      median?: Interval;
      ninth?: Interval;
    };
  };
  beside: {
    wheelsInToInduction?: number;
    wheelsInToInductionMedian?: number;
    wheelsInToInductionOf: number;
    cancelled: Share;
    leftOut: number;
    openAtStep: number;
    together: number;
    lateEntries: number;
    faults: number;
  };
  ahead?: { shown: Share; unknown: number };
  /** Starts that the share on time leaves out: nobody told them, and they may have been in time. */
  unjudged: number;
}

export interface Measures {
  cases: number;
  cancelled: number;
  untold: number;
  starts: number;
  /** Of these, starts that nobody told and a later step that somebody did. */
  inferred: number;
  mornings: number;
  figures?: Figures;
}

export interface Summary {
  measures: Measures;
  cost?: { minutes: number; amount: number; price: { currency: string; source: string } };
}

export interface Signal {
  rule: string;
  from: number;
  to: number;
}

export interface Rule {
  rule: string;
  words: string;
  source: string;
}

export interface ShareChart {
  points: {
    label: string;
    x: number;
    n: number;
    share?: number;
    centre: number;
    lower: number;
    upper: number;
    plainLower: number;
    plainUpper: number;
  }[];
  phases: {
    from: number;
    to: number;
    centre: number;
    dispersion?: { statistic: number; degrees: number; p: number };
    sigmaZ: number;
    adjusted: boolean;
  }[];
  signals: Signal[];
}

export interface ValueChart {
  points: { label: string; value: number; range?: number }[];
  phases: { from: number; to: number; centre: number; lower: number; upper: number }[];
  signals: Signal[];
}

export interface CauseRow {
  label: string;
  minutes: number;
  starts: number;
  weakMinutes: number;
  share: number;
  running: number;
}

export interface Causes {
  by: string;
  /** What to show for a label that has an item's key in it, where the name is known. */
  names?: Record<string, string>;
  /** All but the number of starts is withheld where these are fewer than 10. */
  causes: {
    starts: number;
    minutes?: number;
    weakMinutes?: number;
    unexplained?: number;
    rows?: CauseRow[];
  };
}

/** Causes of two periods, per start. */
export interface CausesCompared {
  by: string;
  causes: {
    first: Side;
    second: Side;
    all?: Difference;
    rows?: { label: string; first: number; second: number; difference: Difference }[];
  };
  names?: Record<string, string>;
}

export interface Side {
  name: string;
  starts: number;
  mornings: number;
  perStart?: number;
}

/** Causes of each group, per start of it: groups differ in how many they have. */
export interface CausesApart {
  by: string;
  groups: {
    name: string;
    starts: number;
    minutes?: number;
    perStart?: number;
    rows?: { label: string; name?: string; minutes: number; perStart: number; starts: number }[];
  }[];
}

export interface Reasons {
  rows?: { computed: string; reported: string; starts: number; agreed: number }[];
}

export interface Rooms {
  rooms: string[];
  days: string[];
  cells: { room: string; day: string; starts: number; onTime?: number; meanLate?: number }[];
}

export interface Lateness {
  starts: number;
  bins?: { from?: number; to?: number; starts: number }[];
  quantiles?: number[];
}

export interface Difference {
  verdict: 'TOO_FEW' | 'NONE_SEEN' | 'DIFFERS';
  value?: number;
  interval?: Interval;
  p?: number;
  adjusted?: number;
}

export interface Comparison {
  first: string;
  second: string;
  design: 'BETWEEN_MORNINGS' | 'WITHIN_MORNINGS';
  firstStarts: number;
  secondStarts: number;
  mornings: number;
  onTime: Difference;
  minutes: Difference;
}

export interface Skill {
  n: number;
  board: number;
  other: number;
  skill: number;
  interval?: Interval;
}

export interface Score {
  n: number;
  mornings: number;
  brier: {
    score: number;
    base: number;
    reliability: number;
    resolution: number;
    uncertainty: number;
    within: number;
  };
  brierInterval?: Interval;
  spiegelhalter?: number;
  large: InTheLarge;
  curve: {
    from: number;
    to: number;
    n: number;
    said?: number;
    came?: number;
    interval?: Interval;
  }[];
  overAverage?: Skill;
  overPercentDone?: Skill;
  named: { x?: number; n: number; share?: number; interval?: Interval };
}

export interface Trial {
  minutesBefore: number;
  forecasts: number;
  recomputed: number;
  all?: Score;
  deskActed?: Score;
  deskDidNot?: Score;
  replayed?: Score;
}

/** Whether as many starts came on time as was said; `off` is said less came. */
export interface InTheLarge {
  said: number;
  came: number;
  off: Difference;
}

/** The board in each group by itself, at each of its moments. */
export interface TrialsApart {
  split: string;
  moments: {
    minutesBefore: number;
    groups: {
      name: string;
      forecasts: number;
      mornings: number;
      large?: InTheLarge;
      overAverage?: Difference;
    }[];
  }[];
}

export interface Hands {
  usual: number;
  oneInTen: number;
}

/** What the last closing taught of an item. */
export interface Learned {
  key: string;
  name: string;
  sheet: Hands;
  before: Hands;
  now: Hands;
  /** What the next opening goes by; absent if by the sheet. */
  next?: Hands;
  measured: number;
  taught: number;
  implied: number;
  unbelieved: number;
  mornings: number;
  weight: 'NOTHING' | 'FEW' | 'ENOUGH';
  delay?: { n: number; usualMs?: number; oneInTenMs?: number };
}

export interface Closing {
  closed?: string;
  mornings: number;
  items: Learned[];
  changes: { what: string; before: string; after: string; why: string }[];
  /** What the next opening goes by. */
  next?: {
    items: { key: string; hands: Hands }[];
    /** How people report; absent if by first settings. */
    reporting?: {
      eachItem: number;
      eachSection: number;
      atEnd: number;
      never: number;
      forgotten: number;
      delayOneInTenMs?: number;
    };
  };
  /** Whether the suite's openings go by it at all. */
  used: boolean;
}

export interface Choices {
  cases: number;
  first?: string;
  last?: string;
  rooms: string[];
  services: string[];
  techniques: string[];
}

export interface Progress {
  working: boolean;
  done: number;
  of: number;
  unreadable: number;
  trouble?: string;
}

export interface Taken {
  rows: number;
  problems: { line: number; field: string; message: string }[];
  words: string;
}

/** The path of a question. */
function path(figure: string, query: URLSearchParams): string {
  const words = query.toString();
  return `/api/review/${figure}${words === '' ? '' : `?${words}`}`;
}

/** Saves the first cases that pass as a file. */
export function saveRows(query: URLSearchParams): Promise<void> {
  return download(path('rows', query), 'first-cases.csv');
}

export function ask<T>(
  figure: string,
  query: URLSearchParams = new URLSearchParams(),
  signal?: AbortSignal,
): Promise<T> {
  return askBoard<T>(path(figure, query), { signal });
}

/** How this site's pages write, and whether it is invented: this page has no morning to say it. */
export function siteSays(): Promise<{ style?: HouseStyle; demo: boolean }> {
  return askBoard('/api/site');
}

/** Hands over a file of history, or asks to make the facts anew. */
export function send<T>(figure: string, csv = ''): Promise<T> {
  return askBoard<T>(path(figure, new URLSearchParams()), {
    type: 'text/csv; charset=utf-8',
    body: csv,
  });
}
