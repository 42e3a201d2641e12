import { afterEach, describe, expect, it } from 'vitest';
import type { PartUnion, SuitePart } from '../generated/wire.ts';
import { dateWords, say } from '../look/index.ts';
import {
  clockBrief,
  clockSeconds,
  clockTime,
  follow,
  gauge,
  minuteOfDay,
  reading,
  shownLeast,
  shownMost,
  timeExample,
  timeOfDay,
  told,
  toldMessage,
} from './index.ts';

const at = (time: string) => Date.parse(`2026-11-25T${time}Z`);

afterEach(() => follow(undefined));

describe('times of day', () => {
  it('are written by the clock of the site', () => {
    const written = ['00:05', '12:00', '12:30', '23:59', '07:04'].map((t) => [t, at(`${t}:09`)]);
    for (const [time, moment] of written) {
      expect(clockTime(moment as number, 'UTC')).toBe(time);
      expect(clockSeconds(moment as number, 'UTC')).toBe(`${time}:09`);
    }
    follow({ english: 'british', clock: 12 });
    expect(written.map(([, moment]) => clockTime(moment as number, 'UTC'))).toEqual([
      '12:05 am',
      '12:00 pm',
      '12:30 pm',
      '11:59 pm',
      '7:04 am',
    ]);
    expect(clockSeconds(at('13:04:09'), 'UTC')).toBe('1:04:09 pm');
    expect(clockBrief(at('07:04:09'), 'UTC')).toBe('7:04a');
    expect(minuteOfDay(at('12:30:59'), 'UTC')).toBe(750);
  });

  it('are read as they are written, and a half of the day is never guessed', () => {
    expect(['0720', '7:20', '7.20', '7:20 am', '720a'].map(timeOfDay)).toEqual(Array(5).fill(440));
    follow({ english: 'american', clock: 12 });
    expect(timeExample()).toBe('7:20 am');
    expect(['7:20 am', '720a', '07:20 a.m.', '7:20AM'].map(timeOfDay)).toEqual(Array(4).fill(440));
    expect(timeOfDay('12:05 am')).toBe(5);
    expect(timeOfDay('12:30 pm')).toBe(750);
    expect(timeOfDay('1120p')).toBe(23 * 60 + 20);
    // By 24 hours it can mean one thing only.
    expect(timeOfDay('13:15')).toBe(795);
    expect(timeOfDay('00:05')).toBe(5);
    for (const text of ['7:20', '0720', '12:00', '13:00 pm', '0:20 am', 'am', '7 am', '7:60 am']) {
      expect(timeOfDay(text), text).toBeUndefined();
    }
  });

  it('stand in sentences of the server by 24 hours and are turned once', () => {
    follow({ english: 'british', clock: 12 });
    expect(told('pharmacy opens 07:15, then until 12:00')).toBe(
      'pharmacy opens 7:15 am, then until 12:00 pm',
    );
    expect(told(told('opens 07:15'))).toBe('opens 7:15 am');
    expect(told('1:200,000, lot 12:345, 24:00')).toBe('1:200,000, lot 12:345, 24:00');
  });
});

