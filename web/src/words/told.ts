import type { PartUnion, ServerMessageUnion } from '../generated/wire.ts';
import { timesIn } from './clock.ts';
import { worded } from './say.ts';
import { FIRST, follow, style } from './style.ts';

/**
 * The server's own sentences as this site writes them. The wire has one text for every screen,
 * British and with 24 hours; it is turned here, once, as it comes in, so that no page has to think
 * of it. What people typed and what the site's file names stays as it is.
 */

/** Fields of each kind of part that hold sentences of the server or of sheets. */
const SENTENCES: Partial<Record<PartUnion['part'], ReadonlySet<string>>> = {
  room: new Set(['word']),
  item: new Set(['name', 'undo']),
  'next-item': new Set(['name', 'undo']),
  wait: new Set(['words']),
  chance: new Set(['words']),
  sign: new Set(['words']),
  move: new Set(['words', 'who']),
  idea: new Set(['words', 'who']),
  eve: new Set(['words']),
  learned: new Set(['item']),
  drugs: new Set(['open']),
};

/** Letters of a line that is to be read from far away, as the server counts them. */
const LINE_LETTERS = 40;

/** A sentence of the server. */
export function told(text: string): string {
  return timesIn(worded(text));
}

/** One that has no more letters than a line of the wall: its times are written as short as it takes. */
function toldLine(text: string): string {
  const whole = told(text);
  return whole.length <= LINE_LETTERS ? whole : timesIn(worded(text), true);
}

/** What the server answered, with these fields told, however deep they stand. */
export function toldIn<T>(value: T, fields: ReadonlySet<string>): T {
  if (isFirst()) return value;
  return deep(value, fields, false) as T;
}

function deep(value: unknown, fields: ReadonlySet<string>, tell: boolean): unknown {
  if (typeof value === 'string') return tell ? told(value) : value;
  if (Array.isArray(value)) return value.map((one) => deep(one, fields, tell));
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, one]) => [name, deep(one, fields, fields.has(name))]),
  );
}

/** True as long as the wire's texts are the site's. */
function isFirst(): boolean {
  return style().english === FIRST.english && style().clock === FIRST.clock;
}

function toldPart(part: PartUnion): PartUnion {
  if (part.part === 'need') return { ...part, words: toldLine(part.words) };
  const fields = SENTENCES[part.part];
  return fields === undefined ? part : toldIn(part, fields);
}

/** Parts as this site writes them; what they say of the site's style is followed from now on. */
export function toldParts(parts: readonly PartUnion[]): PartUnion[] {
  for (const part of parts) {
    if (part.part === 'suite') follow(part.style);
  }
  return isFirst() ? [...parts] : parts.map(toldPart);
}

const WORDS: ReadonlySet<string> = new Set(['words']);

/** A message of the server as this site writes it. */
export function toldMessage(message: ServerMessageUnion): ServerMessageUnion {
  switch (message.m) {
    case 'view':
      return { ...message, parts: toldParts(message.parts) };
    case 'frame':
      return { ...message, set: toldParts(message.set) };
    case 'beat':
    case 'tock':
      return message;
    default:
      return toldIn(message, WORDS);
  }
}
