import type { RoomPart, SuitePart } from '../generated/wire.ts';
import { clockTime } from '../look/index.ts';
import { Column } from './column.ts';
import {
  axis,
  heightOf,
  layOut,
  type Layout,
  NOW_WORD,
  spread,
  textWidth,
  WIDTH,
} from './geometry.ts';
import { Shape } from './svg.ts';
import type { WordSetting } from './words.ts';

/** What the horizon draws. */
export interface Skyline {
  readonly suite: SuitePart | undefined;
  /** In the wall's order. */
  readonly rooms: readonly RoomPart[];
  readonly now: number;
}

/** Minutes before and after the target that are marked where there is room. */
const MARKS = [-20, -10, 10] as const;

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
  private readonly rules: readonly { minutes: number; rule: Shape }[];
  /** Words beside the line. */
  private readonly words: readonly Shape[];
  private readonly now: Shape;
  private readonly under: Shape;
  private readonly over: Shape;
  private readonly columns = new Map<string, Column>();
  private layout: Layout | null = null;
  private layoutKey = '';
  private setting: WordSetting = { zone: 'UTC', horizon: undefined, draft: false };
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
    this.under = new Shape(svg, 'g');
    this.line = new Shape(svg, 'line', { class: 'line', x1: 0, x2: WIDTH });
    this.over = new Shape(svg, 'g');
    this.rules = MARKS.map((minutes) => ({
      minutes,
      rule: new Shape(this.under.element, 'line', { class: 'rule', x2: WIDTH }),
    }));
    this.words = MARKS.map(() => new Shape(svg, 'text', { class: 'mark' }));
    this.now = new Shape(svg, 'text', { class: 'now-word' });
    this.target = new Shape(svg, 'text', { class: 'target' });
  }

  /** @param height in units of 1/1920 of the width; draw again afterwards */
  resize(height: number): void {
    this.height = Math.max(200, height);
  }

  draw(skyline: Skyline): Layout {
    const { rooms, suite, now } = skyline;
    const setting = this.settingOf(suite);
    const columns = rooms.map((room) => this.columnOf(room.key));
    const words = rooms.map((room, index) => columns[index]!.wording(room, setting));
    const before = this.layout;
    const layout = this.layOutFor(rooms, words, setting);
    // Suns rise and sink slowly because the morning moves, not because the screen was laid out.
    this.root.set({ class: layout === before ? '' : 'still' });
    rooms.forEach((room, index) => {
      const last = index === rooms.length - 1;
      columns[index]!.update(room, { layout, index, last, now, draft: setting.draft });
    });
    if (this.columns.size > rooms.length) this.removeOthers(rooms);
    if (layout.strip > 0) figuresInStrip(columns, layout);
    this.beside(layout, setting, this.minutesToNow(rooms, setting, now));
    return layout;
  }

  describe(words: string): void {
    this.root.set({ 'aria-label': words });
  }

  private columnOf(key: string): Column {
    let column = this.columns.get(key);
    if (!column) {
      column = new Column(this.under.element, this.over.element);
      this.columns.set(key, column);
    }
    return column;
  }

  private removeOthers(rooms: readonly RoomPart[]): void {
    const there = new Set(rooms.map((room) => room.key));
    for (const [key, column] of this.columns) {
      if (there.has(key)) continue;
      column.remove();
      this.columns.delete(key);
    }
  }

  /** The same object as long as nothing in it changes. */
  private settingOf(suite: SuitePart | undefined): WordSetting {
    const next = {
      zone: suite?.zone ?? 'UTC',
      horizon: suite?.horizon,
      draft: suite?.phase === 'draft',
    };
    const now = this.setting;
    const same = now.zone === next.zone && now.horizon === next.horizon && now.draft === next.draft;
    if (!same) this.setting = next;
    return this.setting;
  }

  private layOutFor(
    rooms: readonly RoomPart[],
    words: readonly { readonly long: string; readonly short: string }[],
    setting: WordSetting,
  ): Layout {
    let key = `${this.height}|${setting.zone}|${setting.horizon}`;
    rooms.forEach((room, index) => (key += `|${room.room}/${words[index]!.long}`));
    if (this.layout && key === this.layoutKey) return this.layout;
    this.layoutKey = key;
    const next = layOut(
      rooms.map((room) => room.room),
      { long: words.map((one) => one.long), short: words.map((one) => one.short) },
      this.height,
      this.letter,
    );
    const { horizon, zone } = setting;
    // Another word alone moves nothing: then the layout stays the same object.
    if (!this.layout || !sameLayout(this.layout, next)) this.layout = next;
    this.backdrop(this.layout, horizon === undefined ? '' : clockTime(horizon, zone));
    return this.layout;
  }

  private backdrop(layout: Layout, horizon: string): void {
    const { line, height, left, letter } = layout;
    this.root.set({ viewBox: `0 0 ${WIDTH} ${height}` });
    this.sky.set({ height: line });
    this.above.set({ height: line });
    this.ground.set({ y: line, height: height - line });
    this.line.set({ y1: line, y2: line });
    this.target.set({ x: 14, y: line + letter * 0.34, 'font-size': letter });
    this.target.text(horizon);
    for (const { minutes, rule } of this.rules) {
      const y = heightOf(layout, minutes);
      rule.set({ x1: left, y1: y, y2: y });
    }
  }

  /** Minutes from the horizon's time to now, while a room that waits has its stroke there. */
  private minutesToNow(
    rooms: readonly RoomPart[],
    { horizon, draft }: WordSetting,
    now: number,
  ): number | null {
    if (horizon === undefined || draft) return null;
    const stroke = rooms.some(
      (room) => room.target === horizon && !['started', 'none'].includes(room.standing),
    );
    return stroke ? (now - horizon) / 60_000 : null;
  }

  private beside(layout: Layout, setting: WordSetting, minutes: number | null): void {
    const { left, letter } = layout;
    const marks = setting.horizon === undefined ? [] : MARKS;
    const { early, late, now } = axis(layout, marks, minutes);
    const words = setting.horizon === undefined ? [] : [...early, ...late];
    this.words.forEach((shape, i) => {
      const word = words[i];
      shape.text(word?.text ?? '');
      if (word) shape.set({ x: left - 14, y: word.y + letter * 0.34, 'font-size': letter });
    });
    this.now.text(now ? NOW_WORD : '');
    if (!now) return;
    const anchor = now.end ? 'end' : 'start';
    this.now.set({
      x: now.x,
      y: now.y + letter * 0.3,
      'font-size': letter,
      'text-anchor': anchor,
    });
  }
}

/** Minutes of late starts outside the scale, under it: the latest ones if they have no room. */
function figuresInStrip(columns: readonly Column[], layout: Layout): void {
  const { letter, left } = layout;
  let shown = columns.flatMap((column) => {
    const figure = column.stripFigure;
    const width = figure ? textWidth(figure.text, letter, true) + letter * 0.4 : 0;
    return figure ? [{ column, ...figure, width }] : [];
  });
  let middles = spread(shown, left, WIDTH);
  while (!middles) {
    const least = Math.min(...shown.map((one) => one.minutes));
    const leastLate = shown.find((one) => one.minutes === least)!;
    leastLate.column.inStrip(null);
    shown = shown.filter((one) => one !== leastLate);
    middles = spread(shown, left, WIDTH);
  }
  shown.forEach(({ column }, i) => column.inStrip(middles[i]!));
}

function sameLayout(one: Layout, other: Layout): boolean {
  return (Object.keys(one) as (keyof Layout)[]).every((name) => one[name] === other[name]);
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
