import type { RoomPart, Standing } from '../generated/wire.ts';
import { widestTime } from '../words/index.ts';

/** Everything is in units of 1/1920 of the wall's width. */
export const WIDTH = 1920;
/** Minutes that the scale shows before and after the target. */
export const EARLY_MINUTES = 30;
export const LATE_MINUTES = 20;

const MINUTE_MS = 60_000;
const WIDEST_MARK = '+10 min';
const LEAST_FIGURE = '+21';
const NUMBER_SIZE = 54;
const NUMBER_ROWS_MAX = 3;
/** From so many rooms on there are numbers only. */
const WORDS_BELOW_ROOMS = 40;
/** Letters larger than this leave no room for words in two rows, nor for much beside them. */
export const LARGE_LETTER = 44;
const RIGHT = 28;
const TOP = 22;
const GAP = 10;
/** In em. */
const WORDS_APART = 0.42;
const LENS_LEAST = 12;
const LENS_AWAY = 26;
/** Between the line and a lens that is outside the scale. */
const LINE_ROOM = 6;
const ARROW_ROOM = 22;
const LENS_WIDE = 38;
const DISC_MOST = 27;
const PLANNED_MOST = 18;

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
  /** The short words have to stand under the numbers. */
  readonly short: boolean;
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
function rowsFor(
  texts: readonly string[],
  size: number,
  column: number,
  bold: boolean,
  gap = GAP,
): number {
  const widest = Math.max(0, ...texts.map((text) => textWidth(text, size, bold)));
  return Math.max(1, Math.ceil((widest + gap) / column));
}

/**
 * Lays the horizon out.
 *
 * @param names the rooms' names in order
 * @param words the words under them, and the short ones
 * @param height what there is
 * @param letter the smallest letters allowed
 */
export function layOut(
  names: readonly string[],
  words: { readonly long: readonly string[]; readonly short: readonly string[] },
  height: number,
  letter: number,
): Layout {
  const { left, columnWidth, number } = across(names, letter);
  const word = sizeWords(words, columnWidth, letter);
  const wordRows = names.length < WORDS_BELOW_ROOMS && number.rows === 1 ? word.rows : 0;
  const wordHeight = letter * 1.16;
  const below = number.rows * number.size * 1.02 + wordRows * wordHeight + 18;
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
    numberSize: number.size,
    numberRows: number.rows,
    wordRows,
    short: word.short,
    numberLine: height - below + number.size * 0.78,
    wordLine: height - below + number.rows * number.size * 1.02 + letter * 0.86,
    fits: number.fits,
  };
}

/** Where the columns are from left to right, and the numbers under them. */
function across(
  names: readonly string[],
  letter: number,
): { left: number; columnWidth: number; number: { size: number; rows: number; fits: boolean } } {
  const beside = Math.max(textWidth(widestTime(), letter, true), textWidth(WIDEST_MARK, letter));
  const left = Math.ceil(beside + 34);
  const columnWidth = (WIDTH - left - RIGHT) / Math.max(1, names.length);
  return { left, columnWidth, number: sizeNumbers(names, columnWidth, letter) };
}

/** Over how many rows the rooms' numbers alternate, whatever the height. */
export function numberRows(names: readonly string[], letter: number): number {
  return across(names, letter).number.rows;
}

/** One row of numbers if they fit, large ones before small ones; else as many rows as it takes. */
function sizeNumbers(
  names: readonly string[],
  column: number,
  letter: number,
): { size: number; rows: number; fits: boolean } {
  const widest = Math.max(0.1, ...names.map((name) => textWidth(name, 1, true)));
  const inOneRow = (column - GAP) / widest;
  if (inOneRow >= letter) {
    return { size: Math.min(inOneRow, Math.max(NUMBER_SIZE, letter)), rows: 1, fits: true };
  }
  const rows = rowsFor(names, letter, column, true);
  if (rows <= NUMBER_ROWS_MAX) return { size: letter, rows, fits: true };
  const size = (column * NUMBER_ROWS_MAX - GAP) / widest;
  return { size, rows: NUMBER_ROWS_MAX, fits: false };
}

/** Long words in one row, else short ones, else long ones alternating over two; else none. */
function sizeWords(
  words: { readonly long: readonly string[]; readonly short: readonly string[] },
  column: number,
  letter: number,
): { rows: number; short: boolean } {
  // Words side by side are told apart only if more than a space lies between them.
  const apart = letter * WORDS_APART;
  const rows = (texts: readonly string[]): number => rowsFor(texts, letter, column, false, apart);
  if (rows(words.long) === 1) return { rows: 1, short: false };
  if (rows(words.short) === 1) return { rows: 1, short: true };
  if (letter > LARGE_LETTER) return { rows: 0, short: false };
  if (rows(words.long) === 2) return { rows: 2, short: false };
  return rows(words.short) === 2 ? { rows: 2, short: true } : { rows: 0, short: false };
}

