import { describe, expect, it } from 'vitest';
import type { EntryState } from '../live/entry.ts';
import { type PushBrowser, Telling, type TellingLine } from './telling.ts';

const signedOn = (session: string, push: string | undefined = 'board-key'): EntryState =>
  ({
    paired: { m: 'paired', page: 'pocket', ...(push === '' ? {} : { push }) },
    signed: { m: 'signed', session, code: 'T7', role: 'technician', as: 'technician-1' },
  }) as EntryState;

function phone(may: NotificationPermission = 'default', able = true) {
  let permission = may;
  let kept: string | null = null;
  const done: string[] = [];
  const browser: PushBrowser = {
    able,
    permission: () => permission,
    ask: async () => {
      done.push('asked');
      return (permission = permission === 'default' ? 'granted' : permission);
    },
    subscribe: async (key, anew) => {
      done.push(`${anew ? 'new' : 'had'} ${key}`);
      return { endpoint: 'https://push.example/1', keys: { p256dh: 'point', auth: 'secret' } };
    },
    unsubscribe: async () => void done.push('unsubscribed'),
    kept: () => kept,
    keep: (session) => (kept = session),
  };
  let answer = { m: 'told', id: 'push', done: true, words: '' } as const as {
    m: 'told';
    id: string;
    done: boolean;
    words: string;
  };
  const line: TellingLine = {
    pushOn: async (...what) => (done.push(`on ${what.join(' ')}`), answer),
    pushOff: async () => (done.push('off'), answer),
  };
  const make = () => new Telling(browser, line, () => undefined);
  return { done, make, refuse: (words: string) => (answer = { ...answer, done: false, words }) };
}

const settled = () => new Promise((then) => setTimeout(then));

describe('a phone that is told while it is locked', () => {
  it('should ask the browser for nothing until it is touched, then say that it is on', async () => {
    const { done, make } = phone();
    const telling = make();
    telling.follow(signedOn('s1'));
    await settled();
    expect(done).toEqual([]);
    expect(telling.state(signedOn('s1'))).toBe('off');

    await telling.turnOn(signedOn('s1'));
    expect(done).toEqual(['asked', 'new board-key', 'on https://push.example/1 point secret']);
    expect(telling.state(signedOn('s1'))).toBe('on');
  });

  it('should go on after the page was loaded anew, and end with the sign-on', async () => {
    const { done, make } = phone();
    const first = make();
    first.follow(signedOn('s1'));
    await first.turnOn(signedOn('s1'));

    const again = make();
    again.follow(signedOn('s1'));
    await settled();
    expect(again.state(signedOn('s1'))).toBe('on');
    expect(done.filter((what) => what === 'asked')).toHaveLength(1);

    again.follow(signedOn('s2'));
    await settled();
    expect(again.state(signedOn('s2'))).toBe('off');
    expect(done.at(-1)).toBe('unsubscribed');
  });

  it('should say why it is not: not allowed here, no push, refused by the browser, by the board', async () => {
    expect(phone().make().state({})).toBe('not-here');
    expect(phone().make().state(signedOn('s1', ''))).toBe('not-here');
    expect(phone('default', false).make().state(signedOn('s1'))).toBe('cannot');
    expect(phone('denied').make().state(signedOn('s1'))).toBe('refused');
    const refusing = phone();
    refusing.refuse('Not on this site’s list.');
    const telling = refusing.make();
    telling.follow(signedOn('s1'));
    await telling.turnOn(signedOn('s1'));
    expect(telling.state(signedOn('s1'))).toBe('off');
    expect(telling.wrong).toBe('Not on this site’s list.');
  });

  it('should be forgotten by the board before the browser gives it up', async () => {
    const { done, make } = phone();
    const telling = make();
    telling.follow(signedOn('s1'));
    await telling.turnOn(signedOn('s1'));
    await telling.turnOff();
    expect(done.slice(-2)).toEqual(['off', 'unsubscribed']);
    expect(telling.state(signedOn('s1'))).toBe('off');
  });
});
