import { passHeaders } from '../live/index.ts';

/** The server's own words when it does not do what was asked. */
export class NotTaken extends Error {}

/** What is asked of the server beside the socket. */
export interface Asked {
  readonly type: string;
  readonly body: string;
  /** What did not happen, if it does not answer: "Nothing was taken". */
  readonly otherwise: string;
  readonly signal?: AbortSignal;
}

/**
 * Posts something and gives back what the server answers.
 *
 * @throws NotTaken with words for people; whatever `fetch` throws if it was given up
 */
export async function ask(url: string, asked: Asked): Promise<unknown> {
  let response: Response;
  let text: string;
  try {
    response = await fetch(url, {
      method: 'POST',
      headers: { 'content-type': asked.type, ...passHeaders() },
      body: asked.body,
      ...(asked.signal === undefined ? {} : { signal: asked.signal }),
    });
    text = await response.text();
  } catch (e) {
    if (asked.signal?.aborted) throw e;
    throw new NotTaken(`The board does not answer. ${asked.otherwise}; try again.`);
  }
  let body: unknown;
  try {
    body = text === '' ? {} : JSON.parse(text);
  } catch {
    body = {};
  }
  if (!response.ok) {
    throw new NotTaken(
      wordsOf(body) ?? `The board answered ${response.status}. ${asked.otherwise}.`,
    );
  }
  return body;
}

/** What an answer says for people, if it says anything. */
export function wordsOf(body: unknown): string | undefined {
  const words = (body as { words?: unknown; message?: unknown } | null) ?? {};
  const found = words.words ?? words.message;
  return typeof found === 'string' ? found : undefined;
}
