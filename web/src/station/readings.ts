import { html, nothing, svg, type TemplateResult } from 'lit';
import type { ItemPart } from '../generated/wire.ts';
import { keyOf, short } from '../hands/items.ts';
import { reading, shownLeast, shownMost, shownUnit, withUnit } from '../words/index.ts';
import { fetchReadings, type Series, slowWords } from '../hands/readings.ts';

/** Milliseconds between two questions if the first had no answer. */
const AGAIN_MS = 10_000;

/** The room's readings over the last mornings: asked for once today's is on the board. */
export class RoomReadings {
  private series: readonly Series[] = [];
  private shownFor = '';
  private notBefore = 0;
  private readonly room: string;
  private readonly changed: () => void;

  constructor(room: string, changed: () => void) {
    this.room = room;
    this.changed = changed;
  }

  /** Asks the board again when a reading of today was entered, changed or taken back. */
  follow(items: readonly ItemPart[]): void {
    const entered = items.filter((i) => i.evidence?.kind === 'number');
    const key = entered.map((i) => `${i.item} ${i.revision}`).join();
    if (key === this.shownFor || performance.now() < this.notBefore) {
      return;
    }
    this.shownFor = key;
    this.series = this.series.filter((s) => entered.some((i) => keyOf(i) === s.item));
    if (key === '') {
      return;
    }
    void fetchReadings(this.room).then(
      (series) => {
        if (this.shownFor === key) {
          this.series = series;
          this.changed();
        }
      },
      () => {
        // Asked again when the page is next drawn, but not at once.
        this.notBefore = performance.now() + AGAIN_MS;
        if (this.shownFor === key) this.shownFor = '';
      },
    );
  }

  /** What is not read yet has no plot, also where the room's first case has a reading of today. */
  of(item: ItemPart): Series | undefined {
    if (item.evidence?.kind !== 'number') return undefined;
    return this.series.find((s) => s.item === keyOf(item) && s.days.length > 1);
  }

  get slow(): readonly Series[] {
    return this.series.filter((s) => s.slow !== undefined);
  }
}

/** What a slow change is called when somebody is asked to come for it. */
export function technicianFor(series: Series): string {
  return `technician: ${short(series.name)} ${slowWords(series)}`.slice(0, 80);
}

const WIDE = 340;
const HIGH = 104;
const EDGE = 14;

/** The readings as dots, today's filled; the dashed line is where good ends. */
export function plot(series: Series | undefined): TemplateResult | typeof nothing {
  if (!series) {
    return nothing;
  }
  const { days, unit } = series;
  const limit = series.low ?? series.high;
  const end = series.low === undefined ? shownMost : shownLeast;
  const values = [...days.map((d) => d.value), ...(limit === undefined ? [] : [limit])];
  const least = Math.min(...values);
  const most = Math.max(...values);
  const x = (i: number) => EDGE + (i * (WIDE - 2 * EDGE)) / Math.max(1, days.length - 1);
  const y = (v: number) =>
    HIGH - EDGE - ((v - least) * (HIGH - 2 * EDGE)) / Math.max(1e-9, most - least);
  const first = days[0]!;
  const last = days.at(-1)!;
  const said = `${days.length} mornings, ${first.date} ${reading(first.value, unit)} to today ${reading(last.value, unit)}`;
  return html`<figure class="plot">
    <svg viewBox="0 0 ${WIDE} ${HIGH}" role="img" aria-label=${said}>
      ${
        limit === undefined
          ? nothing
          : svg`<line class="limit" x1="0" x2=${WIDE} y1=${y(limit)} y2=${y(limit)} />`
      }
      <polyline points=${days.map((d, i) => `${x(i)},${y(d.value)}`).join(' ')} />
      ${days.map(
        (d, i) =>
          svg`<circle class=${i === days.length - 1 ? 'now' : ''} cx=${x(i)} cy=${y(d.value)} r=${
            i === days.length - 1 ? 7 : 5
          } />`,
      )}
    </svg>
    <figcaption>
      ${said}${limit === undefined ? '' : ` · dashed: ${withUnit(end(limit, unit), shownUnit(unit))}`}${
        series.slow ? html`<b>${slowWords(series)}</b>` : nothing
      }
    </figcaption>
  </figure>`;
}
