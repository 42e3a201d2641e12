import type {
  CommandUnion,
  CountKind,
  DrugListPart,
  DrugShown,
  DrugsPart,
  SyringeShown,
} from '../../generated/wire.ts';
import { hhmm } from '../../hands/clock.ts';
import { dateOf } from '../../look/index.ts';
import { capital } from '../../words/index.ts';

/** Before it lapses a drawn drug is told for so long, milliseconds. */
export const TELL_MS = 30 * 60_000;

/** A label is printed at drawing: for so long after it, milliseconds. */
export const LABEL_MS = 10 * 60_000;

/** A drug of a case's list, with the syringe that counts, or the last that has lapsed. */
export interface DrugLine {
  drug: DrugShown;
  state: 'open' | 'drawn' | 'lapsed';
  syringe: SyringeShown | undefined;
}

/** The case's list in the list's order, and after it what was drawn beside it. */
export function drugLines(
  list: DrugListPart | undefined,
  of: DrugsPart | undefined,
  now: number,
): DrugLine[] {
  const there = of?.syringes.filter((s) => s.discardedAt === undefined && !s.voided) ?? [];
  return (list?.drugs ?? [])
    .filter((d) => of?.list.includes(d.name) || there.some((s) => s.drug === d.name))
    .map((drug) => {
      const syringe = there.filter((s) => s.drug === drug.name).at(-1);
      const state = !syringe ? 'open' : syringe.lapsesAt <= now ? 'lapsed' : 'drawn';
      return { drug, state, syringe };
    });
}

/** What one touch calls drawn: of the list, not drawn yet and not controlled. */
export function toDraw(lines: readonly DrugLine[]): string[] {
  return lines
    .filter((l) => l.state !== 'drawn' && l.drug.ampoule === undefined)
    .map((l) => l.drug.name);
}

/** What lapses soon. */
export function lapsingSoon(lines: readonly DrugLine[], now: number): DrugLine[] {
  return lines.filter((l) => l.state === 'drawn' && l.syringe!.lapsesAt - now <= TELL_MS);
}

/** Syringes that lie in this room and belong to a case that has gone elsewhere. */
export function toThrowAway(
  all: readonly DrugsPart[],
  room: string,
): { caseId: string; syringe: SyringeShown }[] {
  return all.flatMap((d) =>
    d.syringes
      .filter((s) => s.voided && s.discardedAt === undefined && s.room === room)
      .map((syringe) => ({ caseId: d.caseId, syringe })),
  );
}

/**
 * What is not counted out of cases that are not in the room any more: cancelled ones, and those
 * before the one that is here now.
 */
export function leftToCount(
  all: readonly DrugsPart[],
  room: string,
  caseId: string | undefined,
): DrugsPart[] {
  return all.filter((d) => d.room === room && d.caseId !== caseId && d.open.length > 0);
}

/** The syringe whose label may be printed: drawn here just now. */
export function justDrawn(line: DrugLine, now: number): SyringeShown | undefined {
  const s = line.state === 'drawn' ? line.syringe : undefined;
  return s && now - s.drawnAt <= LABEL_MS ? s : undefined;
}

/** Widths of a letter of a name in its own size, capitals and small ones: taken high, from memory. */
const CAPITAL_EM = 0.76;
const SMALL_EM = 0.62;

/**
 * Part of its full size in which a name fits its label whole: 1 for most, less for a long one. A
 * name is never cut: two drugs may differ in their ends only.
 *
 * @param roomEm width that the name has, in its full size
 */
export function nameFit(name: string, roomEm: number): number {
  const width = [...name].reduce(
    (sum, letter) => sum + (letter === letter.toLowerCase() ? SMALL_EM : CAPITAL_EM),
    0,
  );
  return Math.min(1, roomEm / width);
}

/** As a label writes a name: with the capitals that tell it apart, or else a first one. */
export function labelName(shown: string): string {
  return /\p{Lu}/u.test(shown) ? shown : capital(shown);
}

/** The unit in which an ampoule is spoken of, and with it what is counted of it. */
export function unitOf(ampoule: number | undefined): MassUnit {
  return ampoule !== undefined && ampoule >= 1000 ? 'mg' : 'micrograms';
}

/** "100 micrograms", "5 mg". */
export function ampouleWords(ampoule: number): string {
  const unit = unitOf(ampoule);
  return `${unit === 'mg' ? ampoule / 1000 : ampoule} ${unit}`;
}

export type MassUnit = 'micrograms' | 'mg';

/** A typed amount in micrograms; undefined if it is none. */
export function micrograms(typed: string, unit: MassUnit): number | undefined {
  if (!/^\d{1,6}(\.\d{1,3})?$/.test(typed)) {
    return undefined;
  }
  const value = Number(typed) * (unit === 'mg' ? 1_000 : 1);
  return value > 0 ? Number(value.toFixed(3)) : undefined;
}

/** What is being entered into the count. */
export interface Counting {
  /** The case of which it is counted. */
  caseId: string;
  kind: CountKind;
  drug: string;
  typed: string;
  unit: MassUnit;
  entry?: number;
}

/** True if what is counted is whole ampoules. */
export const isUnits = (kind: CountKind): boolean => kind === 'drawn' || kind === 'returned';

/** The command of an entry, or why it can't be sent. */
export function counted(
  c: Counting,
  by: string | undefined,
  witness: string | undefined,
): CommandUnion | string {
  const { caseId } = c;
  const signed = { ...(by ? { by } : {}), ...(witness ? { witness } : {}) };
  if (c.kind === 'struck') {
    return { type: 'count-drug', caseId, kind: c.kind, entry: c.entry ?? -1, ...signed };
  }
  if (isUnits(c.kind)) {
    return /^[1-9]\d?$/.test(c.typed)
      ? {
          type: 'count-drug',
          caseId,
          kind: c.kind,
          drug: c.drug,
          units: Number(c.typed),
          ...signed,
        }
      : 'Type how many ampoules, 1 to 99.';
  }
  const amount = micrograms(c.typed, c.unit);
  return amount === undefined
    ? 'Type the amount, above 0.'
    : { type: 'count-drug', caseId, kind: c.kind, drug: c.drug, micrograms: amount, ...signed };
}

/** When it was drawn and until when it counts; a syringe lies about, so another day is named. */
export function labelTimes(drawnAt: number, lapsesAt: number, zone: string): string {
  const day = (at: number) =>
    new Date(at).toLocaleDateString('en-GB', { timeZone: zone, weekday: 'short' });
  const other = dateOf(drawnAt, zone) === dateOf(lapsesAt, zone) ? '' : `${day(lapsesAt)} `;
  return `${hhmm(drawnAt, zone)}, until ${other}${hhmm(lapsesAt, zone)}`;
}
