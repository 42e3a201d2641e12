import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type {
  CasePart,
  ChancePart,
  EvidenceRule,
  ItemPart,
  PartUnion,
  PersonPart,
  Role,
  RoomPart,
  Section,
  Standing,
  Step,
} from '../../src/generated/wire.ts';

const SHEETS =
  process.env['SUNUP_SHEETS'] ??
  join(import.meta.dirname, '../../../shared-model/src/main/resources/sunup/sheets/');

/** 26 November 2026, 07:00 in the invented hospital's zone. */
export const SEVEN = Date.UTC(2026, 10, 26, 7, 0);
export const MINUTE = 60_000;

interface SheetLine {
  key: string;
  belongs: 'room' | 'case';
  desk: string;
  who?: string[];
  gates?: Step;
  marks?: Step;
  core?: boolean;
  evidence?: Partial<EvidenceRule>;
}

function sheet(): SheetLine[] {
  const text = readFileSync(join(SHEETS, 'general.json'), 'utf8');
  return (JSON.parse(text) as { items: SheetLine[] }).items;
}

/** The items of one room, all open, as the default sheet for a general anaesthetic has them. */
export function itemsOf(room: string): ItemPart[] {
  return sheet().map((line, order) => {
    const item = `${line.belongs}:${line.belongs === 'room' ? room : `C${room}`}/${line.key}`;
    return {
      part: 'item',
      key: `item/${item}`,
      item,
      room,
      order,
      section: line.key.split('.')[0] as Section,
      name: line.desk,
      who: (line.who ?? []).flatMap((w) => w.split(' or ')) as Role[],
      state: 'open',
      since: SEVEN - 60 * MINUTE,
      ...(line.gates ? { gates: line.gates } : {}),
      ...(line.marks ? { marks: line.marks } : {}),
      asks: { kind: 'touch', choices: [], witness: false, ...line.evidence },
      together: false,
      stillGoing: false,
      core: line.core ?? false,
      revision: 1,
    };
  });
}

const STANDINGS: Standing[] = ['ahead', 'ready', 'late', 'tight', 'stuck', 'unheard', 'agreed'];
const PROCEDURES = [
  'shoulder repair',
  'gallbladder, keyhole',
  'hip replacement',
  'hernia',
  'thyroid lobe',
  'knee replacement',
  'sinus surgery',
];

function roomPart(room: string, order: number): RoomPart {
  const standing = STANDINGS[order % STANDINGS.length]!;
  const target = SEVEN + 30 * MINUTE + (standing === 'agreed' ? 15 * MINUTE : 0);
  const about = target + ((order * 7) % 19) * MINUTE - 5 * MINUTE;
  return {
    part: 'room',
    key: `room/${room}`,
    room,
    order,
    target,
    agreed: standing === 'agreed',
    standing,
    could10: about - 8 * MINUTE,
    could50: about,
    could90: about + 12 * MINUTE,
    start50: Math.max(about, target),
    lateMinutes: Math.max(0, Math.round((about - target) / MINUTE)),
    orMore: false,
    word: standing,
    readyOpen: 0,
    use: room === '4' ? 'cleaning' : 'free',
    ...(room === '4' ? { useUntil: SEVEN + 10 * MINUTE } : {}),
    revision: 1,
  };
}

function casePart(room: string, order: number): CasePart {
  return {
    part: 'case',
    key: `case/C${room}`,
    caseId: `C${room}`,
    room,
    bookedAt: SEVEN + 30 * MINUTE,
    procedure: PROCEDURES[order % PROCEDURES.length]!,
    service: 'surgery',
    technique: 'general',
    options: order === 0 ? ['block'] : [],
    cancelled: false,
    steps: [],
    flagged: [],
    reasonAgreed: false,
    revision: 1,
  };
}

function person(id: string, role: Role, room: string | undefined): PersonPart {
  return {
    part: 'person',
    key: `person/${id}`,
    person: id,
    role,
    label: room ? `${role} of ${room}` : `${role} ${id}`,
    ...(room ? { ownRoom: room } : {}),
    covers: [],
    waitedFor: [],
    plannedAt: SEVEN - 30 * MINUTE,
    revision: 1,
  };
}

