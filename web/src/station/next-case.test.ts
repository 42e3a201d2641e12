import { describe, expect, it } from 'vitest';
import { item } from '../hands/made/parts.ts';
import { nextCase } from './next-case.ts';

describe('the next case of a room', () => {
  it('should find done what outlasts a case, as long as it does, and nothing else', () => {
    const items = [
      item('room:5/machine.bag', { goodUntil: 1_000 }),
      item('room:5/machine.circuit', { state: 'good' }),
      item('room:5/suction.strong', { section: 'suction', state: 'good' }),
      item('case:C5/team.brief', { section: 'team' }),
    ];
    const keys = (now: number) => {
      const { good, whole, again } = nextCase(items, now);
      return [
        good.map((i) => i.item),
        whole,
        again.map(([section, all]) => `${section}: ${all.map((i) => i.item).join(' ')}`),
      ];
    };
    expect(keys(0)).toEqual([
      ['room:5/machine.bag'],
      ['Suction'],
      ['Machine: room:5/machine.circuit'],
    ]);
    expect(keys(1_000)).toEqual([[], ['Machine', 'Suction'], []]);
  });
});
