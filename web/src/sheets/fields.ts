import type { Step } from '../generated/wire.ts';
import { stepName } from '../hands/words.ts';
import { both, shownLeast, shownMost, shownUnit, told, worded } from '../words/index.ts';
import type { Fields } from './api.ts';

/** What a form holds, as texts. */
export interface Form {
  desk: string;
  wall: string;
  belongs: string;
  who: string;
  usual: string;
  oneInTen: string;
  waitsUsual: string;
  waitsOneInTen: string;
  extraOneIn: string;
  extraMinutes: string;
  gates: string;
  after: string;
  alsoAfter: string;
  ifThere: string;
  evidence: string;
  unit: string;
  least: string;
  most: string;
  low: string;
  high: string;
  good: string;
  faults: string;
  witness: string;
  undo: string;
  lifeMinutes: string;
  lifeEnds: string;
  lifeSource: string;
  nextCase: string;
  place: string;
  /** `ultrasound until patient.block, imaging`. */
  uses: string;
  plannedBefore: string;
  plannedLate: string;
  core: string;
  marks: string;
  /** Items of the ASA's checkout that it answers for: `8, 10`. */
  asa: string;
}

/** Words of a choice that begin with it are faults. */
const FAULT = '!';
const UNTIL = ' until ';
const BAND = ['least', 'most', 'low', 'high'] as const;

