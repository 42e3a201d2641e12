import type { Edit, Fields, Line, Sheet } from './api.ts';
import { text } from './fields.ts';

/** A draft as this screen keeps it until it is published or thrown away. */
export interface Draft {
  /** Its own, so that one sent twice becomes one edition. */
  readonly id: string;
  /** The edition that it was begun on. */
  readonly on: number;
  readonly edits: readonly Edit[];
}

/** Adds a change; changes of one item's fields that follow each other are one. */
export function withEdit(edits: readonly Edit[], edit: Edit): Edit[] {
  const last = edits.at(-1);
  const same = last !== undefined && last.sheet === edit.sheet && last.key === edit.key;
  if (same && edit.does === 'change' && (last.does === 'change' || last.does === 'add')) {
    return [...edits.slice(0, -1), { ...last, fields: { ...last.fields, ...edit.fields } }];
  }
  if (same && edit.does === 'head' && (last.does === 'head' || last.does === 'add-sheet')) {
    return [...edits.slice(0, -1), { ...last, fields: { ...last.fields, ...edit.fields } }];
  }
  if (same && edit.does === 'move' && last.does === 'move') {
    return [...edits.slice(0, -1), edit];
  }
  return [...edits, edit];
}

/** True if a draft leaves a sheet of this name, as far as its changes tell. */
export function leaves(sheet: string, names: readonly string[], edits: readonly Edit[]): boolean {
  let there = names.includes(sheet);
  for (const edit of edits) {
    if (edit.does === 'as-in' && edit.sheet === undefined) there = false;
    if (edit.sheet !== sheet) continue;
    if (edit.does === 'add-sheet' || edit.does === 'as-in') there = true;
    if (edit.does === 'remove-sheet') there = false;
  }
  return there;
}

/** A kept draft, or none if what is kept is none. */
export function draftIn(kept: string | null): Draft | undefined {
  try {
    const read = JSON.parse(kept ?? 'null') as Partial<Draft> | null;
    return read !== null &&
      typeof read.id === 'string' &&
      typeof read.on === 'number' &&
      Array.isArray(read.edits) &&
      read.edits.length > 0
      ? { id: read.id, on: read.on, edits: read.edits }
      : undefined;
  } catch {
    return undefined;
  }
}

/** A change as somebody would say it. */
export function editWords(edit: Edit, title: (sheet: string) => string): string {
  const where = edit.sheet === undefined ? 'all sheets' : title(edit.sheet);
  const edition =
    edit.edition === 0 ? 'as they come with Sunup' : `as in edition ${edit.edition ?? '?'}`;
  switch (edit.does) {
    case 'change':
      return `${where}: ${edit.key} changed (${Object.keys(edit.fields ?? {}).join(', ')})`;
    case 'add':
      return `${where}: ${edit.key} added`;
    case 'leave-out':
      return `${where}: ${edit.key} left out`;
    case 'put-back':
      return `${where}: ${edit.key} as it was found`;
    case 'move':
      return `${where}: ${edit.key} ${edit.behind === undefined ? 'first' : `behind ${edit.behind}`}`;
    case 'as-in':
      return `${where}: ${edition}`;
    case 'add-sheet':
      return `${text(edit.fields?.['title'])}: a new ${text(edit.fields?.['kind'])}`;
    case 'head':
      return `${where}: ${Object.keys(edit.fields ?? {}).join(', ')} changed`;
    case 'remove-sheet':
      return `${where}: taken away whole`;
  }
}

/** Minutes with at most one decimal: `6`, `0.5`. */
export function minutes(value: number): string {
  return String(Math.round(value * 10) / 10).replace('-', '−');
}

/** Minutes more or less, with a sign; `as before` if they are the same. */
export function difference(before: number, after: number): string {
  const by = Math.round((after - before) * 10) / 10;
  return by === 0 ? 'as before' : `${by > 0 ? '+' : ''}${minutes(by)}`;
}

/** The section that a key begins with. */
export function sectionOf(key: string): string {
  return key.slice(0, Math.max(0, key.indexOf('.')));
}

/**
 * Behind which item of its section an item stands: on a base the one before it, or nothing if it is
 * first; on an addition the one that it follows, or nothing if it comes last.
 */
export function behindOf(sheet: Sheet, key: string): string {
  if (sheet.kind !== 'base') {
    return text(sheet.items.find((item) => item['key'] === key)?.['follows']);
  }
  const own = neighbours(sheet, key);
  return own[own.indexOf(key) - 1] ?? '';
}

/** Keys of its section among which an item of a sheet stands, itself too. */
export function neighbours(sheet: Sheet, key: string): string[] {
  const keys =
    sheet.kind === 'base'
      ? sheet.items.map((item) => text(item['key']))
      : sheet.list.map((line) => line.key);
  return keys.filter((other) => sectionOf(other) === sectionOf(key));
}

/** Items of the whole list that a sheet finds: neither its own, nor changed nor taken by it. */
export function found(sheet: Sheet): Line[] {
  const here = new Set([...sheet.items, ...sheet.changes].map((item) => text(item['key'])));
  return sheet.list.filter((line) => !here.has(line.key) && !sheet.takes.includes(line.key));
}

/** True for an item that may never be left out: one of the sheet's own, or one that it finds. */
export function isCore(sheet: Sheet, key: string, item: Fields): boolean {
  const own = sheet.items.some((one) => one['key'] === key);
  return item['core'] === true || (!own && sheet.list.some((one) => one.key === key && one.core));
}

/** A key made of what somebody calls a thing: `arm boards` becomes `arm-boards`. */
export function wordOf(said: string): string {
  return said
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 30);
}
