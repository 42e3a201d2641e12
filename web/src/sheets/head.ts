import { html, nothing, type TemplateResult } from 'lit';
import type { Edit, Fields, Named, Sheet } from './api.ts';
import { list } from './fields.ts';
import type { Sheets } from './main.ts';
import { wordOf } from './model.ts';
import { told } from '../words/index.ts';

/** `open` while the form of the sheet's own head is shown. */
const HEAD = '#';
/** `open` while the form for a new sheet is shown. */
export const NEW_SHEET = '#new';

/** What a sheet says of itself, and taking it away whole. */
export function headPanel(at: Sheets, sheet: Sheet): TemplateResult {
  const open = at.open === HEAD;
  return html`<p>${headWords(sheet)}</p>
    ${sheet.note === undefined ? nothing : html`<p class="dim">${told(sheet.note)}</p>`}
    <div class="row">
      <button aria-expanded=${open} @click=${() => at.toggle(HEAD)}>
        Title and what it goes with
      </button>
      ${
        sheet.kind === 'base' && bases(at.names).length < 2
          ? nothing
          : html`<button @click=${() => at.put({ does: 'remove-sheet', sheet: sheet.name })}>
              Take ${sheet.kind === 'personal' ? 'this sheet' : `this ${sheet.kind}`} away
            </button>`
      }
    </div>
    ${open ? headForm(at, sheet) : nothing}`;
}

function headWords(sheet: Sheet): string {
  return [
    `In case lists: ${sheet.name}.`,
    sheet.on === undefined ? '' : `On ${sheet.on}.`,
    sheet.brings.length === 0 ? '' : `Brings ${sheet.brings.join(', ')}.`,
    sheet.notWith.length === 0 ? '' : `Not with ${sheet.notWith.join(', ')}.`,
    sheet.kind === 'base' && sheet.kinds.length > 0
      ? `Shared equipment, in the order in which a room may take it: ${sheet.kinds.join(', ')}.`
      : '',
    sheet.order.length === 0 ? '' : `First in their sections: ${sheet.order.join(', ')}.`,
  ]
    .filter(Boolean)
    .join(' ');
}

function headForm(at: Sheets, sheet: Sheet): TemplateResult {
  const others = at.names.filter((one) => one.name !== sheet.name);
  return form(
    at,
    HEAD,
    html`<div class="fields">
        <label class="wide"
          >what the desk calls it
          <input name="title" required maxlength="60" autocomplete="off" .value=${sheet.title}
        /></label>
        <label class="wide"
          >a note for whoever reads it
          <input name="note" maxlength="400" autocomplete="off" .value=${sheet.note ?? ''}
        /></label>
      </div>
      ${
        sheet.kind === 'base'
          ? keysField(
              'kinds',
              'kinds of shared equipment, in the order in which a room may take them',
              sheet.kinds,
            )
          : sheet.kind === 'personal'
            ? keysField('order', 'goes first in its section (keys, with commas)', sheet.order)
            : html`${sheet.kind === 'technique' ? onField(at.names, sheet.on) : nothing}
              ${ticks('brings', 'Brings along', kind(others, 'option'), sheet.brings)}
              ${ticks('notWith', 'Does not go with', beside(others), sheet.notWith)}`
      }
      <div class="row">
        <button class="main">Put it into the draft</button>
        <button type="button" @click=${() => at.toggle(HEAD)}>Leave it as it is</button>
      </div>`,
    (data) => {
      const fields = headFields(sheet, data);
      return Object.keys(fields).length === 0 ? [] : [{ does: 'head', sheet: sheet.name, fields }];
    },
  );
}

/** A list whose order counts. */
function keysField(name: 'kinds' | 'order', words: string, now: readonly string[]): TemplateResult {
  return html`<label
    >${words} <input name=${name} maxlength="2000" autocomplete="off" .value=${now.join(', ')}
  /></label>`;
}

/** The base that a technique changes, or of which a new base is a copy. */
function onField(names: readonly Named[], now?: string, words = 'on'): TemplateResult {
  return html`<label
    >${words}
    <select name="on">
      ${bases(names).map(
        (one) =>
          html`<option value=${one.name} ?selected=${one.name === now}>${one.title}</option>`,
      )}
    </select></label
  >`;
}

