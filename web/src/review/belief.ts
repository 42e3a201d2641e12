import { html, nothing, svg, type TemplateResult } from 'lit';
import type { Comparison, Difference, Score, Skill, Trial } from './api.ts';
import {
  between,
  chanceWords,
  differenceWords,
  disagreeWords,
  groupWords,
  inOrder,
  minutes,
  type Named,
  percent,
  verdictWords,
} from './model.ts';
import { how } from './defined.ts';
import { type Cell, filesOf, tableOf } from './tables.ts';

const SIDE = 300;
const EDGE = 40;

/** What the board said against what came: on the diagonal it is right. */
function curve(score: Score): TemplateResult {
  const at = (share: number): number => EDGE + share * SIDE;
  const up = (share: number): number => 10 + (1 - share) * SIDE;
  const shown = score.curve.filter((bin) => bin.came !== undefined && bin.said !== undefined);
  const most = Math.max(1, ...shown.map((bin) => bin.n));
  return html`<svg
    class="curve"
    viewBox="0 0 ${SIDE + EDGE + 24} ${SIDE + 54}"
    role="img"
    aria-label="Calibration: ${shown
      .map((bin) => `said ${percent(bin.said)}, came ${percent(bin.came)}`)
      .join('; ')}"
  >
    ${[0, 0.25, 0.5, 0.75, 1].map(
      (v) =>
        svg`<line class="grid" x1=${at(0)} x2=${at(1)} y1=${up(v)} y2=${up(v)} />
        <text x=${EDGE - 6} y=${up(v) + 5} text-anchor="end">${v * 100}</text>
        <text x=${at(v)} y=${SIDE + 28} text-anchor="middle">${v * 100}</text>`,
    )}
    <line class="right" x1=${at(0)} y1=${up(0)} x2=${at(1)} y2=${up(1)} />
    ${shown.map((bin) => {
      const x = at(bin.said ?? 0);
      const size = 3 + 6 * Math.sqrt(bin.n / most);
      return svg`${
        bin.interval === undefined
          ? nothing
          : svg`<line class="reach" x1=${x} x2=${x} y1=${up(bin.interval.lower)}
              y2=${up(bin.interval.upper)} />`
      }<circle cx=${x} cy=${up(bin.came ?? 0)} r=${size} />`;
    })}
    <text x=${at(0.5)} y=${SIDE + 48} text-anchor="middle">said, in 100</text>
    <text transform="translate(12 ${up(0.5)}) rotate(-90)" text-anchor="middle">came, in 100</text>
  </svg>`;
}

const betterWords = (skill: number): string =>
  `${percent(Math.abs(skill))} ${skill < 0 ? 'worse' : 'better'}`;

/** "3 % worse (21 % worse to 12 % better), on 420 forecasts". */
export const skillWords = (skill: Skill | undefined): string =>
  skill === undefined
    ? 'too few to say'
    : `${betterWords(skill.skill)}${
        skill.interval === undefined
          ? ''
          : ` (${betterWords(skill.interval.lower)} to ${betterWords(skill.interval.upper)})`
      }, on ${skill.n} forecasts`;

function scoreWords(name: string, score: Score | undefined): (string | number)[] {
  return score === undefined
    ? [name, 'fewer than 10', '–', '–', '–', '–']
    : [
        name,
        score.n,
        score.brier.score.toFixed(3),
        score.brier.reliability.toFixed(3),
        score.brier.resolution.toFixed(3),
        score.brier.uncertainty.toFixed(3),
      ];
}

