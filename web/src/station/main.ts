import { LitElement, html } from 'lit';
import { customElement } from 'lit/decorators.js';

/** Stands here until the page is built. */
@customElement('sunup-station')
export class SunupStation extends LitElement {
  override render() {
    return html`<main><h1>Station</h1></main>`;
  }
}
