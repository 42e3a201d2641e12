import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import { repeat } from 'lit/directives/repeat.js';
import type { NeedPart } from '../generated/wire.ts';
import { say as sayCommon } from '../look/index.ts';
import { LARGE_LETTER } from './geometry.ts';
import { alsoWords, lookAgain, needFigure, say } from './words.ts';

/** Lines shown at most, and how many of them may be loud. */
export const LINES_MAX = 5;
export const LOUD_MAX = 3;

/** Which lines are loud: nobody has taken them, and at most three. */
export function loudKeys(needs: readonly NeedPart[]): ReadonlySet<string> {
  const untaken = needs.filter((need) => need.takenBy === undefined && need.kind !== 'tight');
  return new Set(untaken.slice(0, LOUD_MAX).map((need) => need.key));
}

/** A line, with the other silent rooms that it speaks for. */
export interface NeedLine {
  readonly need: NeedPart;
  readonly also: readonly string[];
}

/**
 * The lines. Where letters are so large that few fit, rooms that are to be asked because nobody was
 * heard from share one: they want the same of whoever reads it, and late rooms would have none.
 */
export function gathered(needs: readonly NeedPart[], large: boolean): readonly NeedLine[] {
  const silent = (need: NeedPart): boolean =>
    large && need.kind === 'ask' && need.takenBy === undefined && !need.help;
  const all = needs.filter(silent);
  return needs
    .filter((need) => !silent(need) || need === all[0])
    .map((need) => ({ need, also: need === all[0] ? all.slice(1).map((one) => one.room) : [] }));
}

/** How the lines are set for a size of letters and a height, in units of 1/1920 of the width. */
export interface LineSizes {
  readonly lines: number;
  /** Letters are so large that who has taken it stands under the words. */
  readonly twoLines: boolean;
  readonly rowHeight: number;
  readonly words: number;
  readonly taken: number;
  /** Height of the heading over the lines. */
  readonly heading: number;
}

/** What the horizon needs at least, with the numbers of its rooms in one row. */
const SKY_LEAST = 350;

/**
 * As many of five lines as fit beside the horizon.
 *
 * @param letter the smallest letters
 * @param height what there is for horizon and lines together
 * @param numberRows rows of rooms' numbers under the horizon
 */
export function lineSizes(letter: number, height: number, numberRows = 1): LineSizes {
  const twoLines = letter > LARGE_LETTER;
  const words = Math.max(letter, Math.min(52, letter * 1.5));
  const rowHeight = twoLines ? (words + letter) * 1.08 : words * 1.42;
  const heading = twoLines ? letter * 1.1 : letter * 1.2 + 6;
  const sky = SKY_LEAST + (numberRows - 1) * letter;
  const lines = Math.floor((height - sky - heading) / rowHeight);
  return {
    lines: Math.max(1, Math.min(LINES_MAX, lines)),
    twoLines,
    rowHeight,
    words,
    taken: letter,
    heading,
  };
}

/** The lines of *needs someone*. */
@customElement('sunup-needs')
export class SunupNeeds extends LitElement {
  /** In the order in which they stand. */
  @property({ attribute: false }) needs: readonly NeedPart[] = [];
  @property({ attribute: false }) sizes: LineSizes = lineSizes(34, 400);
  @property({ attribute: false }) zone = 'UTC';
  /** The morning's time in whole minutes, so that a second changes nothing here. */
  @property({ attribute: false }) minute = 0;
  @property({ type: Boolean }) old = false;

