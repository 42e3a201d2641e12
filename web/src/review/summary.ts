import { html, nothing, type TemplateResult } from 'lit';
import type { Figures, Interval, Measures, Share, Summary } from './api.ts';
import { DEFINED, type Defined, how } from './defined.ts';
import { between, minutes, percent, shareWords, span } from './model.ts';
import { type Cell, tableOf } from './tables.ts';

export const withheld = (starts: number): TemplateResult =>
  html`<p class="withheld">
    ${starts} ${starts === 1 ? 'start' : 'starts'}: figures of fewer than 10 are not shown.
  </p>`;

/** How many starts a share or a comparison leaves out, if any. */
export const leftOut = (unjudged: number): TemplateResult | typeof nothing =>
  unjudged === 0
    ? nothing
    : html`<p class="dim">
        Left out: ${unjudged} ${unjudged === 1 ? 'start' : 'starts'} that nobody told and that may
        have been in time.
      </p>`;

function figure(
  key: Defined,
  name: string,
  value: number | undefined,
  interval: Interval | undefined,
): TemplateResult {
  return html`<div>
    <dt>${name}</dt>
    <dd>
      ${enough(value)}
      <small>${interval === undefined ? 'no interval: too few' : span(interval)}</small>
      ${how(key)}
    </dd>
  </div>`;
}

/** The measures, the balancing ones beside them. */
export function summaryPanel(summary: Summary): TemplateResult {
  const { measures: m, cost } = summary;
  const f = m.figures;
  if (f === undefined) return withheld(m.starts);
  const by = f.minutes.intervals ?? {};
  return html`<div class="summary">
      <div>
        <div class="headline">${onTimeWords(m, f)}</div>
        ${how('onTime')} ${how('intervals', 'how intervals are made')}
      </div>
      <dl>
        ${figure('meanOverAll', 'minutes late, per start', f.minutes.meanOverAll, by.meanOverAll)}
        ${figure('median', 'median minutes late', f.minutes.median, by.median)}
        ${figure('ninth', 'nine in ten are not later than, minutes', f.minutes.ninth, by.ninth)}
        ${figure(
          'overLate',
          `minutes late, of the ${f.minutes.late === undefined ? '' : `${f.minutes.late} `}late ones`,
          f.minutes.meanOverLate,
          by.meanOverLate,
        )}
        ${figure('perMorning', 'minutes late, all rooms, per morning', f.minutes.perMorning, by.perMorning)}
        <div>
          <dt>largest cause shown 20 minutes ahead</dt>
          <dd>
            ${
              f.ahead === undefined
                ? 'too few'
                : html`${percent(f.ahead.shown.share)}
                    <small
                      >of ${f.ahead.shown.n} late starts;
                      ${between(f.ahead.shown.byMornings)}</small
                    >`
            }
            ${how('ahead')}
          </dd>
        </div>
      </dl>
    </div>
    ${costWords(cost)}
    <div class="plains">
      <div>
        <table class="plain graces">
          <caption>
            On time under other graces
          </caption>
          <thead>
            <tr>
              <th scope="col">grace</th>
              <th scope="col">on time (95 % interval)</th>
              <th scope="col">minutes late, the late ones</th>
            </tr>
          </thead>
          <tbody>
            ${f.graces.map(
              (g) =>
                html`<tr>
                  <th scope="row">${g.minutes} min</th>
                  <td>${graceWords(g.onTime, m.starts - g.unjudged)}</td>
                  <td>${enough(g.meanOverLate)}</td>
                </tr>`,
            )}
          </tbody>
        </table>
        ${how('graces')}
      </div>
      <div>${besidePanel(m)} ${how('beside')}</div>
    </div>
    ${tableOf('All measures', MEASURES_HEAD, measureRows(m, f))}`;
}

/** The share that heads the page, or why there is none. */
function onTimeWords(m: Measures, f: Figures): TemplateResult {
  const left = (words: string): TemplateResult | typeof nothing =>
    f.unjudged > 0 ? html`; ${f.unjudged} more that nobody told ${words}` : nothing;
  if (f.onTime === undefined) {
    return html`<strong>not shown</strong>
      <span>
        of ${m.starts - f.unjudged} first cases it is known whether they started on time: figures of
        fewer than 10 are not shown${left('may have been in time')}
      </span>`;
  }
  return html`<strong>${percent(f.onTime.share)}</strong>
    <span>
      of ${f.onTime.n} first cases on ${m.mornings} mornings started on time, under each morning's
      own grace${left('may have been in time and are left out')}
      <small>
        95 % interval ${between(f.onTime.byMornings)}; if starts of one morning did not go together
        it would be ${between(f.onTime.interval)}
      </small>
    </span>`;
}

/** @param known of so many starts it is known */
export const graceWords = (s: Share | undefined, known: number): string =>
  s === undefined
    ? `not shown: known of ${known}`
    : `${percent(s.share)} (${between(s.byMornings)}), ${s.x} of ${s.n}`;

