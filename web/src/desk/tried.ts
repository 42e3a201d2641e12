import type { Tried, TriedRoom, TryChangeUnion } from '../generated/wire.ts';
import { roleName } from '../hands/words.ts';
import { ask } from '../live/index.ts';
import { toldIn } from '../words/index.ts';

/** Changes that one copy may have, as the board takes them. */
export const CHANGES_MOST = 8;

/**
 * Asks for a changed copy of a morning beside the morning as it is. Nothing is recorded. Giving it
 * up ends the computation at the board too.
 */
export async function tryOut(
  changes: readonly TryChangeUnion[],
  date: string,
  signal: AbortSignal,
): Promise<Tried> {
  const tried = await ask<Tried>(`/api/try?date=${encodeURIComponent(date)}`, {
    type: 'application/json',
    body: JSON.stringify({ changes }),
    otherwise: 'Nothing was worked out',
    signal,
  });
  return toldIn(tried, new Set(['words']));
}

/** A change as somebody would say it. */
export function changeWords(
  change: TryChangeUnion,
  hhmm: (at: number) => string,
  place: (id: string) => string,
): string {
  switch (change.change) {
    case 'target':
      return `room ${change.room} meant for ${hhmm(change.at)}`;
    case 'swap':
      return `cases of ${change.one} and ${change.other} swapped`;
    case 'one-more-unit':
      return `one more ${change.kind}`;
    case 'opens':
      return `${place(change.place)} opens ${hhmm(change.at)}`;
    case 'one-more-person':
      return `one more ${roleName(change.role)}`;
  }
}

/** Rooms that come out otherwise on the copy, and how many do not. */
export function differing(tried: Tried): { rooms: TriedRoom[]; same: number } {
  const rooms = tried.rooms.filter(differs);
  return { rooms, same: tried.rooms.length - rooms.length };
}

/** The figures of a room are different, or the time that it is meant for is. */
function differs(room: TriedRoom): boolean {
  const { chance, copyChance } = room;
  return (
    room.target !== room.copyTarget ||
    chance.onTime !== copyChance.onTime ||
    chance.start50 !== copyChance.start50 ||
    chance.start90 !== copyChance.start90 ||
    chance.meanLateMinutes !== copyChance.meanLateMinutes ||
    chance.shares[0]?.words !== copyChance.shares[0]?.words
  );
}

/**
 * What a copy saves or costs with its error; that it makes no difference if the error is as large.
 */
export function savedOnCopy(minutes: number, error: number): string {
  const amount = `${Math.abs(minutes).toFixed(1)} ± ${error.toFixed(1)} min`;
  if (minutes === 0 && error === 0) return 'no difference';
  if (Math.abs(minutes) < 2 * error)
    return `no sure difference (${minutes.toFixed(1)} ± ${error.toFixed(1)} min)`;
  return minutes > 0 ? `saves ${amount}` : `costs ${amount}`;
}