  static override styles = css`
    :host {
      display: block;
      position: relative;
      height: 100%;
    }
    .row {
      position: absolute;
      inset: 0 0 auto 0;
      box-sizing: border-box;
      height: calc(var(--row) * var(--u));
      border-top: 2px solid var(--rule);
      display: grid;
      grid-template-columns: 2.2em minmax(3.9em, max-content) 1fr auto;
      align-items: center;
      column-gap: calc(16 * var(--u));
      font-size: calc(var(--words) * var(--u));
      line-height: 1.1;
      transition: transform calc(var(--slow) * 1.5) ease-in-out;
      white-space: nowrap;
    }
    .two .row {
      grid-template-rows: 1fr 1fr;
      line-height: 1.02;
    }
    .two .words {
      align-self: end;
      padding-bottom: 0.06em;
    }
    .two .taken {
      grid-column: 3;
      align-self: start;
      text-align: left;
    }
    .two .room,
    .two .figure {
      grid-row: 1 / 3;
    }
    .room {
      font-size: 1.25em;
      font-weight: 750;
    }
    .figure {
      font-weight: 700;
      justify-self: start;
      line-height: 1.16;
      padding: 0 0.24em;
      margin-left: -0.24em;
      border-radius: 0.14em;
      color: var(--ember);
    }
    .tight .figure {
      color: var(--amber);
    }
    .ask .figure,
    .help .figure {
      color: var(--sky);
    }
    .loud .figure {
      background: var(--ember);
      color: var(--on-loud);
    }
    .loud.ask .figure,
    .loud.help .figure {
      background: var(--sky);
    }
    .words {
      font-weight: 500;
      overflow: hidden;
      text-overflow: ellipsis;
    }
    .taken {
      font-size: calc(var(--taken) * var(--u));
      color: var(--dim);
      text-align: right;
    }
    .taken b {
      color: var(--ink);
      font-weight: 650;
    }
    .taken .asks {
      color: var(--sky);
    }
    .old .loud .figure {
      background: none;
      color: var(--ink);
    }
  `;

  override render() {
    const { sizes } = this;
    const lines = gathered(this.needs, sizes.twoLines);
    const also = new Map(lines.map((line) => [line.need.key, line.also]));
    const shown = lines.slice(0, sizes.lines).map((line) => line.need);
    const loud = loudKeys(shown);
    const places = new Map(shown.map((need, place) => [need.key, place]));
    // Elements stay in one order; places change by moving, so that a change can be followed.
    const steady = [...shown].sort((a, b) => (a.key < b.key ? -1 : 1));
    // Set as a property: a style attribute is not allowed by the content security policy.
    const style = `--row: ${sizes.rowHeight}; --words: ${sizes.words}; --taken: ${sizes.taken}`;
    return html`<div
      role="list"
      class=${classMap({ two: sizes.twoLines, old: this.old })}
      .style=${style}
    >
      ${repeat(
        steady,
        (need) => need.key,
        (need) => this.row(need, places.get(need.key)!, loud.has(need.key), also.get(need.key)!),
      )}
    </div>`;
  }

  private row(need: NeedPart, place: number, loud: boolean, also: readonly string[]) {
    const classes = { row: true, [need.kind]: true, loud };
    return html`<div
      role="listitem"
      class=${classMap(classes)}
      .style=${`transform: translateY(${place * 100}%)`}
    >
      <span class="room">${need.room}</span>
      <span class="figure">${this.old ? '–' : needFigure(need)}</span>
      <span class="words">${need.words}</span>
      <span class="taken"
        >${this.old ? nothing : also.length > 0 ? alsoWords(also) : this.taken(need)}</span
      >
    </div>`;
  }

  private taken(need: NeedPart) {
    // A line of kind help says so in its words already.
    if (need.help && need.kind !== 'help') {
      const asks = html`<b class="asks">${sayCommon('asks')}</b>`;
      return need.takenBy ? html`${asks} · ${sayCommon(`role.${need.takenBy}`)}` : asks;
    }
    if (need.takenBy === undefined) return say('need.nobody');
    const again = lookAgain(need, this.zone, this.minute * 60_000);
    const role = html`<b>${sayCommon(`role.${need.takenBy}`)}</b>`;
    if (!again) return role;
    return again === say('need.look-now')
      ? html`${role} · <b>${again}</b>`
      : html`${role} · ${again}`;
  }
}
