import { LitElement, html } from 'lit';
import { customElement } from 'lit/decorators.js';

/** Stands here until the page is built. */
@customElement('sunup-holding')
export class SunupHolding extends LitElement {
  override render() {
    return html`<main><h1>Holding</h1></main>`;
  }
}
