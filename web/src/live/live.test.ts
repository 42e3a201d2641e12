import { describe, expect, it } from 'vitest';
import type { Beat, Frame, PartUnion, View } from '../generated/wire.ts';
import {
  BACK_OFF_MS,
  ECHO_MS,
  LOWER_BEATS_TO_FORGET,
  PICTURE_AGE_MAX_MS,
  PICTURE_ANEW_MS,
  PICTURE_MS,
  SILENT_SOCKET_MS,
  SILENT_VIEW_MS,
  STALE_LOOK_MS,
  STALE_MS,
  VIEW_WAIT_MS,
} from './constants.ts';
import { FakeNetwork } from './fake/fake-network.ts';
import { FakeShelf } from './fake/fake-shelf.ts';
import { FakeTimers } from './fake/fake-timers.ts';
import type { ChangeEvent } from './events.ts';
import { Live } from './live.ts';

const at = { morning: 'main/2026-11-25', epoch: 3, n: 10, upTo: 40, forecastOf: 40 };
const place = (key: string, opensAt: number): PartUnion => ({
  part: 'place',
  key,
  place: key,
  label: key,
  opensAt,
  revision: 1,
});
const view = (over: Partial<View> = {}): View => ({
  m: 'view',
  audience: 'staff',
  parts: [place('a', 1)],
  ...at,
  ...over,
});
const frame = (n: number, over: Partial<Frame> = {}): Frame => ({
  m: 'frame',
  audience: 'staff',
  set: [place(`p${n}`, n)],
  gone: [],
  ...at,
  n,
  ...over,
});
const beat = (over: Partial<Beat> = {}): Beat => ({
  m: 'beat',
  morningClock: 900_000,
  rate: 10,
  confirmedAt: 0,
  readOnly: false,
  ...at,
  ...over,
});

function live(shelf = new FakeShelf(), timers = new FakeTimers()) {
  const network = new FakeNetwork();
  const one = new Live({
    page: 'station',
    screen: 'station-7',
    url: 'ws://x/live',
    timers,
    shelf,
    open: network.open,
    keeps: (part) => part.key !== 'b',
  });
  one.start();
  network.last.accept();
  return { one, timers, network, shelf };
}

