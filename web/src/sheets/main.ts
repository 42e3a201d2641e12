import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { boardWords, clockWords } from '../hands/bands.ts';
import { BoardPage } from '../hands/page.ts';
import { headStyle, shared } from '../hands/style.ts';
import { caution } from '../hands/words.ts';
import { inSuite, troubleWords } from '../live/index.ts';
import { proof } from '../look/index.ts';
import {
  check,
  type Checked,
  type Edit,
  type Named,
  overview,
  type Overview,
  publish,
} from './api.ts';
import { doesPanel, draftPanel, editionsPanel, editionWords } from './does.ts';
import { NEW_SHEET, newSheetForm } from './head.ts';
import { sheetPanel } from './items.ts';
import { type Draft, draftIn, leaves, withEdit } from './model.ts';
import { sheetsStyle } from './style.ts';

const KINDS: readonly [Named['kind'], string][] = [
  ['base', 'base'],
  ['technique', 'techniques'],
  ['option', 'options'],
  ['personal', 'people’s own'],
];

/**
 * The editor of a suite's sheets. A draft is a list of changes, kept by this screen until it is
 * published; what it would do is worked out by the board after each of them.
 */
@customElement('sunup-sheets')
export class Sheets extends BoardPage {
  static override styles = [shared, headStyle, sheetsStyle];

  @state() overview: Overview | undefined;
  @state() draft: Draft | undefined;
  /**
   * Whose form is open: an item's key, `+` for a new one, `?` and a key for one that is found, `#` for
   * the sheet's head, `#new` for a new sheet.
   */
  @state() open: string | undefined;
  /** The item of the list that an addition may change or take. */
  @state() chosen: string | undefined;
  @state() busy = false;
  /** Throwing a draft away asks once more. */
  @state() sure = false;
  note = '';
  @state() private sheet: string | undefined;
  @state() private checked: Checked | undefined;
  @state() private words = '';
  @state() private trouble = '';
  private asking = new AbortController();
  private begun = false;

  constructor() {
    super('desk', 'sheets');
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.live.addEventListener('state', this.onceLive);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.live.removeEventListener('state', this.onceLive);
    this.asking.abort();
  }

  /** Where screens are paired nothing may be asked before the board knows this one. */
  private readonly onceLive = (): void => {
    if (!this.begun && !this.live.state.stale) {
      this.begun = true;
      void this.begin();
    }
  };

  private get kept(): string {
    return `sunup.sheets.draft.${this.inSuite ?? ''}`;
  }

  private async begin(): Promise<void> {
    try {
      this.overview = await overview();
      this.draft ??= draftIn(localStorage.getItem(this.kept));
      await this.look();
    } catch (e) {
      this.begun = false;
      this.trouble = troubleWords(e);
    }
  }

  /** Asks the board what the draft does; a question that was overtaken is given up. */
  private async look(): Promise<void> {
    this.asking.abort();
    const asking = (this.asking = new AbortController());
    const on = this.draft?.on ?? this.overview?.edition ?? 0;
    this.busy = true;
    try {
      const checked = await check(on, this.draft?.edits ?? [], this.sheet, asking.signal);
      if (asking.signal.aborted) return;
      this.checked = checked;
      this.sheet = checked.sheet.name;
      this.trouble = '';
    } catch (e) {
      if (asking.signal.aborted) return;
      this.trouble = troubleWords(e);
    }
    this.busy = false;
  }

  /** The sheets that the draft leaves. */
  get names(): readonly Named[] {
    return this.checked?.sheets ?? this.overview?.sheets ?? [];
  }

  private change(draft: Draft | undefined): void {
    this.draft = draft;
    const published = this.overview?.sheets.map((sheet) => sheet.name) ?? [];
    if (this.sheet !== undefined && !leaves(this.sheet, published, draft?.edits ?? [])) {
      this.sheet = undefined;
    }
    this.sure = false;
    this.words = '';
    if (draft === undefined || draft.edits.length === 0) localStorage.removeItem(this.kept);
    else localStorage.setItem(this.kept, JSON.stringify(draft));
    void this.look();
  }

  /** Puts changes into the draft. */
  put(...edits: Edit[]): void {
    this.open = undefined;
    if (edits.length === 0) return;
    const draft = this.draft ?? {
      id: crypto.randomUUID(),
      on: this.overview?.edition ?? 0,
      edits: [],
    };
    const added = edits.find((edit) => edit.does === 'add-sheet');
    if (added?.sheet !== undefined) this.sheet = added.sheet;
    this.change({ ...draft, edits: edits.reduce(withEdit, [...draft.edits]) });
  }

