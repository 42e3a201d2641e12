import { describe, expect, it } from 'vitest';
import { MorningClock } from './clock.ts';
import { STALE_MS } from './constants.ts';

describe('the clock of the morning', () => {
  it('shouldBeTheScreensOwnUntilTheServerHasSpoken', () => {
    expect(new MorningClock().now(10, 777)).toBe(777);
  });

  it('shouldRunAtTheMorningsRate', () => {
    const clock = new MorningClock();
    clock.beat(1_000, 50_000, 60);
    expect(clock.now(2_000, 0)).toBe(110_000);
  });

  it('shouldTakeHalfTheRoundTripOffAndPreferTheShortest', () => {
    const clock = new MorningClock();
    clock.tock(1_000, 1_400, 500_000, 1);
    expect(clock.now(1_400, 0)).toBe(500_200);
    clock.tock(2_000, 2_020, 500_700, 1);
    expect(clock.now(2_020, 0)).toBe(500_710);
    clock.tock(3_000, 3_900, 501_000, 1);
    expect(clock.now(3_900, 0)).toBe(502_590);
  });

  it('shouldFollowAJumpOfTheMorning', () => {
    const clock = new MorningClock();
    clock.beat(0, 1_000, 1);
    clock.beat(1_000, 900_000, 1);
    expect(clock.now(1_000, 0)).toBe(900_000);
  });

  it('shouldNotJitterWithSlowHeartbeats', () => {
    const clock = new MorningClock();
    clock.tock(0, 10, 1_000, 1);
    clock.beat(1_400, 2_000, 1);
    expect(clock.now(1_400, 0)).toBe(2_395);
  });

  it('shouldBeStaleFiveSecondsAfterTheLastProofAndBeforeTheFirst', () => {
    const clock = new MorningClock();
    expect(clock.stale(0)).toBe(true);
    clock.alive(1_000);
    expect(clock.stale(1_000 + STALE_MS - 1)).toBe(false);
    expect(clock.stale(1_000 + STALE_MS)).toBe(true);
  });
});
