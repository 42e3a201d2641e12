import { describe, expect, it } from 'vitest';
import type { Answer, CommandUnion, Send } from '../generated/wire.ts';
import { IN_FLIGHT_MAX, LATER_MS, OUTBOX_MAX, RESEND_MS } from './constants.ts';
import { FakeShelf } from './fake/fake-shelf.ts';
import { FakeTimers } from './fake/fake-timers.ts';
import { about, Outbox, OutboxFull } from './outbox.ts';
import type { Kept } from './shelf.ts';

const begin = (item: string): CommandUnion => ({ type: 'begin', item });
const note: CommandUnion = { type: 'add-note', text: 'x' };
const kept = (id: string, command: CommandUnion): Kept => ({
  id,
  command,
  touchedAt: 5,
  offset: 7,
});
const done = (id: string): Answer => ({ m: 'answer', id, status: 'done', upTo: 3 });
const refused = (id: string): Answer => ({
  m: 'answer',
  id,
  status: 'refused',
  code: 'changed-meanwhile',
  words: 'Look again.',
});

function outbox(shelf = new FakeShelf()) {
  const timers = new FakeTimers();
  const sent: Send[] = [];
  const wire = { open: true };
  const late: [Kept, Answer][] = [];
  const box = new Outbox(
    shelf,
    timers,
    (message) => wire.open && sent.push(message) > 0,
    () => {},
    (one, answer) => late.push([one, answer]),
  );
  return { box, late, timers, sent, shelf, wire, ids: () => sent.map((one) => one.id) };
}

