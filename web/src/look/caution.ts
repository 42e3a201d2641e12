import { LitElement, css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { say } from './words.ts';

/** The caution that stands on every page. */
@customElement('sunup-caution')
export class SunupCaution extends LitElement {
  static override styles = css`
    :host {
      display: block;
      color: var(--dim);
      font-size: var(--caution-size, var(--step--1));
    }
    p {
      margin: 0;
    }
  `;

  override render() {
    return html`<p>${say('caution')}</p>`;
  }
}
