import { afterEach, describe, expect, it } from 'vitest';
import { follow } from '../words/index.ts';
import type { Edit, Sheet } from './api.ts';
import { fieldsOf, formOf, standsFor } from './fields.ts';
import { headFields, newSheet } from './head.ts';
import {
  behindOf,
  difference,
  draftIn,
  editWords,
  found,
  isCore,
  leaves,
  neighbours,
  withEdit,
  wordOf,
} from './model.ts';

const TUBES = {
  key: 'airway.tubes',
  desk: 'tubes',
  who: ['anaesthetist or trainee'],
  hands: { usual: 2, oneInTen: 3.5 },
  gates: 'induction',
};

afterEach(() => follow(undefined));

describe('a draft of the sheets', () => {
  it('should make one change of several touches on one item, and no more than that', () => {
    const one: Edit = { does: 'change', sheet: 'general', key: 'a.b', fields: { desk: 'x' } };
    const two: Edit = { does: 'change', sheet: 'general', key: 'a.b', fields: { wall: 'y' } };
    const out: Edit = { does: 'leave-out', sheet: 'general', key: 'a.c' };
    expect(withEdit([one], two)).toEqual([{ ...one, fields: { desk: 'x', wall: 'y' } }]);
    expect(withEdit([one, out], two)).toHaveLength(3);
    const add: Edit = { does: 'add', sheet: 'general', key: 'a.b', fields: { desk: 'z' } };
    expect(withEdit([add], one)).toEqual([{ ...add, fields: { desk: 'x' } }]);
  });

  it('should come back after a reload, and not from what is no draft', () => {
    const kept = { id: 'i', on: 2, edits: [{ does: 'as-in', edition: 1 }] };
    expect(draftIn(JSON.stringify(kept))).toEqual(kept);
    for (const none of [null, '', '{', '[]', '{"id":"i","on":2,"edits":[]}']) {
      expect(draftIn(none)).toBeUndefined();
    }
  });

  it('should say its changes by the titles of sheets', () => {
    const title = () => 'Block';
    expect(editWords({ does: 'as-in', edition: 0 }, title)).toBe(
      'all sheets: as they come with Sunup',
    );
    expect(editWords({ does: 'leave-out', sheet: 'block', key: 'a.b' }, title)).toBe(
      'Block: a.b left out',
    );
  });
});

describe('a whole sheet', () => {
  it('should be shown no longer once a draft takes it away, and again if it is put back', () => {
    const gone: Edit = { does: 'remove-sheet', sheet: 'block' };
    const come: Edit = { does: 'add-sheet', sheet: 'awake', fields: { kind: 'option' } };
    expect(leaves('block', ['block'], [])).toBe(true);
    expect(leaves('block', ['block'], [gone])).toBe(false);
    expect(leaves('awake', ['block'], [])).toBe(false);
    expect(leaves('awake', ['block'], [come, gone])).toBe(true);
    expect(leaves('block', ['block'], [{ does: 'as-in', edition: 1 }])).toBe(false);
  });

  it('should be made of its title, on a base if it is a technique', () => {
    const data = new FormData();
    for (const [name, value] of [
      ['title', 'Awake intubation'],
      ['name', ''],
      ['kind', 'technique'],
      ['on', 'general'],
    ] as const) {
      data.set(name, value);
    }
    expect(newSheet(data)).toEqual([
      {
        does: 'add-sheet',
        sheet: 'awake-intubation',
        fields: { kind: 'technique', title: 'Awake intubation', on: 'general' },
      },
    ]);
    data.set('kind', 'base');
    expect(newSheet(data)[0]!.fields).toEqual({
      kind: 'base',
      title: 'Awake intubation',
      like: 'general',
    });
  });

  it('should send what of its head is other', () => {
    const sheet = { kind: 'option', title: 'Prone', brings: [], notWith: ['a', 'b'] };
    const data = new FormData();
    data.set('title', 'Prone');
    data.append('notWith', 'a');
    expect(headFields(sheet as unknown as Sheet, data)).toEqual({ notWith: ['a'] });
    data.append('notWith', 'b');
    expect(headFields(sheet as unknown as Sheet, data)).toEqual({});
  });
});

describe('a person’s own sheet', () => {
  it('should send the order in which its person goes', () => {
    const sheet = { kind: 'personal', title: 'Early', order: ['a.b'] } as unknown as Sheet;
    const data = new FormData();
    data.set('title', 'Early');
    data.set('order', 'a.c, a.b');
    expect(headFields(sheet, data)).toEqual({ order: ['a.c', 'a.b'] });
    data.set('order', '');
    expect(headFields(sheet, data)).toEqual({ order: null });
  });
});

