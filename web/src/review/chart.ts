import { css, html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Mark } from './model.ts';

/** One period, cause or bin. */
export interface Point {
  /** Under the chart. */
  label: string;
  value: number | undefined;
  mark: Mark;
  /** The whole of it in words, for the readout. */
  said: string;
}

/** A line through all points; steps where it changes. */
export interface Line {
  kind: 'centre' | 'limit' | 'plain';
  values: readonly (number | undefined)[];
}

const WIDTH = 960;
const HEIGHT = 250;
const LEFT = 52;
const RIGHT = 12;
const TOP = 14;
const BOTTOM = 30;

/**
 * A chart of points in order of time with lines, or of bars. One stop for the keyboard: arrows go
 * from point to point, and what a point says stands below and is read out.
 */
@customElement('sunup-chart')
export class Chart extends LitElement {
  static override styles = css`
    :host {
      display: block;
    }
    svg {
      display: block;
      width: 100%;
      height: auto;
      overflow: visible;
    }
    svg:focus-visible {
      outline: 3px solid var(--sky);
      outline-offset: 2px;
    }
    text {
      font-size: 14px;
      fill: var(--dim);
      font-family: inherit;
    }
    .grid {
      stroke: var(--rule);
      stroke-width: 1;
    }
    .centre {
      fill: none;
      stroke: var(--ink);
      stroke-width: 2;
    }
    .limit {
      fill: none;
      stroke: var(--edge);
      stroke-width: 1.5;
      stroke-dasharray: 7 4;
    }
    .plain {
      fill: none;
      stroke: var(--edge);
      stroke-width: 1;
      stroke-dasharray: 1 4;
    }
    .through {
      fill: none;
      stroke: var(--sky);
      stroke-width: 1.5;
    }
    .point {
      fill: var(--sky);
    }
    .run {
      fill: var(--raised);
      stroke: var(--amber);
      stroke-width: 3;
    }
    .beyond {
      fill: var(--ember);
    }
    .bar {
      fill: var(--sky);
    }
    .bar.late {
      fill: var(--ember);
    }
    .here {
      stroke: var(--ink);
      stroke-width: 1;
    }
    .change {
      stroke: var(--amber);
      stroke-width: 2;
    }
    p {
      margin: 2px 0 0;
      min-height: 1.5em;
      font-size: 15px;
    }
    @media print {
      svg {
        max-height: 34mm;
      }
      p {
        display: none;
      }
    }
  `;

  @property({ attribute: false }) points: readonly Point[] = [];
  @property({ attribute: false }) lines: readonly Line[] = [];
  /** Indices of first points after a marked change. */
  @property({ attribute: false }) changes: readonly number[] = [];
  @property({ attribute: false }) scale: (value: number) => string = String;
  @property({ type: Number }) top = 1;
  /** What the chart shows, in a sentence. */
  @property() name = '';
  /** Bars instead of points; those from this index on are drawn as late. */
  @property({ type: Number }) barsLateFrom = -1;

  @state() private at: number | undefined;

  override render(): TemplateResult {
    const said = this.at === undefined ? undefined : this.points[this.at]?.said;
    return html`<svg
        viewBox="0 0 ${WIDTH} ${HEIGHT}"
        role="img"
        tabindex="0"
        aria-label="${this.name} Arrow keys read the points."
        @keydown=${this.onKey}
        @pointermove=${this.onPoint}
        @pointerdown=${this.onPoint}
        @blur=${(): void => {
          this.at = undefined;
        }}
      >
        ${[0, 0.25, 0.5, 0.75, 1].map((part) => this.tick(part * this.top))}
        ${this.lines.map((line) => svg`<path class=${line.kind} d=${this.path(line.values)} />`)}
        ${this.changes.map((i) => {
          const x = (this.x(i) + this.x(i - 1)) / 2;
          return svg`<line class="change" x1=${x} x2=${x} y1=${TOP} y2=${HEIGHT - BOTTOM} />`;
        })}
        ${this.barsLateFrom < 0 ? this.drawnPoints() : this.drawnBars()} ${this.labels()}
        ${
          this.at === undefined
            ? nothing
            : svg`<line class="here" x1=${this.x(this.at)} x2=${this.x(this.at)} y1=${TOP}
              y2=${HEIGHT - BOTTOM} />`
        }
      </svg>
      <p role="status">${said ?? ''}</p>`;
  }

