import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import {
  type BroughtBack,
  type Live,
  type Page,
  broughtBack,
  inSuite,
  pathOf,
} from '../live/index.ts';
import { clockHere } from '../words/index.ts';
import { say } from './words.ts';

/** The secret of a link like `/desk#first=...`, which the board's console prints once. */
export function firstLinkIn(hash: string): string | undefined {
  return /^#first=([A-Za-z0-9_-]{10,64})$/.exec(hash)?.[1];
}

/** A code in groups that can be read aloud. */
export function inGroups(code: string): string {
  return code.replace(/(.{4})(?=.)/g, '$1 ');
}

const DESKS_OWN: readonly string[] = ['/paper', '/sheets', '/review'];

/**
 * True if a page is not what its screen was paired as. The wall may be looked at by all; a desk also
 * prints the sheets for when everything is down, changes what stands on them, and looks back.
 */
export function elsewhere(page: Page, path: string, paired: string): boolean {
  if (page === 'wall') return false;
  const here = decodeURI(path).replace(/\/$/, '');
  const ofTheDesk = paired === '/desk' && DESKS_OWN.includes(here);
  return here !== decodeURI(paired) && !ofTheDesk;
}

/**
 * Over the whole page while the board does not know this screen: the code that somebody types at a
 * desk. Nothing where screens are not paired.
 */
@customElement('sunup-entry')
export class SunupEntry extends LitElement {
  @property({ attribute: false }) live!: Live;
  @property() page: Page = 'wall';
  @state() private wrong = '';
  private readonly first = firstLinkIn(location.hash);
  /** What this browser brought back from the identity provider, until the board has it. */
  private back = broughtBack(location.hash);
  /** Why that did not count. */
  @state() private refused = '';
  /** The same while it may count yet: the board keeps its beginning until the provider is asked. */
  private refusedBack: BroughtBack | undefined;

