import type { CasePart, ItemPart, Section, Step } from '../generated/wire.ts';
import { hhmm } from './clock.ts';
import {
  gauge,
  reading,
  shownLeast,
  shownMost,
  shownUnit,
  withUnit,
  worded,
} from '../words/index.ts';
import { count, STEPS } from './words.ts';

/** What pages say of items: pure functions from the board's parts. */

/** True if nothing is left to do for it. */
export function isDone(item: ItemPart): boolean {
  return item.state === 'good' || item.state === 'left-out';
}

/** True if a section can't be gone through without an answer to this item of its own. */
export function wantsAnswer(item: ItemPart): boolean {
  const kind = item.asks.kind;
  return kind === 'number' || kind === 'choice' || kind === 'scan' || item.asks.witness;
}

/** What an item is good by, in words; empty if there is nothing to say. */
export function evidenceWords(item: ItemPart): string {
  const by = item.evidence;
  if (!by || item.state === 'open' || item.state === 'lapsed') {
    return '';
  }
  if (by.kind === 'number') {
    return reading(by.value, by.unit) + (by.undone && item.asks.undo ? `, ${item.asks.undo}` : '');
  }
  if (by.kind === 'choice') {
    return by.word.replace(/^!/, '');
  }
  return by.kind === 'scan' ? by.unit : '';
}

/** How a section's row looks: what is worst in it decides. */
export type RowState = 'good' | 'fault' | 'lapsed' | 'hand' | 'open' | 'none';

export interface SectionView {
  section: Section;
  /** The later case whose items these are; without one they are the first case's. */
  next?: string;
  items: ItemPart[];
  state: RowState;
  /** The line under the section's name. */
  small: string;
  /** Items that are neither done nor at fault. */
  open: ItemPart[];
  /** Open items that want an answer of their own before the section can be gone through. */
  ask: ItemPart[];
  faults: ItemPart[];
}

/** Minutes before a lapse from which it is told; less for what counts for a short time only. */
const LAPSE_TOLD = 30;
const LAPSE_TOLD_SHARE = 1 / 3;

/** True if an item stops counting so soon that it is told. */
export function lapsesSoon(item: ItemPart, now: number): boolean {
  if (item.state !== 'good' || item.lapsesAt === undefined) {
    return false;
  }
  const life = item.lapsesAt - item.since;
  return item.lapsesAt - now <= Math.min(LAPSE_TOLD * 60_000, life * LAPSE_TOLD_SHARE);
}

export function sectionView(
  section: Section,
  all: readonly ItemPart[],
  now: number,
  zone: string,
): SectionView {
  const items = all
    .filter((i) => i.section === section && !i.marks)
    .sort((a, b) => a.order - b.order);
  const faults = items.filter((i) => i.state === 'fault');
  const open = items.filter((i) => !isDone(i) && i.state !== 'fault');
  const state = rowState(items, faults, open);
  return {
    section,
    items,
    state,
    small: smallLine(state, items, faults, open, now, zone),
    open,
    ask: open.filter(wantsAnswer),
    faults,
  };
}

function rowState(items: ItemPart[], faults: ItemPart[], open: ItemPart[]): RowState {
  if (items.length === 0) {
    return 'none';
  }
  if (faults.length > 0) {
    return 'fault';
  }
  if (open.length === 0) {
    return 'good';
  }
  if (open.some((i) => i.state === 'lapsed')) {
    return 'lapsed';
  }
  return open.length < items.length || open.some((i) => i.state === 'in-hand') ? 'hand' : 'open';
}

function smallLine(
  state: RowState,
  items: ItemPart[],
  faults: ItemPart[],
  open: ItemPart[],
  now: number,
  zone: string,
): string {
  const bits: string[] = [];
  switch (state) {
    case 'none':
      return 'nothing asked for this case';
    case 'fault': {
      const first = faults[0]!;
      bits.push(`${first.what ?? 'fault'} · told ${hhmm(first.since, zone)}`);
      if (first.mender) {
        bits.push('someone is on it');
      }
      if (faults.length > 1) {
        bits.push(`${faults.length - 1} more`);
      }
      break;
    }
    case 'good': {
      const answers = items
        .filter((i) => evidenceWords(i) !== '')
        .map((i) => `${keyWord(i)} ${evidenceWords(i)}`);
      const last = Math.max(...items.map((i) => i.since));
      bits.push(
        ...(answers.length > 0 ? answers.slice(0, 4) : [`gone through ${hhmm(last, zone)}`]),
      );
      break;
    }
    default:
      bits.push(openWords(items, open, zone));
  }
  const lapse = nextLapse(items, now);
  if (lapse !== undefined) {
    bits.unshift(`counts until ${hhmm(lapse, zone)}`);
  }
  return bits.join(' · ');
}

function openWords(items: ItemPart[], open: ItemPart[], zone: string): string {
  const lapsed = open.filter((i) => i.state === 'lapsed');
  const hand = open.find((i) => i.state === 'in-hand');
  const bits: string[] = [];
  if (lapsed.length > 0) {
    bits.push(`look again: ${keyWord(lapsed[0]!)}`);
  }
  if (hand) {
    bits.push(`${keyWord(hand)} since ${hhmm(hand.since, zone)}`);
  }
  bits.push(
    open.length < items.length
      ? `${open.length} of ${items.length} open`
      : count(items.length, 'thing'),
  );
  const ask = open.filter(wantsAnswer);
  if (ask.length > 0) {
    bits.push(`asks: ${ask.map(keyWord).join(', ')}`);
  } else if (!hand && lapsed.length === 0) {
    bits.push(open.map((i) => short(i.name)).join(', '));
  }
  return bits.join(' · ');
}

