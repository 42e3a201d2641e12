import { worded } from '../words/index.ts';
import { html, nothing, svg, type TemplateResult } from 'lit';
import type {
  Causes,
  Lateness,
  Measures,
  Reasons,
  Rule,
  ShareChart,
  Signal,
  Summary,
  ValueChart,
} from './api.ts';
import type { Point } from './chart.ts';
import {
  between,
  marks,
  minutes,
  movedCauses,
  percent,
  roundTop,
  rulesAt,
  sharesWords,
  shareWords,
  signed,
  valuesWords,
} from './model.ts';
import { tableOf } from './tables.ts';

const withheld = (starts: number): TemplateResult =>
  html`<p class="withheld">
    ${starts} ${starts === 1 ? 'start' : 'starts'}: figures of fewer than 10 are not shown.
  </p>`;

/** The measures, the balancing ones beside them. */
export function summaryPanel(summary: Summary): TemplateResult {
  const { measures: m, cost } = summary;
  const f = m.figures;
  if (f === undefined) return withheld(m.starts);
  return html`<div class="summary">
      <div class="headline">
        <strong>${percent(f.onTime.share)}</strong>
        <span>
          of ${m.starts} first cases on ${m.mornings} mornings started on time, under each morning's
          own grace
          <small>
            95 % interval ${between(f.onTime.byMornings)}; if starts of one morning did not go
            together it would be ${between(f.onTime.interval)}
          </small>
        </span>
      </div>
      <dl>
        <div>
          <dt>minutes late, per start</dt>
          <dd>${minutes(f.minutes.meanOverAll)}</dd>
        </div>
        <div>
          <dt>median</dt>
          <dd>${minutes(f.minutes.median)}</dd>
        </div>
        <div>
          <dt>nine in ten are not later than</dt>
          <dd>${minutes(f.minutes.ninth)}</dd>
        </div>
        <div>
          <dt>of the ${f.minutes.late} late ones</dt>
          <dd>${minutes(f.minutes.meanOverLate)}</dd>
        </div>
        <div>
          <dt>all together, per morning</dt>
          <dd>${minutes(f.minutes.perMorning)}</dd>
        </div>
        <div>
          <dt>largest cause shown 20 minutes ahead</dt>
          <dd>
            ${
              f.ahead.shown.n < 10
                ? 'too few'
                : html`${percent(f.ahead.shown.share)}
                    <small
                      >of ${f.ahead.shown.n} late starts;
                      ${between(f.ahead.shown.byMornings)}</small
                    >`
            }
          </dd>
        </div>
      </dl>
    </div>
    ${costWords(cost)}
    <div class="plains">
      <table class="plain">
        <caption>
          On time under other graces
        </caption>
        <thead>
          <tr>
            <th scope="col">grace</th>
            <th scope="col">on time</th>
            <th scope="col">the late ones, minutes from the target</th>
          </tr>
        </thead>
        <tbody>
          ${f.graces.map(
            (g) =>
              html`<tr>
                <th scope="row">${g.minutes} min</th>
                <td>${shareWords(g.onTime)}</td>
                <td>${minutes(g.meanOverLate)}</td>
              </tr>`,
          )}
        </tbody>
      </table>
      ${besidePanel(m)}
    </div>`;
}

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
      b.wheelsInToInductionOf === 0
        ? 'not told'
        : `${minutes(b.wheelsInToInduction)} and ${minutes(b.wheelsInToInductionMedian)} of ${b.wheelsInToInductionOf}`,
    ],
    ['cancelled', shareWords(b.cancelled)],
    ['items left out, of 100 asked for', minutes(b.leftOut)],
    ['open when a step happened all the same, of 100', minutes(b.openAtStep)],
    ['entered together, of 100', minutes(b.together)],
    ['entered over five minutes late, of 100', minutes(b.lateEntries)],
    ['faults found, of 100', minutes(b.faults)],
    ['starts that nobody told', String(m.untold)],
    ['starts known only by a later step, counted at that', String(m.inferred)],
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

function changesOf(phases: readonly { from: number }[]): number[] {
  return phases.map((p) => p.from).filter((from) => from > 0);
}

function signalList(
  labels: readonly string[],
  signals: readonly Signal[],
  rules: readonly Rule[],
): TemplateResult | typeof nothing {
  if (signals.length === 0) return nothing;
  const shown = signals.slice(-6);
  return html`<ul class="signals">
    ${shown.map((s) => {
      const rule = rules.find((r) => r.rule === s.rule);
      const from = labels[s.from] ?? '';
      const to = labels[s.to] ?? '';
      return html`<li>
        ${s.from === s.to ? from : `${from} to ${to}`}: ${rule && worded(rule.words)}
        <small>${rule?.source}</small>
      </li>`;
    })}
    ${
      signals.length > shown.length
        ? html`<li>and ${signals.length - shown.length} earlier</li>`
        : nothing
    }
  </ul>`;
}

