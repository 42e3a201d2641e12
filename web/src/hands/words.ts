import type {
  CasePart,
  DelayReason,
  ItemState,
  PersonPart,
  Role,
  RoomUse,
  Section,
  Standing,
  Step,
} from '../generated/wire.ts';
import { say } from '../look/words.ts';
import { both, capital, worded } from '../words/index.ts';

/** Words for people. Plain, short, lower case; one place, so that a site can change them. */

export const SET_UP: readonly Section[] = [
  'machine',
  'suction',
  'monitors',
  'airway',
  'iv',
  'drugs',
  'special',
];

export const BESIDE: readonly Section[] = [
  'room',
  'instruments',
  'team',
  'patient',
  'surgeon',
  'start',
];

/** A section as a heading. */
export function sectionName(section: Section): string {
  return capital(say(`section.${section}`));
}

export function sectionLetter(section: Section): string {
  return sectionName(section).charAt(0);
}

export const STEPS: readonly Step[] = ['sent-for', 'wheels-in', 'induction', 'release', 'incision'];

/** A step, short enough for a button. */
export function stepName(step: Step): string {
  return step === 'release' ? 'release' : say(`step.${step}`);
}

const STATES: Record<ItemState, string> = {
  open: 'open',
  'in-hand': 'in hand',
  good: 'good',
  fault: 'fault',
  lapsed: 'counts no longer',
  'left-out': 'left out',
};

export function stateName(state: ItemState): string {
  return STATES[state];
}

export function roleName(role: Role): string {
  return say(`role.${role}`);
}

export function standingName(standing: Standing): string {
  return say(`standing.${standing}`);
}

export function useName(use: RoomUse): string {
  return say(`use.${use}`);
}

export const USES_IN_ORDER: readonly RoomUse[] = ['free', 'occupied', 'cleaning', 'emergency'];

export const REASONS: readonly DelayReason[] = [
  'surgeon',
  'anaesthesia',
  'patient',
  'staff',
  'equipment',
  'instruments',
  'room',
  'transport',
  'emergency',
  'other',
];

/** A reason for a late start. */
export function reasonName(reason: DelayReason): string {
  return reason === 'anaesthesia' ? say(`reason.${reason}`) : reason;
}

/**
 * A person by role and place, never by name: "circulating nurse of 2", "technician 1". A stand-in has
 * the code too: the one of the plan may still be on the list.
 */
export function personName(person: PersonPart): string {
  const role = roleName(person.role);
  if (person.ownRoom !== undefined) {
    const planned =
      person.role === 'surgeon' || person.person === `${person.role}-${person.ownRoom}`;
    return `${role} of ${person.ownRoom}${planned ? '' : ` (${person.person})`}`;
  }
  const id = person.person;
  return `${role} ${id.startsWith(`${person.role}-`) ? id.slice(person.role.length + 1) : id}`;
}

/** Faults that are quick to say, by section; anything else is typed. */
const FAULTS: Partial<Record<Section, readonly string[]>> = {
  machine: ['does not pass', 'leaks', 'empty', 'not working'],
  suction: ['too weak', 'not working', 'part missing'],
  monitors: ['no signal', 'part missing', 'not working'],
  airway: ['cuff leaks', 'light fails', 'size missing', 'not here'],
  iv: ['runs badly', 'part missing', 'out of date'],
  drugs: ['not in stock', 'pharmacy closed', 'queue', 'out of date'],
  special: ['not here', 'with another room', 'not working'],
  room: ['dirty', 'too cold', 'not working', 'part missing'],
  instruments: ['tray missing', 'wrapping torn', 'wet', 'implant not here'],
  patient: ['not here', 'paper missing', 'result missing', 'not agreed'],
  surgeon: ['not here', 'with another room'],
  team: ['someone missing', 'not agreed'],
  start: ['held up'],
};

export function faultWords(section: Section): readonly string[] {
  return FAULTS[section] ?? ['not working', 'not here'];
}

/** Why an item is left out for this case. */
export const LEFT_OUT: readonly string[] = [
  'not needed for this case',
  'done another way',
  'agreed with supervisor',
];

/** Who or what is sent for by "send someone, not urgent". */
export const SEND: readonly string[] = [
  'technician',
  'second hands',
  'something to fetch',
  'supervisor',
];

export function caution(): string {
  return `A readiness board. ${both('record.not')} It does not monitor patients. Local policy and the licensed person decide.`;
}

/** "1 thing", "3 things". */
export function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** "general + block" */
export function techniqueWords(plan: Pick<CasePart, 'technique' | 'options'>): string {
  return worded([plan.technique, ...plan.options].join(' + ').replaceAll('-', ' '));
}
