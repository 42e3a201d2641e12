import type { CasePart, ItemPart, RoomPart, UnitPart } from '../generated/wire.ts';
import { isDone, keyOf, keyWord } from '../hands/items.ts';

/** One of the eight touches of a first case. */
export interface Column {
  /** The item's key on the sheet. */
  readonly key: string;
  readonly head: string;
}

/** In the order in which they happen; a sheet that lacks one leaves its cell empty. */
export const COLUMNS: readonly Column[] = [
  { key: 'patient.arrived', head: 'arrived' },
  { key: 'patient.papers', head: 'papers' },
  { key: 'patient.consent', head: 'consent' },
  { key: 'patient.assessment', head: 'assessment' },
  { key: 'patient.drip', head: 'drip' },
  { key: 'surgeon.seen', head: 'surgeon' },
  { key: 'start.sent-for', head: 'sent for' },
  { key: 'start.transport', head: 'left' },
];

/** A first case as one row. */
export interface Row {
  room: RoomPart;
  plan: CasePart;
  /** One a column; undefined where this case's sheet has no such item. */
  cells: (ItemPart | undefined)[];
  /** What this case asks for beside the eight: a block, blood. */
  more: ItemPart[];
  left: boolean;
  /** Whether what a block needs is at hand; empty if none is asked for, or it is done. */
  block: string;
}

/** First cases in room order. */
export function rows(
  rooms: readonly RoomPart[],
  cases: readonly CasePart[],
  items: readonly ItemPart[],
  units: readonly UnitPart[] = [],
): Row[] {
  const found: Row[] = [];
  for (const room of [...rooms].sort((a, b) => a.order - b.order)) {
    const plan = cases.find((c) => c.room === room.room && !c.cancelled);
    if (!plan) {
      continue;
    }
    const own = items.filter((i) => i.room === room.room);
    const byKey = new Map(own.map((i) => [keyOf(i), i]));
    const known = new Set(COLUMNS.map((c) => c.key));
    found.push({
      room,
      plan,
      cells: COLUMNS.map((c) => byKey.get(c.key)),
      more: own
        .filter((i) => i.section === 'patient' && !known.has(keyOf(i)))
        .sort((a, b) => a.order - b.order),
      left: plan.steps.some((s) => s.step === 'wheels-in'),
      block: blockWords(room.room, byKey, units),
    });
  }
  return found;
}

/**
 * What a block in the bay still needs beside patient, papers and people: the local anaesthetic and
 * the ultrasound, with where that is.
 */
function blockWords(
  room: string,
  byKey: ReadonlyMap<string, ItemPart>,
  units: readonly UnitPart[],
): string {
  const block = byKey.get(BLOCK);
  if (block === undefined || isDone(block)) return '';
  const words: string[] = [];
  const drug = byKey.get('drugs.block');
  if (drug) words.push(isDone(drug) ? 'drug drawn' : 'drug not drawn');
  const ultrasound = byKey.get('special.ultrasound');
  if (ultrasound) words.push(whereUltrasound(room, ultrasound, units));
  return words.join(' · ');
}

function whereUltrasound(room: string, item: ItemPart, units: readonly UnitPart[]): string {
  const all = units.filter((unit) => unit.kind === 'ultrasound');
  if (isDone(item) || all.some((unit) => unit.with === room)) return 'ultrasound here';
  const next = all.some((unit) => unit.promised === room) ? ', then here' : '';
  const others = all.flatMap((unit) => unit.with ?? []);
  const free = all.length > others.length;
  return free ? 'ultrasound free' : `ultrasound in ${others.join(', ')}${next}`;
}

/** The item's key of a block on the sheets. */
export const BLOCK = 'patient.block';

/** How long ago a patient was sent for who has not left, in whole minutes; undefined if not so. */
export function minutesSentFor(row: Row, now: number): number | undefined {
  const sent = row.plan.steps.find((s) => s.step === 'sent-for');
  if (sent === undefined || row.left) return undefined;
  return Math.max(0, Math.floor((now - sent.at) / 60_000));
}

/** How a cell is called where there is little room. */
export function cellWord(item: ItemPart): string {
  return keyWord(item);
}

/** Minutes after an expected time from which a cell says that it has passed. */
export const EXPECTED_GRACE_MS = 60_000;