  private readonly onKey = (event: KeyboardEvent): void => {
    const last = this.points.length - 1;
    const next = new Map([
      ['ArrowRight', Math.min(last, (this.at ?? -1) + 1)],
      ['ArrowLeft', Math.max(0, (this.at ?? last + 1) - 1)],
      ['Home', 0],
      ['End', last],
    ]).get(event.key);
    if (next === undefined || last < 0) return;
    event.preventDefault();
    this.at = next;
  };

  private readonly onPoint = (event: PointerEvent): void => {
    const box = (event.currentTarget as SVGElement).getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * WIDTH;
    const count = this.points.length;
    const at = Math.floor(((x - LEFT) / (WIDTH - LEFT - RIGHT)) * count);
    this.at = at >= 0 && at < count ? at : undefined;
  };

  private x(at: number): number {
    const room = WIDTH - LEFT - RIGHT;
    return LEFT + ((at + 0.5) * room) / Math.max(1, this.points.length);
  }

  private y(value: number): number {
    const room = HEIGHT - TOP - BOTTOM;
    return TOP + room * (1 - Math.min(1, Math.max(0, value / this.top)));
  }

  private tick(value: number): unknown {
    const y = this.y(value);
    return svg`<line class="grid" x1=${LEFT} x2=${WIDTH - RIGHT} y1=${y} y2=${y} />
      <text x=${LEFT - 6} y=${y + 5} text-anchor="end">${this.scale(value)}</text>`;
  }

  /** Level over each point; a gap where there is no value. */
  private path(values: readonly (number | undefined)[]): string {
    const half = (this.x(1) - this.x(0)) / 2;
    return values
      .map((value, i) => {
        if (value === undefined) return '';
        const y = this.y(value).toFixed(1);
        const from = (this.x(i) - half).toFixed(1);
        return `${i === 0 || values[i - 1] === undefined ? 'M' : 'L'}${from} ${y}H${(
          this.x(i) + half
        ).toFixed(1)}`;
      })
      .join('');
  }

  private drawnPoints(): unknown {
    const known = this.points
      .map((point, i) => ({ point, i }))
      .filter(({ point }) => point.value !== undefined);
    const through = known
      .map(({ point, i }) => `${this.x(i).toFixed(1)},${this.y(point.value ?? 0).toFixed(1)}`)
      .join(' ');
    const size = this.points.length > 120 ? 2.5 : 4.5;
    return svg`<polyline class="through" points=${through} />
      ${known.map(({ point, i }) => {
        const x = this.x(i);
        const y = this.y(point.value ?? 0);
        return point.mark === 'beyond'
          ? svg`<path class="beyond" d="M${x} ${y - 8}l8 8l-8 8l-8-8z" />`
          : svg`<circle class=${point.mark === 'run' ? 'run' : 'point'} cx=${x} cy=${y}
              r=${point.mark === 'run' ? size + 1 : size} />`;
      })}`;
  }

  private drawnBars(): unknown {
    const wide = Math.max(2, (this.x(1) - this.x(0)) * 0.8);
    return this.points.map((point, i) => {
      const y = this.y(point.value ?? 0);
      return svg`<rect class=${i >= this.barsLateFrom ? 'bar late' : 'bar'} x=${this.x(i) - wide / 2}
        y=${y} width=${wide} height=${HEIGHT - BOTTOM - y} />`;
    });
  }

  private labels(): unknown {
    const every = Math.max(1, Math.ceil(this.points.length / 9));
    return this.points.map((point, i) =>
      i % every === 0
        ? svg`<text x=${this.x(i)} y=${HEIGHT - 8} text-anchor="middle">${point.label}</text>`
        : nothing,
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sunup-chart': Chart;
  }
}
