import { describe, expect, it } from 'vitest';
import type { MovePart, NeedPart } from '../generated/wire.ts';
import { person, room } from '../hands/made/parts.ts';
import {
  askedOf,
  callsFor,
  choices,
  FORGET_MS,
  myRooms,
  nobodyWaits,
  roomWords,
  Whose,
} from './model.ts';

const T1 = person('technician-1', { role: 'technician' });
const V1 = person('supervisor-1', { role: 'supervisor', covers: ['2', '3'] });
const move = (id: string, more: Partial<MovePart>): MovePart =>
  ({ part: 'move', key: `move/${id}`, id, state: 'asked', askedAt: 0, ...more }) as MovePart;
const need = (of: string, rank: number, more: Partial<NeedPart> = {}): NeedPart =>
  ({ room: of, rank, kind: 'late', words: 'suction', help: false, ...more }) as NeedPart;
const names = (rooms: readonly { room: { room: string } }[]) => rooms.map((r) => r.room.room);

describe('the phone', () => {
  it('should offer whoever walks between rooms, and nobody who has gone', () => {
    const list = [
      person('scrub-2', { role: 'scrub', ownRoom: '2' }),
      person('float', { role: 'circulating' }),
      T1,
      V1,
      person('technician-2', { role: 'technician', leftAt: 5 }),
    ];
    expect(choices(list).map((p) => p.person)).toEqual(['supervisor-1', 'technician-1', 'float']);
  });

  it('should show what is asked of this person or role, and nothing that is over or of others', () => {
    const moves = [
      move('a', { person: 'technician-1', state: 'accepted' }),
      move('b', { role: 'technician', askedAt: 2 }),
      move('c', { person: 'technician-2', role: 'technician' }),
      move('d', { person: 'technician-1', state: 'done' }),
      move('e', { role: 'supervisor' }),
    ];
    expect(askedOf(T1, moves).map((m) => m.id)).toEqual(['b', 'a']);
  });

  it('should put the room that waits for this person first and what has started last', () => {
    const rooms = [
      room('2', { startedAt: 1, standing: 'started' }),
      room('3', { target: 30 }),
      room('4', { target: 10 }),
      room('5', { target: 20 }),
    ];
    const me = { ...V1, covers: ['2', '3', '4', '5'], waitedFor: ['3'] };
    expect(names(myRooms(me, rooms, [need('5', 0)], []))).toEqual(['3', '5', '4', '2']);
    const accepted = move('m', { person: T1.person, room: '4', state: 'accepted' });
    expect(names(myRooms(T1, rooms, [], [accepted]))).toEqual(['4']);
  });

  it('should not say that nobody waits beside a room that waits for something', () => {
    const rooms = [room('3', { target: 30 }), room('5', { startedAt: 1, standing: 'started' })];
    const me = { ...V1, covers: ['3', '5'] };
    expect(nobodyWaits(myRooms(me, rooms, [], []))).toMatch(/^nobody waits for you/);
    expect(nobodyWaits(myRooms(me, rooms, [need('3', 0)], []))).toMatch(
      /^no room waits for you alone.*stands beside them$/,
    );
    expect(nobodyWaits(myRooms(me, rooms, [need('5', 0)], []))).toMatch(/^nobody waits for you/);
  });

  it('should bring calls to those who can go, and not the own call back to the room', () => {
    const needs = [need('2', 1, { help: true }), need('7', 0, { help: true }), need('3', 2)];
    expect(callsFor(T1, needs).map((n) => n.room)).toEqual(['7', '2']);
    expect(callsFor(V1, needs).map((n) => n.room)).toEqual(['2']);
    expect(callsFor(person('A2', { ownRoom: '2', room: '2' }), needs)).toEqual([]);
  });

  it('should be nobody’s after two minutes without a touch, and stay so', () => {
    const whose = new Whose();
    whose.choose('T1', 0);
    whose.touched(FORGET_MS - 1);
    expect(whose.person(FORGET_MS)).toBe('T1');
    whose.touched(2 * FORGET_MS);
    expect(whose.person(2 * FORGET_MS + 1)).toBeUndefined();
  });

  it('should say of a room what the wall says', () => {
    const late = room('3', { standing: 'late', lateMinutes: 11 });
    const mine = { room: late, waits: false, need: need('3', 0), move: undefined };
    expect(roomWords(mine)).toBe('late +11 · suction');
  });
});
