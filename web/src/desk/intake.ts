import { toldIn } from '../words/index.ts';
import { ask, NotDone, wordsOf } from '../live/index.ts';

/** What the server says of a case list before it is taken. */
export interface Preview {
  hash: string;
  added: PreviewRow[];
  changed: PreviewRow[];
  removed: PreviewRow[];
  unchanged: number;
  problems: Problem[];
  notes: Problem[];
}

export interface PreviewRow {
  caseId: string;
  room: string;
  start?: string;
  technique?: string;
  options?: string[];
  changes?: string[];
}

/** What is wrong, where, and how to mend it. */
export interface Problem {
  file: string;
  line: number;
  field: string;
  message: string;
}

/** Bytes of a list that are sent at most. */
export const LIST_LIMIT = 1_000_000;

/** Asks what taking this list would change. Nothing happens yet. */
export async function preview(csv: string, date: string): Promise<Preview> {
  const query = `date=${encodeURIComponent(date)}`;
  const found = (await post(`/api/intake/preview?${query}`, csv)) as Preview;
  return toldIn(found, new Set(['start', 'changes']));
}

/**
 * Takes the list, if it would still change what the preview said, or nothing any more.
 *
 * @returns what the board says of it
 */
export async function take(csv: string, date: string, hash: string): Promise<string> {
  const query = `date=${encodeURIComponent(date)}&hash=${encodeURIComponent(hash)}`;
  return wordsOf(await post(`/api/intake/take?${query}`, csv)) ?? 'The list is taken.';
}

async function post(url: string, csv: string): Promise<unknown> {
  if (csv.length > LIST_LIMIT) {
    throw new NotDone('This is larger than any case list. Choose the list of one date.');
  }
  return ask(url, {
    type: 'text/csv; charset=utf-8',
    body: csv,
    otherwise: 'Nothing was taken',
  });
}
