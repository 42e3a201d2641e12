import { html, nothing, type TemplateResult } from 'lit';
import type { Section, Step } from '../generated/wire.ts';
import { BESIDE, sectionName, SET_UP, stepName, STEPS } from '../hands/words.ts';
import type { Edit, Fields, Sheet } from './api.ts';
import { fieldsOf, type Form, formOf, list, useOf, useWords } from './fields.ts';
import { behindOf, isCore, neighbours, wordOf } from './model.ts';

/** What a form is about. */
export interface About {
  sheet: Sheet;
  /** Empty for an item that is to be added. */
  key: string;
  item: Fields;
  /** True for an item that the sheet itself brings: it has a place of its own there. */
  own: boolean;
  /** Places away from the rooms that the site has. */
  places: readonly string[];
  put: (...edits: Edit[]) => void;
  leave: () => void;
}

/** A form for one item: what is empty on an addition's change stays as it was found. */
export function itemForm(about: About): TemplateResult {
  const { item, key, own, sheet } = about;
  const was = formOf(item);
  const core = isCore(sheet, key, item);
  const unwaivable = sheet.unwaivable.includes(key);
  const isNew = key === '';
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
      ${isNew ? section() : nothing}
      ${input('desk', isNew ? 'what it is, for those who work here' : 'words at the desk', was, 80)}
      ${input('wall', 'words on the wall, nothing of the patient', was, 24)}
      ${own || isNew ? belongs(was, sheet.kind) : nothing}
      ${input('who', 'who, all at once; “or” for either', was)}
      ${number('usual', 'usual minutes', was)} ${number('oneInTen', 'one in ten takes', was)}
      ${number('waitsUsual', 'then waits, usual', was)}
      ${number('waitsOneInTen', 'one in ten waits', was)}
      ${number('extraOneIn', 'rare: one in …', was)}
      ${number('extraMinutes', '… needs minutes more', was)}
      ${
        was.plannedBefore === ''
          ? nothing
          : html`${number('plannedBefore', 'comes, minutes before the target', was)}
            ${number('plannedLate', 'nine in ten by, minutes before', was, -600)}`
      }
    </div>
    <h4>Where it stands and what it holds up</h4>
    <div class="fields">
      <label
        >holds up
        <select name="gates">
          ${
            core && own
              ? nothing
              : html`<option value="" ?selected=${was.gates === ''}>
                  ${own || isNew ? 'nothing: advised only' : AS_FOUND}
                </option>`
          }
          ${stepsFor(sheet, unwaivable).map(
            (step) =>
              html`<option value=${step} ?selected=${was.gates === step}>
                ${stepName(step)}
              </option>`,
          )}
        </select></label
      >
      ${own && !isNew ? place(sheet, key) : nothing} ${input('after', 'comes after (keys)', was)}
      ${
        own || isNew
          ? nothing
          : html`${input('alsoAfter', 'comes after these, too (keys)', was)}
            ${tick('ifThere', 'no mistake if the list lacks it', was)}`
      }
    </div>
    ${evidenceFields(was, own || isNew)}
    ${lifeFields(was, sheet.kind !== 'personal' && mayCarry(key))}
    ${sheet.kind === 'personal' ? nothing : html`${thingFields(about, was)}${standing(about, was, core, unwaivable)}`}
    <div class="row">
      <button class="main">${isNew ? 'Add it to the draft' : 'Put it into the draft'}</button>
      ${!isNew && own ? leaving(about, core) : nothing}
      <button type="button" @click=${about.leave}>Leave it as it is</button>
    </div>
  </form>`;
}

const AS_FOUND = 'as it was found';

const EVIDENCE: readonly [string, string][] = [
  ['number', 'a number in a band'],
  ['choice', 'one of a few words'],
  ['scan', 'a scan of the thing’s tag'],
  ['time', 'the time at which it happened'],
];

/** What makes it good. Style shows a band with a number and words with a choice. */
function evidenceFields(was: Form, whole: boolean): TemplateResult {
  return html`<h4>What makes it good</h4>
    <div class="fields">
      <label
        >asked for
        <select name="evidence">
          <option value=${whole && was.evidence === 'touch' ? 'touch' : ''}>
            ${whole ? 'a touch' : AS_FOUND}
          </option>
          ${
            whole
              ? nothing
              : html`<option value="touch" ?selected=${was.evidence === 'touch'}>a touch</option>`
          }
          ${EVIDENCE.map(
            ([kind, words]) =>
              html`<option value=${kind} ?selected=${was.evidence === kind}>${words}</option>`,
          )}
        </select></label
      >
      ${tick('witness', 'a second person signs', was)}
      ${input('undo', 'put back afterwards, and confirmed', was)}
    </div>
    <div class="fields when-number">
      ${input('unit', 'unit', was, 20, '')} ${number('low', 'good from', was, -1e9)}
      ${number('high', 'good to', was, -1e9)} ${number('least', 'refused below', was, -1e9)}
      ${number('most', 'refused above', was, -1e9)}
    </div>
    <div class="fields when-choice">
      ${input('good', 'good words, with commas', was)} ${input('faults', 'words for a fault', was)}
    </div>`;
}

/** Only a check of the machine is good for another patient too; the board refuses all else. */
function mayCarry(key: string): boolean {
  return key === '' || key.startsWith('machine.');
}

function lifeFields(was: Form, carries: boolean): TemplateResult {
  return html`<h4>How long it stays good</h4>
    <div class="fields">
      ${number('lifeMinutes', 'lapses after minutes', was, 1, 86_400)}
      ${input('lifeEnds', 'or when, in words', was)}
      ${input('lifeSource', 'whose limit it is', was, 160)}
      ${carries ? tick('nextCase', 'the machine: good for the next case too', was) : nothing}
    </div>`;
}

/** What may hold up which step; what every list has holds up induction or a step before it. */
function stepsFor(sheet: Sheet, unwaivable: boolean): readonly Step[] {
  if (sheet.kind === 'personal') return [];
  return unwaivable ? STEPS.slice(0, STEPS.indexOf('induction') + 1) : STEPS;
}

/** What the item is for the whole list. */
function standing(about: About, was: Form, core: boolean, unwaivable: boolean): TemplateResult {
  const whole = about.own || about.key === '';
  const kept = unwaivable || (core && !whole);
  return html`<h4>What it is for the list</h4>
    ${kept ? html`<p>May never be left out${unwaivable ? ': every list has it, whoever writes the sheets' : ''}.</p>` : nothing}
    <div class="fields">
      ${kept ? nothing : tick('core', 'may never be left out of a case', was)}
      <label
        >its being good marks
        <select name="marks">
          <option value="" ?selected=${was.marks === ''}>${whole ? 'no step' : AS_FOUND}</option>
          ${STEPS.map(
            (step) =>
              html`<option value=${step} ?selected=${was.marks === step}>
                ${stepName(step)}
              </option>`,
          )}
        </select></label
      >
      ${input('asa', 'answers for items 1 to 15 of the ASA checkout (2008)', was, 60)}
    </div>`;
}

/** Where it is done and what it takes: as the site's file and the base name them. */
function thingFields(about: About, was: Form): TemplateResult {
  const { sheet, own, key, places } = about;
  const uses = [...list(was.uses).map(useOf), ['', ''] as const];
  const whole = own || key === '';
  return html`<h4>Where, and with which shared equipment</h4>
    <div class="fields">
      ${options('place', 'place', was.place, whole ? 'in the room' : AS_FOUND, places)}
      ${uses.map(([kind, until]) => [
        options('useKind', 'equipment', kind, 'none', sheet.kinds),
        options(
          'useUntil',
          'given back after',
          until,
          'this item',
          sheet.list.map((line) => line.key),
        ),
      ])}
    </div>`;
}

function options(
  name: string,
  words: string,
  now: string,
  none: string,
  all: readonly string[],
): TemplateResult {
  const known = now === '' || all.includes(now) ? all : [now, ...all];
  return html`<label
    >${words}
    <select name=${name}>
      <option value="" ?selected=${now === ''}>${none}</option>
      ${known.map((one) => html`<option value=${one} ?selected=${one === now}>${one}</option>`)}
    </select></label
  >`;
}

/** Names the boxes that a form shows: one that is not ticked sends nothing itself. */
const ASKED = 'asked';

function tick(name: keyof Form, words: string, was: Form): TemplateResult {
  return html`<label class="tick"
    ><input type="checkbox" name=${name} value="yes" ?checked=${was[name] === 'yes'} />
    <input type="hidden" name=${ASKED} value=${name} />
    ${words}</label
  >`;
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

function input(
  name: keyof Form,
  words: string,
  was: Form,
  most = 400,
  wide = name === 'wall' ? '' : 'wide',
): TemplateResult {
  return html`<label class=${wide}
    >${words} <input name=${name} autocomplete="off" maxlength=${most} .value=${was[name]}
  /></label>`;
}

function number(
  name: keyof Form,
  words: string,
  was: Form,
  least = 0,
  most = least < 0 ? 1e9 : 1440,
): TemplateResult {
  return html`<label
    >${words}
    <input name=${name} type="number" min=${least} max=${most} step="any" .value=${was[name]}
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

function section(): TemplateResult {
  const sections: readonly Section[] = [...SET_UP, ...BESIDE];
  return html`<label
    >section
    <select name="section">
      ${sections.map((s) => html`<option value=${s}>${sectionName(s)}</option>`)}
    </select></label
  >`;
}

/** What a person adds goes with the case. */
function belongs(was: Form, kind: Sheet['kind']): TemplateResult {
  return html`<label
    >belongs to
    <select name="belongs">
      <option value="case">the case</option>
      ${
        kind === 'personal'
          ? nothing
          : html`<option value="room" ?selected=${was.belongs === 'room'}>the room</option>`
      }
    </select></label
  >`;
}

/** What stands in a form now. */
function said(was: Form, data: FormData): Form {
  const of = (name: string): string => String(data.get(name) ?? '');
  const form = Object.fromEntries(
    Object.entries(was).map(([name, value]) => [name, data.has(name) ? of(name) : value]),
  ) as unknown as Form;
  const ticks = data.getAll(ASKED).map((name) => [String(name), of(String(name))]);
  const until = data.getAll('useUntil').map(String);
  return {
    ...form,
    ...(Object.fromEntries(ticks) as Partial<Form>),
    uses: data
      .getAll('useKind')
      .map((kind, i) => (kind === '' ? '' : useWords(String(kind), until[i] ?? '')))
      .filter((use) => use !== '')
      .join(', '),
  };
}

function submit(about: About, was: Form, data: FormData): void {
  const form = said(was, data);
  const fields = fieldsOf(form, was);
  const sheet = about.sheet.name;
  if (about.key === '') {
    const key = `${String(data.get('section'))}.${wordOf(form.desk)}`;
    about.put({ does: 'add', sheet, key, fields });
    return;
  }
  const edits: Edit[] = [];
  if (Object.keys(fields).length > 0) {
    edits.push({ does: 'change', sheet, key: about.key, fields });
  }
  const behind = String(data.get('behind') ?? '');
  if (data.has('behind') && behind !== behindOf(about.sheet, about.key)) {
    edits.push({ does: 'move', sheet, key: about.key, ...(behind === '' ? {} : { behind }) });
  }
  about.put(...edits);
}
