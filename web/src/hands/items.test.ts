import { follow } from '../words/index.ts';
import { describe, expect, it } from 'vitest';
import type { EvidenceRule } from '../generated/wire.ts';
import {
  bandWords,
  cannotBe,
  nextStep,
  openGates,
  openNames,
  openToReady,
  outsideBand,
  sectionView,
} from './items.ts';
import { item, plan } from './made/parts.ts';

const MINUTE = 60_000;

describe('a section', () => {
  it('should be shown by the worst that is in it', () => {
    const good = item('room:5/machine.bag', { state: 'good' });
    const open = item('room:5/machine.flow');
    const lapsed = item('case:C5/machine.ventilator', { state: 'lapsed' });
    const fault = item('room:5/machine.self-test', { state: 'fault', what: 'leaks' });
    const state = (...items: (typeof good)[]) => sectionView('machine', items, 0, 'UTC').state;
    expect(state()).toBe('none');
    expect(state(good)).toBe('good');
    expect(state(open)).toBe('open');
    expect(state(good, open)).toBe('hand');
    expect(state(good, open, lapsed)).toBe('lapsed');
    expect(state(good, open, lapsed, fault)).toBe('fault');
  });

  it('should ask for readings, choices and signatures, and for nothing that is done', () => {
    const number: EvidenceRule = { kind: 'number', unit: 'psi', choices: [], witness: false };
    const view = sectionView(
      'machine',
      [
        item('room:5/machine.cylinder', { asks: number }),
        item('room:5/machine.circuit', { asks: number, state: 'good' }),
        item('room:5/machine.bag'),
      ],
      0,
      'UTC',
    );
    expect(view.ask.map((i) => i.item)).toEqual(['room:5/machine.cylinder']);
    expect(view.small).toContain('asks: cylinder');
  });

  it('should tell a lapse from half an hour before, and a short one from its last third', () => {
    const told = (until: number, now: number) =>
      sectionView(
        'drugs',
        [item('case:C5/drugs.drawn', { state: 'good', since: 0, lapsesAt: until * MINUTE })],
        now * MINUTE,
        'UTC',
      ).small.includes('counts until');
    expect([told(240, 209), told(240, 210)]).toEqual([false, true]);
    expect([told(15, 9), told(15, 10)]).toEqual([false, true]);
  });
});

describe('a number', () => {
  const cylinder = item('room:5/machine.cylinder', {
    asks: {
      kind: 'number',
      unit: 'psi',
      least: 0,
      most: 3000,
      low: 1000,
      choices: [],
      witness: false,
    },
  });

  it('should be refused if no gauge reads it, and be a fault outside the good band', () => {
    expect(cannotBe(cylinder, 18_500)).toContain('0 to 3000 psi');
    expect(cannotBe(cylinder, 3000)).toBe('');
    expect([outsideBand(cylinder, 999), outsideBand(cylinder, 1000)]).toEqual([true, false]);
    expect(bandWords(cylinder)).toBe('good: 1000 psi or more');
  });

  it('should be judged in the unit of the site, whatever the sheet gives', () => {
    follow({ english: 'british', clock: 24, pressure: 'kPa' });
    expect(bandWords(cylinder)).toBe('good: 6895 kPa or more');
    expect([outsideBand(cylinder, 6894), outsideBand(cylinder, 6895)]).toEqual([true, false]);
    expect(cannotBe(cylinder, 137_000)).toBe(
      "137,000 kPa can't be meant: it reads 0 to 20684 kPa.",
    );
    expect(cannotBe(cylinder, 13_700)).toBe('');
    follow(undefined);
  });

  // 13,700 kPa = 137 bar = 1,987 psi: NIST SP 811, B.8.
  it('should never be good by the number of a gauge in another unit', () => {
    const numbers = { kPa: 13_700, bar: 137, psi: 1987 };
    for (const [site, right] of Object.entries(numbers)) {
      follow({ english: 'british', clock: 24, pressure: site });
      for (const value of Object.values(numbers)) {
        const good = cannotBe(cylinder, value) === '' && !outsideBand(cylinder, value);
        expect(good, `${value} in ${site}`).toBe(value === right);
      }
    }
    follow(undefined);
  });
});

describe('the start', () => {
  it('should name what a step happens in spite of, earlier gates too, and not the step itself', () => {
    const items = [
      item('room:5/room.clean', { gates: 'wheels-in' }),
      item('case:C5/patient.papers', { gates: 'sent-for' }),
      item('case:C5/drugs.antibiotic', { gates: 'incision' }),
      item('case:C5/start.sent-for', { marks: 'sent-for', gates: 'wheels-in' }),
      item('case:C5/team.brief', { gates: 'sent-for', state: 'left-out' }),
    ];
    expect(openGates(items, 'wheels-in').map((i) => i.item)).toEqual([
      'room:5/room.clean',
      'case:C5/patient.papers',
    ]);
  });

  it('should go on after the last step, even if one was never touched', () => {
    expect(nextStep(plan('C5', '5'))).toBe('sent-for');
    expect(nextStep(plan('C5', '5', { steps: [{ step: 'wheels-in', at: 1 }] }))).toBe('induction');
    expect(nextStep(plan('C5', '5', { steps: [{ step: 'incision', at: 1 }] }))).toBeUndefined();
  });
});

describe('a room that reported ready', () => {
  it('should name what is open until its start, and none of the start itself', () => {
    const items = [
      item('room:5/suction.strong', { gates: 'induction' }),
      item('case:C5/instruments.count', { gates: 'incision' }),
      item('case:C5/start.check', { gates: 'induction' }),
      item('room:5/machine.bag', { gates: 'induction', state: 'good' }),
      item('case:C5/special.warming'),
    ];
    const open = (start: 'wheels-in' | 'incision') =>
      openToReady(items, start).map((i) => i.item.split('/')[1]);
    expect(open('wheels-in')).toEqual(['suction.strong']);
    expect(open('incision')).toEqual(['suction.strong', 'instruments.count']);
    expect(openNames(openToReady(items, 'incision'), 1)).toMatch(/^2 open: .* and 1 more$/);
  });
});
