import { describe, expect, it } from 'vitest';
import type { Beat, Frame, PartUnion, View } from '../generated/wire.ts';
import { Channel } from './channel.ts';
import { LOWER_BEATS_TO_FORGET } from './constants.ts';

const place = (key: string, opensAt: number): PartUnion => ({
  part: 'place',
  key,
  place: key,
  label: key,
  opensAt,
  revision: 1,
});
const at = { morning: 'main/2026-11-25', epoch: 3, n: 10, upTo: 40, forecastOf: 40 };
const view = (over: Partial<View> = {}): View => ({
  m: 'view',
  audience: 'staff',
  parts: [place('place/pharmacy', 1)],
  ...at,
  ...over,
});
const frame = (over: Partial<Frame> = {}): Frame => ({
  m: 'frame',
  audience: 'staff',
  set: [],
  gone: [],
  ...at,
  n: 11,
  ...over,
});
const beat = (over: Partial<Beat> = {}): Beat => ({
  m: 'beat',
  morningClock: 0,
  rate: 1,
  confirmedAt: 0,
  readOnly: false,
  ...at,
  ...over,
});

function shown(): Channel {
  const channel = new Channel();
  channel.view(view());
  channel.takeTouched();
  return channel;
}

describe('the channel', () => {
  it('shouldKeepWhatAViewBringsAndForgetTheRest', () => {
    const channel = shown();
    expect(channel.view(view({ n: 12, parts: [place('place/lab', 2)] }))).toBe('applied');
    expect([...channel.parts.keys()]).toEqual(['place/lab']);
    expect(channel.takeTouched()).toEqual(new Set(['place/pharmacy', 'place/lab']));
  });

  it('shouldApplyTheNextFrame', () => {
    const channel = shown();
    expect(channel.frame(frame({ set: [place('a', 5)], gone: ['place/pharmacy'] }))).toBe(
      'applied',
    );
    expect([...channel.parts.keys()]).toEqual(['a']);
    expect(channel.stand?.n).toBe(11);
  });

  it('shouldAskForAViewAtAGapAndChangeNothing', () => {
    const channel = shown();
    expect(channel.frame(frame({ n: 12, set: [place('a', 5)] }))).toBe('ask');
    expect([...channel.parts.keys()]).toEqual(['place/pharmacy']);
    expect(channel.stand?.n).toBe(10);
  });

  it('shouldDropAFrameThatItHasAlready', () => {
    const channel = shown();
    expect(channel.frame(frame({ n: 10, set: [place('a', 5)] }))).toBe('dropped');
    expect(channel.parts.has('a')).toBe(false);
  });

  it('shouldDropWhatAnEarlierOwnerSays', () => {
    const channel = shown();
    expect(channel.frame(frame({ epoch: 2, n: 11, set: [place('a', 5)] }))).toBe('dropped');
    expect(channel.view(view({ epoch: 2, n: 99, parts: [] }))).toBe('dropped');
    expect(channel.beat(beat({ epoch: 2 }))).toBe('dropped');
    expect([...channel.parts.keys()]).toEqual(['place/pharmacy']);
  });

  it('shouldAskForAViewWhenAnotherOwnerTookOver', () => {
    const channel = shown();
    expect(channel.frame(frame({ epoch: 4, n: 1 }))).toBe('ask');
    expect(channel.beat(beat({ epoch: 4, n: 1 }))).toBe('ask');
    expect(channel.view(view({ epoch: 4, n: 1 }))).toBe('applied');
    expect(channel.stand).toMatchObject({ epoch: 4, n: 1 });
  });

  it('shouldNotTakeAnOlderViewOfTheSameOwner', () => {
    const channel = shown();
    expect(channel.view(view({ n: 9, parts: [] }))).toBe('dropped');
    expect(channel.parts.size).toBe(1);
  });

  it('shouldBeginAnewWhenItIsToldAsAnotherAudience', () => {
    const channel = shown();
    expect(channel.view(view({ n: 2, audience: 'wall', parts: [] }))).toBe('applied');
    expect(channel.parts.size).toBe(0);
    expect(channel.frame(frame({ n: 3 }))).toBe('ask');
    expect(channel.frame(frame({ n: 3, audience: 'wall' }))).toBe('applied');
  });

  it('shouldTakeAHeartbeatAsProofOnlyForWhatIsShown', () => {
    const channel = shown();
    expect(channel.beat(beat())).toBe('alive');
    expect(channel.beat(beat({ n: 11 }))).toBe('ask');
    expect(new Channel().beat(beat())).toBe('ask');
  });

  it('shouldForgetWhenOnlyAnotherJournalBeats', () => {
    const channel = shown();
    for (let i = 1; i < LOWER_BEATS_TO_FORGET; i++) {
      expect(channel.beat(beat({ epoch: 1 }))).toBe('dropped');
    }
    expect(channel.beat(beat({ epoch: 1 }))).toBe('forget');
  });

  it('shouldResumeWhereItStands', () => {
    expect(new Channel().hello('wall-1', 'wall')).toEqual({
      m: 'hello',
      screen: 'wall-1',
      page: 'wall',
    });
    expect(shown().hello('wall-1', 'wall')).toMatchObject({
      morning: at.morning,
      epoch: 3,
      n: 10,
    });
  });
});
