import { LitElement, html } from 'lit';
import { customElement } from 'lit/decorators.js';

/** Stands here until the page is built. */
@customElement('sunup-desk')
export class SunupDesk extends LitElement {
  override render() {
    return html`<main><h1>Desk</h1></main>`;
  }
}
