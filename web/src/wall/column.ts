import type { RoomPart } from '../generated/wire.ts';
import {
  columnX,
  heightOf,
  type Layout,
  type Picture,
  picture,
  planned,
  textWidth,
  WIDTH,
} from './geometry.ts';
import { lateBrief, lateBy } from '../look/index.ts';
import { Shape } from './svg.ts';
import { roomWord, type WordSetting } from './words.ts';

/** Where a column stands and when: what it is drawn from beside its room. */
export interface Spot {
  readonly layout: Layout;
  readonly index: number;
  readonly last: boolean;
  readonly now: number;
  readonly draft: boolean;
}

const NOW_THICK = 4;
const STROKE_THICK = 8;
const BAR_THICK = 11;
const ARROW_REACH = 24;
const ARROW = 'M-13 -7 L0 7 L13 -7';
const ARROW_UP = 'M-13 7 L0 -7 L13 7';
/** A path that is not drawn. */
const NOWHERE = 'M0 0';

/** One room on the horizon: one element, kept as long as the room is there. */
export class Column {
  private readonly group: Shape;
  private readonly past: Shape;
  private readonly now: Shape;
  private readonly nowUp: Shape;
  private readonly halo: Shape;
  private readonly lit: Shape;
  private readonly lens: Shape;
  private readonly bar: Shape;
  private readonly arrow: Shape;
  private readonly beyond: Shape;
  private readonly lead: Shape;
  private readonly stroke: Shape;
  private readonly number: Shape;
  private readonly tick: Shape;
  private readonly word: Shape;

  private room: RoomPart | null = null;
  private spot: Spot | null = null;
  private nowAt = 0;
  /** Minutes of a late start outside the scale, for the strip under it; empty if there are none. */
  private figure = '';
  /** Where the arrow down ends. */
  private tip = 0;
  private wordsOf: RoomPart | null = null;
  private wordsIn: WordSetting | null = null;
  private words = { long: '', short: '' };

  /** @param under what lies under the line; @param over what lies over it */
  constructor(under: Element, over: Element) {
    this.past = new Shape(under, 'rect', { class: 'past', y: 0 });
    this.group = new Shape(over, 'g');
    const inside = this.group.element;
    this.now = new Shape(inside, 'rect', { class: 'now', height: NOW_THICK, rx: NOW_THICK / 2 });
    this.nowUp = new Shape(inside, 'path', { class: 'now-up', d: 'M-9 4 L0 -5 L9 4' });
    this.halo = new Shape(inside, 'ellipse', { class: 'halo', fill: 'url(#halo)' });
    this.lit = new Shape(inside, 'ellipse', { class: 'lit', 'clip-path': 'url(#above)' });
    this.lens = new Shape(inside, 'ellipse', { class: 'lens' });
    this.bar = new Shape(inside, 'rect', { class: 'bar', height: BAR_THICK });
    this.arrow = new Shape(inside, 'path', { class: 'arrow' });
    this.beyond = new Shape(inside, 'text', { class: 'beyond' });
    this.lead = new Shape(inside, 'path', { class: 'lead' });
    this.stroke = new Shape(inside, 'rect', {
      class: 'stroke',
      height: STROKE_THICK,
      rx: STROKE_THICK / 2,
    });
    this.tick = new Shape(inside, 'path', { class: 'tick' });
    this.number = new Shape(inside, 'text', { class: 'number' });
    this.word = new Shape(inside, 'text', { class: 'word' });
  }

  /** The words under the number, long and short; worked out again only if something changed. */
  wording(room: RoomPart, setting: WordSetting): { readonly long: string; readonly short: string } {
    if (this.wordsOf !== room || this.wordsIn !== setting) {
      this.wordsOf = room;
      this.wordsIn = setting;
      this.words = { long: roomWord(room, setting, false), short: roomWord(room, setting, true) };
    }
    return this.words;
  }

  /** Draws the room, if it changed or its now-stroke moved by half a unit (about five seconds). */
  update(room: RoomPart, spot: Spot): void {
    const { layout, index, last, now, draft } = spot;
    const moved =
      !this.spot ||
      this.spot.layout !== layout ||
      this.spot.index !== index ||
      this.spot.last !== last;
    const nowAt = Math.round(heightOf(layout, (now - (room.target ?? now)) / 60_000) * 2);
    const same = !moved && room === this.room && draft === this.spot?.draft;
    if (same && nowAt === this.nowAt) return;
    this.room = room;
    this.spot = spot;
    this.nowAt = nowAt;
    if (moved) this.place(layout, index, last);
    this.show(layout, index, draft ? planned(room, layout) : picture(room, layout, now));
    this.number.text(room.room);
    const word = layout.short ? this.words.short : this.words.long;
    this.word.text(layout.wordRows > 0 ? word : '');
  }

  private place(layout: Layout, index: number, last: boolean): void {
    const x = columnX(layout, index);
    const half = layout.columnWidth / 2;
    const stroke = layout.columnWidth * 0.37;
    const from = index === 0 ? 0 : x - half;
    const to = last ? WIDTH : x + half;
    this.past.set({ x: from, width: to - from });
    this.now.set({ x: x - stroke, width: stroke * 2 });
    for (const shape of [this.lit, this.lens, this.halo]) shape.set({ cx: x });
    const row = index % layout.numberRows;
    const below = layout.numberLine + row * layout.numberSize * 1.02;
    this.number.set({ x, y: below, 'font-size': layout.numberSize });
    this.tick.set({ d: row === 0 ? NOWHERE : tickPath(x, layout, below) });
    this.word.set({
      x,
      y: layout.wordLine + (index % Math.max(1, layout.wordRows)) * layout.letter * 1.16,
      'font-size': layout.letter,
    });
  }