/** The first words of an item's name, up to a comma or colon. */
export function short(name: string): string {
  return name.split(/[,;:(]/)[0]!.trim();
}

/** What an item is called in a list of few letters, from its key: `self-test`, `antibiotic`. */
export function keyWord(item: ItemPart): string {
  return worded(item.item.slice(item.item.lastIndexOf('.') + 1).replaceAll('-', ' '));
}

/** The same with its section: `patient papers`, `room clean`. */
export function keyWords(item: ItemPart): string {
  return wordsOfKey(keyOf(item));
}

/** An item's key on its sheet. */
export function keyOf(item: ItemPart): string {
  return item.item.slice(item.item.indexOf('/') + 1);
}

/** A sheet's key in words: `drugs.drawn` is "drugs drawn". */
export function wordsOfKey(key: string): string {
  return worded(key.replaceAll(/[.-]/g, ' '));
}

/** The first moment at which one of these stops counting, if it is near. */
export function nextLapse(items: readonly ItemPart[], now: number): number | undefined {
  const near = items.filter((i) => lapsesSoon(i, now)).map((i) => i.lapsesAt!);
  return near.length === 0 ? undefined : Math.min(...near);
}

/** The unit in which an item's number is read here. */
export function readIn(item: ItemPart): string {
  return shownUnit(item.asks.unit ?? '');
}

/** A number as it is read here, in the sheet's unit: for judging alone, never to be sent. */
function inSheets(item: ItemPart, value: number): number {
  return gauge(value, readIn(item), item.asks.unit ?? '');
}

/** "0 to 3000 psi": what can be meant, as it is read here. */
export function rangeWords(item: ItemPart): string {
  const { least, most, unit = '' } = item.asks;
  return `${least === undefined ? 0 : shownLeast(least, unit)} to ${
    most === undefined ? 'any' : shownMost(most, unit)
  } ${readIn(item)}`.trim();
}

/** A number, as it is read here, that can't be meant, in words; empty if it can. */
export function cannotBe(item: ItemPart, value: number): string {
  const { least, most } = item.asks;
  const read = inSheets(item, value);
  if ((least !== undefined && read < least) || (most !== undefined && read > most)) {
    return `${withUnit(value, readIn(item))} can't be meant: it reads ${rangeWords(item)}.`;
  }
  return '';
}

/** True if the number, as it is read here, lies outside the good band and so becomes a fault. */
export function outsideBand(item: ItemPart, value: number): boolean {
  const { low, high } = item.asks;
  const read = inSheets(item, value);
  return (low !== undefined && read < low) || (high !== undefined && read > high);
}

/** The good band in words, as it is read here; empty if the sheet gives none. */
export function bandWords(item: ItemPart): string {
  const { low, high, unit = '' } = item.asks;
  const u = readIn(item);
  if (low !== undefined && high !== undefined) {
    return `good: ${shownLeast(low, unit)} to ${shownMost(high, unit)} ${u}`;
  }
  if (low !== undefined) {
    return `good: ${shownLeast(low, unit)} ${u} or more`;
  }
  return high !== undefined ? `good: up to ${shownMost(high, unit)} ${u}` : '';
}

/** When a step was reached, or undefined. */
export function reachedAt(plan: CasePart | undefined, step: Step): number | undefined {
  return plan?.steps.find((s) => s.step === step)?.at;
}

/** The first step of the chain that has not been reached and after which none has. */
export function nextStep(plan: CasePart | undefined): Step | undefined {
  const last = STEPS.reduce((found, step, i) => (reachedAt(plan, step) ? i : found), -1);
  return STEPS[last + 1];
}

/** Items that a step should not happen without, and that are not done. */
export function openGates(items: readonly ItemPart[], step: Step): ItemPart[] {
  const at = STEPS.indexOf(step);
  return items
    .filter((i) => i.gates && STEPS.indexOf(i.gates) <= at && !isDone(i) && !i.marks)
    .sort((a, b) => a.order - b.order);
}

/** What is open of all that "ready" is about, as the board counts it when it is reported. */
export function openToReady(items: readonly ItemPart[], startEvent: Step): ItemPart[] {
  // Where the start is wheels in, the set-up that induction needs is still part of it.
  const until = STEPS.indexOf(startEvent) < STEPS.indexOf('induction') ? 'induction' : startEvent;
  return openGates(items, until).filter((i) => i.section !== 'start');
}

/** "3 open: instruments trays, team brief, room clean" for what a step happens in spite of. */
export function openNames(open: readonly ItemPart[], most = 3): string {
  if (open.length === 0) {
    return 'nothing open';
  }
  const names = open.slice(0, most).map(keyWords);
  const more = open.length > most ? ` and ${open.length - most} more` : '';
  return `${open.length} open: ${names.join(', ')}${more}`;
}
