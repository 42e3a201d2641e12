import { describe, expect, it } from 'vitest';
import type { MovePart, NeedPart, NotePart } from '../generated/wire.ts';
import { plan, room } from '../hands/made/parts.ts';
import { AWAY_MS, changes, Looked, markOf, type Seen } from './changes.ts';

const MINUTE = 60_000;
const NOTHING: Seen = {
  rooms: [],
  chances: [],
  needs: [],
  notes: [],
  moves: [],
  ideas: [],
  cases: [],
};
const seen = (more: Partial<Seen>): Seen => ({ ...NOTHING, ...more });
const words = (before: Seen, now: Seen): string[] =>
  changes(markOf(before, 0), now, (at) => `+${at / MINUTE}`).map((c) => `${c.room}: ${c.words}`);

const need = (room: string, holdup: string, more: Partial<NeedPart> = {}): NeedPart => ({
  part: 'need',
  key: `need/${room}`,
  rank: 0,
  room,
  kind: 'late',
  minutes: 5,
  orMore: false,
  saveable: 0,
  words: holdup,
  holdup,
  help: false,
  ...more,
});

describe('what changed', () => {
  it('should tell a new standing and a start that moved, and leave the wobble out', () => {
    const before = seen({
      rooms: [room('1', { start50: 0 }), room('2', { start50: 0 }), room('3', { start50: 0 })],
    });
    const now = seen({
      rooms: [
        room('1', { start50: 2 * MINUTE }),
        room('2', { start50: 3 * MINUTE }),
        room('3', { start50: 11 * MINUTE, standing: 'late' }),
      ],
    });
    expect(words(before, now)).toEqual([
      '2: start +0 → +3, 3 min later',
      '3: ahead → late · start +0 → +11, 11 min later',
    ]);
    expect(words(now, now)).toEqual([]);
  });

  it('should tell a call for help first and once, and not again while the room still asks', () => {
    const call = {
      part: 'note',
      key: 'note/2/help',
      room: '2',
      kind: 'help',
      text: 'technician',
      at: 1,
    } as NotePart;
    const before = seen({ rooms: [room('1', { start50: 0 }), room('2')] });
    const asks = seen({
      rooms: [room('1', { start50: 9 * MINUTE }), room('2')],
      needs: [need('2', 'help', { kind: 'help', help: true })],
      notes: [call],
    });
    expect(words(before, asks)).toEqual([
      '2: asks for someone: technician',
      '1: start +0 → +9, 9 min later',
    ]);
    const stillAsks = { ...asks, needs: [need('2', 'suction', { help: true })] };
    expect(words(asks, stillAsks)).toEqual(['2: now held up by: suction']);
  });

  it('should tell new holdups, answers to moves and what changed on the case list', () => {
    const move = { id: 'm1', room: '3', words: 'technician 1 to room 3', state: 'asked' };
    const before = seen({
      rooms: [room('3'), room('4')],
      needs: [need('3', 'suction')],
      moves: [move as MovePart],
      cases: [plan('C3', '3'), plan('C4', '4'), plan('C5', '5')],
    });
    const now = seen({
      rooms: [room('3'), room('4')],
      needs: [need('3', 'suction', { takenBy: 'desk' }), need('4', 'surgeon not seen')],
      moves: [{ ...move, state: 'accepted' } as MovePart],
      cases: [plan('C3', '4', { agreedAt: 20 * MINUTE }), plan('C4', '3', { cancelled: true })],
    });
    expect(words(before, now).sort()).toEqual(
      [
        '3: somebody is on it: suction',
        '4: now held up by: surgeon not seen',
        '3: accepted: technician 1 to room 3',
        '4: case came from room 3',
        '4: +20 was agreed',
        '3: case cancelled',
        '5: case is off the list',
      ].sort(),
    );
  });

  it('should count from the last touch before the desk looked away, until somebody marks it', () => {
    const looked = new Looked();
    const mark = (at: number) => markOf(NOTHING, at);
    looked.begin(mark(0), 0);
    looked.touched(mark(60), 60_000);
    expect(looked.since(61_000)?.at).toBe(0);
    expect(looked.since(60_000 + AWAY_MS)?.at).toBe(60);
    looked.touched(mark(600), 600_000);
    looked.touched(mark(610), 610_000);
    expect(looked.since(611_000)?.at).toBe(60);
    looked.seen(mark(620), 620_000);
    expect(looked.since(630_000)?.at).toBe(620);
  });
});
