import { describe, expect, it } from 'vitest';
import type { Edit, Sheet } from './api.ts';
import {
  behindOf,
  difference,
  draftIn,
  editWords,
  fieldsOf,
  formOf,
  found,
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

describe('the form of an item', () => {
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