  static override styles = css`
    :host {
      position: fixed;
      inset: 0;
      z-index: 20;
      display: none;
      place-content: center;
      padding: 4vmin;
      background: var(--ground);
      color: var(--ink);
      font-family: var(--font);
      font-size: max(1.25rem, 2.2vmin);
      line-height: 1.4;
      text-align: center;
      overflow: auto;
    }
    :host([shown]) {
      display: grid;
    }
    h1 {
      margin: 0;
      font-size: 1.6em;
    }
    .code {
      margin: 0.3em 0;
      font-size: min(15vw, 22vmin);
      font-weight: 750;
      line-height: 1.1;
      letter-spacing: 0.04em;
      white-space: nowrap;
    }
    p {
      max-width: 34em;
      margin: 0.4em auto;
    }
    .dim {
      color: var(--dim);
    }
    form {
      display: grid;
      gap: 0.6em;
      max-width: 20em;
      margin: 1em auto;
    }
    input,
    button,
    a {
      font: inherit;
      min-height: 56px;
      box-sizing: border-box;
      padding: 0.4em 0.8em;
      border: 2px solid var(--ink);
      border-radius: 12px;
      background: var(--raised);
      color: inherit;
    }
    a {
      display: inline-block;
      margin-top: 1em;
    }
    .wrong {
      font-weight: 650;
      color: var(--ember);
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

  private readonly again = (): void => {
    const { paired, pairing } = this.live.state.entry;
    if (this.back && (paired || pairing)) void this.end(this.back);
    if (paired && elsewhere(this.page, location.pathname, pathOf(paired)) && !this.wrongPage) {
      this.wrongPage = true;
      location.assign(inSuite(pathOf(paired), paired.suite));
    } else if (paired && this.first) {
      history.replaceState(null, '', location.pathname + location.search);
    }
    this.requestUpdate();
  };
  private wrongPage = false;

  override render() {
    const body = this.body();
    this.toggleAttribute('shown', body !== nothing);
    return body;
  }

  private body(): TemplateResult | typeof nothing {
    const { pairing, paired, noKeys } = this.live.state.entry;
    if (noKeys) {
      return html`<div role="alert">
        <h1>${say('entry.no-keys')}</h1>
        <p>${say('entry.no-keys-do')}</p>
      </div>`;
    }
    if (paired && this.wrongPage) {
      return html`<section role="dialog" aria-modal="true" aria-label="this screen">
        <h1>${say('entry.elsewhere', { name: paired.screen })}</h1>
        <a href=${inSuite(pathOf(paired), paired.suite)}>${say('entry.elsewhere-go')}</a>
      </section>`;
    }
    if (this.refused) {
      return html`<section role="alertdialog" aria-modal="true" aria-label=${say('entry.not-on')}>
        <h1>${say('entry.not-on')}</h1>
        <p>${this.refused}</p>
        ${
          this.refusedBack
            ? html`<button @click=${() => void this.end(this.refusedBack!)}>
                ${say('entry.again')}
              </button>`
            : nothing
        }
        <button
          @click=${() => {
            this.refused = '';
          }}
        >
          ${say('entry.go-on')}
        </button>
      </section>`;
    }
    if (!pairing) return nothing;
    if (this.first) return this.administrator(this.first);
    return html`<section role="dialog" aria-modal="true" aria-label="this screen">
      <h1>${say('entry.new')}</h1>
      <p class="code" aria-label="code ${pairing.code.split('').join(' ')}">
        ${inGroups(pairing.code)}
      </p>
      <p>${say('entry.do')}</p>
      <p class="dim">
        ${say('entry.of', {
          address: pairing.address,
          at: clockHere(pairing.at),
          until: clockHere(pairing.until),
        })}
      </p>
      ${
        pairing.provider && (this.page === 'pocket' || this.page === 'desk')
          ? html`<p>${say('entry.own')}</p>
              <button @click=${() => void this.signIn()}>
                ${say('entry.sign-in', { name: pairing.provider })}
              </button>
              <p class="wrong" role="alert">${this.wrong}</p>`
          : nothing
      }
    </section>`;
  }

  private administrator(link: string): TemplateResult {
    return html`<section role="dialog" aria-modal="true" aria-label="this screen">
      <h1>${say('entry.first')}</h1>
      <p>${say('entry.first-do')}</p>
      <form
        @submit=${(e: SubmitEvent) => {
          e.preventDefault();
          void this.begin(link, e.target as HTMLFormElement);
        }}
      >
        <input
          name="code"
          required
          maxlength="16"
          autocomplete="off"
          aria-label=${say('entry.code')}
          placeholder=${say('entry.code')}
        />
        ${[
          ['pin', say('entry.pin')],
          ['again', say('entry.pin-again')],
        ].map(
          ([name, label]) =>
            html`<input
              name=${name!}
              type="password"
              required
              inputmode="numeric"
              autocomplete="off"
              aria-label=${label!}
              placeholder=${label!}
            />`,
        )}
        <button>${say('entry.begin')}</button>
        <p class="wrong" role="alert">${this.wrong}</p>
      </form>
    </section>`;
  }

  private async end(back: BroughtBack): Promise<void> {
    this.back = undefined;
    history.replaceState(null, '', location.pathname + location.search);
    const told = await this.live.entry.signedIn(back);
    this.refused = told.done ? '' : told.words;
    // Once: whoever is refused a second time begins anew.
    this.refusedBack = told.done || this.refusedBack || back.code === '' ? undefined : back;
  }

  private async signIn(): Promise<void> {
    const told = await this.live.entry.signIn(location.pathname + location.search);
    this.wrong = told.words;
    if (told.address !== undefined) location.assign(told.address);
  }

  private async begin(link: string, form: HTMLFormElement): Promise<void> {
    const fields = new FormData(form);
    const pin = String(fields.get('pin'));
    if (pin !== fields.get('again')) {
      this.wrong = say('entry.pins-differ');
      return;
    }
    const told = await this.live.entry.firstLink(link, String(fields.get('code')).trim(), pin);
    this.wrong = told.done ? '' : told.words;
  }
}

/** Puts it over a page. */
export function entryOver(live: Live, page: Page): SunupEntry {
  const made = document.createElement('sunup-entry') as SunupEntry;
  made.live = live;
  made.page = page;
  document.body.append(made);
  return made;
}
