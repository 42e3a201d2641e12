import { LitElement, html } from 'lit';
import { customElement } from 'lit/decorators.js';

/** Stands here until the page is built. */
@customElement('sunup-wall')
export class SunupWall extends LitElement {
  override render() {
    return html`<main><h1>Wall</h1></main>`;
  }
}