describe('the form of an item', () => {
  it('should put together evidence, life, equipment and rare minutes, and take them away', () => {
    const item = {
      key: 'machine.cylinder',
      evidence: { kind: 'number', unit: 'psi', least: 0, most: 3000, low: 1000, undo: 'closed' },
      life: { minutes: 1440, ends: 'machine moved' },
      uses: [{ kind: 'imaging', until: 'start.release' }, { kind: 'ultrasound' }],
      extra: { oneIn: 25, minutes: 5 },
    };
    const was = formOf(item);
    expect(was.uses).toBe('imaging until start.release, ultrasound');
    expect(fieldsOf({ ...was, low: '900', witness: 'yes' }, was)).toEqual({
      evidence: { ...item.evidence, low: 900, witness: true },
    });
    expect(
      fieldsOf({ ...was, evidence: 'choice', good: 'full', faults: 'low, empty', undo: '' }, was),
    ).toEqual({ evidence: { kind: 'choice', choices: ['full', '!low', '!empty'] } });
    expect(
      fieldsOf(
        {
          ...was,
          evidence: '',
          undo: '',
          lifeMinutes: '',
          lifeEnds: '',
          uses: '',
          extraOneIn: '8',
        },
        was,
      ),
    ).toEqual({ evidence: null, life: null, uses: null, extra: { oneIn: 8, minutes: 5 } });
    expect(standsFor(item)).toContain('number from 1000 psi · good for 1440 min');
  });

  it('should say what may never be left out, which step it marks and what of the ASA’s list it is', () => {
    const was = formOf(TUBES);
    const form = { ...was, core: 'yes', marks: 'induction', asa: '8, 10, x' };
    // What is no number is for the board to refuse, with its line.
    expect(fieldsOf(form, was)).toEqual({ core: true, marks: 'induction', asa: [8, 10, 'x'] });
    const full = formOf({ ...TUBES, core: true, marks: 'induction', asa: [8, 10] });
    expect(fieldsOf({ ...full, core: '', marks: '', asa: '' }, full)).toEqual({
      core: null,
      marks: null,
      asa: null,
    });
    const daily = formOf({ ...TUBES, life: { minutes: 1440, nextCase: true } });
    expect(fieldsOf({ ...daily, lifeMinutes: '600' }, daily)).toEqual({
      life: { minutes: 600, nextCase: true },
    });
    expect(standsFor({ ...TUBES, life: { minutes: 1440, nextCase: true } })).toContain('next case');
  });

  it('should know what may never be left out, of its own and of the list it finds', () => {
    const sheet = {
      items: [{ key: 'a.own' }],
      list: [
        { key: 'a.own', desk: '', core: true },
        { key: 'a.found', desk: '', core: true },
      ],
    } as unknown as Sheet;
    expect(isCore(sheet, 'a.found', {})).toBe(true);
    // Its own is what the draft makes of it, also while the list is one from before.
    expect(isCore(sheet, 'a.own', {})).toBe(false);
    expect(isCore(sheet, 'a.own', { core: true })).toBe(true);
  });

  it('should send what is other and nothing else', () => {
    const was = formOf(TUBES);
    expect(fieldsOf(was, was)).toEqual({});
    expect(fieldsOf({ ...was, usual: '3', oneInTen: '5' }, was)).toEqual({
      hands: { usual: 3, oneInTen: 5 },
    });
    expect(fieldsOf({ ...was, gates: '', who: ' technician , scrub' }, was)).toEqual({
      gates: null,
      who: ['technician', 'scrub'],
    });
  });

  it('should be read in the site’s words and pressures and written in the sheet’s own', () => {
    follow({ english: 'american', clock: 12, pressure: 'kPa' });
    const was = formOf({ ...TUBES, evidence: { kind: 'number', unit: 'psi', low: 1000 } });
    expect(was.who).toBe('anesthetist or trainee');
    expect(fieldsOf(was, was)).toEqual({});
    expect(fieldsOf({ ...was, who: 'transporter, anesthetist or porter' }, was)).toEqual({
      who: ['porter', 'anaesthetist or porter'],
    });
    expect(was.low).toBe('1000');
    expect(standsFor({ evidence: { kind: 'number', unit: 'psi', low: 1000 } })).toBe(
      'number from 6895 kPa',
    );
  });

  it('should know the place of an item in its section', () => {
    const items = [{ key: 'machine.bag' }, { key: 'airway.tubes' }, { key: 'airway.plan-b' }];
    const base = { kind: 'base', items } as unknown as Sheet;
    expect(behindOf(base, 'airway.plan-b')).toBe('airway.tubes');
    expect(behindOf(base, 'airway.tubes')).toBe('');
    const option = {
      kind: 'option',
      items: [{ key: 'airway.new', follows: 'airway.tubes' }],
      list: items,
    } as unknown as Sheet;
    expect(behindOf(option, 'airway.new')).toBe('airway.tubes');
    expect(neighbours(option, 'airway.new')).toEqual(['airway.tubes', 'airway.plan-b']);
  });

  it('should offer an addition the items of the list that it leaves alone', () => {
    const sheet = {
      items: [{ key: 'a.own' }],
      changes: [{ key: 'a.changed' }],
      takes: ['a.taken'],
      list: ['a.own', 'a.changed', 'a.taken', 'a.other'].map((key) => ({ key, desk: key })),
    } as unknown as Sheet;
    expect(found(sheet).map((line) => line.key)).toEqual(['a.other']);
  });

  it('should make keys and differences that can be read', () => {
    expect(wordOf('Arm boards, 2 ')).toBe('arm-boards-2');
    expect(difference(10, 12.04)).toBe('+2');
    expect(difference(10, 9.5)).toBe('−0.5');
    expect(difference(10, 10.01)).toBe('as before');
  });
});