function bases(names: readonly Named[]): Named[] {
  return kind(names, 'base');
}

/** What of a head is other than it was; lists in the order in which they were written. */
export function headFields(sheet: Sheet, data: FormData): Fields {
  const fields: Fields = {};
  const title = String(data.get('title') ?? '').trim();
  const note = String(data.get('note') ?? '').trim();
  if (title !== sheet.title) fields['title'] = title;
  if (note !== (sheet.note ?? '')) fields['note'] = note === '' ? null : note;
  if (sheet.kind === 'base' || sheet.kind === 'personal') {
    const name = sheet.kind === 'base' ? 'kinds' : 'order';
    const now = list(String(data.get(name) ?? ''));
    if (now.join() !== sheet[name].join()) fields[name] = now.length === 0 ? null : now;
    return fields;
  }
  const on = data.get('on');
  if (on !== null && on !== sheet.on) fields['on'] = String(on);
  for (const name of ['brings', 'notWith'] as const) {
    const now = data.getAll(name).map(String);
    const same = now.length === sheet[name].length && now.every((one) => sheet[name].includes(one));
    if (!same) fields[name] = now.length === 0 ? null : now;
  }
  return fields;
}

/** A form for a sheet that is new. */
export function newSheetForm(at: Sheets): TemplateResult {
  return html`<h2>A new sheet</h2>
    <p class="dim">
      It adds to a list, changes it or takes from it; say that once it is there. It can be published
      when it does something.
    </p>
    ${form(
      at,
      NEW_SHEET,
      html`<div class="fields">
          <label class="wide"
            >what the desk calls it <input name="title" required maxlength="60" autocomplete="off"
          /></label>
          <label
            >its word in case lists
            <input
              name="name"
              maxlength="30"
              pattern="[a-z][a-z0-9\\-]*"
              placeholder="made of the title"
              title="lower-case letters, digits and dashes"
              autocomplete="off"
          /></label>
          <label
            >it is
            <select name="kind">
              <option value="option">an option: a case may have several</option>
              <option value="technique">a technique: a case has one</option>
              <option value="personal">a person’s own: named like an option</option>
              <option value="base">a base: begins as a copy of another one</option>
            </select></label
          >
          ${onField(at.names, undefined, 'a technique is on, a base is a copy of')}
        </div>
        <div class="row">
          <button class="main">Add it to the draft</button>
          <button type="button" @click=${() => at.toggle(NEW_SHEET)}>Leave it</button>
        </div>`,
      newSheet,
    )}`;
}

/** The change that brings a new sheet. */
export function newSheet(data: FormData): Edit[] {
  const said = (name: string): string => String(data.get(name) ?? '').trim();
  const [title, kind] = [said('title'), said('kind')];
  const sheet = said('name') || wordOf(title);
  const on =
    kind === 'technique' ? { on: said('on') } : kind === 'base' ? { like: said('on') } : {};
  return [{ does: 'add-sheet', sheet, fields: { kind, title, ...on } }];
}

function form(
  at: Sheets,
  open: string,
  content: TemplateResult,
  edits: (data: FormData) => Edit[],
): TemplateResult {
  return html`<form
    class="head"
    @submit=${(e: SubmitEvent) => {
      e.preventDefault();
      at.put(...edits(new FormData(e.target as HTMLFormElement)));
    }}
    @keydown=${(e: KeyboardEvent) => {
      if (e.key === 'Escape') at.toggle(open);
    }}
  >
    ${content}
  </form>`;
}

function kind(all: readonly Named[], kind: Named['kind']): Named[] {
  return all.filter((one) => one.kind === kind);
}

/** What a case could name beside it. */
function beside(all: readonly Named[]): Named[] {
  return all.filter((one) => one.kind !== 'base');
}

function ticks(
  name: string,
  words: string,
  all: readonly Named[],
  now: readonly string[],
): TemplateResult {
  return html`<fieldset>
    <legend>${words}</legend>
    ${all.map(
      (one) =>
        html`<label class="tick"
          ><input
            type="checkbox"
            name=${name}
            value=${one.name}
            ?checked=${now.includes(one.name)}
          />
          ${one.title}</label
        >`,
    )}
  </fieldset>`;
}
