import { html, type TemplateResult } from 'lit';

/** How each figure is counted: beside it on the page, and as a list on paper. */
export const DEFINED = {
  onTime: [
    'on time',
    "Of all starts, those that came no later than the target and that morning's own grace, cut to whole minutes. The target is the agreed time, or else the booked one. Cancelled cases and starts that nobody told are not among them. Of those known only by a later step the ones that may have been in time are left out, and how many is said.",
  ],
  meanOverAll: [
    'minutes late, per start',
    'Start less target, seconds included; an early start counts 0 and makes up for no late one. The mean over all starts. As a room has one first case a day, it is the tardiness per room and day.',
  ],
  median: ['median', 'Half of all starts are no later than this; early ones count as 0.'],
  ninth: [
    'nine in ten are not later than',
    'Nine in ten of all starts are no later than this; early ones count as 0.',
  ],
  overLate: [
    'the late ones',
    "The mean of the starts that were not on time under their morning's own grace, in minutes from the target, not from the end of the grace.",
  ],
  perMorning: [
    'all together, per morning',
    'Late minutes of all rooms added up, over the mornings on which there was a start: the tardiness of the suite per day.',
  ],
  ahead: [
    'largest cause shown 20 minutes ahead',
    "Of late starts whose largest cause the record shows, and of which the board's word of then is kept: the share where a holdup that it named 20 minutes or more before the target was that cause.",
  ],
  graces: [
    'on time under other graces',
    "The same starts, as if each morning's grace had been 0, 5, 10 or 15 minutes; late minutes still count from the target.",
  ],
  beside: [
    'what must not suffer',
    'Wheels in to induction: of starts that have both times. Cancelled: of all first cases. The rest: items of the sheets so marked, of 100 that were asked for.',
  ],
  intervals: [
    '95 % intervals',
    "Starts of one morning go together, so mornings are what counts. Shares: Wilson's interval at so many starts as independent ones would be worth. Means: by the variance between mornings (Cochran 1977) and Student's t. Median and nine in ten: Woodruff's way (1952), between two starts in order of lateness. None is shown where too few starts or a single morning can't tell.",
  ],
  shares: [
    'is it getting better',
    'A p-chart: each period beside the share of all of them, with limits three standard errors away by its number of starts. Signs are a point beyond a limit and 8 in a row on one side (Western Electric 1956); a run that goes on is one sign. A marked change begins anew.',
  ],
  minutes: [
    'minutes late by period',
    'Individuals and moving ranges: the mean of the periods, limits 2.66 mean steps away. Minutes are skewed, so a single high point says less than a run. Signs are the four of Western Electric; a run that goes on is one sign.',
  ],
  causes: [
    'where the minutes went',
    'From the start back along what it waited for: each late minute belongs to the step that was being waited for, so that they add up to all minutes late. What the record does not explain stands apart. Per start: over all starts, late or not.',
  ],
  kinds: [
    'kinds of causes',
    'Work: it took longer than its sheet allows. Arrival: who or what comes by itself came later than planned. Person, place, equipment: it waited for one that was elsewhere, shut or in use. Occupied: the room was. Not begun: all was there and nobody had begun. Too little time planned: the list gave the set-up less time than its sheet asks for, whoever does it. By section, the start is all from sending for the patient on.',
  ],
  reasons: [
    'computed and reported',
    'The section with most late minutes by the record, beside the reason that people gave; of starts that were not on time.',
  ],
  lateness: [
    'how starts lie about their targets',
    'Start less target of each start, in bins of 5 minutes; below 0 is early.',
  ],
  trial: [
    'whether to believe the board',
    'The chance of a start on time that the board said at that moment, against what came. The score is the mean of (said less came) squared. Better or worse: less or more of that than always saying the share on time of earlier mornings, or than a curve through the percent done. Intervals by drawing whole mornings anew.',
  ],
  verdict: [
    'the verdict on the board',
    "Too hopeful or too gloomy: mean chance said less share that came, where its 95 % interval by mornings (Student's t) leaves 0 out. Better or worse guide: where the interval of the skill does. Each moment by itself, not corrected for four of them. Not said of fewer than 10 mornings, nor of a guide where fewer than 5 starts were late or on time. By room or service the average is its own, and chances are corrected for all of them (Holm).",
  ],
  rooms: [
    'rooms by weekday',
    'Mean minutes late per start and the share on time of each room on each weekday; cells of fewer than 10 starts show their number only.',
  ],
  days: [
    'causes by weekday',
    "Late minutes of the cause over all starts of that weekday, so that days with more starts don't look worse.",
  ],
  compare: [
    'compare honestly',
    "The first less the second. What can be chance is found by dealing whole mornings anew, or starts within the mornings that both have; chances are corrected for how many comparisons are looked at (Holm). Under 10 starts or 5 mornings it's too few to say.",
  ],
  moved: [
    'minutes by cause of two periods',
    "Late minutes of the cause over all starts of a period, whether they have it or not; the one period less the other. Starts of one morning go together, so the 95 % interval is by the variance between mornings: each period's own (Welch 1947) or that of both together, whichever is larger, and Student's t. Chances are corrected for all of them (Holm). Under 10 starts on a side nothing is shown; under 10 mornings, or of a cause that came on fewer, no interval.",
  ],
  learned: [
    'what the last closing taught',
    "What was measured this morning moves the sheet's own word, which counts as six measurements; the next opening goes a quarter at most from what the morning before went by.",
  ],
} as const satisfies Record<string, readonly [string, string]>;

export type Defined = keyof typeof DEFINED;

/** How a figure is counted, closed until somebody wants to know. */
export function how(key: Defined, title = 'how it is counted'): TemplateResult {
  const [name, words] = DEFINED[key];
  return html`<details class="how">
    <summary aria-label="${title}: ${name}">${title}</summary>
    <p>${words}</p>
  </details>`;
}

/** What the first two printed pages show. */
const ON_TWO_PAGES: readonly Defined[] = [
  'onTime',
  'meanOverAll',
  'median',
  'ninth',
  'overLate',
  'perMorning',
  'ahead',
  'graces',
  'beside',
  'intervals',
  'shares',
  'minutes',
  'causes',
  'lateness',
  'trial',
  'verdict',
];

const IN_APPENDIX: readonly Defined[] = ['kinds', 'days', 'rooms', 'compare', 'moved', 'learned'];

function list(keys: readonly Defined[]): TemplateResult {
  return html`<ul class="defined">
    ${keys.map((key) => {
      const [name, words] = DEFINED[key];
      return html`<li><b>${name}</b>: ${words}</li>`;
    })}
  </ul>`;
}

/** All of them in short, for paper. */
export const printedDefinitions = (): TemplateResult =>
  html`<section class="onlyprint">
    <h2>How it is counted</h2>
    ${list(ON_TWO_PAGES)}
  </section>`;

export const appendixDefinitions = (): TemplateResult =>
  html`<section class="onlyprint appendix">
    <h2>How the appendix is counted</h2>
    ${list(IN_APPENDIX)}
  </section>`;
