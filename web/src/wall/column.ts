import { columnX, type Layout, type Picture } from './geometry.ts';
import { Shape } from './svg.ts';

const NOW_THICK = 4;
const STROKE_THICK = 8;
const BAR_THICK = 11;
const ARROW = 'M-13 -7 L0 7 L13 -7';
const ARROW_UP = 'M-13 7 L0 -7 L13 7';

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
  private readonly stroke: Shape;
  private readonly number: Shape;
  private readonly word: Shape;

  constructor(parent: Element) {
    this.group = new Shape(parent, 'g');
    const inside = this.group.element;
    this.past = new Shape(inside, 'rect', { class: 'past', y: 0 });
    this.now = new Shape(inside, 'rect', { class: 'now', height: NOW_THICK, rx: NOW_THICK / 2 });
    this.nowUp = new Shape(inside, 'path', { class: 'now-up', d: 'M-9 4 L0 -5 L9 4' });
    this.halo = new Shape(inside, 'ellipse', { class: 'halo', fill: 'url(#halo)' });
    this.lit = new Shape(inside, 'ellipse', { class: 'lit', 'clip-path': 'url(#above)' });
    this.lens = new Shape(inside, 'ellipse', { class: 'lens' });
    this.bar = new Shape(inside, 'rect', { class: 'bar', height: BAR_THICK });
    this.arrow = new Shape(inside, 'path', { class: 'arrow' });
    this.stroke = new Shape(inside, 'rect', {
      class: 'stroke',
      height: STROKE_THICK,
      rx: STROKE_THICK / 2,
    });
    this.number = new Shape(inside, 'text', { class: 'number' });
    this.word = new Shape(inside, 'text', { class: 'word' });
  }

  /** Puts the column where it belongs; texts stay. */
  place(layout: Layout, index: number): void {
    const x = columnX(layout, index);
    const half = layout.columnWidth / 2;
    const stroke = layout.columnWidth * 0.37;
    this.past.set({ x: x - half - 0.5, width: layout.columnWidth + 1 });
    this.now.set({ x: x - stroke, width: stroke * 2 });
    for (const shape of [this.lit, this.lens, this.halo]) shape.set({ cx: x });
    this.number.set({
      x,
      y: layout.numberLine + (index % layout.numberRows) * layout.numberSize * 1.02,
      'font-size': layout.numberSize,
    });
    this.word.set({
      x,
      y: layout.wordLine + (index % Math.max(1, layout.wordRows)) * layout.letter * 1.16,
      'font-size': layout.letter,
    });
  }

  show(layout: Layout, index: number, picture: Picture): void {
    const x = columnX(layout, index);
    const { cy, rx, ry, arrow, shape } = picture;
    const away = picture.now === null ? 'started-or-none' : picture.nowAbove ? 'far' : 'near';
    this.group.set({ class: `room ${picture.standing} shape-${shape} now-${away}` });
    const now = picture.now ?? 0;
    this.past.set({ height: now });
    this.now.set({ y: now - NOW_THICK / 2 });
    if (picture.nowAbove) this.nowUp.set({ transform: `translate(${round(x)} ${now - 9})` });
    if (shape === 'stroke') {
      this.stroke.set({ x: x - rx * 0.85, y: cy - STROKE_THICK / 2, width: rx * 1.7 });
    } else if (shape !== 'none') {
      this.lens.set({ cy, rx, ry });
      this.lit.set({ cy, rx, ry });
      if (shape === 'disc') this.halo.set({ cy, rx: rx * 2.1, ry: ry * 2.1 });
      this.bar.set({ x: x - rx - 8, y: cy - BAR_THICK / 2, width: 2 * rx + 16 });
    }
    this.arrow.set({
      d: arrow === 'up' ? ARROW_UP : arrow === 'down' ? ARROW : 'M0 0',
      transform: `translate(${round(x)} ${round(arrow === 'up' ? cy - ry - 14 : cy + ry + 14)})`,
    });
  }

  say(number: string, word: string): void {
    this.number.text(number);
    this.word.text(word);
  }

  remove(): void {
    this.group.remove();
  }
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