function chance(room: string, order: number): ChancePart {
  return {
    part: 'chance',
    key: `chance/${room}`,
    room,
    onTime: [0.97, 0.99, 0.22, 0.61, 0.1, 0.8, 0.9][order % 7]!,
    start10: SEVEN + 28 * MINUTE,
    start50: SEVEN + 36 * MINUTE,
    start90: SEVEN + 52 * MINUTE,
    meanLateMinutes: Math.round(((order * 3.7) % 14) * 10) / 10,
    capped: 0,
    trials: 2000,
    kept: 2000,
    tried: 2000,
    alreadyLost: 0.12,
    shares: [
      { holdup: `item:case:C${room}/surgeon.seen`, words: 'surgeon not seen', share: 0.55 },
      { holdup: 'unit:ultrasound', words: 'ultrasound is in 9 until about 07:22', share: 0.33 },
    ],
  };
}

/** A morning at seven: rooms 1 to `rooms`, nobody there yet, nothing done. */
export function morning(rooms: number): PartUnion[] {
  const names = Array.from({ length: rooms }, (_, i) => String(i + 1));
  const target = SEVEN + 30 * MINUTE;
  return [
    {
      part: 'suite',
      key: 'suite',
      hospital: 'Kestrel Bay',
      suite: 'Main theatres',
      date: '2026-11-26',
      zone: 'Europe/London',
      phase: 'open',
      startEvent: 'wheels-in',
      graceMinutes: 5,
      horizon: target,
      cases: rooms,
      onTime: rooms - 3,
      quiet: 1,
      demo: true,
    },
    ...names.flatMap((room, i): PartUnion[] => [
      roomPart(room, i),
      casePart(room, i),
      ...itemsOf(room),
      person(`anaesthetist-${room}`, 'anaesthetist', room),
      person(`circulating-${room}`, 'circulating', room),
      person(`scrub-${room}`, 'scrub', room),
      chance(room, i),
      {
        part: 'wait',
        key: `wait/${room}`,
        room,
        about: SEVEN + 41 * MINUTE,
        waits: [
          {
            holdup: 'unit:ultrasound',
            words: 'ultrasound is in 9 until about 07:22',
            own: false,
            takenBy: 'desk',
            until: SEVEN + 22 * MINUTE,
          },
          { holdup: `item:case:C${room}/surgeon.seen`, words: 'surgeon not seen', own: false },
          { holdup: `item:case:C${room}/patient.consent`, words: 'patient: papers', own: false },
        ],
      },
    ]),
    ...['T1', 'T2'].map((id) => person(id, 'technician', undefined)),
    person('V1', 'supervisor', undefined),
    person('H1', 'holding', undefined),
    {
      part: 'unit',
      key: 'unit/US1',
      unit: 'US1',
      kind: 'ultrasound',
      label: 'ultrasound 1',
      with: '9',
      since: SEVEN - 10 * MINUTE,
      revision: 1,
    },
    {
      part: 'place',
      key: 'place/pharmacy',
      place: 'pharmacy',
      label: 'pharmacy',
      opensAt: SEVEN + 15 * MINUTE,
      revision: 1,
    },
    ...['3', '5', '4'].map((room, rank): PartUnion => ({
      part: 'need',
      key: `need/${rank}`,
      rank,
      room,
      kind: rank === 1 ? 'stuck' : 'late',
      minutes: 11 - rank * 3,
      orMore: false,
      saveable: 8 - rank,
      words: ['surgeon not seen', 'leak test failed', 'ultrasound in 9 until 07:22'][rank]!,
      holdup: `h${rank}`,
      help: rank === 1,
      ...(rank === 0 ? { takenBy: 'desk' as Role, lookAgainAt: SEVEN + 5 * MINUTE } : {}),
    })),
    {
      part: 'note',
      key: 'note/1',
      room: '3',
      by: 'desk',
      at: SEVEN - 4 * MINUTE,
      kind: 'said',
      text: 'surgeon phoned, parking, says 07:10',
    },
  ];
}