/** Shares by period with their limits. */
export function sharesPanel(chart: ShareChart, rules: readonly Rule[]): TemplateResult {
  const mark = marks(chart.points.length, chart.signals);
  const labels = chart.points.map((p) => p.label);
  const points: Point[] = chart.points.map((p, i) => ({
    label: p.label.slice(2),
    value: p.share,
    mark: mark[i] ?? 'plain',
    said:
      p.n === 0
        ? `${p.label}: fewer than 10 starts, not shown`
        : [
            `${p.label}: ${percent(p.share)}, ${p.x} of ${p.n}; limits ${percent(p.lower)} to ${percent(p.upper)}`,
            ...rulesAt(i, chart.signals, rules),
          ].join('; '),
  }));
  const of = (kind: 'lower' | 'upper' | 'plainLower' | 'plainUpper' | 'centre') =>
    chart.points.map((p) => (p.n === 0 ? undefined : p[kind]));
  const adjusted = chart.phases.some((p) => p.adjusted);
  const name = sharesWords(chart);
  return html`<p>${name}</p>
    <sunup-chart
      .points=${points}
      .lines=${[
        { kind: 'centre', values: of('centre') },
        { kind: 'limit', values: of('lower') },
        { kind: 'limit', values: of('upper') },
        ...(adjusted
          ? [
              { kind: 'plain', values: of('plainLower') },
              { kind: 'plain', values: of('plainUpper') },
            ]
          : []),
      ]}
      .changes=${changesOf(chart.phases)}
      .scale=${(v: number): string => percent(v)}
      name="Share on time by period. ${name}"
    ></sunup-chart>
    <p class="key">
      ◆ beyond a limit · ○ part of a run · dashed: limits by the number of
      starts${
        adjusted
          ? '; they vary more than chance alone would have it, so the limits are wider (Laney 2002) and the usual ones are dotted'
          : ''
      }
    </p>
    ${signalList(labels, chart.signals, rules)}
    ${tableOf(
      'Share on time',
      ['from', 'on time', 'starts', 'share', 'lower limit', 'upper limit'],
      chart.points.map((p) =>
        p.n === 0
          ? [p.label, undefined, 'under 10', undefined, undefined, undefined]
          : [p.label, p.x, p.n, percent(p.share, 1), percent(p.lower, 1), percent(p.upper, 1)],
      ),
    )}`;
}

/** Mean minutes late by period. */
export function minutesPanel(chart: ValueChart, rules: readonly Rule[]): TemplateResult {
  const mark = marks(chart.points.length, chart.signals);
  const phaseAt = (i: number) => chart.phases.find((p) => p.from <= i && i < p.to);
  const points: Point[] = chart.points.map((p, i) => ({
    label: p.label.slice(2),
    value: p.value,
    mark: mark[i] ?? 'plain',
    said: [
      `${p.label}: ${minutes(p.value)} minutes late per start; upper limit ${minutes(phaseAt(i)?.upper)}`,
      ...rulesAt(i, chart.signals, rules),
    ].join('; '),
  }));
  const top = roundTop(
    Math.max(1, ...chart.points.map((p) => p.value), ...chart.phases.map((p) => p.upper)),
  );
  const of = (kind: 'centre' | 'lower' | 'upper') => chart.points.map((_, i) => phaseAt(i)?.[kind]);
  const name = valuesWords(chart);
  return html`<p>${name}</p>
    <sunup-chart
      .points=${points}
      .lines=${[
        { kind: 'centre', values: of('centre') },
        { kind: 'limit', values: of('lower') },
        { kind: 'limit', values: of('upper') },
      ]}
      .changes=${changesOf(chart.phases)}
      .scale=${(v: number): string => String(Math.round(v))}
      .top=${top}
      name="Mean minutes late by period. ${name}"
    ></sunup-chart>
    ${signalList(
      chart.points.map((p) => p.label),
      chart.signals,
      rules,
    )}
    ${tableOf(
      'Minutes late',
      ['from', 'minutes per start', 'step from the one before'],
      chart.points.map((p) => [p.label, minutes(p.value), p.range?.toFixed(1)]),
    )}`;
}

