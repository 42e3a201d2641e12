import type { NextItemPart, NextPart } from '../generated/wire.ts';
import { isDone } from '../hands/items.ts';
import { techniqueWords } from '../hands/words.ts';

/** "next case: general, 5 of 23 open, 1 fault": what a room sets up after its first case, or empty. */
export function nextWords(
  room: string,
  next: readonly NextPart[],
  items: readonly NextItemPart[],
): string {
  const one = next.find((n) => n.room === room);
  if (!one) return '';
  const own = items.filter((i) => i.room === room).map((i) => i.item);
  const faults = own.filter((i) => i.state === 'fault').length;
  const open = own.filter((i) => !isDone(i)).length;
  return [
    `next case: ${techniqueWords(one)}`,
    open === 0 ? 'nothing open' : `${open} of ${own.length} open`,
    ...(faults === 0 ? [] : [`${faults} ${faults === 1 ? 'fault' : 'faults'}`]),
  ].join(', ');
}
