import { html, nothing, type TemplateResult } from 'lit';
import type { CausesCompared, Difference, Side } from './api.ts';
import { differsMark, reach } from './belief.ts';
import { how } from './defined.ts';
import {
  chanceWords,
  differenceWords,
  disagreeWords,
  minutes,
  type Named,
  signed,
  verdictWords,
} from './model.ts';
import { type Cell, filesOf } from './tables.ts';

type Row = NonNullable<CausesCompared['causes']['rows']>[number];

/** Rows that are shown; all of them are in the files. */
const SHOWN = 12;

const sideWords = ({ name, starts, mornings, perStart }: Side): string =>
  `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${starts} starts on ${mornings} mornings, ${minutes(perStart)} minutes late per start`;

/** "drugs +3.1 min a start (2.0 to 4.2)". */
const moved = (row: Row, name: string): string => {
  const { value, interval } = row.difference;
  if (value === undefined || interval === undefined) return name;
  return `${name} ${signed(value)} min a start (${signed(interval.lower)} to ${signed(interval.upper)})`;
};

/** What the one period cost more than the other, and where. */
export function movedWords(
  { all, rows = [] }: CausesCompared['causes'],
  nameOf: (label: string) => string,
): string {
  const differ = rows.filter((r) => r.difference.verdict === 'DIFFERS');
  const list = (sign: 1 | -1): string =>
    differ
      .filter((r) => (r.difference.value ?? 0) * sign > 0)
      .map((r) => moved(r, nameOf(r.label)))
      .join('; ');
  const [more, less] = [list(1), list(-1)];
  const sum =
    all?.value === undefined
      ? 'Too few mornings for intervals: 10 on each side are needed.'
      : `All minutes late: ${differenceWords(all, 1)} a start.`;
  const found = [
    more === '' ? '' : ` It cost more by ${more}.`,
    less === '' ? '' : ` It cost less by ${less}.`,
  ].join('');
  const judged = judgedOf(rows);
  const none =
    all?.value === undefined || differ.length > 0
      ? ''
      : judged === 0
        ? ' Each cause came on too few mornings to say.'
        : ` No one of ${judged} causes differs more than chance may make one of so many.`;
  return `${sum}${found}${none}`;
}

/** How many came on enough mornings to be judged, and are corrected for. */
const judgedOf = (rows: readonly { readonly difference: Difference }[]): number =>
  rows.filter((r) => r.difference.p !== undefined).length;

const HEAD = [
  'cause',
  'minutes per start, the one',
  'minutes per start, the other',
  'difference',
  'from',
  'to',
  'p',
  'verdict',
] as const;

/** Each cause of two periods, per start, what moved most first. */
export function causesComparedPanel(
  { causes, names }: CausesCompared,
  words: (label: string) => string,
): TemplateResult {
  const { first, second, rows } = causes;
  if (rows === undefined) {
    return html`<p class="withheld">
      ${first.name} has ${first.starts} starts, ${second.name} ${second.starts}: causes of fewer
      than 10 on a side are not shown.
    </p>`;
  }
  const judged = judgedOf(rows);
  const nameOf = (label: string): string => names?.[label] ?? words(label);
  const shown = rows.slice(0, SHOWN);
  const widest = Math.max(
    0.1,
    ...shown.flatMap(({ difference: { interval: i } }) =>
      i === undefined ? [] : [Math.abs(i.lower), Math.abs(i.upper)],
    ),
  );
  const title = `Minutes by cause, ${first.name} less ${second.name}`;
  return html`<h3>${title}</h3>
    <p>${sideWords(first)}. ${sideWords(second)}. <b>${movedWords(causes, nameOf)}</b></p>
    <div class="scroll" tabindex="0" role="region" aria-label=${title}>
      <table class="compare">
        <thead>
          <tr>
            <th scope="col">cause</th>
            <th scope="col">the one</th>
            <th scope="col">the other</th>
            <th scope="col" colspan="2">difference, minutes a start</th>
          </tr>
        </thead>
        <tbody>
          ${shown.map(
            (r) =>
              html`<tr>
                <th scope="row">${nameOf(r.label)}</th>
                <td>${r.first.toFixed(2)}</td>
                <td>${r.second.toFixed(2)}</td>
                <td>${reach(r.difference, widest, -1)}</td>
                <td>
                  ${differenceWords(r.difference, 1)}
                  <strong class=${differsMark(r.difference, -1)}
                    >${verdictWords(r.difference)}</strong
                  >
                  ${
                    r.difference.adjusted === undefined
                      ? nothing
                      : html`<small>${chanceWords(r.difference.adjusted)}</small>`
                  }
                </td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    <p class="key">
      Strokes are 95 % intervals about the line of no difference, up to ${minutes(widest)}
      minutes${
        judged === 0 ? '' : `; chances are corrected for ${judged} causes (Holm)`
      }${rows.length > SHOWN ? `; the ${SHOWN} that moved most, all in the files` : ''}.
    </p>
    ${disagreeWords(rows.map((r): Named => [nameOf(r.label), r.difference])).map(
      (words) => html`<p class="disagree">${words}</p>`,
    )}
    ${how('moved')} ${filesOf(title, HEAD, causeRows(rows, nameOf))}`;
}

/** The same as the file has it. */
export function causeRows(rows: readonly Row[], nameOf: (label: string) => string): Cell[][] {
  return rows.map(({ label, first, second, difference: d }) => [
    nameOf(label),
    first.toFixed(3),
    second.toFixed(3),
    // A plain minus: the files' figures are to be added up.
    (first - second).toFixed(3),
    d.interval?.lower.toFixed(3),
    d.interval?.upper.toFixed(3),
    d.adjusted?.toFixed(4),
    verdictWords(d),
  ]);
}
