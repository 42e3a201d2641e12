import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { CommandUnion, PersonPart } from '../generated/wire.ts';
import type { Live } from '../live/index.ts';
import { say } from '../look/index.ts';
import { shared } from './style.ts';
import { personName } from './words.ts';

const AWAY =
  'The board is away: two cannot sign here now. Write it on paper, sign it both, and enter it with its time when the board is back.';

/** Codes that signed on here last, for the next time. */
const REMEMBERED = 6;
const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '⌫', '0', '✓'] as const;

/** The codes with this one first. */
export function remembered(codes: readonly string[], code: string): string[] {
  return [code, ...codes.filter((c) => c !== code)].slice(0, REMEMBERED);
}

/**
 * Who is signed on at this screen, and signing on by code and PIN with gloves on. Nothing where
 * screens are not paired.
 */
@customElement('sunup-sign-on')
export class SunupSignOn extends LitElement {
  @property({ attribute: false }) live!: Live;
  @state() private code = '';
  @state() private pin = '';
  @state() private words = '';
  @state() private locked = '';
  @state() private busy = false;
  private as: PersonPart | undefined;
  /** What the identity provider is called by which people sign on too, if there is one. */
  private provider: string | undefined;
  private then: ((token?: string) => void) | undefined;
  /** What is signed beside whoever is signed on; none if somebody signs on. */
  private second: { kind: CommandUnion['type']; relieves: boolean } | undefined;
  @query('dialog') private readonly dialog!: HTMLDialogElement;

  static override styles = [
    shared,
    css`
      :host {
        display: inline-block;
        background: none;
      }
      dialog {
        width: min(26rem, 94vw);
        padding: 16px;
        border: 3px solid var(--ink);
        border-radius: 16px;
        background: var(--ground);
        color: var(--ink);
      }
      dialog::backdrop {
        background: #0009;
      }
      .keys,
      .recent {
        display: grid;
        grid-template-columns: repeat(3, 1fr);
        gap: 8px;
        margin-top: 10px;
      }
      .keys button {
        min-height: 64px;
        font-size: 26px;
      }
      input {
        width: 100%;
        margin-top: 10px;
        font-size: 22px;
      }
      .row {
        display: flex;
        gap: 8px;
        justify-content: space-between;
        align-items: center;
      }
      .words {
        min-height: 1.4em;
        margin-top: 8px;
        font-weight: 650;
      }
    `,
  ];

  override connectedCallback(): void {
    super.connectedCallback();
    this.live.addEventListener('state', this.again);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.live.removeEventListener('state', this.again);
  }

  private readonly again = (): void => this.requestUpdate();

  /**
   * Asks for code and PIN.
   *
   * @param as the person of the morning's plan that it shall be
   * @param then what is done when somebody has signed on
   */
  open(as?: PersonPart, then?: () => void): void {
    this.second = undefined;
    this.ask(as, then);
  }

  /**
   * Asks a second person for code and PIN, for one touch of this kind.
   *
   * @param relieves true if that person is signed on here from then on
   */
  openSecond(
    as: PersonPart,
    kind: CommandUnion['type'],
    then: (token?: string) => void,
    relieves: boolean,
  ): void {
    this.second = { kind, relieves };
    this.ask(as, then);
  }

  private ask(as: PersonPart | undefined, then: ((token?: string) => void) | undefined): void {
    this.as = as;
    this.then = then;
    this.code = '';
    this.pin = '';
    this.words = '';
    this.locked = '';
    this.dialog.showModal();
  }

  override render() {
    const { paired, signed } = this.live.state.entry;
    if (!paired) return nothing;
    this.provider = paired.provider;
    const name = signed ? `${signed.code} · ${say(`role.${signed.role}`)}` : 'Sign on';
    return html`<button @click=${() => this.open()}>
        ${name}${signed ? nothing : html`<small>touches are unsigned</small>`}
      </button>
      <dialog aria-label="sign on">${this.body(signed?.code)}</dialog>`;
  }

