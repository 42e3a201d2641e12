import { describe, expect, it } from 'vitest';
import type { DrugListPart, DrugShown, DrugsPart, SyringeShown } from '../../generated/wire.ts';
import {
  ampouleWords,
  counted,
  drugLines,
  justDrawn,
  labelName,
  labelTimes,
  nameFit,
  lapsingSoon,
  leftToCount,
  micrograms,
  toDraw,
  toThrowAway,
  unitOf,
} from './model.ts';

const MINUTE = 60_000;

const drug = (name: string, ampoule?: number): DrugShown => ({
  name,
  shown: name,
  alike: [],
  drugClass: 'opioid',
  rgb: '#71C5E8',
  striped: false,
  reversed: false,
  lineBelow: false,
  amount: '1 mg',
  volume: '1 mL',
  concentration: '1 mg/mL',
  minutes: 60,
  limit: 'invented',
  ...(ampoule === undefined ? {} : { ampoule }),
});

const list: DrugListPart = {
  part: 'drug-list',
  key: 'drug-list',
  standard: 'ISO 26825:2020',
  drugs: [drug('a'), drug('b'), drug('c', 100), drug('d')],
};

const syringe = (number: number, name: string, more: Partial<SyringeShown> = {}): SyringeShown => ({
  number,
  drug: name,
  text: name,
  room: '1',
  drawnAt: 0,
  lapsesAt: 60 * MINUTE,
  voided: false,
  ...more,
});

const of = (...syringes: SyringeShown[]): DrugsPart => ({
  part: 'drugs',
  key: 'drugs/C1',
  caseId: 'C1',
  room: '1',
  list: ['a', 'b', 'c'],
  syringes,
  counts: [],
  entries: [],
  open: [],
});

describe('drugs of a case', () => {
  it('should be its list, and what was drawn beside it', () => {
    const lines = drugLines(list, of(syringe(0, 'd')), 0);
    expect(lines.map((l) => l.drug.name)).toEqual(['a', 'b', 'c', 'd']);
    expect(toDraw(lines)).toEqual(['a', 'b']);
  });

  it('should be open again once lapsed, thrown away or void', () => {
    const lapsed = drugLines(list, of(syringe(0, 'a')), 60 * MINUTE);
    expect(lapsed[0]!.state).toBe('lapsed');
    expect(toDraw(lapsed)).toContain('a');
    expect(drugLines(list, of(syringe(0, 'a', { discardedAt: 1 })), 0)[0]!.state).toBe('open');
    expect(drugLines(list, of(syringe(0, 'a', { voided: true })), 0)[0]!.state).toBe('open');
  });

  it('should tell what lapses within half an hour, and give a label for ten minutes', () => {
    const lines = drugLines(list, of(syringe(0, 'a')), 29 * MINUTE);
    expect(lapsingSoon(lines, 29 * MINUTE)).toEqual([]);
    expect(lapsingSoon(lines, 30 * MINUTE)).toHaveLength(1);
    expect(justDrawn(lines[0]!, 10 * MINUTE)?.number).toBe(0);
    expect(justDrawn(lines[0]!, 10 * MINUTE + 1)).toBeUndefined();
  });

  it('should leave what was drawn for a case that went elsewhere in the room where it lies', () => {
    const gone = of(
      syringe(0, 'a', { voided: true }),
      syringe(1, 'b', { voided: true, room: '2' }),
    );
    expect(toThrowAway([gone], '1').map((t) => t.syringe.number)).toEqual([0]);
  });
});

describe('a label', () => {
  it('should write a long name smaller, and never cut it', () => {
    expect(nameFit('Propofol', 7.9)).toBe(1);
    const long = 'Succinylcholinium chloride';
    const fit = nameFit(long, 7.9);
    expect(fit).toBeLessThan(0.6);
    expect(fit * (0.76 + 0.62 * (long.length - 1))).toBeCloseTo(7.9);
    expect(nameFit('ePHEDrine', 5)).toBeLessThan(nameFit('ephedrine', 5));
  });

  it('should begin with a capital unless capitals tell its name apart', () => {
    expect(labelName('propofol')).toBe('Propofol');
    expect(labelName('ePHEDrine')).toBe('ePHEDrine');
  });
});

describe('the count', () => {
  it('should speak of an ampoule as people do, and count in that unit', () => {
    expect([ampouleWords(100), ampouleWords(5000), ampouleWords(2500)]).toEqual([
      '100 micrograms',
      '5 mg',
      '2.5 mg',
    ]);
    expect([unitOf(undefined), unitOf(999), unitOf(1000)]).toEqual([
      'micrograms',
      'micrograms',
      'mg',
    ]);
  });

  it('should still be asked for in a room whose case was cancelled or followed by another', () => {
    const open = { ...of(), open: ['c: 100 micrograms drawn'] };
    expect(leftToCount([open], '1', undefined)).toEqual([open]);
    expect(leftToCount([open], '1', 'C2')).toEqual([open]);
    // That of the case in the room is counted beside its labels, another room's there.
    expect(leftToCount([open], '1', 'C1')).toEqual([]);
    expect(leftToCount([open], '2', 'C2')).toEqual([]);
    expect(leftToCount([of()], '1', 'C2')).toEqual([]);
  });

  it('should read amounts in their unit, exactly', () => {
    expect(micrograms('0.05', 'mg')).toBe(50);
    expect(micrograms('50', 'micrograms')).toBe(50);
    expect(micrograms('2.675', 'mg')).toBe(2675);
    for (const none of ['', '0', '.', '1.2345', '-1', '1e3']) {
      expect(micrograms(none, 'mg')).toBeUndefined();
    }
  });

  it('should ask for whole ampoules of what is drawn and for an amount of what is given', () => {
    const c = { caseId: 'C1', drug: 'c', typed: '', unit: 'micrograms' } as const;
    expect(counted({ ...c, kind: 'drawn' }, 'A1', 'N1')).toMatch('how many ampoules');
    expect(counted({ ...c, kind: 'drawn', typed: '2' }, 'A1', 'N1')).toEqual({
      type: 'count-drug',
      caseId: 'C1',
      kind: 'drawn',
      drug: 'c',
      units: 2,
      by: 'A1',
      witness: 'N1',
    });
    expect(counted({ ...c, kind: 'given', typed: '0' }, 'A1', undefined)).toMatch('above 0');
  });

  it('should name the other day on a label that counts until then', () => {
    const at = Date.UTC(2026, 10, 26, 13, 43);
    expect(labelTimes(at, at + 240 * MINUTE, 'UTC')).toBe('13:43, until 17:43');
    expect(labelTimes(at, at + 24 * 60 * MINUTE, 'UTC')).toBe('13:43, until Fri 13:43');
  });
});