/** Which of these minutes can be marked beside the line without touching each other. */
export function marksThatFit(layout: Layout, marks: readonly number[]): readonly number[] {
  const taken = [layout.line];
  return [...marks]
    .sort((a, b) => Math.abs(a) - Math.abs(b))
    .filter((minutes) => {
      const y = heightOf(layout, minutes);
      const free =
        taken.every((other) => Math.abs(other - y) >= layout.letter * 1.12) &&
        y >= layout.top + layout.letter * 0.4 &&
        y <= layout.bottom;
      if (free) taken.push(y);
      return free;
    });
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
  readonly shape: 'disc' | 'lens' | 'stroke' | 'planned' | 'none';
  readonly cy: number;
  readonly rx: number;
  readonly ry: number;
  /** The room's start lies outside the scale, on this side. */
  readonly arrow: Arrow;
  /** Minutes from the target to that start, negative before it; null inside the scale. */
  readonly beyond: number | null;
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
  const rx = Math.min(LENS_WIDE, layout.columnWidth * 0.31);
  const none: Picture = {
    standing: room.standing,
    shape: 'none',
    cy: layout.line,
    rx,
    ry: 0,
    arrow: null,
    beyond: null,
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
  // Of a room that nobody has heard of it is never said that it misses the line, nor that it won't;
  // nor that one misses it whose word does not say so.
  const open = room.standing === 'unheard';
  const calm = open || room.standing === 'ahead' || room.standing === 'agreed';
  const from = Math.min(minutes(room.could10 ?? mid), calm ? 0 : Infinity);
  const to = Math.max(minutes(room.could90 ?? mid), open ? 0 : -Infinity);
  const at = open ? 0 : Math.min(minutes(mid), calm ? 0 : Infinity);
  return { ...none, ...stroke, shape: 'lens', ...kept(layout, from, at, to, LENS_LEAST) };
}

/** A room of a draft: its sun is not up yet. */
export function planned(room: RoomPart, layout: Layout): Picture {
  const there = room.target !== undefined;
  const r = Math.min(PLANNED_MOST, layout.columnWidth * 0.25);
  return {
    standing: room.standing,
    shape: there ? 'planned' : 'none',
    cy: layout.line,
    rx: r,
    ry: r,
    arrow: null,
    beyond: null,
    now: null,
    nowAbove: false,
  };
}

/**
 * Keeps [from, to] inside the scale, at least `least` high to each side; says if mid is outside.
 */
function kept(
  layout: Layout,
  from: number,
  mid: number,
  to: number,
  least: number,
): { cy: number; ry: number; arrow: Arrow; beyond: number | null } {
  const arrow: Arrow = mid < -EARLY_MINUTES ? 'up' : mid > LATE_MINUTES ? 'down' : null;
  const away = least > 0 ? LENS_AWAY : 0;
  const figure = hasRoomForFigures(layout) ? layout.letter : 0;
  const room = arrow ? away + ARROW_ROOM + figure : least;
  // What is late lies below the line and what is early above it, however little room there is.
  const highest = arrow === 'down' ? layout.line + away + LINE_ROOM : -Infinity;
  const lowest = arrow === 'up' ? layout.line - away - LINE_ROOM : Infinity;
  const inside = (y: number): number =>
    Math.min(
      lowest,
      Math.max(highest, Math.min(Math.max(y, layout.top + room), layout.bottom - room)),
    );
  const high = inside(heightOf(layout, from));
  const low = inside(heightOf(layout, to));
  return {
    cy: (high + low) / 2,
    ry: Math.max(arrow ? away : least, (low - high) / 2),
    arrow,
    beyond: arrow ? Math.trunc(mid) : null,
  };
}

/** Columns are so wide that the minutes of a start outside the scale stand at its arrow. */
function hasRoomForFigures(layout: Layout): boolean {
  return textWidth(LEAST_FIGURE, layout.letter, true) <= layout.columnWidth;
}

function nowStroke(layout: Layout, minutes: number): { now: number; nowAbove: boolean } {
  const y = heightOf(layout, minutes);
  const now = Math.min(Math.max(y, layout.top), layout.bottom);
  return { now, nowAbove: y < layout.top };
}
