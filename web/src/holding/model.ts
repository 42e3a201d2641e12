import type { CasePart, ItemPart, RoomPart } from '../generated/wire.ts';
import { keyWord } from '../hands/items.ts';

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
}

function keyOf(item: ItemPart): string {
  return item.item.slice(item.item.indexOf('/') + 1);
}

/** First cases in room order. */
export function rows(
  rooms: readonly RoomPart[],
  cases: readonly CasePart[],
  items: readonly ItemPart[],
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
    });
  }
  return found;
}

/** How a cell is called where there is little room. */
export function cellWord(item: ItemPart): string {
  return keyWord(item);
}

/** Minutes after an expected time from which a cell says that it has passed. */
export const EXPECTED_GRACE_MS = 60_000;
