import { describe, expect, it } from 'vitest';
import type { ChancePart, Tried, TriedRoom } from '../generated/wire.ts';
import { changeWords, differing, savedOnCopy } from './tried.ts';

const chance = (room: string, onTime: number): ChancePart => ({
  part: 'chance',
  key: `chance/${room}`,
  room,
  onTime,
  capped: 0,
  trials: 2_000,
  kept: 1,
  tried: 1,
  alreadyLost: 0,
  shares: [],
});

const room = (id: string, was: number, is: number): TriedRoom => ({
  room: id,
  target: 0,
  copyTarget: 0,
  chance: chance(id, was),
  copyChance: chance(id, is),
});

describe('a copy of the morning', () => {
  it('should show the rooms that come out otherwise and count the others', () => {
    const tried = { rooms: [room('1', 0.4, 0.4), room('2', 0.4, 0.7)] } as unknown as Tried;
    expect(differing(tried)).toEqual({ rooms: [tried.rooms[1]], same: 1 });
  });

  it('should not call a difference sure that may be chance', () => {
    expect(savedOnCopy(8.84, 0.42)).toBe('saves 8.8 ± 0.4 min');
    expect(savedOnCopy(-3, 0.1)).toBe('costs 3.0 ± 0.1 min');
    expect(savedOnCopy(0.3, 0.2)).toBe('no sure difference (0.3 ± 0.2 min)');
    expect(savedOnCopy(0, 0)).toBe('no difference');
  });

  it('should say each change as somebody would', () => {
    const say = (change: Parameters<typeof changeWords>[0]) =>
      changeWords(
        change,
        () => '07:50',
        (id) => `the ${id}`,
      );
    expect(say({ change: 'target', room: '3', at: 1 })).toBe('room 3 meant for 07:50');
    expect(say({ change: 'swap', one: '3', other: '7' })).toBe('cases of 3 and 7 swapped');
    expect(say({ change: 'one-more-unit', kind: 'ultrasound' })).toBe('one more ultrasound');
    expect(say({ change: 'opens', place: 'pharmacy', at: 1 })).toBe('the pharmacy opens 07:50');
    expect(say({ change: 'one-more-person', role: 'technician' })).toBe('one more technician');
  });
});