describe('the outbox', () => {
  it('shouldSendAtOnceAndResolveWithTheAnswer', async () => {
    const { box, sent, shelf } = outbox();
    box.connected();
    const answer = box.add(kept('a', begin('7/tube')));
    expect(sent).toEqual([{ m: 'send', ...kept('a', begin('7/tube')) }]);
    expect(shelf.kept.has('a')).toBe(true);
    box.answered(done('a'));
    expect(await answer).toEqual(done('a'));
    expect(shelf.kept.size).toBe(0);
    expect(box.unsent).toBe(0);
  });

  it('shouldSendAgainUnderTheSameIdUntilAnswered', () => {
    const { box, timers, ids } = outbox();
    box.connected();
    void box.add(kept('a', note));
    timers.pass(RESEND_MS * 2);
    expect(ids()).toEqual(['a', 'a', 'a']);
    box.answered(done('a'));
    timers.pass(RESEND_MS * 3);
    expect(ids().length).toBe(3);
  });

  it('shouldTellARefusalOfWhatWasTouchedBeforeAReload', () => {
    const before = outbox();
    const touched = { ...kept('a', begin('7/tube')), label: 'tube begun' };
    void before.box.add(touched);
    const { box, late, sent } = outbox(before.shelf);
    box.connected();
    expect(sent).toEqual([{ m: 'send', ...kept('a', begin('7/tube')) }]);
    box.answered(refused('a'));
    expect(late).toEqual([[touched, refused('a')]]);
  });

  it('shouldTellARefusalOnlyToWhoeverWaitsForIt', async () => {
    const { box, late } = outbox();
    box.connected();
    const answer = box.add(kept('a', note));
    box.answered(refused('a'));
    expect(await answer).toEqual(refused('a'));
    expect(late).toEqual([]);
  });

  it('shouldKeepWhatWasTouchedOfflineAndSendItInOrderWhenConnected', () => {
    const { box, ids } = outbox();
    void box.add(kept('a', note));
    void box.add(kept('b', note));
    expect(ids()).toEqual([]);
    box.connected();
    expect(ids()).toEqual(['a', 'b']);
  });

  it('shouldSendAllAgainAfterANewConnection', () => {
    const { box, ids } = outbox();
    box.connected();
    void box.add(kept('a', note));
    box.disconnected();
    box.connected();
    expect(ids()).toEqual(['a', 'a']);
  });

  it('shouldSurviveAReload', () => {
    const shelf = new FakeShelf();
    void outbox(shelf).box.add(kept('a', note));
    const after = outbox(shelf);
    expect(after.box.unsent).toBe(1);
    after.box.connected();
    expect(after.ids()).toEqual(['a']);
  });

  it('shouldKeepACommandAfterNotNowAndTryLater', () => {
    const { box, timers, ids } = outbox();
    box.connected();
    void box.add(kept('a', note));
    box.answered({ m: 'answer', id: 'a', status: 'later' });
    expect(box.unsent).toBe(1);
    timers.pass(LATER_MS);
    expect(ids()).toEqual(['a', 'a']);
  });

  it('shouldSendCommandsOnOneItemOneAfterTheOther', () => {
    const { box, ids } = outbox();
    box.connected();
    void box.add(kept('a', begin('7/tube')));
    void box.add(kept('b', begin('7/tube')));
    void box.add(kept('c', begin('7/scope')));
    expect(ids()).toEqual(['a', 'c']);
    box.answered(done('a'));
    expect(ids()).toEqual(['a', 'c', 'b']);
  });

  it('shouldHoldLaterCommandsOnTheSameItemBehindARefusalAndStopNothingElse', async () => {
    const { box, ids } = outbox();
    box.connected();
    const first = box.add(kept('a', begin('7/tube')));
    void box.add(kept('b', begin('7/tube')));
    void box.add(kept('c', begin('7/scope')));
    box.answered(refused('a'));
    expect((await first).status).toBe('refused');
    expect(box.held.map((one) => one.id)).toEqual(['b']);
    expect(box.held[0]!.refusal).toEqual({ code: 'changed-meanwhile', words: 'Look again.' });
    box.answered(done('c'));
    expect(ids()).toEqual(['a', 'c']);
    box.release(['b']);
    expect(ids()).toEqual(['a', 'c', 'b']);
    expect(box.held).toEqual([]);
  });

  it('shouldKeepAHeldCommandHeldOverAReload', () => {
    const shelf = new FakeShelf();
    const { box } = outbox(shelf);
    box.connected();
    void box.add(kept('a', begin('7/tube')));
    void box.add(kept('b', begin('7/tube')));
    box.answered(refused('a'));
    const after = outbox(shelf);
    after.box.connected();
    expect(after.ids()).toEqual([]);
    expect(after.box.held.map((one) => one.id)).toEqual(['b']);
  });

  it('shouldDropAHeldCommandWhenAPersonSaysSo', async () => {
    const { box, shelf } = outbox();
    box.connected();
    void box.add(kept('a', begin('7/tube')));
    const second = box.add(kept('b', begin('7/tube')));
    box.answered(refused('a'));
    box.discard(['b']);
    expect((await second).status).toBe('dropped');
    expect(shelf.kept.size).toBe(0);
  });

  it('shouldStopLoudlyWhenFullAndLoseNothing', () => {
    const { box } = outbox();
    for (let i = 0; i < OUTBOX_MAX; i++) void box.add(kept(String(i), note));
    expect(box.full).toBe(true);
    expect(() => box.add(kept('more', note))).toThrow(OutboxFull);
    expect(box.unsent).toBe(OUTBOX_MAX);
  });

  it('shouldHaveOnlySoManyOnTheWayAtOnce', () => {
    const { box, ids } = outbox();
    box.connected();
    for (let i = 0; i < IN_FLIGHT_MAX + 5; i++) void box.add(kept(String(i), note));
    expect(ids().length).toBe(IN_FLIGHT_MAX);
    box.answered(done('0'));
    expect(ids().length).toBe(IN_FLIGHT_MAX + 1);
  });

  it('shouldSayWhenTheBrowserKeepsNothing', () => {
    const shelf = new FakeShelf();
    shelf.broken = true;
    const { box } = outbox(shelf);
    void box.add(kept('a', note));
    expect(box.durable).toBe(false);
    expect(box.unsent).toBe(1);
  });

  it('shouldKnowWhatACommandIsAbout', () => {
    expect(about(begin('7/tube'))).toBe('item:7/tube');
    expect(about({ type: 'release', unit: 'us-1' })).toBe('unit:us-1');
    expect(about(note)).toBeNull();
  });
});
