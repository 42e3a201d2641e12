import type {
  DrugsPart,
  CasePart,
  ChancePart,
  ItemPart,
  NeedPart,
  NotePart,
  PersonPart,
  RoomPart,
  SignPart,
  SuitePart,
} from '../generated/wire.ts';
import { isDone } from '../hands/items.ts';
import { personName } from '../hands/words.ts';

/** One room as the desk's list shows it. */
export interface DeskRow {
  room: RoomPart;
  plan: CasePart | undefined;
  chance: ChancePart | undefined;
  need: NeedPart | undefined;
}

/** Rooms in the wall's order. */
export function deskRows(
  rooms: readonly RoomPart[],
  cases: readonly CasePart[],
  chances: readonly ChancePart[],
  needs: readonly NeedPart[],
): DeskRow[] {
  return [...rooms]
    .sort((a, b) => a.order - b.order)
    .map((room) => ({
      room,
      plan: caseOf(cases, room.room),
      chance: chances.find((c) => c.room === room.room),
      need: needs.find((n) => n.room === room.room),
    }));
}

/** The case that stands in a room; a cancelled one only if there is no other. */
export function caseOf(cases: readonly CasePart[], room: string): CasePart | undefined {
  const here = cases.filter((c) => c.room === room);
  return here.find((c) => !c.cancelled) ?? here[0];
}

/** The date that an address asks for (`?date=2026-11-26`), if it is written like one. */
export function dateIn(search: string): string | undefined {
  const date = new URLSearchParams(search).get('date') ?? '';
  return /^\d{4}-\d{2}-\d{2}$/.test(date) ? date : undefined;
}

/** The date after a date. */
export function dayAfter(date: string): string {
  return new Date(Date.parse(`${date}T12:00:00Z`) + 24 * 3_600_000).toISOString().slice(0, 10);
}

/** How many first cases look on time, where that was computed. */
export function onTimeWords(suite: SuitePart, rooms: readonly RoomPart[]): string {
  const cases = `${suite.cases} first ${suite.cases === 1 ? 'case' : 'cases'}`;
  if (suite.phase === 'draft' || suite.onTime === undefined) return cases;
  const waiting = rooms.some((r) => r.standing !== 'started' && r.standing !== 'none');
  const count = `${suite.onTime} of ${suite.cases}`;
  if (suite.phase === 'closed' || !waiting) return `${count} started on time`;
  return rooms.some((r) => r.standing === 'started') ? `${count} on time` : `${count} look on time`;
}

/** Which rooms were heard from; nobody reports to a draft, and a closed morning is over. */
export function heardWords(suite: SuitePart): string {
  if (suite.phase === 'draft') return 'nobody reports yet';
  if (suite.phase !== 'open' || suite.cases === 0) return '';
  return suite.quiet > 0 ? `no word from ${suite.quiet}` : 'a word from every room';
}

/** In which rooms controlled drugs are not counted out; it is asked of whoever closes the morning. */
export function uncountedWords(drugs: readonly DrugsPart[]): string {
  const rooms = [...new Set(drugs.filter((d) => d.open.length > 0).map((d) => d.room))];
  if (rooms.length === 0) return '';
  const names = rooms.sort((a, b) => a.localeCompare(b, undefined, { numeric: true })).join(', ');
  return `Controlled drugs not counted out: ${rooms.length === 1 ? 'room' : 'rooms'} ${names}`;
}

/** `61 %`, never 0 or 100: a simulation of that size knows no such thing. */
export function percent(p: number): string {
  return `${Math.min(99, Math.max(1, Math.round(p * 100)))} %`;
}

/**
 * "7.4 min late": expected minutes, to a tenth as the board gives them. None beside a start that is
 * hours away: the forecast counts to its end only, so that the mean would be less than what is known.
 */
export function late({ meanLateMinutes, moreThanHours }: ChancePart): string {
  if (meanLateMinutes === undefined || moreThanHours !== undefined) return '';
  return `${meanLateMinutes.toFixed(1)} min late`;
}

/** What two cases lose when they swap rooms (`to`: where it goes): what was made ready where it was. */
export function voidedBySwap(
  items: readonly ItemPart[],
  one: CasePart,
  other: CasePart,
): { room: string; to: string; items: ItemPart[] }[] {
  return [one, other].map((plan) => ({
    room: plan.room,
    to: plan === one ? other.room : one.room,
    items: items
      .filter((i) => i.item.startsWith(`case:${plan.caseId}/`))
      .filter((i) => i.state === 'good' || i.state === 'in-hand')
      .filter((i) => i.section !== 'patient' && i.section !== 'surgeon')
      .filter((i) => i.section !== 'team' && i.section !== 'start')
      .sort((a, b) => a.order - b.order),
  }));
}

/** True if the desk owes this room a reason: it started late, or its target and grace are past. */
export function owesReason(row: DeskRow, graceMinutes: number, now: number): boolean {
  const { room, plan } = row;
  if (!plan || plan.cancelled || room.target === undefined) {
    return false;
  }
  const limit = room.target + (graceMinutes + 1) * 60_000;
  return room.startedAt === undefined ? now >= limit : room.startedAt >= limit;
}

/** What is open or wrong in a room, faults first. */
export function openItems(items: readonly ItemPart[], room: string): ItemPart[] {
  return items
    .filter((i) => i.room === room && !isDone(i) && !i.marks)
    .sort((a, b) => Number(b.state === 'fault') - Number(a.state === 'fault') || a.order - b.order);
}

/** Early signs: what can still be mended by its time first; what is past it sinks, the latest first. */
export function signsInOrder(signs: readonly SignPart[], now: number): SignPart[] {
  const past = (s: SignPart) => s.actBy < now;
  return [...signs].sort(
    (a, b) =>
      Number(past(a)) - Number(past(b)) || (past(a) ? b.actBy - a.actBy : a.actBy - b.actBy),
  );
}

/** People in the order in which the desk looks for them: who should be here and is not, first. */
export function peopleInOrder(people: readonly PersonPart[], now: number): PersonPart[] {
  const rank = (p: PersonPart) =>
    p.leftAt !== undefined ? 3 : p.arrivedAt !== undefined ? 2 : due(p) <= now ? 0 : 1;
  const due = (p: PersonPart) => p.expectedAt ?? p.plannedAt;
  return [...people].sort(
    (a, b) =>
      rank(a) - rank(b) ||
      due(a) - due(b) ||
      personName(a).localeCompare(personName(b), 'en', { numeric: true }),
  );
}

/** Whoever is here and whose room has no first case any more: free for other rooms. */
export function isFree(p: PersonPart, rows: readonly DeskRow[]): boolean {
  const room = p.room ?? p.ownRoom;
  const row = rows.find((r) => r.room.room === room);
  const here = p.arrivedAt !== undefined && p.leftAt === undefined;
  return here && row !== undefined && (row.plan === undefined || row.plan.cancelled);
}

/** Rooms from which no word came, for asking. */
export function toAsk(rows: readonly DeskRow[]): DeskRow[] {
  return rows.filter((r) => r.room.standing === 'unheard');
}

/** Notes, the newest first. */
export function notesInOrder(notes: readonly NotePart[]): NotePart[] {
  return [...notes].sort((a, b) => b.at - a.at || (a.key < b.key ? 1 : -1));
}