/** What a set of forecasts came to. */
function figuresOf(score: Score, minutesBefore: number, table: string): TemplateResult {
  const z = score.spiegelhalter;
  return html`<div class="trial">
      ${curve(score)}
      <div>
        <p>
          ${score.n} forecasts of ${score.mornings} mornings, ${minutesBefore} minutes before the
          target. A point on the line was said as it came.
        </p>
        <dl>
          <div>
            <dt>mean squared error (Brier), 0 is perfect, “one half” always gets 0.25</dt>
            <dd>
              ${score.brier.score.toFixed(3)}
              ${
                score.brierInterval === undefined
                  ? nothing
                  : html`<small
                      >${score.brierInterval.lower.toFixed(3)} to
                      ${score.brierInterval.upper.toFixed(3)}</small
                    >`
              }
            </dd>
          </div>
          <div>
            <dt>against the site's average so far</dt>
            <dd>${skillWords(score.overAverage)}</dd>
          </div>
          <div>
            <dt>against percent done</dt>
            <dd>${skillWords(score.overPercentDone)}</dd>
          </div>
          <div>
            <dt>its first holdup was what cost most</dt>
            <dd>
              ${
                score.named.share === undefined
                  ? 'too few to say'
                  : html`${percent(score.named.share)} of ${score.named.n} late starts
                      <small>${between(score.named.interval)}</small>`
              }
            </dd>
          </div>
          <div>
            <dt>are the chances said right? (Spiegelhalter's test, z)</dt>
            <dd>
              ${z === undefined ? 'none' : `${Math.abs(z) > 1.96 ? 'no' : 'nothing against it'} (${z.toFixed(1)})`}
            </dd>
          </div>
        </dl>
      </div>
    </div>
    ${tableOf(
      table,
      ['said', 'forecasts', 'mean said', 'came', '95 % interval'],
      score.curve.map((bin) => [
        `${percent(bin.from)} to ${percent(bin.to)}`,
        bin.n,
        bin.said === undefined ? undefined : percent(bin.said),
        bin.came === undefined ? 'under 10' : percent(bin.came),
        between(bin.interval),
      ]),
    )}`;
}

/** Why there is nothing to judge, and what would change that. */
export function fewWords({ forecasts, minutesBefore }: Trial): string {
  return forecasts === 0
    ? `Nothing to judge the board by yet: of these starts none has a forecast that the board recorded ${minutesBefore} minutes before the target. It records one for each room while it runs; history that was brought from a file has none.`
    : `Too few to judge the board by: of these starts ${forecasts} ${forecasts === 1 ? 'has' : 'have'} a forecast that the board recorded ${minutesBefore} minutes before the target. Figures of fewer than 10 are not shown.`;
}

/** Whether to believe the board: by what it said then; today's model on other mornings stands apart. */
export function trialPanel(trial: Trial): TemplateResult {
  const { all, replayed, minutesBefore } = trial;
  return html`${how('trial')}
  ${
    all === undefined
      ? html`<p class="withheld">${fewWords(trial)}</p>`
      : html`${figuresOf(all, minutesBefore, 'Calibration')}
          ${tableOf(
            'Scores, by whether the desk acted afterwards',
            ['forecasts', 'how many', 'score', 'reliability', 'resolution', 'uncertainty'],
            [
              scoreWords('all', trial.all),
              scoreWords('the desk acted', trial.deskActed),
              scoreWords('it did not', trial.deskDidNot),
            ],
          )}
          <p class="key">
            Where the desk acted, what came is no longer what was forecast; neither half alone is
            fair.
          </p>`
  }
  ${
    trial.recomputed === 0
      ? nothing
      : html`<details class="replayed">
          <summary>
            ${trial.recomputed} other starts, from before the board recorded its forecasts: what
            today's model would have said of them
          </summary>
          ${
            replayed === undefined
              ? html`<p class="withheld">Fewer than 10 are not shown.</p>`
              : figuresOf(replayed, minutesBefore, "Calibration of today's model")
          }
        </details>`
  }`;
}

/**
 * How a difference is marked: only one to the worse in the colour of what is late.
 *
 * @param better the sign of what is better: 1 for shares on time, -1 for minutes late
 */
export function differsMark({ verdict, value }: Difference, better: 1 | -1): string {
  if (verdict !== 'DIFFERS') return 'quiet';
  return (value ?? 0) * better < 0 ? 'differs worse' : 'differs';
}

/** A difference as a stroke about the line of none. */
export function reach(difference: Difference, most: number, better: 1 | -1): TemplateResult {
  const { value, interval } = difference;
  if (value === undefined || interval === undefined) return html`<span class="few">–</span>`;
  const at = (v: number): number => 80 + (Math.max(-most, Math.min(most, v)) / most) * 76;
  return html`<svg class="reach" viewBox="0 0 160 20" aria-hidden="true">
    <line class="none" x1="80" x2="80" y1="0" y2="20" />
    <line x1=${at(interval.lower)} x2=${at(interval.upper)} y1="10" y2="10" />
    <circle class=${differsMark(difference, better)} cx=${at(value)} cy="10" r="5" />
  </svg>`;
}