  private body(signed: string | undefined): TemplateResult {
    const recent = this.codes.filter((c) => c !== signed);
    const away = this.second !== undefined && this.live.state.stale;
    return html`<form
      @submit=${(e: SubmitEvent) => {
        e.preventDefault();
        void this.enter();
      }}
    >
      <div class="row">
        <h2>${this.heading}</h2>
        <button type="button" @click=${() => this.dialog.close()}>Close</button>
      </div>
      ${
        signed && !this.as
          ? html`<button type="button" class="main" @click=${() => void this.off()}>
              Sign ${signed} off
            </button>`
          : nothing
      }
      <div class="recent">
        ${recent.map(
          (c) =>
            html`<button
              type="button"
              aria-pressed=${this.code === c}
              @click=${() => {
                this.code = c;
              }}
            >
              ${c}
            </button>`,
        )}
      </div>
      <input
        aria-label="your code"
        placeholder="your code"
        autocomplete="off"
        maxlength="16"
        .value=${this.code}
        @input=${(e: InputEvent) => {
          this.code = (e.target as HTMLInputElement).value.trim();
        }}
      />
      <input
        aria-label="PIN"
        placeholder="PIN"
        type="password"
        inputmode="numeric"
        autocomplete="off"
        maxlength="12"
        .value=${this.pin}
        @input=${(e: InputEvent) => {
          this.pin = (e.target as HTMLInputElement).value;
        }}
      />
      <div class="keys">
        ${KEYS.map(
          (key) =>
            html`<button
              type=${key === '✓' ? 'submit' : 'button'}
              class=${key === '✓' ? 'main' : ''}
              ?disabled=${key === '✓' && (this.busy || away)}
              aria-label=${key === '⌫' ? 'back' : key === '✓' ? 'enter' : key}
              @click=${() => this.press(key)}
            >
              ${key}
            </button>`,
        )}
      </div>
      ${
        this.provider && !this.second
          ? html`<button type="button" ?disabled=${this.busy} @click=${() => void this.away()}>
              Sign on with ${this.provider}
            </button>`
          : nothing
      }
      <p class="words" role="status">${away ? AWAY : this.words}</p>
      ${
        this.locked !== '' && signed && signed !== this.locked
          ? html`<button type="button" @click=${() => void this.lift(this.locked)}>
              Let ${this.locked} try again
            </button>`
          : nothing
      }
    </form>`;
  }

  private get heading(): string {
    if (!this.as) return 'Sign on';
    return `${this.second ? 'Second signature:' : 'Sign on as'} ${personName(this.as)}`;
  }

  private press(key: (typeof KEYS)[number]): void {
    if (key === '✓') return;
    this.pin = key === '⌫' ? this.pin.slice(0, -1) : (this.pin + key).slice(0, 12);
  }

  private async enter(): Promise<void> {
    if (this.busy || this.code === '' || this.pin === '') return;
    this.busy = true;
    const { code, pin, as, second } = this;
    this.pin = '';
    const told =
      second && as
        ? await this.live.countersign(code, pin, as.person, second.kind)
        : await this.live.entry.signOn(code, pin, as?.role, as?.person);
    this.busy = false;
    this.words = told.words;
    this.locked = told.words.includes('locked') ? code : '';
    if (!told.done) return;
    this.keep(code);
    this.dialog.close();
    this.then?.(told.token);
    // What was touched then goes with the sign-on before; what is touched from now on with this one.
    if (second?.relieves) void this.live.entry.signOn(code, pin, as?.role, as?.person);
  }

  /** To the identity provider; this page comes back from there, signed on. */
  private async away(): Promise<void> {
    this.busy = true;
    const path = location.pathname + location.search;
    const told = await this.live.entry.signIn(path, this.as?.role, this.as?.person);
    this.busy = false;
    this.words = told.words;
    if (told.address !== undefined) location.assign(told.address);
  }

  private async off(): Promise<void> {
    const told = await this.live.entry.signOff();
    this.words = told.words;
    if (told.done) this.dialog.close();
  }

  private async lift(person: string): Promise<void> {
    const told = await this.live.entry.ask({ ask: 'lift', person });
    this.words = told.words;
    if (told.done) this.locked = '';
  }

  private get codes(): string[] {
    try {
      const kept: unknown = JSON.parse(localStorage.getItem(KEPT) ?? '[]');
      return Array.isArray(kept) ? kept.filter((c) => typeof c === 'string') : [];
    } catch {
      return [];
    }
  }

  private keep(code: string): void {
    try {
      localStorage.setItem(KEPT, JSON.stringify(remembered(this.codes, code)));
    } catch {
      // Then it is typed again.
    }
  }
}

const KEPT = 'sunup.codes';
