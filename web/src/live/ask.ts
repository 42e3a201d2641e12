import { told } from '../words/index.ts';
import { passHeaders } from './pass.ts';
import { inSuite, suiteIn } from './suite.ts';

/** The server's own words when it does not do what was asked, or that it is not there. */
export class NotDone extends Error {
  /** What the board answered; undefined if it did not. */
  readonly status: number | undefined;

  constructor(words: string, status?: number) {
    super(words);
    this.status = status;
  }
}

/** What is asked of the server beside the socket. */
export interface Asked {
  /** It is posted; without it something is only read. */
  readonly body?: string;
  /** The body's media type. */
  readonly type?: string;
  /** What did not happen, if it does not answer: "Nothing was taken". */
  readonly otherwise?: string;
  readonly signal?: AbortSignal | undefined;
}

/**
 * Asks the server something for the suite of this page and gives back what it answers.
 *
 * @param path with its query
 * @throws NotDone with words for people; whatever `fetch` throws if it was given up
 */
export async function ask<T>(path: string, asked: Asked = {}): Promise<T> {
  const { response, content: text } = await answered(path, asked, (r) => r.text());
  let body: unknown;
  try {
    body = text === '' ? {} : JSON.parse(text);
  } catch {
    body = {};
  }
  if (!response.ok) throw notDone(response, body, asked);
  return body as T;
}

/**
 * Asks the server for a file and gives it to the person who asked. By a link it could not be had
 * where screens are paired: a link shows no pass.
 */
export async function download(path: string, name: string, asked: Asked = {}): Promise<void> {
  const { response, content: file } = await answered(path, asked, (r) => r.blob());
  if (!response.ok) {
    const body: unknown = await new Response(file).json().catch(() => ({}));
    throw notDone(response, body, asked);
  }
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  // The browser has begun to save it by then.
  setTimeout(() => URL.revokeObjectURL(link.href), SAVED_MS);
}

const SAVED_MS = 60_000;

async function answered<T>(
  path: string,
  asked: Asked,
  read: (response: Response) => Promise<T>,
): Promise<{ response: Response; content: T }> {
  try {
    const response = await fetch(inSuite(path, suiteIn(location.search)), {
      cache: 'no-store',
      headers: {
        ...(asked.type === undefined ? {} : { 'content-type': asked.type }),
        ...passHeaders(),
      },
      ...(asked.body === undefined ? {} : { method: 'POST', body: asked.body }),
      ...(asked.signal === undefined ? {} : { signal: asked.signal }),
    });
    return { response, content: await read(response) };
  } catch (e) {
    if (e instanceof DOMException && e.name === 'AbortError') throw e;
    throw new NotDone(`The board does not answer. ${ending(asked)}ry again.`);
  }
}

function notDone(response: Response, body: unknown, asked: Asked): NotDone {
  const otherwise = asked.otherwise === undefined ? '' : ` ${asked.otherwise}.`;
  const words = wordsOf(body) ?? `The board answered ${response.status}.${otherwise}`;
  return new NotDone(words, response.status);
}

/** What went wrong, for people. */
export function troubleWords(e: unknown): string {
  return e instanceof Error ? e.message : String(e);
}

/** What an answer says for people, if it says anything. */
export function wordsOf(body: unknown): string | undefined {
  const found = ((body as { words?: unknown } | null) ?? {}).words;
  return typeof found === 'string' ? told(found) : undefined;
}

function ending({ otherwise }: Asked): string {
  return otherwise === undefined ? 'T' : `${otherwise}; t`;
}