/** What is a mean of fewer than 10 starts is not there. */
const enough = (value: number | undefined): string =>
  value === undefined ? 'too few' : minutes(value);

const MEASURES_HEAD = [
  'measure',
  'value',
  'unit',
  'interval from',
  'interval to',
  'of',
  'how it is counted',
] as const;

/** Each measure with its 95 % interval and its definition, as the file has it. */
export function measureRows(m: Measures, f: Figures): Cell[][] {
  const by = f.minutes.intervals ?? {};
  const late = (
    key: Defined,
    value: number | undefined,
    interval: Interval | undefined,
    of: number | undefined,
  ): Cell[] => [
    DEFINED[key][0],
    value?.toFixed(2),
    'minutes',
    interval?.lower.toFixed(2),
    interval?.upper.toFixed(2),
    of,
    DEFINED[key][1],
  ];
  // Without what is withheld, and still with how many starts it is known of.
  const share = (name: string, s: Share | undefined, words: string, known?: number): Cell[] => [
    name,
    hundredths(s?.share),
    '%',
    hundredths(s?.byMornings?.lower),
    hundredths(s?.byMornings?.upper),
    s?.n ?? known,
    words,
  ];
  const b = f.beside;
  const beside = (name: string, value: number | undefined, unit: string, of?: number): Cell[] => [
    name,
    value?.toFixed(2),
    unit,
    undefined,
    undefined,
    of,
    DEFINED.beside[1],
  ];
  const ofItems = (name: string, value: number): Cell[] =>
    beside(name, value, 'of 100 items asked for');
  return [
    share('on time', f.onTime, DEFINED.onTime[1], m.starts - f.unjudged),
    late('meanOverAll', f.minutes.meanOverAll, by.meanOverAll, m.starts),
    late('median', f.minutes.median, by.median, m.starts),
    late('ninth', f.minutes.ninth, by.ninth, m.starts),
    late('overLate', f.minutes.meanOverLate, by.meanOverLate, f.minutes.late),
    late('perMorning', f.minutes.perMorning, by.perMorning, m.mornings),
    share(DEFINED.ahead[0], f.ahead?.shown, DEFINED.ahead[1]),
    ...f.graces.map((g) =>
      share(
        `on time within ${g.minutes} minutes`,
        g.onTime,
        DEFINED.graces[1],
        m.starts - g.unjudged,
      ),
    ),
    beside(
      'wheels in to induction, mean',
      b.wheelsInToInduction,
      'minutes',
      b.wheelsInToInductionOf,
    ),
    beside(
      'wheels in to induction, median',
      b.wheelsInToInductionMedian,
      'minutes',
      b.wheelsInToInductionOf,
    ),
    share('cancelled', b.cancelled, DEFINED.beside[1]),
    ofItems('items left out', b.leftOut),
    ofItems('open when a step happened all the same', b.openAtStep),
    ofItems('entered together', b.together),
    ofItems('entered over five minutes late', b.lateEntries),
    ofItems('faults found', b.faults),
  ];
}

const hundredths = (share: number | undefined): string | undefined =>
  share === undefined ? undefined : (100 * share).toFixed(1);

function costWords(cost: Summary['cost']): TemplateResult | typeof nothing {
  if (cost === undefined) return nothing;
  return html`<p>
    ${cost.minutes.toFixed(0)} late minutes at the site's own price come to
    <strong>${cost.amount.toFixed(2)} ${cost.price.currency}</strong>
    (${cost.price.source}). That is no saving: minutes won in the morning need not shorten the day.
  </p>`;
}

function besidePanel(m: Measures): TemplateResult {
  const b = m.figures?.beside;
  if (b === undefined) return html``;
  const rows: [string, string][] = [
    [
      'wheels in to induction, mean and median minutes',
      b.wheelsInToInduction === undefined
        ? `too few: told of ${b.wheelsInToInductionOf}`
        : `${minutes(b.wheelsInToInduction)} and ${minutes(b.wheelsInToInductionMedian)} of ${b.wheelsInToInductionOf}`,
    ],
    ['cancelled', shareWords(b.cancelled)],
    ['items left out, of 100 asked for', minutes(b.leftOut)],
    ['open when a step happened all the same, of 100', minutes(b.openAtStep)],
    ['entered together, of 100', minutes(b.together)],
    ['entered over five minutes late, of 100', minutes(b.lateEntries)],
    ['faults found, of 100', minutes(b.faults)],
    ['starts that nobody told', String(m.untold)],
    [
      'starts known only by a later step: their minutes are the most that they can be',
      String(m.inferred),
    ],
  ];
  return html`<table class="plain">
    <caption>
      What must not suffer while starts get earlier
    </caption>
    <tbody>
      ${rows.map(
        ([name, value]) =>
          html`<tr>
            <th scope="row">${name}</th>
            <td>${value}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}
