import type {
  Causes,
  CausesApart,
  CausesCompared,
  Closing,
  Comparison,
  Lateness,
  Reasons,
  Rooms,
  Rule,
  ShareChart,
  Summary,
  Trial,
  TrialsApart,
  ValueChart,
} from './api.ts';
import { isPrice, type Price } from './filters.ts';
import { type Asked, ENDS, periodsQuery, queryOf } from './model.ts';

/** What the page has of its questions; each is shown as it comes. */
export interface Answers {
  summary?: Summary;
  shares?: { chart: ShareChart; rules: Rule[]; unjudged: number };
  minutes?: { chart: ValueChart; rules: Rule[] };
  causes?: Causes;
  /** From the marked change on with before it. */
  causesMoved?: CausesCompared;
  days?: CausesApart;
  reasons?: Reasons;
  rooms?: Rooms;
  lateness?: Lateness;
  trial60?: Trial;
  trial40?: Trial;
  trial20?: Trial;
  trial10?: Trial;
  trialsApart?: TrialsApart;
  learned?: Closing;
  compared?: { comparisons: Comparison[]; unjudged: number };
  /** Of two periods. */
  causesCompared?: CausesCompared;
}

/** Minutes before the target at which the board's word is kept. */
export const MOMENTS = ['60', '40', '20', '10'] as const;

/** A part of the page, the figure that the board is asked for, and how. */
export type Question = readonly [keyof Answers, string, URLSearchParams];

/** What is to be given before it can be compared; blank if nothing. */
export function lacks(asked: Asked): string {
  if (asked.split === 'change' && asked.change === '') {
    return 'Give the date of the marked change above.';
  }
  if (asked.split === 'periods' && ENDS.some((end) => asked[end] === '')) {
    return 'Give both dates of both periods.';
  }
  return '';
}

/** How the board is asked to compare. */
function compareQuery(asked: Asked): URLSearchParams {
  if (asked.split === 'periods') return periodsQuery(asked);
  if (asked.split !== 'change') return queryOf(asked, 'split');
  const query = queryOf(asked);
  query.set('at', asked.change);
  return query;
}

/** All that the page asks for these filters, in the order in which it is shown. */
export function questionsOf(asked: Asked, price: Price): Question[] {
  const measures = queryOf(asked);
  if (isPrice(price)) {
    for (const [key, value] of Object.entries(price)) measures.set(key, value as string);
  }
  const apart = queryOf(asked);
  apart.set('split', asked.each);
  const weekdays = queryOf(asked, 'by');
  weekdays.set('split', 'weekday');
  const questions: Question[] = [
    ['summary', 'measures', measures],
    ['shares', 'shares', queryOf(asked, 'period', 'grace', 'change')],
    ['minutes', 'minutes', queryOf(asked, 'period', 'change')],
    ['causes', 'causes', queryOf(asked, 'by')],
    ['reasons', 'reasons', queryOf(asked)],
    ['days', 'causes-apart', weekdays],
    ['rooms', 'rooms', queryOf(asked)],
    ['lateness', 'lateness', queryOf(asked)],
    ...MOMENTS.map((before): Question => [
      `trial${before}`,
      'trial',
      queryOf({ ...asked, before }, 'before'),
    ]),
    ['trialsApart', 'trial-apart', apart],
    ['learned', 'learned', new URLSearchParams()],
  ];
  if (asked.change !== '') {
    const moved = queryOf(asked, 'by');
    moved.set('at', asked.change);
    questions.push(['causesMoved', 'causes-compared', moved]);
  }
  if (lacks(asked) === '') {
    questions.push(['compared', 'compare', compareQuery(asked)]);
    if (asked.split === 'periods') {
      questions.push(['causesCompared', 'causes-compared', periodsQuery(asked, 'by')]);
    }
  }
  return questions;
}
