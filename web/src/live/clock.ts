import { CLOCK_STEP_MS, STALE_MS, TICKS_KEPT } from './constants.ts';

interface Comparison {
  readonly at: number;
  readonly morning: number;
  readonly roundTrip: number;
}

/**
 * The morning's clock as seen from this screen, and whether the picture may be believed. All `at`
 * are monotonic milliseconds of this screen; morning times are epoch milliseconds.
 */
export class MorningClock {
  private base: Comparison | null = null;
  private kept: Comparison[] = [];
  private rateNow = 1;
  private aliveAt: number | null = null;
  private lastLive: number | null = null;

  get rate(): number {
    return this.rateNow;
  }

  /** False until the server has said what time it is. */
  get known(): boolean {
    return this.base !== null;
  }

  /** The morning's time; `otherwise` (the screen's own clock) as long as it is not known. */
  now(at: number, otherwise: number): number {
    return this.base ? this.base.morning + (at - this.base.at) * this.rateNow : otherwise;
  }

  /** The clock of a picture that was kept: it goes on from there until the server says better. */
  restore(at: number, morning: number, rate: number, lastLive: number): void {
    if (this.base) return;
    this.rateNow = rate;
    this.base = { at, morning, roundTrip: Number.POSITIVE_INFINITY };
    this.lastLive = lastLive;
  }

  /** A heartbeat's clock: sets the rate, and the time if it was unknown or has jumped. */
  beat(at: number, morning: number, rate: number): void {
    const jumped =
      rate !== this.rateNow ||
      Math.abs(this.now(at, morning) - morning) > CLOCK_STEP_MS * Math.max(1, rate);
    this.rateNow = rate;
    if (this.base && !jumped) return;
    this.kept = [];
    this.base = { at, morning, roundTrip: Number.POSITIVE_INFINITY };
  }

  /** A comparison: sent and received by this screen's clock. The shortest round trip wins. */
  tock(sentAt: number, at: number, morning: number, rate: number): void {
    const roundTrip = at - sentAt;
    if (!(roundTrip >= 0)) return;
    if (rate !== this.rateNow) this.kept = [];
    this.rateNow = rate;
    this.kept.push({ at, morning: morning + (roundTrip / 2) * rate, roundTrip });
    if (this.kept.length > TICKS_KEPT) this.kept.shift();
    this.base = this.kept.reduce((best, one) => (one.roundTrip < best.roundTrip ? one : best));
  }

  /** Proof of life: a heartbeat for exactly what is shown. */
  alive(at: number): void {
    this.aliveAt = at;
    this.lastLive = this.now(at, 0);
  }

  stale(at: number): boolean {
    return this.aliveAt === null || at - this.aliveAt >= STALE_MS;
  }

  /** The morning's time of the last proof of life, or null. */
  get lastLiveAt(): number | null {
    return this.lastLive;
  }

  /** Nothing proves any more that what is shown is so. */
  doubt(): void {
    this.aliveAt = null;
  }

  /** What was proved is not shown any more. */
  forget(): void {
    this.aliveAt = null;
    this.lastLive = null;
  }
}
