import { beforeEach, describe, expect, it } from 'vitest';
import type { Answer, Input, Listed } from './api.ts';
import { Bench } from './bench.ts';

const number = (name: string, units: string[], ofPatient: boolean): Input => ({
  name,
  label: name,
  kind: 'number',
  units,
  choices: [],
  needed: true,
  ofPatient,
});

const LIPID: Listed = {
  fingerprint: 'aa',
  card: {
    name: 'lipid',
    title: 'Lipid',
    formula: '',
    source: '',
    range: '',
    caution: '',
    dose: true,
    inputs: [
      number('age', ['years', 'months'], true),
      number('weight', ['kg', 'lb'], true),
      number('flow', ['L/min'], false),
    ],
  },
};

let bench: Bench;

beforeEach(() => {
  bench = new Bench();
  bench.inRoom('A1');
  bench.open(LIPID);
});

function type(digits: string, unit?: string): void {
  for (const digit of digits) {
    bench.press(digit);
  }
  if (unit) {
    bench.unit(unit);
  }
}

function answered(answer: Answer): void {
  const q = bench.question('1')!;
  bench.asked()({ figure: 'lipid', caseId: q.caseId, revision: q.revision, answer });
}

const OFF: Answer = { answer: 'off', why: 'off' };
const WORKED: Answer = {
  answer: 'worked',
  lines: [],
  given: [],
  worked: '',
  cautions: [],
  secondPerson: false,
};

describe('what is entered for bedside figures', () => {
  it('should take no unit beforehand and go on to the next thing after it', () => {
    expect(bench.active).toBe('age');
    type('40');
    expect(bench.question('1')!.patient).toEqual({ age: { text: '40' } });
    bench.unit('years');
    expect(bench.active).toBe('weight');
    type('80', 'kg');
    expect(bench.active).toBe('flow');
    expect(bench.question('1')!.patient['weight']).toEqual({ text: '80', unit: 'kg' });
  });

  it('should be blank when another case comes, and keep nothing for the one that goes', () => {
    type('40', 'years');
    answered(OFF);
    bench.inRoom('A2');
    expect(bench.blanked).toBe(true);
    expect(bench.answer).toBeUndefined();
    bench.inRoom('A1');
    expect(bench.entry('age')).toBeUndefined();
  });

  it('should be blank when another screen begins the next case, whatever is shown here', () => {
    type('40', 'years');
    bench.inRoom('A1', '1.2');
    expect(bench.blanked).toBe(true);
    expect(bench.entry('age')).toBeUndefined();
    type('5', 'years');
    bench.inRoom('A1', '1.2');
    expect(bench.entry('age')).toEqual({ text: '5', unit: 'years' });
    bench.inRoom('A1', '1.3');
    expect(bench.entry('age')).toBeUndefined();
  });

  it('should keep the patient for another figure and no answer after any change', () => {
    type('40', 'years');
    answered(OFF);
    expect(bench.answer).toEqual(OFF);
    type('80');
    expect(bench.answer).toBeUndefined();
    bench.unit('kg');
    answered(OFF);
    type('5');
    expect(bench.answer).toBeUndefined();
    bench.open(undefined);
    bench.open(LIPID);
    expect(bench.entry('weight')).toEqual({ text: '80', unit: 'kg' });
    expect(bench.entry('flow')).toBeUndefined();
  });

  it('should put a result away and type the number anew when something is chosen to be changed', () => {
    type('40', 'years');
    type('80', 'kg');
    answered(WORKED);
    bench.choosing('weight');
    expect(bench.answer).toBeUndefined();
    type('7');
    expect(bench.entry('weight')).toEqual({ text: '7' });
    type('5', 'lb');
    expect(bench.entry('weight')).toEqual({ text: '75', unit: 'lb' });
  });

  it('should not show an answer that comes after something was changed or the case went', () => {
    type('40', 'years');
    const q = bench.question('1')!;
    const late = bench.asked();
    bench.inRoom('A2');
    late({ figure: 'lipid', caseId: 'A1', revision: q.revision, answer: OFF });
    expect(bench.answer).toBeUndefined();
    bench.inRoom('A1');
    const after = bench.asked();
    after({ figure: 'lipid', caseId: 'A2', revision: 0, answer: OFF });
    expect(bench.answer).toBeUndefined();
  });

  it('should ask an unusual weight anew, hide nothing of what asked, and again for another age', () => {
    type('40', 'years');
    type('8', 'kg');
    answered({ answer: 'asked-again', reasons: [{ input: 'weight', message: 'unusual' }] });
    expect(bench.active).toBe('weight');
    type('8');
    expect(bench.again('weight')).toBe(true);
    expect(bench.entry('weight')).toEqual({ text: '8', unit: 'kg', again: '8' });
    bench.active = 'age';
    bench.press('back');
    expect(bench.entry('weight')).toEqual({ text: '8', unit: 'kg' });
  });

  it('should blank what was worked out when the pharmacy takes the figure back or changes it', () => {
    type('40', 'years');
    const same = { ...LIPID };
    for (const [now, words] of [
      [{ ...LIPID, off: 'off until it is released' }, 'off until it is released'],
      [{ ...LIPID, fingerprint: 'bb' }, 'Work it out again'],
    ] as const) {
      bench.open(LIPID);
      answered(WORKED);
      bench.follow([same]);
      expect(bench.answer).toEqual(WORKED);
      bench.follow([now]);
      expect(bench.answer).toBeUndefined();
      expect(bench.trouble).toContain(words);
    }
  });

  it('should know whether a figure rests on the patient', () => {
    expect(bench.ofPatient).toBe(false);
    type('40', 'years');
    expect(bench.ofPatient).toBe(true);
  });
});
