import type { CasePart, Step } from '../generated/wire.ts';
import { reachedAt } from '../hands/items.ts';
import { STEPS } from '../hands/words.ts';
import type { Station } from './main.ts';

/** True if something is to be done in a room without a case: what one left, or the next one's set-up. */
export function isLeftOver(at: Station): boolean {
  return (
    at.drugs.anyLeft ||
    at.list('swap').some((s) => s.room === at.room && s.confirmedAt === undefined) ||
    goesOn(at.list('case'), at.room, at.suite?.startEvent)
  );
}

/** True if a room's first case was cancelled after its start: the room goes on to its next. */
export function goesOn(
  cases: readonly CasePart[],
  room: string,
  startEvent: Step | undefined,
): boolean {
  const here = cases.filter((c) => c.room === room);
  if (startEvent === undefined || here.some((c) => !c.cancelled)) return false;
  const started = STEPS.slice(STEPS.indexOf(startEvent));
  return here.some((c) => started.some((step) => reachedAt(c, step) !== undefined));
}