const COMPARED_HEAD = [
  'compared',
  'less',
  'starts',
  'starts of the other',
  'mornings',
  'dealt',
  'on time, points of a hundred',
  'from',
  'to',
  'p',
  'verdict',
  'minutes late per start',
  'minutes from',
  'minutes to',
  'p of minutes',
  'verdict of minutes',
] as const;

/** The same as the file has it. */
export function comparedRows(comparisons: readonly Comparison[]): Cell[][] {
  const cells = (d: Difference, scale: number): Cell[] => [
    d.value === undefined ? undefined : (d.value * scale).toFixed(2),
    d.interval === undefined ? undefined : (d.interval.lower * scale).toFixed(2),
    d.interval === undefined ? undefined : (d.interval.upper * scale).toFixed(2),
    d.adjusted?.toFixed(4),
    verdictWords(d),
  ];
  return [...comparisons]
    .sort(inOrder)
    .map((c) => [
      groupWords(c.first),
      c.second,
      c.firstStarts,
      c.secondStarts,
      c.mornings,
      c.design === 'BETWEEN_MORNINGS' ? 'whole mornings' : 'starts within mornings',
      ...cells(c.onTime, 100),
      ...cells(c.minutes, 1),
    ]);
}

/** Groups against the rest, or one period against another. */
export function comparePanel(comparisons: readonly Comparison[]): TemplateResult {
  if (comparisons.length === 0) return html`<p class="withheld">Nothing to compare.</p>`;
  const widest = (of: (c: Comparison) => Difference): number =>
    Math.max(
      0.01,
      ...comparisons.flatMap((c) => {
        const i = of(c).interval;
        return i === undefined ? [] : [Math.abs(i.lower), Math.abs(i.upper)];
      }),
    );
  const shares = widest((c) => c.onTime);
  const late = widest((c) => c.minutes);
  const cells = (d: Difference, most: number, scale: number, better: 1 | -1): TemplateResult =>
    html`<td>${reach(d, most, better)}</td>
      <td>
        ${differenceWords(d, scale)}
        <strong class=${differsMark(d, better)}>${verdictWords(d)}</strong>
        ${d.adjusted === undefined ? nothing : html`<small>${chanceWords(d.adjusted)}</small>`}
      </td>`;
  return html`<p>
      Whole mornings are dealt anew, as starts of one morning go together; chances are corrected for
      ${comparisons.length === 1 ? 'both figures' : `all ${comparisons.length} comparisons`} (Holm).
    </p>
    <div class="scroll" tabindex="0" role="region" aria-label="Comparisons">
      <table class="compare">
        <thead>
          <tr>
            <th scope="col">compared</th>
            <th scope="col">starts</th>
            <th scope="col" colspan="2">on time, points of a hundred</th>
            <th scope="col" colspan="2">minutes late per start</th>
          </tr>
        </thead>
        <tbody>
          ${[...comparisons].sort(inOrder).map(
            (c) =>
              html`<tr>
                <th scope="row">${groupWords(c.first)} <small>less ${c.second}</small></th>
                <td>${c.firstStarts} and ${c.secondStarts}</td>
                ${cells(c.onTime, shares, 100, 1)} ${cells(c.minutes, late, 1, -1)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    <p class="key">
      Strokes are 95 % intervals about the line of no difference, up to ${minutes(shares * 100)}
      points and ${minutes(late)} minutes.
    </p>
    ${disagreeWords(
      [...comparisons].sort(inOrder).flatMap((c): Named[] => [
        [`${groupWords(c.first)} (on time)`, c.onTime],
        [`${groupWords(c.first)} (minutes)`, c.minutes],
      ]),
    ).map((words) => html`<p class="disagree">${words}</p>`)}
    ${how('compare')} ${filesOf('Comparisons', COMPARED_HEAD, comparedRows(comparisons))}`;
}
