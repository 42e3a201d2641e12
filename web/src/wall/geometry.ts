import type { RoomPart, Standing } from '../generated/wire.ts';

/** Everything is in units of 1/1920 of the wall's width. */
export const WIDTH = 1920;
/** Minutes that the scale shows before and after the target. */
export const EARLY_MINUTES = 30;
export const LATE_MINUTES = 20;

const MINUTE_MS = 60_000;
const NUMBER_SIZE = 54;
const TEXT_ROWS_MAX = 3;
const WORD_ROWS_MAX = 2;
const RIGHT = 28;
const TOP = 22;
const GAP = 10;
const LENS_LEAST = 11;
const DISC_MOST = 25;

/** Where everything of the horizon is, for a number of rooms and a size. */
export interface Layout {
  readonly height: number;
  readonly left: number;
  readonly columnWidth: number;
  readonly top: number;
  readonly bottom: number;
  /** The horizon itself. */
  readonly line: number;
  readonly unitsPerMinute: number;
  readonly letter: number;
  readonly numberSize: number;
  /** Numbers, and words under them, alternate over so many rows; no words at 0. */
  readonly numberRows: number;
  readonly wordRows: number;
  readonly numberLine: number;
  readonly wordLine: number;
  /** False if even so the numbers are smaller than the distance asks for. */
  readonly fits: boolean;
}

/** About how wide a text is, in em: enough to decide what fits. */
export function textWidth(text: string, size: number, bold = false): number {
  let em = 0;
  for (const letter of text) {
    if (/[il.,:' ]/.test(letter)) em += 0.29;
    else if (/[mwMW]/.test(letter)) em += 0.82;
    else if (/[0-9A-Z+]/.test(letter)) em += 0.62;
    else em += 0.53;
  }
  return em * size * (bold ? 1.06 : 1);
}

/** How many rows texts have to alternate over to fit into columns; a gap stays between them. */
function rowsFor(texts: readonly string[], size: number, column: number, bold: boolean): number {
  const widest = Math.max(0, ...texts.map((text) => textWidth(text, size, bold)));
  return Math.max(1, Math.ceil((widest + GAP) / column));
}

/**
 * Lays the horizon out.
 *
 * @param names the rooms' names in order
 * @param words the words under them
 * @param height what there is
 * @param letter the smallest letters allowed
 */
export function layOut(
  names: readonly string[],
  words: readonly string[],
  height: number,
  letter: number,
): Layout {
  const left = Math.ceil(textWidth('00:00', letter, true) + 34);
  const columnWidth = (WIDTH - left - RIGHT) / Math.max(1, names.length);
  const fitting = (size: number): number => rowsFor(names, size, columnWidth, true);
  const largest = Math.max(NUMBER_SIZE, letter);
  const narrow = rowsFor(names, largest, columnWidth, true) > 1;
  let numberSize = narrow ? letter : largest;
  if (narrow && fitting(letter) === 1) {
    const widest = Math.max(...names.map((name) => textWidth(name, 1, true)));
    numberSize = Math.min(largest, (columnWidth - GAP) / widest);
  }
  let numberRows = fitting(numberSize);
  let fits = true;
  if (numberRows > TEXT_ROWS_MAX) {
    fits = false;
    numberRows = TEXT_ROWS_MAX;
    const widest = Math.max(...names.map((name) => textWidth(name, 1, true)));
    numberSize = (columnWidth * TEXT_ROWS_MAX - GAP) / widest;
  }
  const asked = rowsFor(words, letter, columnWidth, false);
  const wordRows = names.length < 40 && numberRows === 1 && asked <= WORD_ROWS_MAX ? asked : 0;
  const wordHeight = letter * 1.16;
  const below = numberRows * numberSize * 1.02 + wordRows * wordHeight + 18;
  const bottom = height - below - 14;
  const unitsPerMinute = Math.max(1, (bottom - TOP) / (EARLY_MINUTES + LATE_MINUTES));
  return {
    height,
    left,
    columnWidth,
    top: TOP,
    bottom,
    line: TOP + EARLY_MINUTES * unitsPerMinute,
    unitsPerMinute,
    letter,
    numberSize,
    numberRows,
    wordRows,
    numberLine: height - below + numberSize * 0.78,
    wordLine: height - below + numberRows * numberSize * 1.02 + letter * 0.86,
    fits,
  };
}

/** The middle of column `index`. */
export function columnX(layout: Layout, index: number): number {
  return layout.left + layout.columnWidth * (index + 0.5);
}

/** Height on the wall of a moment `minutes` after the target, not yet kept inside the scale. */
export function heightOf(layout: Layout, minutes: number): number {
  return layout.line + minutes * layout.unitsPerMinute;
}

export type Arrow = 'up' | 'down' | null;

/** One room's picture: what is drawn and where. */
export interface Picture {
  readonly standing: Standing;
  /** `none` if there is nothing to draw but the number. */
  readonly shape: 'disc' | 'lens' | 'stroke' | 'none';
  readonly cy: number;
  readonly rx: number;
  readonly ry: number;
  /** The room's start lies outside the scale, on this side. */
  readonly arrow: Arrow;
  /** The now-stroke, or null if the room has started or has no target. */
  readonly now: number | null;
  readonly nowAbove: boolean;
}

/**
 * Draws one room.
 *
 * @param now the morning's time, epoch milliseconds
 */
export function picture(room: RoomPart, layout: Layout, now: number): Picture {
  const rx = Math.min(52, layout.columnWidth * 0.31);
  const none: Picture = {
    standing: room.standing,
    shape: 'none',
    cy: layout.line,
    rx,
    ry: 0,
    arrow: null,
    now: null,
    nowAbove: false,
  };
  if (room.target === undefined || room.standing === 'none') return none;
  const minutes = (at: number): number => (at - room.target!) / MINUTE_MS;
  if (room.standing === 'started') {
    const at = minutes(room.startedAt ?? room.target);
    return { ...none, shape: 'stroke', ...kept(layout, at, at, at, 0) };
  }
  const stroke = nowStroke(layout, minutes(now));
  const mid = room.could50 ?? room.start50;
  if (mid === undefined) return { ...none, ...stroke };
  if (room.standing === 'ready') {
    const r = Math.min(DISC_MOST, rx);
    const at = minutes(mid);
    return { ...none, ...stroke, shape: 'disc', ...kept(layout, at, at, at, r), rx: r, ry: r };
  }
  const from = minutes(room.could10 ?? mid);
  const to = minutes(room.could90 ?? mid);
  return { ...none, ...stroke, shape: 'lens', ...kept(layout, from, minutes(mid), to, LENS_LEAST) };
}

/** Keeps [from, to] inside the scale, at least `least` high to each side; says if mid is outside. */
function kept(
  layout: Layout,
  from: number,
  mid: number,
  to: number,
  least: number,
): { cy: number; ry: number; arrow: Arrow } {
  const arrow: Arrow = mid < -EARLY_MINUTES ? 'up' : mid > LATE_MINUTES ? 'down' : null;
  const room = arrow ? least + 16 : least;
  const inside = (y: number): number =>
    Math.min(Math.max(y, layout.top + room), layout.bottom - room);
  const high = inside(heightOf(layout, from));
  const low = inside(heightOf(layout, to));
  return { cy: (high + low) / 2, ry: Math.max(least, (low - high) / 2 + least / 2), arrow };
}

function nowStroke(layout: Layout, minutes: number): { now: number; nowAbove: boolean } {
  const y = heightOf(layout, minutes);
  const now = Math.min(Math.max(y, layout.top), layout.bottom);
  return { now, nowAbove: y < layout.top };
}
