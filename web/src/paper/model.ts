import type { CasePart, ItemPart, RoomPart } from '../generated/wire.ts';

/** What is printed for one room. */
export interface RoomSheet {
  room: RoomPart;
  plan: CasePart;
  items: ItemPart[];
}

/** The rooms that have a first case, in the wall's order; steps of the start stand by themselves. */
export function roomSheets(
  rooms: readonly RoomPart[],
  cases: readonly CasePart[],
  items: readonly ItemPart[],
  only?: string,
): RoomSheet[] {
  return [...rooms]
    .sort((a, b) => a.order - b.order)
    .filter((room) => only === undefined || room.room === only)
    .flatMap((room) => {
      const plan = cases.find((c) => c.room === room.room && !c.cancelled);
      const its = items
        .filter((i) => i.room === room.room && !i.marks && i.section !== 'start')
        .sort((a, b) => a.order - b.order);
      return plan ? [{ room, plan, items: its }] : [];
    });
}
