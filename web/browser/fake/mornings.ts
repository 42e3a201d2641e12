import type { NeedPart, RoomPart, Standing, SuitePart } from '../../src/generated/wire.ts';

/** Invented mornings for the fake board. Times are UTC, the site's zone is too. */
export const at = (clock: string): number => Date.parse(`2026-11-25T${clock}:00Z`);
const MINUTE = 60_000;
const HORIZON = at('07:30');

export function suite(over: Partial<SuitePart> = {}): SuitePart {
  return {
    part: 'suite',
    key: 'suite',
    hospital: 'Kestrel Bay',
    suite: 'Main suite',
    date: '2026-11-25',
    zone: 'UTC',
    phase: 'open',
    startEvent: 'wheels-in',
    graceMinutes: 0,
    horizon: HORIZON,
    cases: 16,
    onTime: 11,
    quiet: 1,
    demo: true,
    ...over,
  };
}

/** A room whose start could fall around `mid` minutes after its target. */
export function room(
  order: number,
  name: string,
  standing: Standing,
  mid = 0,
  half = 5,
  over: Partial<RoomPart> = {},
): RoomPart {
  const target = over.target ?? HORIZON;
  const words: Partial<Record<Standing, string>> = { unheard: 'no word', none: 'no case' };
  return {
    part: 'room',
    key: `room/${name}`,
    room: name,
    order,
    target,
    agreed: false,
    standing,
    could10: target + (mid - half) * MINUTE,
    could50: target + mid * MINUTE,
    could90: target + (mid + half) * MINUTE,
    lateMinutes: Math.max(0, mid),
    orMore: false,
    word: words[standing] ?? standing,
    readyOpen: 0,
    use: 'free',
    revision: 1,
    ...over,
  };
}

export function need(
  rank: number,
  name: string,
  kind: string,
  minutes: number,
  words: string,
  over: Partial<NeedPart> = {},
): NeedPart {
  return {
    part: 'need',
    key: `need/${name}`,
    rank,
    room: name,
    kind,
    minutes,
    orMore: false,
    saveable: minutes,
    words,
    holdup: `holdup/${name}`,
    help: false,
    ...over,
  };
}

const KINDS: readonly [Standing, number, number, Partial<RoomPart>?][] = [
  ['ready', -9, 3],
  ['ahead', -6, 4],
  ['tight', 1, 6],
  ['ahead', -7, 4],
  ['late', 11, 6],
  ['started', 0, 0, { startedAt: at('07:02') }],
  ['ready', -8, 3],
  ['unheard', -2, 13],
  ['ahead', -3, 5],
  ['ready', -10, 3],
  ['ahead', -5, 5],
  ['late', 8, 5],
  ['stuck', 26, 9],
  ['ahead', -4, 6],
  ['agreed', -12, 8, { target: at('08:00'), agreed: true }],
  ['ahead', -6, 4],
];

/** `count` rooms in all standings. */
export function mixedRooms(count: number): RoomPart[] {
  return Array.from({ length: count }, (_, i) => {
    const [standing, mid, half, over] = KINDS[count <= 16 ? i % 16 : (i * 7 + 3) % 16]!;
    return room(i, String(i + 1), standing, mid, half, over);
  });
}

export const NEEDS: readonly NeedPart[] = [
  need(0, '5', 'late', 11, 'ultrasound is in 9 until about 07:22', {
    takenBy: 'desk',
    lookAgainAt: at('07:10'),
  }),
  need(1, '12', 'late', 8, 'controlled drugs: pharmacy opens 07:15'),
  need(2, '13', 'stuck', 26, 'leak test failed, nobody on it'),
  need(3, '3', 'tight', 3, 'surgeon not seen', {
    takenBy: 'circulating',
    lookAgainAt: at('07:00'),
  }),
  need(4, '8', 'ask', 0, 'no word since 06:31'),
];

export const calmRooms = (count: number): RoomPart[] =>
  Array.from({ length: count }, (_, i) =>
    room(i, String(i + 1), i % 3 === 0 ? 'ready' : 'ahead', -6 - ((i * 5) % 7), 3 + (i % 3)),
  );

export const startedRooms = (count: number): RoomPart[] =>
  Array.from({ length: count }, (_, i) =>
    room(i, String(i + 1), 'started', 0, 0, {
      startedAt: HORIZON + (i % 4 === 3 ? 6 + i : -(i % 5)) * MINUTE,
    }),
  );
