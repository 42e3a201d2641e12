import type { HouseStyle, Role } from '../generated/wire.ts';
import { ask } from '../live/index.ts';
import { follow, toldIn } from '../words/index.ts';

/**
 * Fields of the board's answers that hold its sentences or words of sheets. A form sends only what
 * somebody changed in it, so words that are told otherwise are not written into a sheet by looking.
 */
const TOLD: ReadonlySet<string> = new Set([
  'title',
  'desk',
  'wall',
  'start',
  'added',
  'gone',
  'changed',
  'changes',
  'message',
  'words',
]);

/** The records of `/api/sheets`, as far as the page reads them. */
export interface Overview {
  edition: number;
  zone: string;
  /** How the site writes, if its file says anything of it. */
  style?: HouseStyle;
  sheets: Named[];
  places: string[];
  editions: Published[];
}

export interface Named {
  name: string;
  title: string;
  kind: 'base' | 'technique' | 'option' | 'personal';
}

export interface Published {
  edition: number;
  at: number;
  role: Role;
  person?: string;
  screen: string;
  note?: string;
  changes: string[];
}

/** One change of a draft, on what those before it left. */
export interface Edit {
  does:
    | 'change'
    | 'add'
    | 'leave-out'
    | 'put-back'
    | 'move'
    | 'as-in'
    | 'add-sheet'
    | 'head'
    | 'remove-sheet';
  sheet?: string;
  key?: string;
  fields?: Fields;
  behind?: string;
  edition?: number;
}

/** An item, or a sheet's head, as it is written in a sheet; null takes a field away. */
export type Fields = Record<string, unknown>;

export interface Problem {
  file: string;
  line: number;
  field: string;
  message: string;
}

export interface Sum {
  items: number;
  handsUsual: number;
  handsMean: number;
  waitsUsual: number;
}

export interface Minutes {
  shares: { who: Role[]; sum: Sum }[];
  setUp: Sum;
  all: Sum;
  leastUsual: number;
}

export interface Sheet extends Named {
  on?: string;
  brings: string[];
  notWith: string[];
  order: string[];
  note?: string;
  kinds: string[];
  /** Keys of what every list has as core, whoever wrote the sheets. */
  unwaivable: string[];
  items: Fields[];
  changes: Fields[];
  takes: string[];
  technique: string;
  list: Line[];
  before?: Minutes;
  after?: Minutes;
  text: string;
}

/** An item of the list that a sheet makes. */
export interface Line {
  key: string;
  desk: string;
  /** True if it may never be left out. */
  core: boolean;
}

export interface Coming {
  date: string;
  room: string;
  start: string;
  technique: string;
  options: string[];
  open: boolean;
  keeps: number;
  added: string[];
  gone: string[];
  changed: string[];
  moved: number;
  minutes?: number;
  problems: Problem[];
}

export interface Checked {
  on: number;
  edition: number;
  ready: boolean;
  changes: string[];
  problems: Problem[];
  sheets: Named[];
  since?: { changes: { sheet: string; key: string; field: string }[]; both: string[] };
  sheet: Sheet;
  coming: Coming[];
}

/** What is there; how the site writes is followed from then on. */
export async function overview(): Promise<Overview> {
  const found = await ask<Overview>('/api/sheets');
  follow(found.style);
  return toldIn(found, TOLD);
}

/** What a draft would do. Nothing is kept at the board. */
export async function check(
  on: number,
  edits: readonly Edit[],
  sheet: string | undefined,
  signal: AbortSignal,
): Promise<Checked> {
  const checked = await ask<Checked>('/api/sheets/check', {
    type: 'application/json',
    body: JSON.stringify({ on, edits, ...(sheet === undefined ? {} : { sheet }) }),
    signal,
  });
  return toldIn(checked, TOLD);
}

/** Publishes a draft; one that is sent again with the same id becomes no second edition. */
export async function publish(
  on: number,
  edits: readonly Edit[],
  draft: string,
  note: string,
): Promise<{ edition: number; words: string }> {
  const done = await ask<{ edition: number; words: string }>('/api/sheets/publish', {
    type: 'application/json',
    body: JSON.stringify({ on, edits, draft, ...(note.trim() === '' ? {} : { note }) }),
    otherwise: 'It is not known whether it was published',
  });
  return toldIn(done, TOLD);
}
