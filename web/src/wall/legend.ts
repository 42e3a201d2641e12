import { html, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { textWidth, WIDTH } from './geometry.ts';
import { say } from './words.ts';

/**
 * What the signs of the wall mean, for whoever sees it for the first time. It stands where nothing
 * else does and goes when the room is wanted; what does not fit takes turns.
 */

/** A row takes its turn for so long, milliseconds of real time. */
const TURN_MS = 12_000;
/** Rows shown at once: more would be a page to be read and not a sign. */
const ROWS_MAX = 2;
/** In em: a row's height, a sign's width with its gap, and between entries. */
const ROW = 1.4;
const SIGN = 1.6;
const APART = 1.1;
/** Left and right of the wall, in units. */
const MARGIN = 72;

export type LegendKey =
  | 'ready'
  | 'ahead'
  | 'tight'
  | 'late'
  | 'stuck'
  | 'unheard'
  | 'started'
  | 'now'
  | 'long'
  | 'needs'
  | 'bare'
  | 'ticks';

const ALWAYS: readonly LegendKey[] = [
  'late',
  'ready',
  'ahead',
  'tight',
  'unheard',
  'stuck',
  'now',
  'started',
  'long',
  'needs',
];

/** What of the horizon's layout has to be told too. */
export interface LegendOf {
  /** No words stand under the numbers. */
  readonly bare: boolean;
  /** Numbers alternate over rows, joined to their columns by ticks. */
  readonly ticks: boolean;
}

export function legendKeys(of: LegendOf): readonly LegendKey[] {
  return [
    ...ALWAYS,
    ...(of.bare ? (['bare'] as const) : []),
    ...(of.ticks ? (['ticks'] as const) : []),
  ];
}

/** How wide an entry is, in units. */
function width(key: LegendKey, letter: number): number {
  return (SIGN + APART) * letter + textWidth(say(`legend.${key}`), letter);
}

/**
 * Entries in rows that fit; empty if one does not.
 *
 * @param room the width that there is, in units
 */
export function legendRows(
  keys: readonly LegendKey[],
  letter: number,
  room: number,
): readonly (readonly LegendKey[])[] {
  const rows: LegendKey[][] = [];
  let left = 0;
  for (const key of keys) {
    const wide = width(key, letter);
    if (wide > room) return [];
    if (rows.length === 0 || wide > left) {
      rows.push([]);
      left = room;
    }
    rows.at(-1)!.push(key);
    left -= wide;
  }
  return rows;
}

/** The rows whose turn it is. */
export function legendTurn<T>(rows: readonly T[], fit: number, real: number): readonly T[] {
  const at = Math.min(fit, ROWS_MAX);
  if (at <= 0) return [];
  if (rows.length <= at) return rows;
  const turns = Math.ceil(rows.length / at);
  const turn = Math.floor(real / TURN_MS) % turns;
  return rows.slice(turn * at, turn * at + at);
}

/** The legend in a free place of so many units' height over the whole width; or nothing. */
export function legendIn(
  of: LegendOf,
  letter: number,
  height: number,
  real: number,
): TemplateResult | null {
  const fit = Math.floor(height / (letter * ROW));
  return drawn(legendTurn(legendRows(legendKeys(of), letter, WIDTH - MARGIN), fit, real));
}

/** One row of it beside these words; or nothing. */
export function legendBeside(
  of: LegendOf,
  letter: number,
  words: string,
  real: number,
): TemplateResult | null {
  const room = WIDTH - MARGIN - textWidth(words, letter) - APART * letter;
  return drawn(legendTurn(legendRows(legendKeys(of), letter, room), 1, real));
}

function drawn(rows: readonly (readonly LegendKey[])[]): TemplateResult | null {
  if (rows.length === 0) return null;
  return html`<div class="legend" role="note" aria-label=${say('legend')}>
    ${rows.map(
      (row) =>
        html`<p>
          ${row.map(
            (key) =>
              html`<span
                ><svg viewBox="-20 -20 40 40" aria-hidden="true">${SIGNS[key]}</svg
                >${say(`legend.${key}`)}</span
              >`,
          )}
        </p>`,
    )}
  </div>`;
}

/** The horizon's own shapes, small. */
const SIGNS: Record<LegendKey, SVGTemplateResult> = {
  ready: svg`<g class="ready shape-disc"><circle class="lens" r="14" /></g>`,
  ahead: svg`<g class="ahead shape-lens"><ellipse class="lens" rx="13" ry="16" /></g>`,
  tight: svg`<g class="tight shape-lens">
    <path class="lit" d="M-13 0A13 16 0 0 1 13 0Z" /><ellipse class="lens" rx="13" ry="16" />
    <path class="line" d="M-20 0H20" />
  </g>`,
  late: svg`<g class="late shape-lens">
    <path class="line" d="M-20 -17H20" /><g transform="scale(0.5)"><ellipse class="lens" cy="6" rx="26" ry="30" /></g>
  </g>`,
  stuck: svg`<g class="stuck shape-lens">
    <g transform="scale(0.5)"><ellipse class="lens" rx="26" ry="32" /></g>
    <rect class="bar" x="-20" y="-4" width="40" height="8" />
  </g>`,
  unheard: svg`<g class="unheard shape-lens"><ellipse class="lens" rx="13" ry="16" /></g>`,
  started: svg`<g class="shape-stroke"><rect class="stroke" x="-18" y="-4" width="36" height="8" rx="4" /></g>`,
  now: svg`<rect class="now" x="-19" y="-2.5" width="38" height="5" rx="2.5" />`,
  long: svg`<g class="ahead shape-lens"><ellipse class="lens" rx="9" ry="17" /></g>`,
  needs: svg`<path class="arrow" d="M-14 -8H14M-14 0H14M-14 8H4" />`,
  bare: svg`<g class="late bare"><text class="number" y="9" font-size="30">7</text></g>`,
  ticks: svg`<path class="tick" d="M0 -18V18" />`,
};
