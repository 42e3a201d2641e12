import { LitElement, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { NeedPart, RoomPart, SuitePart } from '../generated/wire.ts';
import { LiveController, type Live } from '../live/index.ts';
import { badge, clockTime, say as sayCommon } from '../look/index.ts';
import { type Layout, numberRows, WIDTH } from './geometry.ts';
import { Horizon } from './horizon.ts';
import { legendBeside, legendIn, type LegendOf } from './legend.ts';
import { gathered, type LineSizes, lineSizes } from './needs.ts';
import './needs.ts';
import { Past } from './past.ts';
import { smallestLetters, type WallSettings } from './settings.ts';
import { skyStyles } from './sky.css.ts';
import { wallStyles } from './wall.css.ts';
import { belowTheLine, calm, type Calm, calmOld, countWords, headingWords, say } from './words.ts';

const MINUTE_MS = 60_000;

/** What is on the wall. */
interface Drawn {
  readonly suite: SuitePart | undefined;
  readonly rooms: readonly RoomPart[];
  readonly needs: readonly NeedPart[];
}

/**
 * The wall: the horizon and who needs someone, to be read in three seconds. It is drawn when the
 * picture changes and at each heartbeat, and by no clock of its own: if the board stops, it stops.
 */
@customElement('sunup-wall')
export class SunupWall extends LitElement {
  /** The board, or a morning that is over; only a live one can be proved. */
  @property({ attribute: false }) live!: Live | Past;
  @property({ attribute: false }) settings!: WallSettings;
  @state() private height = 1080;
  @state() private fits = true;
  @state() private bare = false;

  private horizon: Horizon | null = null;
  private readonly observer = new ResizeObserver(() => this.resized());
  private drawnNow = 0;
  private drawn: Drawn = { suite: undefined, rooms: [], needs: [] };
  /** Since when the picture is not live; null if it never was, undefined while it is. */
  private oldSince: number | null | undefined;
  private sortedOf: readonly RoomPart[] = [];
  private sorted: readonly RoomPart[] = [];
  private numberRows = 1;

  static override styles = [wallStyles, skyStyles];

  override connectedCallback(): void {
    super.connectedCallback();
    if (!this.controlled && !(this.live instanceof Past)) new LiveController(this, this.live);
    this.controlled = true;
    this.live.addEventListener(this.beating, this.onBeat);
  }

  private controlled = false;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.observer.disconnect();
    this.live.removeEventListener(this.beating, this.onBeat);
  }

  /** What draws it again: a past morning has no heart. */
  private get beating(): string {
    return this.live instanceof Past ? 'change' : 'beat';
  }

  private readonly onBeat = (): void => this.requestUpdate();

  private get letter(): number {
    return smallestLetters(this.settings);
  }

  /** Header and caution, in units. */
  private get frameHeight(): number {
    return Math.max(this.letter * 1.3, 76) + this.letter * 1.2 + 40;
  }

  private get suite(): SuitePart | undefined {
    return this.live.list('suite')[0];
  }

  /** The rooms in the wall's order; sorted again only if one of them changed. */
  private get rooms(): readonly RoomPart[] {
    const list = this.live.list('room');
    if (list !== this.sortedOf) {
      this.sortedOf = list;
      this.sorted = [...list].sort((a, b) => a.order - b.order);
      const names = this.sorted.map((room) => room.room);
      this.numberRows = numberRows(names, this.letter);
    }
    return this.sorted;
  }

  override firstUpdated(): void {
    const sky = this.renderRoot.querySelector('.sky')!;
    this.horizon = new Horizon(sky, this.letter);
    this.observer.observe(sky);
    this.observer.observe(this);
    this.resized();
  }

  private resized(): void {
    const unit = this.clientWidth / WIDTH || 1;
    const sky = this.renderRoot.querySelector('.sky')!;
    this.horizon?.resize(Math.round(sky.clientHeight / unit));
    this.height = Math.round(this.clientHeight / unit);
    this.requestUpdate();
  }

  override updated(_changed: PropertyValues): void {
    const { suite, rooms } = this.drawn;
    const layout = this.horizon?.draw({ suite, rooms, now: this.drawnNow });
    if (layout) this.laidOut(layout);
    this.horizon?.describe(countWords(suite, rooms, this.drawnNow, this.oldSince));
  }

  private laidOut(layout: Layout): void {
    this.fits = layout.fits;
    this.bare = layout.wordRows === 0;
  }

  override render() {
    const { live } = this;
    const old = live.state.stale;
    // What is not live any more stays as it was, at the time at which it was.
    this.drawnNow = old ? (live.lastLiveAt ?? live.now()) : live.now();
    if (!old || live.lastLiveAt === null) {
      this.drawn = { suite: this.suite, rooms: this.rooms, needs: this.ordered() };
    }
    this.oldSince = old ? live.lastLiveAt : undefined;
    const { suite, rooms, needs } = this.drawn;
    const sizes = lineSizes(this.letter, this.height - this.frameHeight, this.numberRows);
    const words = this.insteadOfLines();
    const legend = this.legend(sizes, words !== null);
    return html`
      ${live instanceof Past ? nothing : html`<sunup-banner .live=${live}></sunup-banner>`}
      <main class=${old ? 'old' : ''}>
        ${this.header(suite, rooms, old)}
        <div class="sky"></div>
        <section class="needs">
          ${words ? nothing : this.heading(this.drawn, sizes)}
          <div class="lines" .style=${`--lines: ${linesHeight(sizes, words !== null)}`}>
            ${
              words
                ? html`<div class="calm">
                    <h2>${words.head}</h2>
                    <p>${words.text}</p>
                  </div>`
                : html`<sunup-needs
                    .needs=${needs}
                    .sizes=${sizes}
                    .zone=${suite?.zone ?? 'UTC'}
                    .minute=${Math.floor(this.drawnNow / MINUTE_MS)}
                    ?old=${old}
                  ></sunup-needs>`
            }
            ${legend ?? nothing}
          </div>
        </section>
        <footer>
          <span>${say('caution')}${this.remarks()}</span>${legend ? nothing : this.besideCaution()}
        </footer>
      </main>
    `;
  }

  private get legendOf(): LegendOf {
    return { bare: this.bare, ticks: this.numberRows > 1 };
  }

  /** It is told of a live morning only: of others the words say what is to be known. */
  private get tellsLegend(): boolean {
    return this.oldSince === undefined && this.drawn.suite?.phase === 'open';
  }

  /** What the signs mean, where lines or calm words leave room for it. */
  private legend(sizes: LineSizes, calm: boolean) {
    if (!this.tellsLegend) return null;
    const wanted = gathered(this.drawn.needs, sizes.twoLines).length;
    const lines = Math.min(sizes.lines, wanted);
    const free = calm
      ? linesHeight(sizes, calm) - calmHeight(this.letter)
      : (sizes.lines - lines) * sizes.rowHeight;
    return legendIn(this.legendOf, this.letter, free, performance.now());
  }

  private besideCaution() {
    if (!this.tellsLegend || !this.fits || this.settings.wrong.length > 0) return nothing;
    return legendBeside(this.legendOf, this.letter, say('caution'), performance.now()) ?? nothing;
  }

  private header(suite: SuitePart | undefined, rooms: readonly RoomPart[], old: boolean) {
    const { live } = this;
    const clock = suite ? clockTime(this.drawnNow, suite.zone) : '';
    const late = suite?.phase === 'open' && !old ? belowTheLine(rooms).length : 0;
    return html`<header>
      <div class="facts">
        <h1>${countWords(suite, rooms, this.drawnNow, this.oldSince)}</h1>
        ${live instanceof Past ? html`<span class="demo">${say('past')}</span>` : badge(live)}
        ${late > 0 ? html`<span class="late">${say('late', { rooms: late })}</span>` : nothing}
        ${
          suite && suite.quiet > 0 && suite.phase === 'open' && !old
            ? html`<span class="quiet">${say('quiet', { rooms: suite.quiet })}</span>`
            : nothing
        }
        ${
          suite?.figuresOf !== undefined && !old
            ? html`<span class="old-figures"
                >${sayCommon('figures.old', { time: clockTime(suite.figuresOf, suite.zone) })}</span
              >`
            : nothing
        }
        ${suite ? html`<span class="place">${placeWords(suite)}</span>` : nothing}
      </div>
      <span class="clock">${old ? '--:--' : clock}</span>
      ${live instanceof Past ? nothing : html`<sunup-mark .live=${live}></sunup-mark>`}
    </header>`;
  }

  /** What stands where the list would, if anything does. */
  private insteadOfLines(): Calm | null {
    const { suite, rooms, needs } = this.drawn;
    const said = calm(suite, rooms, needs, this.drawnNow);
    return said && this.oldSince !== undefined
      ? calmOld(said, this.oldSince, suite?.zone ?? 'UTC')
      : said;
  }

  private heading({ suite, rooms, needs }: Drawn, sizes: LineSizes) {
    // Set as a property: a style attribute is not allowed by the content security policy.
    const style = `--heading: ${sizes.heading}`;
    if (suite && typeof this.oldSince === 'number') {
      const old = say('needs.old', { time: clockTime(this.oldSince, suite.zone) });
      return html`<h2 .style=${style}>${old}</h2>`;
    }
    const rest = gathered(needs, sizes.twoLines).slice(sizes.lines);
    const listed = new Set(needs.map((need) => need.room));
    const more = belowTheLine(rooms).filter((room) => !listed.has(room.room)).length;
    const said = headingWords(rest, more, this.letter);
    return html`<h2 .style=${style}>
      ${say('needs')}${said.map(({ text, asks }) => html` · <b class=${asks ? 'asks' : ''}>${text}</b>`)}
    </h2>`;
  }

  private remarks() {
    const { settings } = this;
    const remarks = [...settings.wrong];
    if (!this.fits) {
      remarks.push(say('letters.small', { metres: settings.metres, inches: settings.inches }));
    }
    return remarks.map((remark) => html` · <strong>${remark}</strong>`);
  }

  /** The lines in the board's order, which changes seldom and is the same on every screen. */
  private ordered(): readonly NeedPart[] {
    return [...this.live.list('need')].sort((a, b) => a.rank - b.rank);
  }
}

function placeWords(suite: SuitePart): string {
  return suite.phase === 'none' ? suite.suite : `${suite.hospital} · ${suite.suite}`;
}

/** What calm words take, as they are set. */
function calmHeight(letter: number): number {
  return 1.2 * (Math.max(letter * 1.2, 84) + Math.max(letter, 46)) + letter;
}

/** Without a heading the lines' place is as much higher, so that the horizon stays where it is. */
function linesHeight(sizes: LineSizes, calm: boolean): number {
  return sizes.lines * sizes.rowHeight + (calm ? sizes.heading : 0);
}
