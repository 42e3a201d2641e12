import { describe, expect, it } from 'vitest';
import type { Beat, Frame, PartUnion, View } from '../generated/wire.ts';
import { LOWER_BEATS_TO_FORGET, STALE_MS, VIEW_WAIT_MS } from './constants.ts';
import { FakeNetwork } from './fake/fake-network.ts';
import { FakeShelf } from './fake/fake-shelf.ts';
import { FakeTimers } from './fake/fake-timers.ts';
import { type ChangeEvent, Live } from './live.ts';

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

function live() {
  const timers = new FakeTimers();
  const network = new FakeNetwork();
  const shelf = new FakeShelf();
  const one = new Live({
    page: 'station',
    screen: 'station-7',
    url: 'ws://x/live',
    timers,
    shelf,
    open: network.open,
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
    timers.pass(STALE_MS - 500);
    network.last.deliver(frame(11));
    expect(one.state.stale).toBe(false);
    timers.pass(500);
    expect(one.state.stale).toBe(true);
    network.last.deliver(beat({ n: 11 }));
    expect(one.state.stale).toBe(false);
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

  it('shouldStampATouchWithItsTimeTheOffsetAndTheMorning', () => {
    const { one, network, timers } = live();
    network.last.deliver(view());
    network.last.deliver(beat());
    void one.send({ type: 'begin', item: '7/tube' }, { seen: 4, person: 'p1' });
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
    const { id } = network.last.of('send')[0]!;
    network.last.deliver({ m: 'answer', id, status: 'done', upTo: 41 });
    const answer = await sent;
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
});
