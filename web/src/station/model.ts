import type {
  CasePart,
  CommandUnion,
  EvidenceUnion,
  ItemPart,
  NextItemPart,
  NextPart,
  PersonPart,
  Role,
  RoomPart,
  Section,
  Step,
  WaitPart,
} from '../generated/wire.ts';
import { isDone, openGates, reachedAt, sectionView, type SectionView } from '../hands/items.ts';
import { say } from '../look/words.ts';
import type { Saying } from '../hands/said.ts';
import { BESIDE, count, SET_UP, stepName, STEPS } from '../hands/words.ts';

/** What of the room's work the station shows: its first case's two halves, or the next case's set-up. */
export type Half = 'set-up' | 'beside' | 'next';

/** All that the station shows of its room. */
export interface StationView {
  room: RoomPart | undefined;
  plan: CasePart | undefined;
  half: Half;
  /** The later case that is set up here, whether or not it is shown. */
  next: NextPart | undefined;
  items: ItemPart[];
  sections: SectionView[];
  /** Sections that one touch may call gone through: open, no answer wanted, no fault. */
  rest: SectionView[];
  /** Gating items that are not done, in the half that is shown. */
  open: ItemPart[];
  stillGoing: ItemPart[];
  wait: WaitPart | undefined;
}

/** The parts that the station's view is made of. */
export interface StationParts {
  rooms: readonly RoomPart[];
  cases: readonly CasePart[];
  items: readonly ItemPart[];
  waits: readonly WaitPart[];
  next?: readonly NextPart[];
  nextItems?: readonly NextItemPart[];
}

/**
 * @param wanted what is to be shown; without a next case its first case's set-up is, and without a
 *   first case (cancelled after its start) the next one's
 */
export function stationView(
  parts: StationParts,
  room: string,
  wanted: Half,
  now: number,
  zone: string,
): StationView {
  const next = parts.next?.find((n) => n.room === room);
  const plan = parts.cases.find((c) => c.room === room && !c.cancelled);
  const half = halfOf(wanted, plan, next);
  const later = parts.nextItems?.filter((i) => i.room === room) ?? [];
  const items = (half === 'next' ? later.map((i) => i.item) : parts.items)
    .filter((i) => i.room === room)
    .sort((a, b) => a.order - b.order);
  const shown: readonly Section[] = half === 'beside' ? BESIDE : SET_UP;
  const of = half === 'next' && next ? { next: next.caseId } : {};
  const sections = shown.map((s) => ({ ...sectionView(s, items, now, zone), ...of }));
  return {
    room: parts.rooms.find((r) => r.room === room),
    plan,
    half,
    next,
    items,
    sections,
    rest: sections.filter((s) => canSweep(s) && s.ask.length === 0 && s.faults.length === 0),
    open: items.filter((i) => SET_UP.includes(i.section) && !isDone(i)),
    stillGoing: items.filter((i) => i.stillGoing && SET_UP.includes(i.section)),
    wait: parts.waits.find((w) => w.room === room),
  };
}

function halfOf(wanted: Half, plan: CasePart | undefined, next: NextPart | undefined): Half {
  if (next === undefined) return wanted === 'next' ? 'set-up' : wanted;
  return plan === undefined ? 'next' : wanted;
}

const ALONE: readonly Section[] = ['patient', 'surgeon', 'start'];

/** Patient and surgeon come by themselves: each is said alone, never by a section. */
export function canSweep(view: SectionView): boolean {
  return view.open.length > 0 && !ALONE.includes(view.section);
}

/**
 * The command of a section gone through, for the case whose items were shown. Items at fault are
 * always exceptions.
 */
export function sweep(
  view: SectionView,
  except: ReadonlySet<string>,
  by: string | undefined,
): CommandUnion {
  const out = view.items
    .filter((i) => i.state === 'fault' || except.has(i.item))
    .map((i) => i.item);
  const also = [...except].filter((ref) => !out.includes(ref));
  return {
    type: 'sweep',
    room: view.items[0]!.room,
    section: view.section,
    except: [...out, ...also],
    ...(by ? { by } : {}),
    ...(view.next === undefined ? {} : { next: view.next }),
  };
}

