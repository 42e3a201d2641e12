import { describe, expect, it } from 'vitest';
import { item, person, plan, room } from '../hands/made/parts.ts';
import { openSections, peopleFor, signOn, stationView, stepViews, sweep } from './model.ts';

describe('the station', () => {
  const items = [
    item('room:5/suction.strong'),
    item('case:C5/airway.tubes', { state: 'fault' }),
    item('case:C5/airway.plan-b'),
    item('room:5/iv.set'),
    item('case:C5/drugs.antibiotic', {
      asks: { kind: 'choice', choices: ['given'], witness: false },
    }),
    item('room:6/suction.strong', { room: '6' }),
  ];
  const parts = { rooms: [room('5'), room('6')], cases: [plan('C5', '5')], items, waits: [] };

  it('should call the rest gone through only where nothing is asked and nothing is wrong', () => {
    const view = stationView(parts, '5', 'set-up', 0, 'UTC');
    expect(view.rest.map((s) => s.section)).toEqual(['suction', 'iv']);
    expect(openSections(view.open)).toBe('suction 1 · airway 2 · IV 1 · drugs 1');
  });

  it('should keep what is at fault, and what was named, out of a sweep', () => {
    const view = stationView(parts, '5', 'set-up', 0, 'UTC');
    const airway = view.sections.find((s) => s.section === 'airway')!;
    expect(sweep(airway, new Set(['case:C5/airway.plan-b']), 'A5')).toEqual({
      type: 'sweep',
      room: '5',
      section: 'airway',
      except: ['case:C5/airway.tubes', 'case:C5/airway.plan-b'],
      by: 'A5',
    });
  });

  it('should offer the room’s own people first and nobody of another room', () => {
    const people = [
      person('T1', { role: 'technician' }),
      person('A6', { ownRoom: '6' }),
      person('V1', { role: 'supervisor', covers: ['5', '6'] }),
      person('V2', { role: 'supervisor', covers: ['1'] }),
      person('A5', { ownRoom: '5' }),
      person('D1', { role: 'desk' }),
      person('A9', { ownRoom: '5', leftAt: 1 }),
    ];
    expect(peopleFor(people, '5').map((p) => p.person)).toEqual(['A5', 'V1', 'T1']);
  });

  it('should arrive who is new, join who comes over, and say nothing of who is here', () => {
    expect(signOn(person('A5'), '5')).toEqual({ type: 'arrive', person: 'A5', room: '5' });
    expect(signOn(person('T1', { arrivedAt: 1, room: '4' }), '5')).toEqual({
      type: 'join',
      person: 'T1',
      room: '5',
    });
    expect(signOn(person('A5', { arrivedAt: 1, room: '5' }), '5')).toBeUndefined();
  });

  it('should offer every step that has not happened, the next one marked', () => {
    const steps = stepViews(plan('C5', '5', { steps: [{ step: 'sent-for', at: 7 }] }), items);
    expect(steps.map((s) => [s.step, s.at, s.next])).toEqual([
      ['sent-for', 7, false],
      ['wheels-in', undefined, true],
      ['induction', undefined, false],
      ['release', undefined, false],
      ['incision', undefined, false],
    ]);
  });
});
