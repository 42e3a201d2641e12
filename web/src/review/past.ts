import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { clockTime, dateWords } from '../look/index.ts';
import { Past, type PastMorning } from '../wall/past.ts';
import { readSettings, smallestLetters } from '../wall/settings.ts';
import '../wall/wall.ts';

const MINUTE_MS = 60_000;
const TICK_MS = 200;

/** Minutes of the morning in a real second. */
const SPEEDS = [1, 2, 5, 10, 30] as const;

const NO_KEYS = 'input, select';

/** Where the figures of a past morning come from. */
function sourceWords({ kept, recomputed }: PastMorning): string {
  const log = `Figures as the board kept them (${kept})`;
  const made = `of moments that nobody kept, what today's model says (${recomputed})`;
  if (recomputed === 0) return kept === 0 ? 'No figures were kept' : log;
  return kept === 0 ? `Figures: ${made}` : `${log}; ${made}`;
}

/**
 * A past morning on the wall's own drawing, over the whole page. A band over the whole width says
 * what it is for as long as it is shown.
 */
@customElement('sunup-past')
export class SunupPast extends LitElement {
  @property({ attribute: false }) morning!: PastMorning;
  @state() private speed: number = 2;
  @state() private playing = false;
  @query('dialog') private dialog!: HTMLDialogElement;

  private past!: Past;
  private timer: ReturnType<typeof setInterval> | undefined;
  private readonly settings = readSettings('');

  static override styles = css`
    dialog {
      width: 100vw;
      height: 100vh;
      max-width: none;
      max-height: none;
      margin: 0;
      padding: 0;
      border: 0;
      box-sizing: border-box;
      display: none;
      grid-template-rows: auto minmax(0, 1fr) auto;
      background: var(--ground);
      color: var(--ink);
      font-family: inherit;
    }
    dialog[open] {
      display: grid;
    }
    .band {
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 0 1.2em;
      padding: 0.35em 1em;
      background: repeating-linear-gradient(135deg, #7cc4ee 0 48px, #a9d8f4 48px 96px);
      color: #10161d;
      border-bottom: 4px solid #10161d;
    }
    .band strong {
      font-size: clamp(1.2rem, 2.2vw, 2.6rem);
      font-weight: 750;
    }
    sunup-wall {
      height: 100%;
      min-height: 0;
    }
    .controls {
      display: flex;
      flex-wrap: wrap;
      align-items: center;
      gap: 0.5rem 0.8rem;
      padding: 0.6rem 1rem;
      background: var(--raised);
      border-top: 2px solid var(--edge);
    }
    button,
    select {
      min-height: 2.6rem;
      padding: 0.2rem 0.9rem;
      font: inherit;
      color: var(--ink);
      background: var(--deep);
      border: 2px solid var(--edge);
      border-radius: 6px;
    }
    :focus-visible {
      outline: 3px solid var(--sun);
      outline-offset: 2px;
    }
    input[type='range'] {
      flex: 1;
      min-width: 12rem;
      accent-color: var(--sun);
    }
    output {
      font-size: 1.5rem;
      font-variant-numeric: tabular-nums;
    }
    .end {
      margin-left: auto;
    }
  `;

  override willUpdate(): void {
    this.past ??= new Past(this.morning);
  }

  override firstUpdated(): void {
    this.dialog.showModal();
    this.renderRoot.querySelector<HTMLElement>('.play')?.focus();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stop();
  }

  private goTo(time: number): void {
    this.past.goTo(time);
    if (this.past.now() >= this.morning.to) this.stop();
    this.requestUpdate();
  }

  private stop(): void {
    clearInterval(this.timer);
    this.playing = false;
  }

  private readonly toggle = (): void => {
    if (this.playing) {
      this.stop();
      return;
    }
    if (this.past.now() >= this.morning.to) this.past.goTo(this.morning.from);
    this.playing = true;
    this.timer = setInterval(
      () => this.goTo(this.past.now() + (this.speed * MINUTE_MS * TICK_MS) / 1000),
      TICK_MS,
    );
  };

  private step(minutes: number): void {
    this.stop();
    this.goTo(Math.floor(this.past.now() / MINUTE_MS) * MINUTE_MS + minutes * MINUTE_MS);
  }