  private show(layout: Layout, index: number, picture: Picture): void {
    const x = columnX(layout, index);
    const { cy, rx, ry, arrow, shape } = picture;
    const away = picture.now === null ? 'started-or-none' : picture.nowAbove ? 'far' : 'near';
    const told = layout.wordRows > 0 ? '' : ' bare';
    this.group.set({ class: `room ${picture.standing} shape-${shape} now-${away}${told}` });
    const now = picture.now ?? 0;
    this.past.set({ height: Math.min(now, layout.bottom) });
    this.now.set({ y: now - NOW_THICK / 2 });
    if (picture.nowAbove) this.nowUp.set({ transform: `translate(${round(x)} ${now - 9})` });
    if (shape === 'stroke') {
      this.stroke.set({ x: x - rx * 0.85, y: cy - STROKE_THICK / 2, width: rx * 1.7 });
    } else if (shape !== 'none') {
      this.lens.set({ cy, rx, ry });
      const { standing } = picture;
      if (standing === 'tight') this.lit.set({ cy, rx, ry });
      if (standing === 'ready') this.halo.set({ cy, rx: rx * 2.1, ry: ry * 2.1 });
      if (standing === 'stuck') {
        this.bar.set({ x: x - rx - 8, y: cy - BAR_THICK / 2, width: 2 * rx + 16 });
      }
    }
    const words = this.room ? beyondWords(this.room, layout, picture.beyond) : '';
    const below = arrow === 'down' && layout.strip > 0;
    this.figure = below ? words : '';
    this.tip = cy + ry + ARROW_REACH;
    if (!below) {
      this.lead.set({ d: NOWHERE });
      this.beyond.text(words);
    }
    if (arrow === null) {
      this.arrow.set({ d: NOWHERE });
      return;
    }
    const tip = arrow === 'up' ? cy - ry - ARROW_REACH : this.tip + layout.letter * 0.76;
    if (!below) this.beyond.set({ x, y: round(tip), 'font-size': layout.letter });
    this.arrow.set({
      d: arrow === 'up' ? ARROW_UP : ARROW,
      transform: `translate(${round(x)} ${round(arrow === 'up' ? cy - ry - 14 : cy + ry + 14)})`,
    });
  }

  /** What it has for the strip under the scale; null if nothing. */
  get stripFigure(): {
    readonly text: string;
    readonly x: number;
    readonly minutes: number;
  } | null {
    const { spot, room } = this;
    if (this.figure === '' || !spot || !room) return null;
    return {
      text: this.figure,
      x: columnX(spot.layout, spot.index),
      minutes: room.lateMinutes,
    };
  }

  /** Puts its figure into the strip, or leaves it out. @param at the figure's middle */
  inStrip(at: number | null): void {
    const { spot } = this;
    if (this.figure === '' || !spot) return;
    const { layout, index } = spot;
    this.beyond.text(at === null ? '' : this.figure);
    if (at === null) {
      this.lead.set({ d: NOWHERE });
      return;
    }
    const x = columnX(layout, index);
    const y = layout.bottom + layout.strip * 0.86;
    const from = Math.min(this.tip, layout.bottom);
    this.beyond.set({ x: round(at), y: round(y), 'font-size': layout.letter });
    const led = Math.abs(at - x) > layout.columnWidth / 2;
    const to = y - layout.letter * 0.74;
    this.lead.set({
      d: led ? `M${round(x)} ${round(from)}L${round(at)} ${round(Math.max(to, from))}` : NOWHERE,
    });
  }

  remove(): void {
    this.past.remove();
    this.group.remove();
  }
}

/**
 * Joins a column and its number that does not stand right under it: through the rows between if
 * there is one, else (where the numbers between leave no room) a stroke at each end.
 *
 * @param below the number's base line
 */
function tickPath(x: number, layout: Layout, below: number): string {
  const from = layout.bottom + layout.strip + 6;
  const to = below - layout.numberSize * 0.76;
  const at = round(x);
  if (layout.numberRows === 2) return `M${at} ${round(from)}V${round(to)}`;
  const short = layout.numberSize * 0.2;
  return `M${at} ${round(from)}v${round(short)}M${at} ${round(to - short)}V${round(to)}`;
}

/**
 * "+42" of a start outside the scale: at its arrow where the column is wide enough for it, of a late
 * one else in the strip under the scale. Of a late room it is the figure that the list under the
 * horizon says too.
 */
export function beyondWords(room: RoomPart, layout: Layout, beyond: number | null): string {
  if (beyond === null) return '';
  const early = beyond < 0;
  const minutes = !early && room.lateMinutes > 0 ? room.lateMinutes : Math.abs(beyond);
  const anywhere = !early && layout.strip > 0;
  if (anywhere) return lateBrief(minutes, room.orMore);
  const words = early ? `−${minutes}` : lateBy(minutes, room.orMore);
  return textWidth(words, layout.letter, true) <= layout.columnWidth ? words : '';
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
