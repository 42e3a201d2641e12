import type {
  CasePart,
  ChancePart,
  IdeaPart,
  MovePart,
  NeedPart,
  NotePart,
  RoomPart,
  Standing,
} from '../generated/wire.ts';
import { standingName } from '../hands/words.ts';

/** A start has moved if it moved by so much; less is the forecast's own unrest. */
const MOVED_MS = 3 * 60_000;

/** What the board showed at a moment, as far as a change of it is worth a line. */
export interface Mark {
  readonly at: number;
  readonly rooms: ReadonlyMap<string, { standing: Standing; start?: number | undefined }>;
  readonly needs: ReadonlyMap<string, { help: boolean; taken: boolean }>;
  readonly helps: ReadonlySet<string>;
  readonly moves: ReadonlyMap<string, MovePart['state']>;
  readonly ideas: ReadonlySet<string>;
  readonly cases: ReadonlyMap<string, CasePart>;
}

/** What there is of these on the screen. */
export interface Seen {
  readonly rooms: readonly RoomPart[];
  readonly chances: readonly ChancePart[];
  readonly needs: readonly NeedPart[];
  readonly notes: readonly NotePart[];
  readonly moves: readonly MovePart[];
  readonly ideas: readonly IdeaPart[];
  readonly cases: readonly CasePart[];
}

/** One line of "what changed": the words, and the room that it opens. */
export interface Change {
  readonly kind: 'help' | 'room' | 'holdup' | 'move' | 'case';
  readonly room?: string | undefined;
  readonly words: string;
}

const holdupOf = (n: NeedPart): string => `${n.room}/${n.holdup}`;

/** Ideas come anew with each search: the same one is known by what it says. */
const ideaOf = (i: IdeaPart): string => i.words;

function start(seen: Seen, room: RoomPart): number | undefined {
  return room.startedAt ?? seen.chances.find((c) => c.room === room.room)?.start50 ?? room.start50;
}

export function markOf(seen: Seen, at: number): Mark {
  return {
    at,
    rooms: new Map(
      seen.rooms.map((r) => [r.room, { standing: r.standing, start: start(seen, r) }]),
    ),
    needs: new Map(
      seen.needs.map((n) => [holdupOf(n), { help: n.help, taken: n.takenBy !== undefined }]),
    ),
    helps: new Set(seen.notes.filter((n) => n.kind === 'help').map((n) => n.key)),
    moves: new Map(seen.moves.map((m) => [m.id, m.state])),
    ideas: new Set(seen.ideas.map(ideaOf)),
    cases: new Map(seen.cases.map((c) => [c.caseId, c])),
  };
}

/** What changed since a mark, calls for help first, then by room; nothing twice. */
export function changes(since: Mark, seen: Seen, hhmm: (at: number) => string): Change[] {
  const order = new Map(seen.rooms.map((r) => [r.room, r.order]));
  const place = (c: Change): number => (c.room === undefined ? 1e6 : (order.get(c.room) ?? 1e6));
  const found = [
    ...roomChanges(since, seen, hhmm),
    ...holdupChanges(since, seen),
    ...moveChanges(since, seen),
    ...caseChanges(since, seen, hhmm),
  ].sort((a, b) => place(a) - place(b));
  return [...helpChanges(since, seen), ...found];
}

function helpChanges(since: Mark, seen: Seen): Change[] {
  const rooms = new Set<string>();
  for (const n of seen.needs) {
    if (n.help && !since.needs.get(holdupOf(n))?.help) rooms.add(n.room);
  }
  // A room that asked before the mark and asks still is not new, whatever holds it up now.
  for (const key of since.needs.keys()) {
    if (since.needs.get(key)!.help) rooms.delete(key.slice(0, key.indexOf('/')));
  }
  const calls = seen.notes.filter((n) => n.kind === 'help' && !since.helps.has(n.key));
  const told = [...rooms].map((room): Change => {
    const what = calls.find((n) => n.room === room)?.text;
    return { kind: 'help', room, words: `asks for someone${what ? `: ${what}` : ''}` };
  });
  const over = calls
    .filter((n) => n.room === undefined || !rooms.has(n.room))
    .map((n): Change => ({ kind: 'help', room: n.room, words: `asked for someone: ${n.text}` }));
  return [...told, ...over];
}

