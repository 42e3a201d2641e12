import type { RoomPart, SuitePart } from '../generated/wire.ts';
import { clockTime } from '../look/index.ts';
import { Column } from './column.ts';
import { heightOf, layOut, type Layout, picture, WIDTH } from './geometry.ts';
import { Shape } from './svg.ts';
import { roomWord } from './words.ts';

/** What the horizon draws. */
export interface Skyline {
  readonly suite: SuitePart | undefined;
  /** In the wall's order. */
  readonly rooms: readonly RoomPart[];
  readonly now: number;
}

const MARKS = [20, 10, -10] as const;

/**
 * The horizon: one line is every room's target, each room a column. Draws into an SVG that it
 * keeps; each room keeps its element, and only attributes that changed are set.
 */
export class Horizon {
  private readonly root: Shape;
  private readonly sky: Shape;
  private readonly ground: Shape;
  private readonly above: Shape;
  private readonly line: Shape;
  private readonly target: Shape;
  private readonly marks: readonly { minutes: number; text: Shape; rule: Shape }[];
  private readonly roomsGroup: Shape;
  private readonly columns = new Map<string, Column>();
  private layout: Layout | null = null;
  private layoutKey = '';
  private height = 400;
  private readonly letter: number;

  constructor(parent: Element, letter: number) {
    this.letter = letter;
    this.root = new Shape(parent, 'svg', { role: 'img', preserveAspectRatio: 'none' });
    const svg = this.root.element;
    const definitions = new Shape(svg, 'defs').element;
    fillDefinitions(definitions);
    const clip = new Shape(definitions, 'clipPath', { id: 'above' });
    this.above = new Shape(clip.element, 'rect', { x: 0, y: 0, width: WIDTH });
    this.sky = new Shape(svg, 'rect', { x: 0, y: 0, width: WIDTH, fill: 'url(#sky)' });
    this.ground = new Shape(svg, 'rect', { class: 'ground', x: 0, width: WIDTH });
    this.marks = MARKS.map((minutes) => ({
      minutes,
      rule: new Shape(svg, 'line', { class: 'rule', x2: WIDTH }),
      text: new Shape(svg, 'text', { class: 'mark' }),
    }));
    // The line lies over the ceiling of the past and under the suns.
    this.line = new Shape(svg, 'line', { class: 'line', x1: 0, x2: WIDTH });
    this.roomsGroup = new Shape(svg, 'g');
    this.target = new Shape(svg, 'text', { class: 'target' });
  }

  /** @param height in units of 1/1920 of the width; draw again afterwards */
  resize(height: number): void {
    this.height = Math.max(200, height);
  }

  draw(skyline: Skyline): Layout {
    const { rooms, suite, now } = skyline;
    const layout = this.layOutFor(rooms, suite);
    const seen = new Set<string>();
    rooms.forEach((room, index) => {
      seen.add(room.key);
      let column = this.columns.get(room.key);
      if (!column) {
        column = new Column(this.roomsGroup.element);
        this.columns.set(room.key, column);
      }
      column.place(layout, index);
      column.show(layout, index, picture(room, layout, now));
      const short = layout.wordRows !== 1;
      column.say(room.room, layout.wordRows > 0 ? roomWord(room, suite, short) : '');
    });
    for (const [key, column] of this.columns) {
      if (seen.has(key)) continue;
      column.remove();
      this.columns.delete(key);
    }
    return layout;
  }

  describe(words: string): void {
    this.root.set({ 'aria-label': words });
  }

  private layOutFor(rooms: readonly RoomPart[], suite: SuitePart | undefined): Layout {
    const words = rooms.map((room) => roomWord(room, suite, false));
    const horizon = suite?.horizon === undefined ? '' : clockTime(suite.horizon, suite.zone);
    const key = [this.height, horizon, ...rooms.map((room) => room.room), ...words].join('|');
    if (this.layout && key === this.layoutKey) return this.layout;
    this.layoutKey = key;
    const names = rooms.map((room) => room.room);
    this.layout = layOut(names, words, this.height, this.letter);
    this.backdrop(this.layout, horizon);
    return this.layout;
  }

  private backdrop(layout: Layout, horizon: string): void {
    const { line, height, left, letter } = layout;
    this.root.set({ viewBox: `0 0 ${WIDTH} ${height}` });
    this.sky.set({ height: line });
    this.above.set({ height: line });
    this.ground.set({ y: line, height: height - line });
    this.line.set({ y1: line, y2: line });
    this.target.set({ x: 16, y: line + letter * 0.34, 'font-size': letter });
    this.target.text(horizon);
    for (const { minutes, rule, text } of this.marks) {
      const y = heightOf(layout, -minutes);
      rule.set({ x1: left, y1: y, y2: y });
      text.set({ x: left - 18, y: y + letter * 0.34, 'font-size': letter });
      text.text(minutes > 0 ? `${minutes}` : `+${-minutes}`);
    }
  }
}

function fillDefinitions(definitions: Element): void {
  const sky = new Shape(definitions, 'linearGradient', { id: 'sky', x1: 0, y1: 0, x2: 0, y2: 1 });
  for (const [offset, name] of [
    ['0', 'sky-high'],
    ['0.62', 'sky-mid'],
    ['1', 'sky-low'],
  ] as const) {
    new Shape(sky.element, 'stop', { offset, class: name });
  }
  const halo = new Shape(definitions, 'radialGradient', { id: 'halo' });
  new Shape(halo.element, 'stop', { offset: '0.3', class: 'halo-in' });
  new Shape(halo.element, 'stop', { offset: '1', class: 'halo-out' });
  const hatch = new Shape(definitions, 'pattern', {
    id: 'hatch',
    width: 12,
    height: 12,
    patternUnits: 'userSpaceOnUse',
    patternTransform: 'rotate(45)',
  });
  new Shape(hatch.element, 'rect', { class: 'hatch-ground', width: 12, height: 12 });
  new Shape(hatch.element, 'rect', { class: 'hatch-stripe', width: 6, height: 12 });
}