  private faster(by: number): void {
    const at = SPEEDS.indexOf(this.speed as (typeof SPEEDS)[number]) + by;
    this.speed = SPEEDS[Math.max(0, Math.min(SPEEDS.length - 1, at))]!;
  }

  private readonly onKey = (event: KeyboardEvent): void => {
    const target = event.composedPath()[0];
    const own = target instanceof Element && target.matches(NO_KEYS);
    const onButton = target instanceof Element && target.matches('button');
    if (own || event.altKey || event.ctrlKey || event.metaKey) return;
    const keys: Record<string, () => void> = {
      ArrowLeft: () => this.step(-1),
      ArrowRight: () => this.step(1),
      PageUp: () => this.step(-10),
      PageDown: () => this.step(10),
      ArrowUp: () => this.faster(1),
      ArrowDown: () => this.faster(-1),
      Home: () => this.goTo(this.morning.from),
      End: () => this.goTo(this.morning.to),
      // A button that has the focus takes the space bar itself.
      ...(onButton ? {} : { ' ': this.toggle }),
    };
    const does = keys[event.key];
    if (does === undefined) return;
    event.preventDefault();
    does();
  };

  private readonly close = (): void => this.dialog.close();

  override render(): TemplateResult {
    const { morning, past } = this;
    const title = `Past morning, ${dateWords(morning.date)} ${morning.date.slice(0, 4)}`;
    return html`<dialog
      aria-label=${title}
      @keydown=${this.onKey}
      @close=${() => {
        this.stop();
        this.remove();
        this.dispatchEvent(new Event('over'));
      }}
    >
      <div class="band">
        <strong>${title}</strong>
        <span>It is over: nothing here happens now. ${sourceWords(morning)}.</span>
      </div>
      <sunup-wall
        .live=${past}
        .settings=${this.settings}
        .style=${`--letter: ${smallestLetters(this.settings)}`}
      ></sunup-wall>
      ${this.controls()}
    </dialog>`;
  }

  private controls(): TemplateResult {
    const { morning, past } = this;
    const time = clockTime(past.now(), morning.zone);
    return html`<div class="controls" role="group" aria-label="Playing the past morning">
      <button class="play" type="button" @click=${this.toggle}>
        ${this.playing ? 'Pause' : 'Play'}
      </button>
      <button type="button" @click=${() => this.step(-1)}>Minute back (←)</button>
      <button type="button" @click=${() => this.step(1)}>Minute on (→)</button>
      <label>
        minutes a second (↑ ↓)
        <select
          @change=${(event: Event) => {
            this.speed = Number((event.currentTarget as HTMLSelectElement).value);
          }}
        >
          ${SPEEDS.map((s) => html`<option value=${s} ?selected=${s === this.speed}>${s}</option>`)}
        </select>
      </label>
      <output>${time}</output>
      <input
        type="range"
        aria-label="moment of the past morning"
        aria-valuetext=${time}
        min=${morning.from}
        max=${morning.to}
        step=${MINUTE_MS}
        .value=${String(Math.floor(past.now() / MINUTE_MS) * MINUTE_MS)}
        @input=${(event: Event) => {
          this.stop();
          this.goTo(Number((event.currentTarget as HTMLInputElement).value));
        }}
      />
      <span role="status">${this.playing ? nothing : `paused at ${time}`}</span>
      <button class="end" type="button" @click=${this.close}>Close (Esc)</button>
    </div>`;
  }
}

/**
 * Shows a past morning in the place of the page, which comes back as it was when it is closed.
 *
 * @param page what is hidden meanwhile
 * @param from has the focus again afterwards
 */
export function showPast(morning: PastMorning, page: HTMLElement, from: HTMLElement | null): void {
  const scrolled = scrollY;
  const shown = document.createElement('sunup-past') as SunupPast;
  shown.className = 'night';
  shown.morning = morning;
  shown.addEventListener('over', () => {
    page.style.display = '';
    scrollTo(0, scrolled);
    from?.focus();
  });
  page.style.display = 'none';
  document.body.append(shown);
}
