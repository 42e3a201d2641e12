import type { ClientMessageUnion, ServerMessageUnion } from '../generated/wire.ts';

const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { fatal: true });

const KINDS: ReadonlySet<string> = new Set<ServerMessageUnion['m']>([
  'view',
  'frame',
  'beat',
  'answer',
  'tock',
  'trouble',
  'challenge',
  'pairing',
  'paired',
  'signed',
  'told',
]);

/** A message that is not of this protocol. */
export class BadMessage extends Error {}

/** A message as it goes out: UTF-8 JSON in a binary frame. */
export function encode(message: ClientMessageUnion): Uint8Array<ArrayBuffer> {
  return encoder.encode(JSON.stringify(message));
}

/**
 * Reads a message. A kind that this page does not know yields null: a newer server may send it.
 *
 * @throws BadMessage if it is not UTF-8 JSON with a kind
 */
export function decode(data: ArrayBuffer): ServerMessageUnion | null {
  let value: unknown;
  try {
    value = JSON.parse(decoder.decode(data));
  } catch (e) {
    throw new BadMessage(`not UTF-8 JSON: ${String(e)}`);
  }
  if (typeof value !== 'object' || value === null || !('m' in value)) {
    throw new BadMessage('a message has no kind "m"');
  }
  return KINDS.has(String(value.m)) ? (value as ServerMessageUnion) : null;
}
