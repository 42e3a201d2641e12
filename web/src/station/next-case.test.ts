import { describe, expect, it } from 'vitest';
import { item, plan, room } from '../hands/made/parts.ts';
import { stationView, sweep } from './model.ts';
import { listsToChoose, nextCase } from './next-case.ts';

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

  it('should be offered each list of the morning once, the room’s own first', () => {
    const cases = [
      plan('C1', '1'),
      plan('C2', '2', { technique: 'spinal' }),
      plan('C3', '3'),
      plan('C4', '4', { options: ['block'] }),
    ];
    expect(listsToChoose(cases, '4').map((c) => c.caseId)).toEqual(['C4', 'C1', 'C2']);
    expect(listsToChoose(cases, '3').map((c) => c.caseId)).toEqual(['C3', 'C2', 'C4']);
  });

  it('should show the next case’s items instead of the first’s, once it is set up', () => {
    const first = item('room:5/suction.strong', { state: 'good' });
    const later = item('case:5.2/suction.strong');
    const parts = { rooms: [room('5')], cases: [plan('C5', '5')], items: [first], waits: [] };
    expect(stationView(parts, '5', 'next', 0, 'UTC').items).toEqual([first]);

    const next = {
      part: 'next' as const,
      key: 'next/5.2',
      room: '5',
      caseId: '5.2',
      technique: 'general',
      options: [],
      at: 0,
    };
    const nextItem = {
      part: 'next-item' as const,
      key: 'next-item/case:5.2/suction.strong',
      room: '5',
      carried: false,
      item: later,
    };
    const both = { ...parts, next: [next], nextItems: [nextItem] };
    expect(stationView(both, '5', 'set-up', 0, 'UTC').items).toEqual([first]);
    const view = stationView(both, '5', 'next', 0, 'UTC');
    expect(view.items).toEqual([later]);
    const suction = view.sections.find((s) => s.section === 'suction')!;
    expect(sweep(suction, new Set(), undefined, '5.2')).toMatchObject({ room: '5', next: '5.2' });
  });
});
