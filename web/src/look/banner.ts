import { LitElement, css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Live, LiveState } from '../live/index.ts';
import { clockTime } from './time.ts';
import { say } from './words.ts';

interface Band {
  readonly kind: 'stale' | 'warn';
  readonly head: string;
  readonly todo: string;
}

/**
 * What has to be said over the whole width, worst first. Empty when all is well.
 *
 * @param hands the page takes touches of a room's own work, which goes on while the board is away
 */
export function bands(state: LiveState, lastLive: string | null, hands = false): readonly Band[] {
  const found: Band[] = [];
  if (state.noSuite) {
    found.push({ kind: 'stale', head: say('stale.no-suite'), todo: say('stale.no-suite-do') });
  } else if (state.stale && !state.everSeen) {
    found.push({ kind: 'stale', head: say('stale.never'), todo: say('stale.never-do') });
  } else if (state.stale) {
    const head = lastLive ? say('stale.since', { time: lastLive }) : say('stale.since-unknown');
    found.push({ kind: 'stale', head, todo: say(hands ? 'stale.hands-do' : 'stale.do') });
  }
  if (state.full) found.push({ kind: 'warn', head: say('full'), todo: say('full.do') });
  if (state.readOnly && !state.stale) {
    found.push({ kind: 'warn', head: say('read-only'), todo: say('read-only.do') });
  }
  if (!state.durable) {
    found.push({ kind: 'warn', head: say('not-durable'), todo: say('not-durable.do') });
  }
  return found;
}

/**
 * The bands over the whole width of a page: not live, read-only, too much unsent. Put it first in
 * the page. Its letters follow `--banner-size`.
 */
@customElement('sunup-banner')
export class SunupBanner extends LitElement {
  @property({ attribute: false }) live!: Live;
  @property({ type: Boolean }) hands = false;

  static override styles = css`
    :host {
      display: block;
      position: sticky;
      top: 0;
      z-index: 10;
    }
    .band {
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 0 1.2em;
      padding: 0.35em 1em;
      background: var(--loud);
      color: var(--loud-ink);
      font-size: var(--banner-size, 1.4rem);
      line-height: 1.25;
      border-bottom: 4px solid var(--loud-ink);
    }
    .band.stale {
      background: repeating-linear-gradient(135deg, var(--loud) 0 48px, #ffc9ad 48px 96px);
    }
    strong {
      font-weight: 750;
      font-size: 1.35em;
    }
  `;

  override connectedCallback(): void {
    super.connectedCallback();
    this.live.addEventListener('state', this.again);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.live.removeEventListener('state', this.again);
  }

  private readonly again = (): void => this.requestUpdate();

  override render() {
    const at = this.live.lastLiveAt;
    const suite = this.live.list('suite')[0];
    const lastLive = at !== null && suite ? clockTime(at, suite.zone) : null;
    return html`<div role="alert">
      ${bands(this.live.state, lastLive, this.hands).map(
        (band) =>
          html`<div class="band ${band.kind}">
            <strong>${band.head}</strong><span>${band.todo}</span>
          </div>`,
      )}
    </div>`;
  }
}