describe('words', () => {
  it('leave the keys of items as they are', () => {
    follow({ english: 'american', clock: 24 });
    expect(told('machine.vaporisers changed. Vaporisers are full.')).toBe(
      'machine.vaporisers changed. Vaporizers are full.',
    );
  });

  it('are those of the site, on pages and in sentences of the server', () => {
    expect(say('role.anaesthetist')).toBe('anaesthetist');
    expect(told('Anaesthetic: waits for porter')).toBe('Anaesthetic: waits for porter');
    expect(dateWords('2026-11-25')).toBe('Wednesday 25 November');
    follow({ english: 'american', clock: 24 });
    expect(say('role.anaesthetist')).toBe('anesthetist');
    expect(say('step.release')).toBe('anesthesia release');
    expect(told('Anaesthetic: waits for porter')).toBe('Anesthetic: waits for transporter');
    expect(told('vaporisers full, 40 litres, theatre 3')).toBe(
      'vaporizers full, 40 liters, operating room 3',
    );
    expect(told('nothing of anaesthetistic')).toBe('nothing of anaesthetistic');
    expect(dateWords('2026-11-25')).toBe('Wednesday, November 25');
  });

  it('are written short where a line of the wall would have more than 40 letters', () => {
    follow({ english: 'british', clock: 12 });
    const words = (text: string) => {
      const parts = [{ part: 'need', key: 'need/1', words: text }] as PartUnion[];
      const view = { m: 'view', parts } as Parameters<typeof toldMessage>[0];
      return (toldMessage(view) as unknown as { parts: { words: string }[] }).parts[0]!.words;
    };
    expect(words('ultrasound is in 9 until about 07:22')).toBe(
      'ultrasound is in 9 until about 7:22 am',
    );
    expect(words('ultrasound goes to 9 first, until 07:22')).toBe(
      'ultrasound goes to 9 first, until 7:22a',
    );
    expect(words(words('ultrasound goes to 9 first, until 07:22'))).toBe(
      'ultrasound goes to 9 first, until 7:22a',
    );
  });

  it('change where the server wrote and nowhere else', () => {
    const suite = {
      part: 'suite',
      key: 'suite',
      hospital: 'Porter Hill',
      suite: 'Main theatres',
      style: { english: 'american', clock: 12 },
    } as SuitePart;
    const need = { part: 'need', key: 'need/1', room: '1', words: 'anaesthetist comes 07:20' };
    const note = { part: 'note', key: 'note/1', at: 1, kind: 'note', text: 'porter at 07:20' };
    const parts = [need, note, suite] as PartUnion[];
    const view = { m: 'view', parts } as Parameters<typeof toldMessage>[0];
    expect(toldMessage(view)).toEqual({
      m: 'view',
      parts: [{ ...need, words: 'anesthetist comes 7:20 am' }, note, suite],
    });
    const answer = { m: 'answer', id: 'a', words: 'Not before 07:30.' };
    expect(toldMessage(answer as never)).toEqual({ ...answer, words: 'Not before 7:30 am.' });
  });
});

describe('pressures', () => {
  // 13,700 kPa = 137 bar = 1,987 psi: NIST SP 811, B.8.
  it('are the same in each unit', () => {
    expect(gauge(13_700, 'kPa', 'bar')).toBe(137);
    expect(gauge(137, 'bar', 'kPa')).toBe(13_700);
    expect(gauge(137, 'bar', 'psi')).toBeCloseTo(1987.017, 3);
    expect(gauge(1, 'psi', 'kPa')).toBeCloseTo(6.894757, 6);
    expect(gauge(gauge(13_700, 'kPa', 'psi'), 'psi', 'kPa')).toBe(13_700);
    expect(gauge(7, 'mL', 'psi')).toBe(7);
  });

  it('are written in the unit of the site, to what a gauge is read to', () => {
    expect(reading(1850, 'psi')).toBe('1,850 psi');
    expect(reading(40, 'mL/min')).toBe('40 mL/min');
    follow({ english: 'british', clock: 24, pressure: 'kPa' });
    expect(reading(1850, 'psi')).toBe('12,755 kPa');
    expect(reading(137, 'bar')).toBe('13,700 kPa');
    expect(reading(40, 'mL/min')).toBe('40 mL/min');
    follow({ english: 'british', clock: 24, pressure: 'bar' });
    expect(reading(1850, 'psi')).toBe('127.6 bar');
    expect(reading(137, 'bar')).toBe('137 bar');
  });

  it('keep a band within what the sheet calls good', () => {
    follow({ english: 'british', clock: 24, pressure: 'bar' });
    expect(shownLeast(1000, 'psi')).toBe(69);
    expect(gauge(shownLeast(1000, 'psi'), 'bar', 'psi')).toBeGreaterThanOrEqual(1000);
    expect(shownMost(3000, 'psi')).toBe(206.8);
    expect(gauge(shownMost(3000, 'psi'), 'bar', 'psi')).toBeLessThanOrEqual(3000);
    expect(shownLeast(50, 'bar')).toBe(50);
  });
});
