import { LitElement, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { NeedPart, RoomPart, SuitePart } from '../generated/wire.ts';
import { LiveController, type Live } from '../live/index.ts';
import { badge, clockTime, say as sayCommon } from '../look/index.ts';
import { WIDTH } from './geometry.ts';
import { Horizon } from './horizon.ts';
import { type LineSizes, lineSizes } from './needs.ts';
import './needs.ts';
import { settle, type Shown } from './order.ts';
import { smallestLetters, type WallSettings } from './settings.ts';
import { skyStyles } from './sky.css.ts';
import { wallStyles } from './wall.css.ts';
import { belowTheLine, calm, isOver, say } from './words.ts';

const MINUTE_MS = 60_000;

/**
 * The wall: the horizon and who needs someone, to be read in three seconds. It is drawn when the
 * picture changes and at each heartbeat, and by no clock of its own: if the board stops, it stops.
 */
@customElement('sunup-wall')
export class SunupWall extends LitElement {
  @property({ attribute: false }) live!: Live;
  @property({ attribute: false }) settings!: WallSettings;
  @state() private height = 1080;
  @state() private fits = true;

  private horizon: Horizon | null = null;
  private shown: Shown | null = null;
  private readonly observer = new ResizeObserver(() => this.resized());
  private drawnNow = 0;
  private sortedOf: readonly RoomPart[] = [];
  private sorted: readonly RoomPart[] = [];

  static override styles = [wallStyles, skyStyles];

  override connectedCallback(): void {
    super.connectedCallback();
    if (!this.controlled) new LiveController(this, this.live);
    this.controlled = true;
    this.live.addEventListener('beat', this.onBeat);
  }

  private controlled = false;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.observer.disconnect();
    this.live.removeEventListener('beat', this.onBeat);
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
    const { suite, rooms } = this;
    const layout = this.horizon?.draw({ suite, rooms, now: this.drawnNow });
    if (layout) this.fits = layout.fits;
    this.horizon?.describe(this.countWords(suite, rooms));
  }

  override render() {
    const { suite, rooms, live } = this;
    const old = live.state.stale;
    // What is not live any more keeps the time at which it was.
    this.drawnNow = old ? (live.lastLiveAt ?? live.now()) : live.now();
    const needs = this.ordered();
    const sizes = lineSizes(this.letter, this.height - this.frameHeight);
    const words = calm(suite, rooms, needs.length, this.drawnNow);
    return html`
      <sunup-banner .live=${live}></sunup-banner>
      <main class=${old ? 'old' : ''}>
        ${this.header(suite, rooms, old)}
        <div class="sky"></div>
        <section class="needs">
          ${words || !sizes.heading ? nothing : this.heading(rooms, needs)}
          <div
            class="lines"
            .style=${`--lines: ${linesHeight(sizes, words !== null, this.letter)}`}
          >
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
          </div>
        </section>
        <footer>${say('caution')}${this.remarks()}</footer>
      </main>
    `;
  }

  private header(suite: SuitePart | undefined, rooms: readonly RoomPart[], old: boolean) {
    const clock = suite ? clockTime(this.drawnNow, suite.zone) : '';
    return html`<header>
      <div class="facts">
        <h1>${this.countWords(suite, rooms)}</h1>
        ${badge(this.live)}
        ${
          suite && suite.quiet > 0 && suite.phase === 'open'
            ? html`<span class="quiet">${say('quiet', { rooms: suite.quiet })}</span>`
            : nothing
        }
        ${
          suite?.figuresOf !== undefined
            ? html`<span class="old-figures"
                >${sayCommon('figures.old', { time: clockTime(suite.figuresOf, suite.zone) })}</span
              >`
            : nothing
        }
        ${suite ? html`<span class="place">${placeWords(suite)}</span>` : nothing}
      </div>
      <span class="clock">${old ? '--:--' : clock}</span>
      <sunup-mark .live=${this.live}></sunup-mark>
    </header>`;
  }

  private countWords(suite: SuitePart | undefined, rooms: readonly RoomPart[]): string {
    if (!suite || suite.phase === 'none') return suite?.hospital ?? 'Sunup';
    const figures = { cases: suite.cases, onTime: suite.onTime ?? '–' };
    if (suite.phase === 'draft') return say('count.draft', figures);
    const waiting = rooms.some((room) => !['started', 'none'].includes(room.standing));
    const over = suite.phase === 'closed' || !waiting || isOver(suite, rooms, this.drawnNow);
    if (!over && suite.onTime === undefined) return say('count.no-figures', figures);
    return say(over ? 'count.over' : 'count.on-time', figures);
  }

  private heading(rooms: readonly RoomPart[], needs: readonly NeedPart[]) {
    const listed = new Set(needs.map((need) => need.room));
    const more = belowTheLine(rooms).filter((room) => !listed.has(room.room)).length;
    return html`<h2>
      ${say('needs')}${more ? html` · <b>${say('needs.more', { rooms: more })}</b>` : nothing}
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

  /** The lines in the order in which they stand, which changes seldom. */
  private ordered(): readonly NeedPart[] {
    const byKey = new Map(this.live.list('need').map((need) => [need.key, need]));
    const ranked = [...byKey.values()].sort((a, b) => a.rank - b.rank).map((need) => need.key);
    const stuck = new Set(ranked.filter((key) => byKey.get(key)!.kind === 'stuck'));
    this.shown = settle(this.shown, ranked, performance.now(), this.live.rate, stuck);
    return this.shown.keys.map((key) => byKey.get(key)!);
  }
}

function placeWords(suite: SuitePart): string {
  return suite.phase === 'none' ? suite.suite : `${suite.hospital} · ${suite.suite}`;
}

/** Without a heading the lines' place is as much higher, so that the horizon stays where it is. */
function linesHeight(sizes: LineSizes, calm: boolean, letter: number): number {
  return sizes.lines * sizes.rowHeight + (calm && sizes.heading ? letter * 1.2 + 6 : 0);
}
