import type { RoomPart, Standing } from '../generated/wire.ts';
import { widestTime } from '../words/index.ts';

/** Everything is in units of 1/1920 of the wall's width. */
export const WIDTH = 1920;
/** Minutes that the scale shows before and after the target. */
export const EARLY_MINUTES = 30;
export const LATE_MINUTES = 20;

const MINUTE_MS = 60_000;
const WIDEST_MARK = '20 early';
const LEAST_FIGURE = '+21';
const NUMBER_SIZE = 54;
const NUMBER_ROWS_MAX = 3;
/** From so many rooms on there are numbers only. */
const WORDS_BELOW_ROOMS = 40;
/** Letters larger than this leave no room for words in two rows, nor for much beside them. */
export const LARGE_LETTER = 44;
const RIGHT = 28;
/** What the now-strokes are called, beside them. */
export const NOW_WORD = 'now';
/** Beside the line's time: from the edge and to the first column. */
const BESIDE = 24;
/** Between the last column and the word that says what the blue strokes are. */
const NOW_APART = 8;
const TOP = 22;
const GAP = 8;
/** In em. */
const WORDS_APART = 0.42;
/** Rows of text that stand under each other, from base line to base line, in em. */
const ROW = 1.12;
/** The strip for figures that are wider than their columns, in em. */
const STRIP = 0.9;
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
  /** Under the scale: where minutes of late starts outside it stand, if columns are too narrow; or 0. */
  readonly strip: number;
  /** Letters are so large that beside the line there is room for words only, not for minutes. */
  readonly large: boolean;
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
  const strip = hasRoomForFigures(columnWidth, letter) ? 0 : letter * STRIP;
  const wordRows = names.length < WORDS_BELOW_ROOMS && number.rows === 1 ? word.rows : 0;
  const wordHeight = letter * 1.16;
  const below = number.rows * number.size * 1.02 + wordRows * wordHeight + 18;
  const bottom = height - below - 14 - strip;
  const unitsPerMinute = Math.max(1, (bottom - TOP) / (EARLY_MINUTES + LATE_MINUTES));
  return {
    height,
    left,
    columnWidth,
    top: TOP,
    bottom,
    line: TOP + EARLY_MINUTES * unitsPerMinute,
    strip,
    large: letter > LARGE_LETTER,
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
  const large = letter > LARGE_LETTER;
  const marked = large ? 0 : textWidth(WIDEST_MARK, letter);
  const left = Math.ceil(Math.max(textWidth(widestTime(), letter, true), marked) + BESIDE);
  const right = large ? textWidth(NOW_WORD, letter) + 2 * NOW_APART : RIGHT;
  const columnWidth = (WIDTH - left - right) / Math.max(1, names.length);
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

/** A word beside the line and the height of its middle. */
export interface AxisWord {
  readonly text: string;
  readonly y: number;
  /** Minutes from the target, where it marks them. */
  readonly minutes: number | null;
}

/** What stands beside the line: which side is early and which late, with minutes if there is room. */
export interface Axis {
  readonly early: readonly AxisWord[];
  readonly late: readonly AxisWord[];
  /** What the blue strokes are; null if no room has one. */
  readonly now: { readonly y: number; readonly x: number; readonly end: boolean } | null;
}

/**
 * What stands beside the line, none of it on the other.
 *
 * @param marks minutes from the target that are marked where there is room
 * @param now minutes from the target of most rooms to now, or null if nobody waits
 */
export function axis(layout: Layout, marks: readonly number[], now: number | null): Axis {
  const { letter, line, large } = layout;
  const taken = [line];
  const place = nowPlace(layout, now);
  if (place && !large) taken.push(place.y);
  const free = (y: number): boolean =>
    taken.every((other) => Math.abs(other - y) >= letter * ROW - 0.01) &&
    y >= layout.top + letter * 0.4 &&
    y <= layout.bottom + layout.strip;
  const side = (sign: -1 | 1, word: string): AxisWord[] => {
    const words: AxisWord[] = [];
    const of = large ? [] : marks.filter((minutes) => Math.sign(minutes) === sign);
    for (const minutes of [...of].sort((a, b) => Math.abs(a) - Math.abs(b))) {
      const y = heightOf(layout, minutes);
      if (!free(y)) continue;
      taken.push(y);
      words.push({ text: `${Math.abs(minutes)} ${word}`, y, minutes });
    }
    const beside = line + sign * letter * ROW;
    if (words.length === 0 && free(beside)) {
      taken.push(beside);
      words.push({ text: word, y: beside, minutes: null });
    }
    return words;
  };
  return { early: side(-1, 'early'), late: side(1, 'late'), now: place };
}

/**
 * Where the word for the blue strokes stands: at their height, right of the last column where
 * letters are large, else left of the first, there beside the time of the line and not on it.
 */
function nowPlace(layout: Layout, now: number | null): Axis['now'] {
  if (now === null) return null;
  const { letter, line, top, bottom, large } = layout;
  const y = Math.min(Math.max(heightOf(layout, now), top), bottom);
  if (large) {
    const x = WIDTH - NOW_APART - textWidth(NOW_WORD, letter);
    return { y: Math.max(y, letter * 0.5), x, end: false };
  }
  const apart = letter * ROW;
  const beside =
    Math.abs(y - line) >= apart ? y : now > 0 ? line + apart : Math.max(line - apart, top);
  return { y: Math.max(beside, letter * 0.5), x: layout.left - 14, end: true };
}

/**
 * Moves labels aside as little as needed, so that none touches its neighbour.
 *
 * @param labels middle and width of each, from left to right
 * @param from where they may begin
 * @param to where they must end
 * @returns the middles in the same order; null if they have no room beside each other
 */
export function spread(
  labels: readonly { readonly x: number; readonly width: number }[],
  from: number,
  to: number,
): readonly number[] | null {
  if (labels.reduce((sum, one) => sum + one.width, 0) > to - from) return null;
  const wanted = labels.map((one) => one.x);
  const widths = labels.map((one) => one.width);
  // To the right where they touch, or to the left; halfway between the two they do not touch either.
  const right = pushedLeft(pushedRight(wanted, widths, from), widths, to);
  const left = pushedRight(pushedLeft(wanted, widths, to), widths, from);
  return right.map((x, i) => (x + left[i]!) / 2);
}

function pushedRight(xs: readonly number[], widths: readonly number[], from: number): number[] {
  const pushed: number[] = [];
  xs.forEach((x, i) => {
    const before = i === 0 ? from : pushed[i - 1]! + widths[i - 1]! / 2;
    pushed.push(Math.max(x, before + widths[i]! / 2));
  });
  return pushed;
}

function pushedLeft(xs: readonly number[], widths: readonly number[], to: number): number[] {
  const mirrored = [...xs].reverse().map((x) => -x);
  return pushedRight(mirrored, [...widths].reverse(), -to)
    .map((x) => -x)
    .reverse();
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
  const figure = layout.strip === 0 ? layout.letter : 0;
  const side = arrow === 'down' ? layout.bottom - layout.line : layout.line - layout.top;
  // Where the scale is low its lens is smaller, so that the arrow does not reach into the figure.
  const fitting = (side - LINE_ROOM - ARROW_ROOM - figure) / 2;
  const away = least > 0 ? Math.max(LENS_LEAST, Math.min(LENS_AWAY, fitting)) : 0;
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
function hasRoomForFigures(columnWidth: number, letter: number): boolean {
  return textWidth(LEAST_FIGURE, letter, true) <= columnWidth;
}

function nowStroke(layout: Layout, minutes: number): { now: number; nowAbove: boolean } {
  const y = heightOf(layout, minutes);
  const now = Math.min(Math.max(y, layout.top), layout.bottom);
  return { now, nowAbove: y < layout.top };
}
