import { style } from './style.ts';

/**
 * The one place that writes pressures of gauges. What is read goes to the board as it was typed,
 * with its unit, and is put into the sheet's unit there; here values of the sheet are only shown.
 */

/**
 * psi in one of each: the digits follow from definitions, as in the server's `Unit` (NIST Special
 * Publication 811, B.8). Both work the same sum, so that both judge a reading alike.
 */
const PSI: Readonly<Record<string, number>> = {
  psi: 1,
  bar: 100 / 6.894_757_293_168,
  kPa: 1 / 6.894_757_293_168,
};

/** Places after the point to which a gauge is told in a unit that its sheet is not in. */
const PLACES: Readonly<Record<string, number>> = { psi: 0, bar: 1, kPa: 0 };

/** A value of a gauge in another unit of pressure, to twelve digits. */
export function gauge(value: number, from: string, to: string): number {
  const one = PSI[from];
  const other = PSI[to];
  if (from === to || one === undefined || other === undefined) return value;
  return Number(((value * one) / other).toPrecision(12));
}

/** The unit in which a number of a sheet is shown and read: the site's if it is a pressure. */
export function shownUnit(unit: string): string {
  return PSI[unit] === undefined ? unit : (style().pressure ?? unit);
}

/** A value of a sheet in the unit that is shown, to what a gauge is read to. */
export function shown(value: number, unit: string): number {
  return rounded(value, unit, Math.round);
}

/** The low end of a band, rounded up: what the page calls good is good. */
export function shownLeast(value: number, unit: string): number {
  return rounded(value, unit, Math.ceil);
}

/** The high end of a band, rounded down. */
export function shownMost(value: number, unit: string): number {
  return rounded(value, unit, Math.floor);
}

function rounded(value: number, unit: string, round: (value: number) => number): number {
  const to = shownUnit(unit);
  if (to === unit) return value;
  const scale = 10 ** PLACES[to]!;
  return round(Number((gauge(value, unit, to) * scale).toPrecision(12))) / scale;
}

/** A number with its unit as it is: `1,850 psi`. */
export function withUnit(value: number, unit: string): string {
  return `${value.toLocaleString('en-GB', { maximumFractionDigits: 3 })} ${unit}`.trim();
}

/** A number of a sheet as the site reads it: `1,850 psi`, `12,755 kPa`. */
export function reading(value: number, unit: string): string {
  return withUnit(shown(value, unit), shownUnit(unit));
}
