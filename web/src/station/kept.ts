import type { PartUnion } from '../generated/wire.ts';

/** What a set-up goes on with while the board is away: this room's, people and things; no figures. */
const OF_THE_SUITE: readonly PartUnion['part'][] = [
  'suite',
  'person',
  'unit',
  'place',
  'drug-list',
];
const OF_THE_ROOM: readonly PartUnion['part'][] = [
  'room',
  'case',
  'item',
  'drugs',
  'next',
  'next-item',
  'swap',
];

export function keptAt(room: string, part: PartUnion): boolean {
  if (OF_THE_SUITE.includes(part.part)) return true;
  return OF_THE_ROOM.includes(part.part) && 'room' in part && part.room === room;
}