describe('the live picture', () => {
  it('shouldSayHelloFirstAndResumeWhereItStoodAfterACut', () => {
    const { network, timers } = live();
    expect(network.last.sent[0]).toEqual({ m: 'hello', screen: 'station-7', page: 'station' });
    network.last.deliver(view());
    network.last.end();
    timers.pass(100);
    network.last.accept();
    expect(network.last.sent[0]).toMatchObject({ morning: at.morning, epoch: 3, n: 10 });
  });

  it('shouldTellOfManyFramesOnceAPicture', () => {
    const { one, network, timers } = live();
    const keys: ReadonlySet<string>[] = [];
    one.addEventListener('change', (event) => keys.push((event as ChangeEvent).keys));
    network.last.deliver(view());
    network.last.deliver(frame(11));
    network.last.deliver(frame(12));
    expect(one.parts.size).toBe(3);
    expect(keys).toEqual([]);
    expect(timers.draw()).toBe(1);
    expect(keys).toEqual([new Set(['a', 'p11', 'p12'])]);
  });

  it('shouldGiveTheSameListUntilSomethingChanges', () => {
    const { one, network } = live();
    network.last.deliver(view());
    const list = one.list('place');
    expect(list.map((part) => part.key)).toEqual(['a']);
    expect(one.list('place')).toBe(list);
    network.last.deliver(frame(11));
    expect(one.list('place').length).toBe(2);
    expect(one.list('room')).toEqual([]);
  });

  it('shouldAskForAViewAtAGapOnceAndAgainIfNoneComes', () => {
    const { network, timers } = live();
    network.last.deliver(view());
    network.last.deliver(frame(13));
    network.last.deliver(frame(14));
    expect(network.last.of('ask-view').length).toBe(1);
    timers.pass(VIEW_WAIT_MS);
    network.last.deliver(frame(15));
    expect(network.last.of('ask-view').length).toBe(2);
  });

  it('shouldBeStaleFiveSecondsAfterTheLastHeartbeatAndRecover', () => {
    const { one, network, timers } = live();
    expect(one.state).toMatchObject({ stale: true, everSeen: false });
    network.last.deliver(view());
    network.last.deliver(beat());
    expect(one.state).toMatchObject({ stale: false, everSeen: true });
    timers.pass(SILENT_SOCKET_MS - 500);
    network.last.deliver(frame(11));
    // The node is well and the owner is not: the line is kept.
    const { sentAt } = network.last.of('tick').at(-1)!;
    network.last.deliver({ m: 'tock', sentAt, morningClock: 900_000, rate: 10 });
    timers.pass(STALE_MS - SILENT_SOCKET_MS);
    expect(one.state.stale).toBe(false);
    timers.pass(500);
    expect(one.state.stale).toBe(true);
    network.last.deliver(beat({ n: 11 }));
    expect(one.state.stale).toBe(false);
  });

  it('shouldTakeNoHeartbeatThatLayOnTheLineForAProof', () => {
    const { one, network, timers } = live();
    network.last.deliver(view());
    network.last.deliver(beat());
    timers.pass(SILENT_SOCKET_MS - 500);
    // The cut is over and what was sent before it arrives, at first one message alone.
    network.last.deliverLate(beat({ morningClock: 910_000 }));
    expect(one.beats).toBe(1);
    // The ticks of the cut came late, too: an answer to one of them proves no more.
    const ticks = network.last.of('tick');
    const asked = ticks.find((tick) => timers.now() - tick.sentAt > ECHO_MS)!;
    network.last.deliver({ m: 'tock', sentAt: asked.sentAt, morningClock: 910_000, rate: 10 });
    network.last.deliverLate(beat({ morningClock: 920_000 }));
    expect(one.beats).toBe(1);
    // One that is answered does, until it is old itself.
    const { sentAt } = ticks.at(-1)!;
    network.last.deliver({ m: 'tock', sentAt, morningClock: 960_000, rate: 10 });
    network.last.deliverLate(beat({ morningClock: 960_000 }));
    expect(one.beats).toBe(2);
    timers.pass(sentAt + ECHO_MS - timers.now());
    network.last.deliverLate(beat({ morningClock: 980_000 }));
    expect(one.beats).toBe(3);
    timers.pass(1);
    network.last.deliverLate(beat({ morningClock: 980_000 }));
    expect(one.beats).toBe(3);
  });

  it('should believe nothing that lay on the line while the machine slept', () => {
    const { one, network, timers } = live();
    network.last.deliver(view());
    network.last.deliver(beat());
    const before = network.last;
    expect(one.state.stale).toBe(false);
    timers.sleep(3_600_000);
    before.deliverLate(beat());
    expect(one.state.stale).toBe(true);
    expect(before.closed).toBe(true);
    expect(one.beats).toBe(1);
  });

  it('should leave a line that brings heartbeats and answers no ticks', () => {
    const { network, timers } = live();
    network.last.deliver(view());
    network.last.deliver(beat());
    const slow = network.last;
    for (let passed = 0; passed < SILENT_SOCKET_MS; passed += 1_000) {
      timers.pass(1_000);
      expect(slow.closed).toBe(false);
      slow.deliverLate(beat());
    }
    timers.pass(STALE_LOOK_MS);
    expect(slow.closed).toBe(true);
    timers.pass(BACK_OFF_MS[0]);
    expect(network.last).not.toBe(slow);
  });

  it('should believe nothing that lay on the line together with its opening', () => {
    const { one, network, timers } = live();
    network.last.deliver(view());
    network.last.end();
    timers.pass(100);
    timers.pass(STALE_MS + 1_000);
    network.last.accept();
    network.last.deliverLate(view());
    network.last.deliverLate(beat());
    expect(one.beats).toBe(0);
    expect(one.state.stale).toBe(true);
    network.last.deliver(beat());
    expect(one.state.stale).toBe(false);
  });

  it('should wait for a large view on a slow line, though its first tick was answered at once', () => {
    const { one, network, timers } = live();
    const slow = network.last;
    const { sentAt } = slow.of('tick').at(-1)!;
    slow.deliver({ m: 'tock', sentAt, morningClock: 900_000, rate: 10 });
    timers.pass(SILENT_VIEW_MS - 1_000);
    expect(slow.closed).toBe(false);
    slow.deliver(view());
    slow.deliver(beat());
    expect(one.state.stale).toBe(false);
    timers.pass(SILENT_SOCKET_MS);
    expect(slow.closed).toBe(true);
  });

  it('shouldSendATickASecondAlsoWhenOnlyHeartbeatsWakeIt', () => {
    const { network, timers } = live();
    network.last.deliver(view());
    const before = network.last.of('tick').length;
    for (let second = 0; second < 10; second++) {
      timers.pass(500);
      network.last.deliver(beat());
      timers.pass(500);
    }
    expect(network.last.of('tick').length - before).toBe(10);
  });

  it('shouldSayReadOnlyWhileTheJournalIsAway', () => {
    const { one, network } = live();
    network.last.deliver(view());
    network.last.deliver(beat({ readOnly: true }));
    expect(one.state.readOnly).toBe(true);
    network.last.deliver(beat());
    expect(one.state.readOnly).toBe(false);
  });

  it('shouldRunTheMorningsClock', () => {
    const { one, network, timers } = live();
    network.last.deliver(view());
    network.last.deliver(beat());
    timers.pass(1_000);
    expect(one.now()).toBe(910_000);
  });

  it('shouldStampATouchWithItsTimeTheOffsetAndTheMorning', async () => {
    const { one, network, timers } = live();
    network.last.deliver(view());
    network.last.deliver(beat());
    await one.send({ type: 'begin', item: '7/tube' }, { seen: 4, person: 'p1' }).kept;
    const [sent] = network.last.of('send');
    expect(sent).toMatchObject({ morning: at.morning, seen: 4, person: 'p1' });
    expect(sent!.touchedAt).toBe(timers.date());
    expect(sent!.touchedAt + sent!.offset).toBe(900_000);
    expect(sent!.id).toMatch(
      /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
    );
  });

  it('shouldCountUnsentTouchesAndKnowWhenOneIsOnTheBoard', async () => {
    const { one, network } = live();
    network.last.deliver(view());
    const sent = one.send({ type: 'begin', item: '7/tube' });
    expect(one.unsent).toBe(1);
    await sent.kept;
    const { id } = network.last.of('send')[0]!;
    network.last.deliver({ m: 'answer', id, status: 'done', upTo: 41 });
    const answer = await sent.answer;
    expect(one.unsent).toBe(0);
    expect(one.onBoard(answer)).toBe(false);
    network.last.deliver(frame(11, { upTo: 41 }));
    expect(one.onBoard(answer)).toBe(true);
  });

  it('shouldForgetItsPictureWhenTheJournalBehindItIsAnother', () => {
    const { one, network } = live();
    network.last.deliver(view());
    for (let i = 0; i < LOWER_BEATS_TO_FORGET; i++) network.last.deliver(beat({ epoch: 1 }));
    expect(one.parts.size).toBe(0);
    network.last.deliver(view({ epoch: 1, n: 2 }));
    network.last.deliver(beat({ epoch: 1, n: 2 }));
    expect(one.state.stale).toBe(false);
  });

  it('shouldShowWhatItKeptAsOldUntilTheBoardIsBackAndTakeTouchesOnIt', async () => {
    const before = live();
    before.network.last.deliver(view({ parts: [place('a', 1), place('b', 2)] }));
    before.network.last.deliver(beat());
    before.timers.pass(PICTURE_MS / 2);
    before.network.last.deliver(beat({ morningClock: 900_000 + 10 * (PICTURE_MS / 2) }));
    before.timers.pass(PICTURE_MS / 2 - 1);
    before.network.last.deliver(beat());
    before.timers.pass(1);
    before.network.last.end();

    const { one, network, shelf } = live(before.shelf, before.timers);
    await shelf.open();
    expect([...one.parts.keys()]).toEqual(['a']);
    expect(one.state).toMatchObject({ stale: true, everSeen: true });
    expect(one.lastLiveAt).toBe(900_000);
    before.timers.pass(1_000);
    expect(one.now()).toBe(900_010 + 10_000);
    await one.send({ type: 'begin', item: '7/tube' }).kept;
    expect(network.last.of('send')[0]).toMatchObject({ morning: at.morning });
    expect(network.last.of('hello')[0]).not.toHaveProperty('epoch');

    network.last.deliver(view({ epoch: 4, parts: [place('c', 3)] }));
    network.last.deliver(beat({ epoch: 4 }));
    expect([...one.parts.keys()]).toEqual(['c']);
    expect(one.state.stale).toBe(false);
  });

  it('shouldNotShowAPictureOfAnotherDay', async () => {
    const { shelf } = live();
    shelf.picture = {
      morning: at.morning,
      parts: [place('a', 1)],
      keptAt: new FakeTimers().date() - PICTURE_AGE_MAX_MS - 1,
      clock: 900_000,
      rate: 1,
      lastLiveAt: 900_000,
    };
    const { one } = live(shelf);
    await shelf.open();
    expect(one.parts.size).toBe(0);
    expect(one.state.everSeen).toBe(false);
  });

  it('should write its picture anew when something changed, and else once a minute', () => {
    const { network, timers, shelf } = live();
    network.last.deliver(view());
    network.last.deliver(beat());
    const kept = (ms: number, n = 10) => {
      for (let passed = 0; passed < ms; passed += 1_000) {
        timers.pass(1_000);
        network.last.deliver(beat({ n }));
      }
      return shelf.picture?.keptAt;
    };
    const first = kept(PICTURE_MS);
    expect(first).toBeDefined();
    expect(kept(6 * PICTURE_MS)).toBe(first);
    network.last.deliver(frame(11));
    const second = kept(PICTURE_MS, 11);
    expect(second).toBeGreaterThan(first!);
    expect(kept(PICTURE_ANEW_MS, 11)).toBeGreaterThan(second!);
  });

  it('shouldSayWhenThisBrowserKeepsNothing', async () => {
    const shelf = new FakeShelf();
    shelf.broken = true;
    const { one, network } = live(shelf);
    await one.send({ type: 'begin', item: '7/tube' }).kept;
    expect(one.state.durable).toBe(false);
    expect(network.last.of('send').length).toBe(1);
  });

  it('should say when it was done beside when it was entered', async () => {
    const { one, network } = live();
    network.last.deliver(view());
    await one.send({ type: 'open-morning' }, { doneAt: 700_000 }).kept;
    const sent = network.last.sent.at(-1) as { touchedAt: number; offset: number };
    expect(sent.touchedAt + sent.offset).toBe(700_000);
  });
});
