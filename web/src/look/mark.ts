import { LitElement, css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Live } from '../live/index.ts';
import { say } from './words.ts';

const STEPS = 12;

/**
 * The moving mark: a small sun that goes one step round its ring for each heartbeat that proved
 * the picture, and for nothing else. It stands still when the browser or the board does.
 */
@customElement('sunup-mark')
export class SunupMark extends LitElement {
  @property({ attribute: false }) live!: Live;

  static override styles = css`
    :host {
      display: inline-block;
      width: var(--mark-size, 2rem);
      height: var(--mark-size, 2rem);
    }
    svg {
      display: block;
      width: 100%;
      height: 100%;
    }
    .sun {
      transform-origin: 20px 20px;
      transition: transform var(--slow, 900ms) ease-in-out;
    }
  `;

  override connectedCallback(): void {
    super.connectedCallback();
    this.live.addEventListener('beat', this.step);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.live.removeEventListener('beat', this.step);
  }

  /** The angle is set directly: a heartbeat must not draw a page again. */
  private readonly step = (): void => {
    const sun = this.renderRoot.querySelector<SVGElement>('.sun');
    if (sun) sun.style.transform = `rotate(${(this.live.beats * 360) / STEPS}deg)`;
  };

  override render() {
    return html`<svg viewBox="0 0 40 40" role="img" aria-label=${say('live.mark')}>
      <circle cx="20" cy="20" r="15" fill="none" stroke="var(--edge)" stroke-width="2.5"></circle>
      <circle class="sun" cx="20" cy="5" r="5" fill="var(--sun)"></circle>
    </svg>`;
  }
}