/** Minutes by cause, longest first; the running share as a stroke on the same row. */
export function causesPanel(
  { causes }: Causes,
  words: (label: string) => string,
  apart: { before?: Causes | undefined; after?: Causes | undefined } = {},
): TemplateResult {
  if (causes.rows === undefined) return withheld(causes.starts);
  const most = Math.max(1, ...causes.rows.map((r) => r.minutes));
  const rows = causes.rows.slice(0, 12);
  const high = 30;
  return html`<p>
      ${causes.minutes.toFixed(0)} late minutes; ${causes.unexplained.toFixed(0)} of them are not
      explained, ${causes.weakMinutes.toFixed(0)} rest on touches entered late or together.
    </p>
    <svg
      class="causes"
      viewBox="0 0 960 ${rows.length * high + 4}"
      role="img"
      aria-label="Minutes by cause: ${rows
        .map((r) => `${words(r.label)} ${percent(r.share)}`)
        .join(', ')}"
    >
      ${rows.map((r, i) => {
        const y = i * high + 4;
        const running = 250 + 350 * r.running;
        return svg`<text x="240" y=${y + 19} text-anchor="end">${words(r.label)}</text>
          <rect class="cause" x="250" y=${y + 4} width=${(350 * r.minutes) / most} height="18" />
          <rect class="weak" x="250" y=${y + 4} width=${(350 * r.weakMinutes) / most} height="18" />
          <line class="running" x1=${running} x2=${running} y1=${y} y2=${y + 26} />
          <text x="612" y=${y + 19}>${r.minutes.toFixed(0)} min · ${percent(r.share)} · with all
            above ${percent(r.running)}</text>`;
      })}
    </svg>
    <p class="key">
      stroke: running share, from none on the left to all on the right · pale: rests on late or
      entered-together touches
    </p>
    ${tableOf(
      'Minutes by cause',
      ['cause', 'minutes', 'starts', 'share', 'running share', 'on weak touches'],
      causes.rows.map((r) => [
        words(r.label),
        minutes(r.minutes),
        r.starts,
        percent(r.share, 1),
        percent(r.running, 1),
        minutes(r.weakMinutes),
      ]),
    )}
    ${apart.before && apart.after ? movedPanel(apart.before, apart.after, words) : nothing}`;
}

/** Each cause before and after the marked change, what moved most first. */
function movedPanel(
  before: Causes,
  after: Causes,
  words: (label: string) => string,
): TemplateResult | typeof nothing {
  const moved = movedCauses(before.causes, after.causes);
  if (moved === undefined) return nothing;
  return html`${tableOf(
    'Minutes by cause before and after the marked change, per start',
    ['cause', 'before', 'after', 'difference'],
    moved.map((m) => [
      words(m.label),
      m.before.toFixed(2),
      m.after.toFixed(2),
      signed(m.after - m.before, 2),
    ]),
  )}`;
}

export function reasonsPanel(reasons: Reasons, words: (label: string) => string): TemplateResult {
  if (reasons.rows === undefined) {
    return html`<p class="withheld">Fewer than 10 late starts: not shown.</p>`;
  }
  return tableOf(
    'Computed and reported cause side by side',
    ['computed', 'reported', 'late starts', 'agreed by both sides'],
    reasons.rows.map((r) => [words(r.computed), words(r.reported), r.starts, r.agreed]),
  );
}

/** How starts lie about their targets. */
export function latenessPanel(lateness: Lateness): TemplateResult {
  const { bins, quantiles } = lateness;
  if (bins === undefined || quantiles === undefined) return withheld(lateness.starts);
  const name = (bin: { from?: number; to?: number }): string =>
    bin.from === undefined
      ? `over ${-(bin.to ?? 0)} early`
      : bin.to === undefined
        ? `${bin.from} and more`
        : `${bin.from} to ${bin.to}`;
  const points: Point[] = bins.map((bin) => ({
    label: bin.from === undefined ? '' : String(bin.from),
    value: bin.starts,
    mark: 'plain',
    said: `${name(bin)} minutes: ${bin.starts} starts, ${percent(bin.starts / lateness.starts)}`,
  }));
  const [tenth, , half, , ninth] = quantiles;
  const words = `One in ten starts before ${minutes(tenth)} minutes, half before ${minutes(half)}, nine in ten before ${minutes(ninth)}; below 0 is early.`;
  return html`<p>${words}</p>
    <sunup-chart
      .points=${points}
      .barsLateFrom=${bins.findIndex((bin) => (bin.from ?? -1) >= 0)}
      .top=${roundTop(Math.max(...bins.map((bin) => bin.starts)))}
      .scale=${(v: number): string => String(Math.round(v))}
      name="Starts by minutes after the target. ${words}"
    ></sunup-chart>
    ${tableOf(
      'Minutes after the target',
      ['minutes', 'starts'],
      bins.map((bin) => [name(bin), bin.starts]),
    )}`;
}
