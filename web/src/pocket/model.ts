import type { MovePart, NeedPart, PersonPart, Role, RoomPart } from '../generated/wire.ts';
import { personName, standingName } from '../hands/words.ts';
import { lateBy } from '../look/words.ts';

/** After so long without a touch the phone forgets whose it is, milliseconds. */
export const FORGET_MS = 2 * 60_000;

/** Whose phone it is: known while somebody uses it and nowhere kept, for phones are handed on. */
export class Whose {
  private chosen: string | undefined;
  private touchedAt = 0;

  choose(person: string | undefined, real: number): void {
    this.chosen = person;
    this.touchedAt = real;
  }

  /** A touch after a long time is the next person's and is not said as the last one's. */
  touched(real: number): void {
    this.chosen = this.person(real);
    this.touchedAt = real;
  }

  person(real: number): string | undefined {
    return real - this.touchedAt >= FORGET_MS ? undefined : this.chosen;
  }
}

/** Who walks between rooms first: they are the ones who have this page in a pocket. */
const FIRST: readonly Role[] = ['supervisor', 'technician', 'anaesthetist', 'trainee'];

/** Who may be chosen: these roles, and whoever has no room of the own (a float). */
export function choices(people: readonly PersonPart[]): PersonPart[] {
  const rank = (p: PersonPart): number => {
    const at = FIRST.indexOf(p.role);
    return at < 0 ? FIRST.length : at;
  };
  return people
    .filter((p) => p.leftAt === undefined)
    .filter((p) => FIRST.includes(p.role) || (p.ownRoom === undefined && p.role !== 'surgeon'))
    .sort(
      (a, b) =>
        rank(a) - rank(b) || personName(a).localeCompare(personName(b), 'en', { numeric: true }),
    );
}

/** A room of this person, with why it stands where it does. */
export interface MyRoom {
  readonly room: RoomPart;
  readonly waits: boolean;
  readonly need: NeedPart | undefined;
  readonly move: MovePart | undefined;
}

/** What is asked of this person or of anybody of the role, what waits for an answer first. */
export function askedOf(me: PersonPart, moves: readonly MovePart[]): MovePart[] {
  return moves
    .filter((m) => m.state === 'asked' || m.state === 'accepted')
    .filter((m) => (m.person === undefined ? m.role === me.role : m.person === me.person))
    .sort(
      (a, b) =>
        Number(a.state === 'accepted') - Number(b.state === 'accepted') || a.askedAt - b.askedAt,
    );
}

/** True if this person may be the one of this room: own, covered, or there now. */
export function isMine(me: PersonPart, room: string): boolean {
  return me.ownRoom === room || me.covers.includes(room) || me.room === room;
}

/** Rooms that ask for someone and that this person can go to. */
export function callsFor(me: PersonPart, needs: readonly NeedPart[]): NeedPart[] {
  const roams = me.ownRoom === undefined && me.covers.length === 0;
  return needs
    .filter((n) => n.help && (roams || (me.ownRoom !== n.room && isMine(me, n.room))))
    .sort((a, b) => a.rank - b.rank);
}

/** What is said where no room waits for this person: a room that waits for something else is not denied. */
export function nobodyWaits(rooms: readonly Pick<MyRoom, 'room' | 'need'>[]): string {
  const other = rooms.filter((r) => r.need !== undefined && r.room.startedAt === undefined);
  return other.length === 0
    ? 'nobody waits for you, as far as the board knows'
    : 'no room waits for you alone, as far as the board knows; what yours wait for stands beside them';
}

/**
 * This person's rooms in the order in which they want him or her: what was accepted or waits for
 * this person, then what needs someone, then by the time of the start; what has started last.
 */
export function myRooms(
  me: PersonPart,
  rooms: readonly RoomPart[],
  needs: readonly NeedPart[],
  moves: readonly MovePart[],
): MyRoom[] {
  const asked = askedOf(me, moves);
  const found = rooms
    .filter((r) => r.standing !== 'none')
    .map((room): MyRoom => ({
      room,
      waits: me.waitedFor.includes(room.room) && room.startedAt === undefined,
      need: needs.find((n) => n.room === room.room),
      move: asked.find((m) => m.room === room.room),
    }))
    .filter((r) => isMine(me, r.room.room) || r.waits || r.move !== undefined);
  const rank = (r: MyRoom): number => {
    if (r.room.startedAt !== undefined) return 3;
    if (r.waits || r.move?.state === 'accepted') return 0;
    return r.need !== undefined && r.need.takenBy === undefined ? 1 : 2;
  };
  return found.sort(
    (a, b) =>
      rank(a) - rank(b) ||
      (a.need?.rank ?? 99) - (b.need?.rank ?? 99) ||
      (a.room.target ?? Infinity) - (b.room.target ?? Infinity) ||
      a.room.order - b.room.order,
  );
}

/** "late +11 · surgeon not seen", in the wall's own words: nothing about a patient. */
export function roomWords(r: MyRoom): string {
  const bits = [standingName(r.room.standing)];
  if (r.room.lateMinutes > 0 && r.room.startedAt === undefined) {
    bits[0] += ` ${lateBy(r.room.lateMinutes, r.room.orMore)}`;
  }
  if (r.need && r.need.kind !== 'help') bits.push(r.need.words);
  return bits.join(' · ');
}
