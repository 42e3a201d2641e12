import { html, nothing, type TemplateResult } from 'lit';
import type { Section } from '../generated/wire.ts';
import { BESIDE, sectionName, SET_UP, stepName, STEPS } from '../hands/words.ts';
import type { Edit, Fields, Sheet } from './api.ts';
import { behindOf, fieldsOf, type Form, formOf, neighbours, wordOf } from './model.ts';

/** What a form is about. */
export interface About {
  sheet: Sheet;
  /** Empty for an item that is to be added. */
  key: string;
  item: Fields;
  /** True for an item that the sheet itself brings: it has a place of its own there. */
  own: boolean;
  put: (...edits: Edit[]) => void;
  leave: () => void;
}

/** A form for one item: what is empty on an addition's change stays as it was found. */
export function itemForm(about: About): TemplateResult {
  const { item, key, own, sheet } = about;
  const was = formOf(item);
  const core = item['core'] === true;
  return html`<form
    @submit=${(e: SubmitEvent) => {
      e.preventDefault();
      submit(about, was, new FormData(e.target as HTMLFormElement));
    }}
    @keydown=${(e: KeyboardEvent) => {
      if (e.key === 'Escape') about.leave();
    }}
  >
    <div class="fields">
      ${key === '' ? added() : nothing}
      ${input('desk', key === '' ? 'what it is, for those who work here' : 'words at the desk', was, 80)}
      ${input('wall', 'words on the wall, nothing of the patient', was, 24)}
      ${number('usual', 'usual minutes', was)} ${number('oneInTen', 'one in ten takes', was)}
      ${
        was.waitsUsual === ''
          ? nothing
          : html`${number('waitsUsual', 'then waits, usual', was)}
            ${number('waitsOneInTen', 'one in ten waits', was)}`
      }
      <label
        >holds up
        <select name="gates">
          ${
            core
              ? nothing
              : html`<option value="" ?selected=${was.gates === ''}>
                  ${own || key === '' ? 'nothing: advised only' : 'as it was found'}
                </option>`
          }
          ${STEPS.map(
            (step) =>
              html`<option value=${step} ?selected=${was.gates === step}>
                ${stepName(step)}
              </option>`,
          )}
        </select></label
      >
      ${own && key !== '' ? place(sheet, key) : nothing}
      ${input('who', 'who, all at once; “or” for either', was)}
      ${input('after', 'comes after (keys)', was)}
    </div>
    <div class="row">
      <button class="main">${key === '' ? 'Add it to the draft' : 'Put it into the draft'}</button>
      ${key !== '' && own ? leaving(about, core) : nothing}
      <button type="button" @click=${about.leave}>Leave it as it is</button>
    </div>
  </form>`;
}

function leaving(about: About, core: boolean): TemplateResult {
  return core
    ? html`<span>May never be left out.</span>`
    : html`<button
        type="button"
        @click=${() => about.put({ does: 'leave-out', sheet: about.sheet.name, key: about.key })}
      >
        Leave the item out
      </button>`;
}

function input(name: keyof Form, words: string, was: Form, most?: number): TemplateResult {
  return html`<label class=${name === 'wall' ? '' : 'wide'}
    >${words} <input name=${name} autocomplete="off" maxlength=${most ?? 400} .value=${was[name]}
  /></label>`;
}

function number(name: keyof Form, words: string, was: Form): TemplateResult {
  return html`<label
    >${words} <input name=${name} type="number" min="0" max="1440" step="any" .value=${was[name]}
  /></label>`;
}

/** Where an item stands in its section. */
function place(sheet: Sheet, key: string): TemplateResult {
  const now = behindOf(sheet, key);
  return html`<label
    >stands
    <select name="behind">
      <option value="" ?selected=${now === ''}>
        ${sheet.kind === 'base' ? 'first' : 'last'} of its section
      </option>
      ${neighbours(sheet, key)
        .filter((other) => other !== key)
        .map(
          (other) =>
            html`<option value=${other} ?selected=${now === other}>behind ${other}</option>`,
        )}
    </select></label
  >`;
}

function added(): TemplateResult {
  const sections: readonly Section[] = [...SET_UP, ...BESIDE];
  return html`<label
      >section
      <select name="section">
        ${sections.map((s) => html`<option value=${s}>${sectionName(s)}</option>`)}
      </select></label
    >
    <label
      >belongs to
      <select name="belongs">
        <option value="case">the case</option>
        <option value="room">the room</option>
      </select></label
    >`;
}

function submit(about: About, was: Form, data: FormData): void {
  const said = (name: string): string => String(data.get(name) ?? '');
  const form = Object.fromEntries(
    Object.entries(was).map(([name, value]) => [name, data.has(name) ? said(name) : value]),
  ) as unknown as Form;
  const fields = fieldsOf(form, was);
  const sheet = about.sheet.name;
  if (about.key === '') {
    const key = `${said('section')}.${wordOf(form.desk)}`;
    about.put({ does: 'add', sheet, key, fields: { belongs: said('belongs'), ...fields } });
    return;
  }
  const edits: Edit[] = [];
  if (Object.keys(fields).length > 0) {
    edits.push({ does: 'change', sheet, key: about.key, fields });
  }
  const behind = said('behind');
  if (data.has('behind') && behind !== behindOf(about.sheet, about.key)) {
    edits.push({ does: 'move', sheet, key: about.key, ...(behind === '' ? {} : { behind }) });
  }
  about.put(...edits);
}