export function text(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

function texts(value: unknown): string {
  return Array.isArray(value) ? value.join(', ') : '';
}

function inner(item: Fields, name: string): Fields {
  const value = item[name];
  return typeof value === 'object' && value !== null ? (value as Fields) : {};
}

export function list(value: string): string[] {
  return value
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

/** An item as a form shows it. */
export function formOf(item: Fields): Form {
  const hands = inner(item, 'hands');
  const waits = inner(item, 'waits');
  const extra = inner(item, 'extra');
  const evidence = inner(item, 'evidence');
  const life = inner(item, 'life');
  const choices = list(texts(evidence['choices']));
  const uses = Array.isArray(item['uses']) ? (item['uses'] as Fields[]) : [];
  return {
    desk: text(item['desk']),
    wall: text(item['wall']),
    belongs: text(item['belongs']),
    who: worded(texts(item['who'])),
    usual: text(hands['usual']),
    oneInTen: text(hands['oneInTen']),
    waitsUsual: text(waits['usual']),
    waitsOneInTen: text(waits['oneInTen']),
    extraOneIn: text(extra['oneIn']),
    extraMinutes: text(extra['minutes']),
    gates: text(item['gates']),
    after: texts(item['after']),
    alsoAfter: texts(item['alsoAfter']),
    ifThere: item['ifThere'] === true ? 'yes' : '',
    evidence: text(evidence['kind']),
    unit: text(evidence['unit']),
    least: text(evidence['least']),
    most: text(evidence['most']),
    low: text(evidence['low']),
    high: text(evidence['high']),
    good: choices.filter((word) => !word.startsWith(FAULT)).join(', '),
    faults: choices
      .filter((word) => word.startsWith(FAULT))
      .map((word) => word.slice(FAULT.length))
      .join(', '),
    witness: evidence['witness'] === true ? 'yes' : '',
    undo: text(evidence['undo']),
    lifeMinutes: text(life['minutes']),
    lifeEnds: text(life['ends']),
    lifeSource: text(life['source']),
    nextCase: life['nextCase'] === true ? 'yes' : '',
    place: text(item['place']),
    uses: uses.map((use) => useWords(text(use['kind']), text(use['until']))).join(', '),
    plannedBefore: text(item['plannedBefore']),
    plannedLate: text(item['plannedLate']),
    core: item['core'] === true ? 'yes' : '',
    marks: text(item['marks']),
    asa: texts(item['asa']),
  };
}

export function useWords(kind: string, until: string): string {
  return until === '' ? kind : `${kind}${UNTIL}${until}`;
}

/** A use of shared equipment as a form holds it: its kind, and until when. */
export function useOf(words: string): readonly [kind: string, until: string] {
  const at = words.indexOf(UNTIL);
  return at < 0 ? [words, ''] : [words.slice(0, at), words.slice(at + UNTIL.length)];
}

/** Who does an item, as a form has it, in the roles' own names. */
function roleNames(who: string): string {
  return (['anaesthetist', 'porter'] as const).reduce(
    (said, role) => said.replaceAll(new RegExp(`\\b${both(`role.${role}`)}\\b`, 'g'), role),
    who,
  );
}

/** Numbers and texts that somebody entered, without what was left empty; null if all was. */
function object(numbers: Fields, words: Fields = {}): Fields | null {
  const said = Object.entries({ ...numbers, ...words })
    .map(([name, value]): [string, string] => [name, text(value).trim()])
    .filter(([, value]) => value !== '')
    .map(([name, value]) => [name, name in numbers ? Number(value) : value]);
  return said.length === 0 ? null : (Object.fromEntries(said) as Fields);
}

/** What makes the item good; null for a plain touch, which needs no word. */
function evidence(form: Form): Fields | null {
  const kind = form.evidence;
  const undo = form.undo.trim();
  const more: Fields = {
    ...(form.witness === 'yes' ? { witness: true } : {}),
    ...(undo === '' ? {} : { undo }),
  };
  if (kind === '') {
    return Object.keys(more).length === 0 ? null : { kind: 'touch', ...more };
  }
  const band =
    kind === 'number'
      ? object(Object.fromEntries(BAND.map((name) => [name, form[name]])), { unit: form.unit })
      : {};
  const choices =
    kind === 'choice'
      ? { choices: [...list(form.good), ...list(form.faults).map((word) => FAULT + word)] }
      : {};
  return { kind, ...band, ...choices, ...more };
}

function life(form: Form): Fields | null {
  const all = object(
    { minutes: form.lifeMinutes },
    { ends: form.lifeEnds, source: form.lifeSource },
  );
  return form.nextCase === 'yes' ? { ...all, nextCase: true } : all;
}

function asa(form: Form): unknown[] | null {
  const all = list(form.asa);
  // What is no number goes out as it is: the board says what is wrong with it, and where.
  return all.length === 0 ? null : all.map((one) => (/^\d+$/.test(one) ? Number(one) : one));
}

function uses(form: Form): Fields[] | null {
  const all = list(form.uses).map(useOf);
  return all.length === 0
    ? null
    : all.map(([kind, until]) => ({ kind, ...(until === '' ? {} : { until }) }));
}

/** Fields of a sheet, each with the fields of a form of which it is made. */
const MADE_OF: Record<string, readonly [readonly (keyof Form)[], (form: Form) => unknown]> = {
  hands: [['usual', 'oneInTen'], (f) => object({ usual: f.usual, oneInTen: f.oneInTen })],
  waits: [
    ['waitsUsual', 'waitsOneInTen'],
    (f) => object({ usual: f.waitsUsual, oneInTen: f.waitsOneInTen }),
  ],
  extra: [
    ['extraOneIn', 'extraMinutes'],
    (f) => object({ oneIn: f.extraOneIn, minutes: f.extraMinutes }),
  ],
  evidence: [['evidence', 'unit', ...BAND, 'good', 'faults', 'witness', 'undo'], evidence],
  life: [['lifeMinutes', 'lifeEnds', 'lifeSource', 'nextCase'], life],
  uses: [['uses'], uses],
  ifThere: [['ifThere'], (f) => (f.ifThere === 'yes' ? true : null)],
  core: [['core'], (f) => (f.core === 'yes' ? true : null)],
  asa: [['asa'], asa],
};

/** What of a form is other than what it was filled with, as fields of a sheet. */
export function fieldsOf(form: Form, was: Form): Fields {
  const fields: Fields = {};
  for (const name of ['desk', 'wall', 'belongs', 'gates', 'marks', 'place'] as const) {
    if (form[name].trim() !== was[name]) fields[name] = form[name].trim() || null;
  }
  for (const name of ['who', 'after', 'alsoAfter'] as const) {
    const now = list(form[name]);
    if (now.join(', ') === was[name]) continue;
    const written = name === 'who' ? now.map(roleNames) : now;
    fields[name] = written.length === 0 ? null : written;
  }
  for (const name of ['plannedBefore', 'plannedLate'] as const) {
    if (form[name] !== was[name]) fields[name] = form[name] === '' ? null : Number(form[name]);
  }
  for (const [name, [parts, made]] of Object.entries(MADE_OF)) {
    if (parts.some((part) => form[part].trim() !== was[part])) fields[name] = made(form);
  }
  return fields;
}

/**
 * A few words that say what makes an item good and for how long, beside its line: pressures as the
 * site reads them. The form has the sheet's own numbers and unit.
 */
export function standsFor(item: Fields): string {
  const form = formOf(item);
  const band = [
    form.low === '' ? '' : `from ${shownLeast(Number(form.low), form.unit)}`,
    form.high === '' ? '' : `to ${shownMost(Number(form.high), form.unit)}`,
  ]
    .filter((part) => part !== '')
    .join(' ');
  return [
    form.evidence === 'number' ? `number ${band} ${shownUnit(form.unit)}` : '',
    form.evidence === 'choice' ? [form.good, form.faults].filter(Boolean).join(', ') : '',
    form.evidence === 'scan' ? 'scanned' : '',
    form.evidence === 'time' ? 'with its time' : '',
    form.witness === '' ? '' : 'two people',
    form.lifeMinutes === '' ? '' : `good for ${form.lifeMinutes} min`,
    form.lifeEnds === '' ? '' : `until ${told(form.lifeEnds)}`,
    form.nextCase === '' ? '' : 'for the next case too',
    form.place === '' ? '' : `at ${form.place}`,
    form.uses === '' ? '' : `uses ${form.uses}`,
    form.extraOneIn === '' ? '' : `one in ${form.extraOneIn} needs ${form.extraMinutes} more`,
    form.marks === '' ? '' : `marks ${stepName(form.marks as Step)}`,
    form.asa === '' ? '' : `ASA ${form.asa}`,
  ]
    .filter((part) => part !== '')
    .join(' · ');
}