  /** Takes a change out of the draft. */
  drop(i: number): void {
    const edits = this.draft?.edits.filter((_, at) => at !== i) ?? [];
    this.change(this.draft && edits.length > 0 ? { ...this.draft, edits } : undefined);
  }

  /** The same changes on what stands now. */
  layOn(on: number): void {
    if (this.draft !== undefined) this.change({ ...this.draft, on });
    void overview().then((o) => (this.overview = o));
  }

  goBack(edition: number): void {
    this.put({ does: 'as-in', edition });
  }

  throwAway(): void {
    if (this.sure) this.change(undefined);
    else this.sure = true;
  }

  toggle(open: string): void {
    this.open = this.open === open ? undefined : open;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('form :is(select, input)')?.focus(),
    );
  }

  choose(key: string): void {
    this.chosen = key;
    this.open = undefined;
  }

  private show(sheet: string): void {
    this.sheet = sheet;
    this.open = undefined;
    void this.look();
  }

  async publish(): Promise<void> {
    const draft = this.draft;
    if (draft === undefined) return;
    this.busy = true;
    this.trouble = '';
    try {
      const done = await publish(draft.on, draft.edits, draft.id, this.note);
      this.note = '';
      this.change(undefined);
      this.words = done.words;
      await this.begin();
    } catch (e) {
      const trouble = troubleWords(e);
      await this.look();
      this.trouble = trouble;
    }
    this.busy = false;
  }

  override render(): TemplateResult {
    const { overview, checked } = this;
    return html`<header>
        <h1>Sheets</h1>
        <p>
          ${this.suite ? `${this.suite.hospital} · ${this.suite.suite}` : ''}
          <small
            >${overview === undefined ? '' : `in use: ${editionWords(overview.edition)}`}</small
          >
        </p>
        <span class="gap"></span>
        <a href=${inSuite('/desk', this.inSuite)}>To the desk</a>
        <sunup-sign-on .live=${this.live}></sunup-sign-on>
        ${proof(this.live)}
        <b class="clock">${clockWords(this)}</b>
      </header>
      <sunup-banner .live=${this.live}></sunup-banner>
      <main aria-busy=${this.busy}>
        <nav aria-label="sheets">
          ${this.sheetButtons()}
          <button
            class="new"
            aria-expanded=${this.open === NEW_SHEET}
            @click=${() => this.toggle(NEW_SHEET)}
          >
            Add a sheet…
          </button>
        </nav>
        <div>
          <div role="status">
            ${this.words === '' ? nothing : html`<p class="told">${this.words}</p>`}
          </div>
          ${this.trouble === '' ? nothing : this.troubled()}
          ${
            checked === undefined
              ? html`<p>${this.trouble === '' ? 'Asking the board …' : ''}</p>`
              : this.open === NEW_SHEET
                ? newSheetForm(this)
                : sheetPanel(this, checked.sheet)
          }
        </div>
        <aside aria-label="what the draft does">
          ${draftPanel(this, checked)} ${checked === undefined ? nothing : doesPanel(checked)}
          ${overview === undefined ? nothing : editionsPanel(this, overview)}
        </aside>
      </main>
      <footer>
        Sheets are first settings and defer to local policy: check a change with those who do the
        work. ${caution()} ${boardWords(this)}
      </footer>`;
  }

  private troubled(): TemplateResult {
    return html`<div class="wrong" role="alert">
      <p>${this.trouble}</p>
      <div class="row">
        <button @click=${() => void this.begin()}>Ask again</button>
      </div>
    </div>`;
  }

  private sheetButtons(): TemplateResult[] {
    const touched = new Set(this.draft?.edits.map((edit) => edit.sheet));
    return KINDS.map(
      ([kind, words]) =>
        html`${this.names.some((sheet) => sheet.kind === kind) ? html`<h2>${words}</h2>` : nothing}
        ${this.names
          .filter((sheet) => sheet.kind === kind)
          .map(
            (sheet) =>
              html`<button
                class=${touched.has(sheet.name) ? 'touched' : ''}
                aria-pressed=${this.sheet === sheet.name}
                @click=${() => this.show(sheet.name)}
              >
                ${sheet.title}${touched.has(sheet.name) ? ' (changed)' : ''}
              </button>`,
          )}`,
    );
  }
}
