import { html, nothing, type TemplateResult } from 'lit';
import type { Closing, Hands, Learned } from './api.ts';
import { minutes } from './model.ts';
import { how } from './defined.ts';
import { dataTable, filesOf } from './tables.ts';

const handsWords = (hands: Hands): string => `${minutes(hands.usual)} (${minutes(hands.oneInTen)})`;

/** Changes of less than a tenth of a minute are none. */
const moved = ({ before, now }: Learned): boolean =>
  Math.abs(now.usual - before.usual) >= 0.1 || Math.abs(now.oneInTen - before.oneInTen) >= 0.1;

/** Why an item stands where it does, or why not. */
function why(item: Learned): string {
  const measured = `${item.measured} measured on ${item.mornings} ${
    item.mornings === 1 ? 'morning' : 'mornings'
  }`;
  const left =
    item.unbelieved === 0 ? '' : `; ${item.unbelieved} too long or too short to be believed`;
  const implied =
    item.implied === 0 ? '' : `; ${item.implied} with a beginning that nobody touched`;
  switch (item.weight) {
    case 'NOTHING':
      return `nothing measured${left}: the sheet's word stands`;
    case 'FEW':
      return `${measured}: too few, the sheet's word counts as 6 and still weighs more${implied}${left}`;
    case 'ENOUGH':
      return `${measured}; the sheet's word counts as 6${implied}${left}`;
  }
}

const seconds = (ms: number): string =>
  ms < 60_000 ? `${Math.round(ms / 1000)} s` : `${minutes(ms / 60_000)} min`;

function delay({ delay }: Learned): string {
  if (delay === undefined || delay.n === 0) return 'none told';
  if (delay.usualMs === undefined || delay.oneInTenMs === undefined) {
    return `${delay.n} told: too few to say`;
  }
  return `${seconds(delay.usualMs)} (${seconds(delay.oneInTenMs)}), of ${delay.n}`;
}

const TOLD_HEAD = ['what', 'before this closing', 'now', 'why'] as const;

const HEAD = [
  'item',
  'the sheet says',
  'before this closing',
  'now',
  'the next opening goes by',
  'this morning taught',
  'why, or why not',
  'told so long after',
] as const;

/** What the next opening goes by, as far as the site lets it: a quarter from one to the next. */
function next({ next }: Learned, closing: Closing): string {
  return closing.used && next !== undefined ? handsWords(next) : 'the sheet';
}

const per100 = (share: number): string => String(Math.round(1000 * share) / 10);

/** How the next opening takes people to report. */
export function reportingWords(closing: Closing): string {
  const by = closing.used ? closing.next?.reporting : undefined;
  if (by === undefined) return 'How people report it takes by first settings.';
  const late =
    by.delayOneInTenMs === undefined
      ? 'words come at once'
      : `one word in ten comes over ${seconds(by.delayOneInTenMs)} late`;
  return `How people report it takes from here: of 100 rooms ${per100(by.eachItem)} tell each item, ${per100(by.eachSection)} each section, ${per100(by.atEnd)} once at the end and ${per100(by.never)} nothing; of 100 items in hand ${per100(by.forgotten)} are done and nobody said so; ${late}.`;
}

const row =
  (closing: Closing) =>
  (item: Learned): (string | number)[] => [
    item.name,
    handsWords(item.sheet),
    handsWords(item.before),
    handsWords(item.now),
    next(item, closing),
    item.taught,
    why(item),
    delay(item),
  ];

/** Whether forecasts go by it, and what else can be done. */
function goesBy(closing: Closing): string {
  if (!closing.used) {
    return "Forecasts go by the sheets: the site's file says learnDurations false. To let them go by what was learned, take that out, or put these minutes into the suite's own sheets.";
  }
  const n = closing.next?.items.length ?? 0;
  const how = n === 0 ? 'no duration yet' : n === 1 ? '1 duration' : `${n} durations`;
  return `The next morning that is opened goes by ${how} of these, all else by its sheet: those that were measured six times or more, each at most a quarter from what the morning before went by. Where that is not wanted set learnDurations to false in the site's file.`;
}

/** What was learned at the last closing: old against new, from how many mornings and why. */
export function learnedPanel(closing: Closing): TemplateResult {
  if (closing.closed === undefined) {
    return html`<p class="withheld">No morning is closed yet: nothing is learned.</p>`;
  }
  const changed = closing.items.filter(moved);
  const rest = closing.items.filter((item) => !moved(item));
  const told = closing.changes.map((c) => [c.what, c.before, c.after, c.why]);
  return html`<p>
      The morning of ${closing.closed} was the last that was closed; ${closing.mornings}
      ${closing.mornings === 1 ? 'morning teaches' : 'mornings teach'}. It moved ${changed.length}
      of ${closing.items.length} durations by a tenth of a minute or more. Minutes are the usual
      ones, in brackets what one in ten takes longer than.
    </p>
    ${
      changed.length === 0
        ? nothing
        : dataTable('Durations that the last closing moved', HEAD, changed.map(row(closing)))
    }
    ${
      closing.changes.length === 0
        ? nothing
        : dataTable('How the board is told, as the last closing moved it', TOLD_HEAD, told)
    }
    ${how('learned')}
    ${filesOf('What the last closing taught', [...HEAD], [...changed, ...rest].map(row(closing)))}
    ${
      closing.changes.length === 0
        ? nothing
        : filesOf('How the board is told', [...TOLD_HEAD], told)
    }
    <details class="numbers">
      <summary>${rest.length} durations that it did not move</summary>
      ${dataTable('Durations that the last closing did not move', HEAD, rest.map(row(closing)))}
    </details>
    <p class="key">${goesBy(closing)} ${reportingWords(closing)}</p>`;
}
