import type {
  Causes,
  CausesApart,
  Closing,
  Comparison,
  Lateness,
  Reasons,
  Rooms,
  Rule,
  ShareChart,
  Summary,
  Trial,
  ValueChart,
} from './api.ts';
import { isPrice, type Price } from './filters.ts';
import { type Asked, queryOf, sidesOf } from './model.ts';

/** What the page has of its questions; each is shown as it comes. */
export interface Answers {
  summary?: Summary;
  shares?: { chart: ShareChart; rules: Rule[]; unjudged: number };
  minutes?: { chart: ValueChart; rules: Rule[] };
  causes?: Causes;
  /** On both sides of the marked change. */
  causesBefore?: Causes | undefined;
  causesAfter?: Causes | undefined;
  days?: CausesApart;
  reasons?: Reasons;
  rooms?: Rooms;
  lateness?: Lateness;
  trial?: Trial;
  learned?: Closing;
  compared?: { comparisons: Comparison[]; unjudged: number };
}

/** A part of the page, the figure that the board is asked for, and how. */
export type Question = readonly [keyof Answers, string, URLSearchParams];

/** True while periods are to be compared and nobody has said where the second begins. */
export function needsChange(asked: Asked): boolean {
  return asked.split === 'change' && asked.change === '';
}

/** All that the page asks for these filters, in the order in which it is shown. */
export function questionsOf(asked: Asked, price: Price): Question[] {
  const measures = queryOf(asked);
  if (isPrice(price)) {
    for (const [key, value] of Object.entries(price)) measures.set(key, value as string);
  }
  const compare = queryOf(asked, 'split');
  if (asked.split === 'change') {
    compare.delete('split');
    compare.set('at', asked.change);
  }
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
    ['trial', 'trial', queryOf(asked, 'before')],
    ['learned', 'learned', new URLSearchParams()],
  ];
  const sides = sidesOf(asked, asked.change);
  if (sides !== undefined) {
    questions.push(
      ['causesBefore', 'causes', queryOf({ ...asked, ...sides.before }, 'by')],
      ['causesAfter', 'causes', queryOf({ ...asked, ...sides.after }, 'by')],
    );
  }
  return needsChange(asked) ? questions : [...questions, ['compared', 'compare', compare]];
}
