import { html, nothing, type TemplateResult } from 'lit';
import { count } from '../hands/words.ts';
import { inSuite, troubleWords } from '../live/index.ts';
import { dateWords } from '../look/index.ts';
import { type Preview, preview, type PreviewRow, type Problem, take } from './intake.ts';
import type { Desk } from './main.ts';

/** A case list on its way to the board: text, what the board says of it, and whether it was taken. */
export class ListState {
  text = '';
  name = '';
  date = '';
  preview: Preview | undefined;
  busy = false;
  words = '';
  /** The date that a list was taken for, if it is not the one that this desk shows. */
  takenFor: string | undefined;
  private readonly at: Desk;

  constructor(at: Desk) {
    this.at = at;
  }

  edit(text: string, name = 'pasted list'): void {
    this.text = text;
    this.name = name;
    this.preview = undefined;
    this.words = '';
    this.at.requestUpdate();
  }

  /** The date that is meant: the chosen one, or the board's; empty until the board was heard. */
  get meant(): string {
    return this.date !== '' ? this.date : (this.at.suite?.date ?? '');
  }

  /** The date is settled here: what is taken is for the day that the preview was for. */
  async look(): Promise<void> {
    this.date = this.meant;
    await this.ask(async () => {
      this.preview = await preview(this.text, this.date);
    });
  }

  async take(): Promise<void> {
    const hash = this.preview?.hash;
    if (hash === undefined) {
      return;
    }
    await this.ask(async () => {
      const words = await take(this.text, this.date, hash);
      this.edit('');
      this.words = words;
      this.takenFor = this.date === this.at.suite?.date ? undefined : this.date;
    });
  }

  private async ask(work: () => Promise<void>): Promise<void> {
    this.busy = true;
    this.words = '';
    this.takenFor = undefined;
    this.at.requestUpdate();
    try {
      await work();
    } catch (e) {
      this.preview = undefined;
      this.words = troubleWords(e);
    }
    this.busy = false;
    this.at.requestUpdate();
  }
}

/** Choose or paste a list, see what it would change, take it or leave it. */
export function listPanel(at: Desk, state: ListState): TemplateResult {
  return html`<h2>Case list</h2>
    <p class="dim">
      CSV with columns room, start, technique; options, procedure, service, surgeon if you have
      them. No patient names or numbers.
    </p>
    <div class="card">
      <div class="do">
        <label class="file"
          >File
          <input
            type="file"
            accept=".csv,text/csv,text/plain"
            @change=${async (e: Event) => {
              const file = (e.target as HTMLInputElement).files?.[0];
              if (file) {
                state.edit(await file.text(), file.name);
              }
            }}
        /></label>
        <label
          >Date
          <input
            type="date"
            .value=${state.meant}
            @change=${(e: Event) => {
              state.date = (e.target as HTMLInputElement).value;
              state.preview = undefined;
              at.requestUpdate();
            }}
        /></label>
      </div>
      <textarea
        aria-label="the case list as CSV"
        rows="7"
        placeholder="room,start,technique,options&#10;1,07:30,general,block"
        spellcheck="false"
        .value=${state.text}
        @input=${(e: InputEvent) => state.edit((e.target as HTMLTextAreaElement).value)}
      ></textarea>
      <div class="do">
        <button
          class="main"
          ?disabled=${state.busy || state.text.trim() === '' || state.meant === ''}
          @click=${() => void state.look()}
        >
          Look at it first
        </button>
        <button @click=${() => location.assign(inSuite('/sheets', at.inSuite))}>
          Sheets: what a case asks for…
        </button>
        ${state.busy ? html`<span class="dim">asking the board</span>` : nothing}
      </div>
    </div>
    <div role="status">${state.words ? html`<p class="card">${state.words}</p>` : nothing}</div>
    ${state.takenFor === undefined ? nothing : goTo(at, state.takenFor)}
    ${state.preview ? result(state, state.preview) : nothing}`;
}

function goTo(at: Desk, date: string): TemplateResult {
  return html`<div class="do">
    <button @click=${() => at.choose(date)}>To ${dateWords(date)}</button>
  </div>`;
}

function result(state: ListState, p: Preview): TemplateResult {
  const changes = p.added.length + p.changed.length + p.removed.length;
  const can = p.problems.length === 0 && changes > 0;
  return html`<div class="card ${p.problems.length > 0 ? 'ask' : ''}">
    <h3>
      ${
        p.problems.length > 0
          ? `${count(p.problems.length, 'thing')} to mend in ${state.name}: nothing was taken`
          : changes === 0
            ? 'This changes nothing'
            : `This adds ${p.added.length}, changes ${p.changed.length}, cancels ${p.removed.length}`
      }
      ${p.unchanged > 0 ? `, ${p.unchanged} stay` : ''}
    </h3>
    ${problems(p.problems)} ${rows('new', p.added)} ${rows('changed', p.changed)}
    ${rows('cancelled', p.removed)} ${p.notes.length > 0 ? html`<h3>Please note</h3>` : nothing}
    ${problems(p.notes)}
    ${
      can
        ? html`<div class="do">
            <button class="main" ?disabled=${state.busy} @click=${() => void state.take()}>
              Take this list
            </button>
            <button @click=${() => state.edit(state.text, state.name)}>Leave it</button>
          </div>`
        : nothing
    }
  </div>`;
}

function problems(list: Problem[]): TemplateResult | typeof nothing {
  return list.length === 0
    ? nothing
    : html`<ul class="problems">
        ${list.map(
          (p) =>
            html`<li>
              ${p.line > 0 ? html`<b>line ${p.line}${p.field ? `, ${p.field}` : ''}:</b>` : nothing}
              ${p.message}
            </li>`,
        )}
      </ul>`;
}

function rows(word: string, list: PreviewRow[]): TemplateResult | typeof nothing {
  return list.length === 0
    ? nothing
    : html`<ul class="problems">
        ${list.map(
          (r) =>
            html`<li>
              <b>${word}: room ${r.room}</b> ${r.start ?? ''}
              ${[r.technique ?? '', ...(r.options ?? [])].filter((w) => w !== '').join(' + ')}
              ${r.changes?.length ? html`<small>${r.changes.join('; ')}</small>` : nothing}
            </li>`,
        )}
      </ul>`;
}
