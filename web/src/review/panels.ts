import { worded } from '../words/index.ts';
import { html, nothing, svg, type TemplateResult } from 'lit';
import type {
  CauseRow,
  Causes,
  CausesApart,
  Lateness,
  Reasons,
  Rule,
  ShareChart,
  Signal,
  ValueChart,
} from './api.ts';
import type { Point } from './chart.ts';
import {
  dispersionWords,
  marks,
  minutes,
  percent,
  roundTop,
  rulesAt,
  sharesWords,
  signsOf,
  valuesWords,
} from './model.ts';
import { dataTable, filesOf, tableOf } from './tables.ts';
import { how } from './defined.ts';
import { withheld } from './summary.ts';

function changesOf(phases: readonly { from: number }[]): number[] {
  return phases.map((p) => p.from).filter((from) => from > 0);
}

function signalList(
  labels: readonly string[],
  signals: readonly Signal[],
  rules: readonly Rule[],
): TemplateResult | typeof nothing {
  const signs = signsOf(signals);
  if (signs.length === 0) return nothing;
  const shown = signs.slice(-6);
  const dates = ({ from, to }: { from: number; to: number }): string =>
    from === to ? (labels[from] ?? '') : `${labels[from] ?? ''} to ${labels[to] ?? ''}`;
  return html`<ul class="signals">
    ${shown.map(
      (sign) =>
        html`<li>
          ${dates(sign)}:
          ${sign.rules.map((met, i) => {
            const rule = rules.find((r) => r.rule === met.rule);
            const own = dates(met) === dates(sign) ? '' : ` (${dates(met)})`;
            return html`${i === 0 ? '' : '; '}${rule && worded(rule.words)}${own}
              <small>${rule?.source}</small>`;
          })}
        </li>`,
    )}
    ${
      signs.length > shown.length
        ? html`<li>and ${signs.length - shown.length} earlier</li>`
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
      starts${adjusted ? '; dotted: the limits before they were made wider' : ''}
    </p>
    ${dispersionWords(chart).map((words) => html`<p class="test">${words}</p>`)} ${how('shares')}
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
    ${how('minutes')}
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
  { causes, names }: Causes,
  words: (label: string) => string,
): TemplateResult {
  if (causes.rows === undefined) return withheld(causes.starts);
  const most = Math.max(1, ...causes.rows.map((r) => r.minutes));
  const rows = causes.rows.slice(0, 12);
  const nameOf = (r: CauseRow): string => names?.[r.label] ?? words(r.label);
  const labels = rows.map((r) => inLines(nameOf(r)));
  const high = labels.some((lines) => lines.length > 1) ? 38 : 30;
  return html`<p>
      ${causes.minutes?.toFixed(0)} late minutes; ${causes.unexplained?.toFixed(0)} of them are not
      explained, ${causes.weakMinutes?.toFixed(0)} rest on touches entered late or together.
    </p>
    <svg
      class="causes"
      viewBox="0 0 960 ${rows.length * high + 4}"
      role="img"
      aria-label="Minutes by cause: ${rows
        .map((r) => `${nameOf(r)} ${percent(r.share)}`)
        .join(', ')}"
    >
      ${rows.map((r, i) => {
        const y = i * high + (high - 26) / 2;
        const running = 330 + 290 * r.running;
        const lines = labels[i] ?? [];
        const first = y + 19 - 8 * (lines.length - 1);
        return svg`${lines.map(
          (line, at) => svg`<text x="320" y=${first + 16 * at} text-anchor="end">${line}</text>`,
        )}
          <rect class="cause" x="330" y=${y + 4} width=${(290 * r.minutes) / most} height="18" />
          <rect class="weak" x="330" y=${y + 4} width=${(290 * r.weakMinutes) / most} height="18" />
          <line class="running" x1=${running} x2=${running} y1=${y} y2=${y + 26} />
          <text x="632" y=${y + 19}>${r.minutes.toFixed(0)} min, ${perStart(r, causes.starts)} a start ·
            ${percent(r.share)} · so far ${percent(r.running)}</text>`;
      })}
    </svg>
    <p class="key">
      so far: with all above; the stroke shows it, from none on the left to all on the right · pale:
      rests on late or entered-together touches
    </p>
    ${how('causes')} ${how('kinds', 'what the kinds mean')}
    ${tableOf(
      'Minutes by cause',
      [
        'cause',
        'minutes',
        'minutes per start',
        'starts',
        'share',
        'running share',
        'on weak touches',
      ],
      causes.rows.map((r) => [
        nameOf(r),
        minutes(r.minutes),
        perStart(r, causes.starts),
        r.starts,
        percent(r.share, 1),
        percent(r.running, 1),
        minutes(r.weakMinutes),
      ]),
    )}`;
}

/** Letters that fit beside a bar. */
const LINE = 38;

/** A name in one line or two; what does not fit into two ends in dots. */
export function inLines(name: string): string[] {
  if (name.length <= LINE) return [name];
  const at = name.lastIndexOf(' ', LINE);
  const cut = at <= 0 ? LINE : at;
  const rest = name.slice(cut).trim();
  return [name.slice(0, cut), rest.length <= LINE ? rest : `${rest.slice(0, LINE - 1).trim()}…`];
}

/** Late minutes of a cause over all starts. */
const perStart = (r: CauseRow, starts: number): string => (r.minutes / starts).toFixed(2);

/** Each cause on each weekday, per start of that day: days differ in how many they have. */
export function daysPanel(
  { groups }: CausesApart,
  words: (label: string) => string,
): TemplateResult {
  const shown = groups.filter((day) => day.rows !== undefined);
  if (shown.length === 0) return html`<p class="withheld">No weekday has 10 starts.</p>`;
  // The names of the groups are numbered, so that Monday comes first.
  const dayOf = ({ name }: { name: string }): string => name.replace(/^\d /, '').slice(0, 3);
  const few = groups.filter((day) => day.rows === undefined).map(dayOf);
  const total = new Map<string, number>();
  const known = new Map<string, string>();
  for (const r of shown.flatMap((day) => day.rows ?? [])) {
    total.set(r.label, (total.get(r.label) ?? 0) + r.minutes);
    if (r.name !== undefined) known.set(r.label, r.name);
  }
  const labels = [...total.keys()].sort((a, b) => (total.get(b) ?? 0) - (total.get(a) ?? 0));
  const head = ['cause', ...shown.map(dayOf)];
  const row = (label: string): string[] => [
    known.get(label) ?? words(label),
    ...shown.map(({ rows }) => (rows?.find((r) => r.label === label)?.perStart ?? 0).toFixed(2)),
  ];
  const above = [
    ['starts', ...shown.map((day) => day.starts)],
    ['all minutes late, per start', ...shown.map((day) => (day.perStart ?? 0).toFixed(2))],
  ];
  const name = 'Minutes by cause and weekday, per start';
  return html`<p>
      Minutes per start of that
      weekday${labels.length > 12 ? '; the 12 largest causes, all of them in the files' : ''}. Many
      cells are looked at together: one that stands out is a
      question.${few.length > 0 ? ` Fewer than 10 starts, not shown: ${few.join(', ')}.` : ''}
    </p>
    ${dataTable(name, head, [...above, ...labels.slice(0, 12).map(row)])} ${how('days')}
    ${filesOf(name, head, [...above, ...labels.map(row)])}`;
}

export function reasonsPanel(reasons: Reasons, words: (label: string) => string): TemplateResult {
  if (reasons.rows === undefined) {
    return html`<p class="withheld">Fewer than 10 late starts: not shown.</p>`;
  }
  return html`${how('reasons')}
  ${tableOf(
    'Computed and reported cause side by side',
    ['computed', 'reported', 'late starts', 'agreed by both sides'],
    reasons.rows.map((r) => [words(r.computed), words(r.reported), r.starts, r.agreed]),
  )}`;
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
    ${how('lateness')}
    ${tableOf(
      'Minutes after the target',
      ['minutes', 'starts'],
      bins.map((bin) => [name(bin), bin.starts]),
    )}`;
}