/** The command of an item that is good. */
export function good(
  item: ItemPart,
  evidence: EvidenceUnion,
  by: string | undefined,
  witness?: string,
): Saying {
  return {
    command: {
      type: 'good',
      item: item.item,
      evidence,
      ...(by ? { by } : {}),
      ...(witness ? { witness } : {}),
    },
    seen: item.revision,
  };
}

/** Who of those that are here can be the second person beside somebody, for a room. */
export function witnesses(
  people: readonly PersonPart[],
  room: string,
  beside: string | undefined,
): PersonPart[] {
  return peopleFor(
    people.filter(
      (p) => p.arrivedAt !== undefined && p.leftAt === undefined && p.person !== beside,
    ),
    room,
  );
}

/** People who may sign on here: the room's own first, then those who serve it, then roaming. */
export function peopleFor(people: readonly PersonPart[], room: string): PersonPart[] {
  const away: readonly Role[] = [
    'manager',
    'admin',
    'display',
    'desk',
    'pharmacy',
    'holding',
    'surgeon',
    'porter',
  ];
  const rank = (p: PersonPart) =>
    p.ownRoom === room ? 0 : p.room === room ? 1 : p.covers.includes(room) ? 2 : 3;
  return people
    .filter((p) => !away.includes(p.role) && p.leftAt === undefined)
    .filter(
      (p) =>
        p.ownRoom === room ||
        p.room === room ||
        (p.ownRoom === undefined && (p.covers.length === 0 || p.covers.includes(room))),
    )
    .sort((a, b) => rank(a) - rank(b) || a.plannedAt - b.plannedAt || (a.key < b.key ? -1 : 1));
}

/** What signing on says to the board: arrived, come over from another room, or nothing new. */
export function signOn(person: PersonPart, room: string): CommandUnion | undefined {
  if (person.arrivedAt === undefined) {
    return { type: 'arrive', person: person.person, room };
  }
  return person.room === room ? undefined : { type: 'join', person: person.person, room };
}

/** A step of the start chain as a button. */
export interface StepView {
  step: Step;
  name: string;
  at: number | undefined;
  next: boolean;
  /** What is open that this step should not happen without. Never a reason to refuse it. */
  open: ItemPart[];
}

export function stepViews(plan: CasePart | undefined, items: readonly ItemPart[]): StepView[] {
  const last = STEPS.reduce(
    (found, step, i) => (reachedAt(plan, step) === undefined ? found : i),
    -1,
  );
  return STEPS.map((step, i) => ({
    step,
    name: stepName(step),
    at: reachedAt(plan, step),
    next: i === last + 1,
    open: reachedAt(plan, step) === undefined ? openGates(items, step) : [],
  }));
}

/** Where something is open, and how much: "machine 9 · drugs 5". */
export function openSections(open: readonly ItemPart[]): string {
  const counts = new Map<Section, number>();
  for (const item of open) {
    counts.set(item.section, (counts.get(item.section) ?? 0) + 1);
  }
  return [...counts].map(([section, n]) => `${say(`section.${section}`)} ${n}`).join(' · ');
}

/** What one touch for the rest says: "suction, monitors, airway (9 things)". */
export function restWords(rest: readonly SectionView[]): string {
  const things = rest.reduce((sum, s) => sum + s.open.length, 0);
  return `${rest.map((s) => say(`section.${s.section}`)).join(', ')} (${count(things, 'thing')})`;
}

/** Why nothing is asked of this room, in a sentence; empty if it has a case or its next one. */
export function idleWords(
  everSeen: boolean,
  phase: string | undefined,
  view: Pick<StationView, 'plan' | 'room' | 'next'>,
  room: string,
): string {
  if (view.plan || view.next) return '';
  if (!everSeen) return 'Waiting for the board: what is asked here is not known yet.';
  if (phase === 'none') return 'Nothing is planned yet: the desk takes the case list.';
  return view.room
    ? `Room ${room} has no first case this morning, so nothing is asked here.`
    : `This morning has no room ${room}: look at the address of this page.`;
}
