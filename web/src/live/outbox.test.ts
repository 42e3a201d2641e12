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

/** An outbox whose screen's shelf has been looked through. */
async function outbox(shelf = new FakeShelf()) {
  const timers = new FakeTimers();
  const sent: Send[] = [];
  const box = new Outbox(
    shelf,
    timers,
    (message) => sent.push(message) > 0,
    () => {},
  );
  const earlier = await shelf.open().then(
    (found) => box.earlier(found.touches),
    () => (box.keepsNothing(), []),
  );
  return { box, earlier, timers, sent, shelf, ids: () => sent.map((one) => one.id) };
}

/** Lets what is kept be kept. */
const shelved = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('the outbox', () => {
  it('shouldSendAtOnceAndResolveWithTheAnswer', async () => {
    const { box, sent, shelf } = await outbox();
    box.connected();
    const { answer } = box.add(kept('a', begin('7/tube')));
    await shelved();
    expect(sent).toEqual([{ m: 'send', ...kept('a', begin('7/tube')) }]);
    expect(shelf.kept.has('a')).toBe(true);
    box.answered(done('a'));
    expect(await answer).toEqual(done('a'));
    expect(shelf.kept.size).toBe(0);
    expect(box.unsent).toBe(0);
  });

  it('shouldSendAgainUnderTheSameIdUntilAnswered', async () => {
    const { box, timers, ids } = await outbox();
    box.connected();
    box.add(kept('a', note));
    await shelved();
    timers.pass(RESEND_MS * 2);
    expect(ids()).toEqual(['a', 'a', 'a']);
    box.answered(done('a'));
    timers.pass(RESEND_MS * 3);
    expect(ids().length).toBe(3);
  });

  it('shouldTellTheAnswerToWhatWasTouchedBeforeAReload', async () => {
    const before = await outbox();
    const touched = { ...kept('a', begin('7/tube')), label: 'tube begun', about: ['7/tube'] };
    before.box.add(touched);
    await shelved();
    const { box, earlier, sent } = await outbox(before.shelf);
    box.connected();
    expect(sent).toEqual([{ m: 'send', ...kept('a', begin('7/tube')) }]);
    box.answered(refused('a'));
    expect(earlier.map((one) => one.kept)).toEqual([touched]);
    expect(await earlier[0]!.answer).toEqual(refused('a'));
  });

  it('shouldSendNothingThatIsNotSafeOnThisScreenYet', async () => {
    const { box, shelf, ids } = await outbox();
    box.connected();
    shelf.slow = true;
    const { kept: safe } = box.add(kept('a', begin('7/tube')));
    box.add(kept('b', begin('7/tube')));
    await shelved();
    expect([ids(), box.unsent]).toEqual([[], 2]);
    shelf.sync();
    await safe;
    expect(ids()).toEqual(['a']);
  });

  it('shouldSendWhatWasTouchedBeforeAReloadFirst', async () => {
    const shelf = new FakeShelf();
    (await outbox(shelf)).box.add(kept('a', begin('7/tube')));
    await shelved();
    const sent: string[] = [];
    const box = new Outbox(
      shelf,
      new FakeTimers(),
      (message) => sent.push(message.id) > 0,
      () => {},
    );
    box.connected();
    box.add(kept('b', begin('7/tube')));
    await shelved();
    expect(sent).toEqual([]);
    box.earlier((await shelf.open()).touches);
    expect(sent).toEqual(['a']);
  });

  it('shouldKeepWhatWasTouchedOfflineAndSendItInOrderWhenConnected', async () => {
    const { box, ids } = await outbox();
    box.add(kept('a', note));
    box.add(kept('b', note));
    await shelved();
    expect(ids()).toEqual([]);
    box.connected();
    expect(ids()).toEqual(['a', 'b']);
  });

  it('shouldSendAllAgainAfterANewConnection', async () => {
    const { box, ids } = await outbox();
    box.connected();
    box.add(kept('a', note));
    await shelved();
    box.disconnected();
    box.connected();
    expect(ids()).toEqual(['a', 'a']);
  });

  it('shouldSurviveAReload', async () => {
    const shelf = new FakeShelf();
    (await outbox(shelf)).box.add(kept('a', note));
    await shelved();
    const after = await outbox(shelf);
    expect(after.box.unsent).toBe(1);
    after.box.connected();
    expect(after.ids()).toEqual(['a']);
  });

  it('shouldKeepACommandAfterNotNowAndTryLater', async () => {
    const { box, timers, ids } = await outbox();
    box.connected();
    box.add(kept('a', note));
    await shelved();
    box.answered({ m: 'answer', id: 'a', status: 'later' });
    expect(box.unsent).toBe(1);
    timers.pass(LATER_MS);
    expect(ids()).toEqual(['a', 'a']);
  });

  it('shouldSendCommandsOnOneItemOneAfterTheOther', async () => {
    const { box, ids } = await outbox();
    box.connected();
    box.add(kept('a', begin('7/tube')));
    box.add(kept('b', begin('7/tube')));
    box.add(kept('c', begin('7/scope')));
    await shelved();
    expect(ids()).toEqual(['a', 'c']);
    box.answered(done('a'));
    expect(ids()).toEqual(['a', 'c', 'b']);
  });

  it('shouldHoldLaterCommandsOnTheSameItemBehindARefusalAndStopNothingElse', async () => {
    const { box, ids } = await outbox();
    box.connected();
    const { answer: first } = box.add(kept('a', begin('7/tube')));
    box.add(kept('b', begin('7/tube')));
    box.add(kept('c', begin('7/scope')));
    await shelved();
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

  it('shouldKeepAHeldCommandHeldOverAReload', async () => {
    const shelf = new FakeShelf();
    const { box } = await outbox(shelf);
    box.connected();
    box.add(kept('a', begin('7/tube')));
    box.add(kept('b', begin('7/tube')));
    await shelved();
    box.answered(refused('a'));
    const after = await outbox(shelf);
    after.box.connected();
    expect(after.ids()).toEqual([]);
    expect(after.box.held.map((one) => one.id)).toEqual(['b']);
  });

  it('shouldDropAHeldCommandWhenAPersonSaysSo', async () => {
    const { box, shelf } = await outbox();
    box.connected();
    box.add(kept('a', begin('7/tube')));
    const { answer: second } = box.add(kept('b', begin('7/tube')));
    await shelved();
    box.answered(refused('a'));
    box.discard(['b']);
    expect((await second).status).toBe('dropped');
    expect(shelf.kept.size).toBe(0);
  });

  it('shouldStopLoudlyWhenFullAndLoseNothing', async () => {
    const { box } = await outbox();
    for (let i = 0; i < OUTBOX_MAX; i++) box.add(kept(String(i), note));
    await shelved();
    expect(box.full).toBe(true);
    expect(() => box.add(kept('more', note))).toThrow(OutboxFull);
    expect(box.unsent).toBe(OUTBOX_MAX);
  });

  it('shouldHaveOnlySoManyOnTheWayAtOnce', async () => {
    const { box, ids } = await outbox();
    box.connected();
    for (let i = 0; i < IN_FLIGHT_MAX + 5; i++) box.add(kept(String(i), note));
    await shelved();
    expect(ids().length).toBe(IN_FLIGHT_MAX);
    box.answered(done('0'));
    expect(ids().length).toBe(IN_FLIGHT_MAX + 1);
  });

  it('shouldSayWhenTheBrowserKeepsNothing', async () => {
    const shelf = new FakeShelf();
    shelf.broken = true;
    const { box } = await outbox(shelf);
    box.add(kept('a', note));
    await shelved();
    expect(box.durable).toBe(false);
    expect(box.unsent).toBe(1);
  });

  it('shouldKnowWhatACommandIsAbout', async () => {
    expect(about(begin('7/tube'))).toBe('item:7/tube');
    expect(about({ type: 'release', unit: 'us-1' })).toBe('unit:us-1');
    expect(about(note)).toBeNull();
  });
});