function roomChanges(since: Mark, seen: Seen, hhmm: (at: number) => string): Change[] {
  const found: Change[] = [];
  for (const room of seen.rooms) {
    const before = since.rooms.get(room.room);
    if (!before) continue;
    const bits: string[] = [];
    if (before.standing !== room.standing) {
      bits.push(`${standingName(before.standing)} → ${standingName(room.standing)}`);
    }
    const now = start(seen, room);
    if (room.startedAt !== undefined) {
      if (before.standing !== 'started')
        bits.push(`${room.startInferred ? 'by' : 'at'} ${hhmm(room.startedAt)}`);
    } else if (now !== undefined && before.start !== undefined) {
      const by = now - before.start;
      if (Math.abs(by) >= MOVED_MS) {
        const minutes = Math.round(Math.abs(by) / 60_000);
        const way = by > 0 ? 'later' : 'earlier';
        bits.push(`start ${hhmm(before.start)} → ${hhmm(now)}, ${minutes} min ${way}`);
      }
    }
    if (bits.length > 0) found.push({ kind: 'room', room: room.room, words: bits.join(' · ') });
  }
  return found;
}

function holdupChanges(since: Mark, seen: Seen): Change[] {
  const found: Change[] = [];
  for (const n of seen.needs) {
    if (n.kind === 'help' || n.kind === 'ask') continue;
    const before = since.needs.get(holdupOf(n));
    if (!before) {
      found.push({ kind: 'holdup', room: n.room, words: `now held up by: ${n.words}` });
    } else if (!before.taken && n.takenBy !== undefined) {
      found.push({ kind: 'holdup', room: n.room, words: `somebody is on it: ${n.words}` });
    }
  }
  return found;
}

const MOVE_WORDS: Record<MovePart['state'], string> = {
  asked: 'asked',
  accepted: 'accepted',
  declined: 'cannot',
  'not-safe': 'called not safe',
  done: 'done',
  withdrawn: 'not asked any more',
};

function moveChanges(since: Mark, seen: Seen): Change[] {
  const asked = seen.moves
    .filter((m) => since.moves.get(m.id) !== m.state)
    .map((m): Change => ({
      kind: 'move',
      room: m.room,
      words: `${MOVE_WORDS[m.state]}: ${m.words}`,
    }));
  const ideas = seen.ideas
    .filter((i) => !since.ideas.has(ideaOf(i)))
    .map((i): Change => ({ kind: 'move', room: i.room, words: `may help: ${i.words}` }));
  return [...asked, ...ideas];
}

function caseChanges(since: Mark, seen: Seen, hhmm: (at: number) => string): Change[] {
  const found: Change[] = [];
  const say = (room: string, words: string) => found.push({ kind: 'case', room, words });
  for (const now of seen.cases) {
    const before = since.cases.get(now.caseId);
    if (!before) {
      say(now.room, 'case added');
    } else if (!before.cancelled && now.cancelled) {
      say(now.room, 'case cancelled');
    } else {
      if (before.room !== now.room) say(now.room, `case came from room ${before.room}`);
      if (before.bookedAt !== now.bookedAt) say(now.room, `booked for ${hhmm(now.bookedAt)} now`);
      if (before.agreedAt !== now.agreedAt) {
        const agreed = now.agreedAt;
        say(
          now.room,
          agreed === undefined ? 'back to the booked time' : `${hhmm(agreed)} was agreed`,
        );
      }
      if (plannedAs(before) !== plannedAs(now)) say(now.room, 'what is planned was changed');
    }
  }
  for (const [id, before] of since.cases) {
    if (!seen.cases.some((c) => c.caseId === id)) say(before.room, 'case is off the list');
  }
  return found;
}

function plannedAs(c: CasePart): string {
  return JSON.stringify([c.technique, c.options, c.procedure ?? '', c.service ?? '']);
}

/** For how long nobody touches a desk before it counts as not looked at, milliseconds. */
export const AWAY_MS = 2 * 60_000;

/**
 * From when on changes count: the last touch before nobody touched this screen for a while, or a
 * mark that somebody set later. Kept in this page only: a mark knows what is planned.
 */
export class Looked {
  private base: Mark | undefined;
  private last: Mark | undefined;
  private touchedAt = 0;

  /** The first picture of a morning is the first mark of it. */
  begin(mark: Mark, real: number): void {
    this.base = mark;
    this.last = mark;
    this.touchedAt = real;
  }

  /** Somebody touched; whoever comes back keeps the changes until they are marked as seen. */
  touched(mark: Mark, real: number): void {
    if (this.away(real)) this.base = this.last;
    this.last = mark;
    this.touchedAt = real;
  }

  /** "I have seen it": from here on. */
  seen(mark: Mark, real: number): void {
    this.begin(mark, real);
  }

  since(real: number): Mark | undefined {
    return this.away(real) ? this.last : this.base;
  }

  private away(real: number): boolean {
    return real - this.touchedAt >= AWAY_MS;
  }
}
