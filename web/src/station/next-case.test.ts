import { describe, expect, it } from 'vitest';
import type { ItemPart } from '../generated/wire.ts';
import { item, plan, room, second } from '../hands/made/parts.ts';
import { idleWords, stationView, sweep } from './model.ts';
import { listsToChoose, nextCase, putsAway, setUpNext } from './next-case.ts';

const nextItem = (of: ItemPart, carried = false) => ({
  part: 'next-item' as const,
  key: `next-item/${of.item}`,
  room: '5',
  carried,
  item: of,
});

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

    const both = { ...parts, next: [second], nextItems: [nextItem(later)] };
    expect(stationView(both, '5', 'set-up', 0, 'UTC').items).toEqual([first]);
    const view = stationView(both, '5', 'next', 0, 'UTC');
    expect(view.items).toEqual([later]);
    const suction = view.sections.find((s) => s.section === 'suction')!;
    expect(sweep(suction, new Set(), undefined)).toMatchObject({ room: '5', next: '5.2' });
  });

  it('should call gone through for the case whose rows were touched, whatever begins meanwhile', () => {
    const first = item('room:5/suction.strong');
    const parts = { rooms: [room('5')], cases: [plan('C5', '5')], items: [first], waits: [] };
    const later = nextItem(item('case:5.2/suction.strong'));
    const both = { ...parts, next: [second], nextItems: [later] };
    // The next case is asked for here, and not known to be begun yet: these rows are the first's.
    for (const view of [
      stationView(parts, '5', 'next', 0, 'UTC'),
      stationView(both, '5', 'set-up', 0, 'UTC'),
    ]) {
      for (const rest of view.rest) {
        expect(sweep(rest, new Set(), 'A5')).not.toHaveProperty('next');
      }
      expect(view.rest).toHaveLength(1);
    }
  });

  it('should put away only the next case that was shown, and say so where work was done', () => {
    const like = plan('C5', '5');
    expect(setUpNext('5', like, undefined)).toEqual({
      type: 'set-up-next',
      room: '5',
      like: 'C5',
    });
    expect(setUpNext('5', like, second)).toMatchObject({ after: '5.2' });
    const open = nextItem(item('case:5.2/suction.strong'));
    const carried = nextItem(item('case:5.2/machine.bag', { state: 'good' }), true);
    const done = nextItem(item('case:5.2/iv.set', { state: 'good' }));
    expect(putsAway(second, [open, carried])).toBe('');
    expect(putsAway(undefined, [])).toBe('');
    expect(putsAway(second, [open, carried, done])).toContain('what was done for 5.2');
  });

  it('should stay in reach when the first case is cancelled after its start', () => {
    const cancelled = { ...plan('C5', '5'), cancelled: true };
    const later = nextItem(item('case:5.2/suction.strong'));
    const parts = {
      rooms: [room('5')],
      cases: [cancelled],
      items: [],
      waits: [],
      next: [second],
      nextItems: [later],
    };
    for (const wanted of ['set-up', 'beside', 'next'] as const) {
      const view = stationView(parts, '5', wanted, 0, 'UTC');
      expect(idleWords(true, 'open', view, '5')).toBe('');
      expect([view.half, view.items]).toEqual(['next', [later.item]]);
    }
  });
});
