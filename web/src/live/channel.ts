import type { Beat, Frame, Hello, PartUnion, View } from '../generated/wire.ts';
import { LOWER_BEATS_TO_FORGET, PARTS_MAX } from './constants.ts';

/**
 * What a message did: `applied` changed what is kept, `alive` is a heartbeat for exactly what is
 * kept, `ask` found a gap, `dropped` did nothing, `forget` found another journal.
 */
export type Effect = 'applied' | 'alive' | 'ask' | 'dropped' | 'forget';

/** Where the channel stands. */
export interface Stand {
  readonly morning: string;
  readonly epoch: number;
  readonly n: number;
  readonly upTo: number;
  readonly forecastOf: number;
}

/**
 * The parts of one morning, kept by rule 2: a lower epoch is dropped, a gap or a higher epoch asks
 * for a view, and a heartbeat proves life only if it speaks of the very frame that is shown. Pure:
 * no socket and no clock.
 */
export class Channel {
  readonly parts = new Map<string, PartUnion>();
  /** Keys changed since they were last taken. */
  private touched = new Set<string>();
  private at: Stand | null = null;
  private lowerBeats = 0;
  /** Of what is shown. Whoever signs on may change it, and its frames are counted apart. */
  private audience: View['audience'] | undefined;
  /** The morning of parts that were kept on this screen, as long as nothing newer is shown. */
  private keptMorning: string | undefined;

  get stand(): Stand | null {
    return this.at;
  }

  /** The morning that is shown, live or kept. */
  get morning(): string | undefined {
    return this.at?.morning ?? this.keptMorning;
  }

  /** Shows what this screen had kept. It proves nothing: a view is asked for, nothing is resumed. */
  restore(morning: string, parts: readonly PartUnion[]): void {
    if (this.at) return;
    this.keptMorning = morning;
    for (const part of parts) {
      this.parts.set(part.key, part);
      this.touched.add(part.key);
    }
  }

  /**
   * What to say first on a new socket: where to resume, if anywhere.
   *
   * @param date of the morning that is wanted; none for the one that is on
   */
  hello(screen: string, page: string, date?: string, suite?: string): Hello {
    const resume = this.at
      ? { morning: this.at.morning, epoch: this.at.epoch, n: this.at.n }
      : undefined;
    const which = {
      ...(date === undefined ? {} : { date }),
      ...(suite === undefined ? {} : { suite }),
    };
    return { m: 'hello', screen, page, ...resume, ...which };
  }

  takeTouched(): ReadonlySet<string> {
    const keys = this.touched;
    this.touched = new Set();
    return keys;
  }

  forget(): void {
    for (const key of this.parts.keys()) this.touched.add(key);
    this.parts.clear();
    this.at = null;
    this.keptMorning = undefined;
    this.lowerBeats = 0;
  }

  view(view: View): Effect {
    if (this.older(view)) return 'dropped';
    const now = this.at;
    const told = view.audience === this.audience;
    if (now && this.same(view) && told && view.n < now.n) return 'dropped';
    this.audience = view.audience;
    const next = new Map(view.parts.slice(0, PARTS_MAX).map((part) => [part.key, part]));
    for (const key of this.parts.keys()) if (!next.has(key)) this.touched.add(key);
    this.parts.clear();
    for (const [key, part] of next) {
      this.parts.set(key, part);
      this.touched.add(key);
    }
    this.move(view);
    return 'applied';
  }

  frame(frame: Frame): Effect {
    if (this.older(frame)) return 'dropped';
    const now = this.at;
    if (!now || !this.same(frame) || frame.audience !== this.audience) return 'ask';
    if (frame.n <= now.n) return 'dropped';
    if (frame.n !== now.n + 1) return 'ask';
    for (const part of frame.set) {
      if (this.parts.size >= PARTS_MAX && !this.parts.has(part.key)) return 'ask';
      this.parts.set(part.key, part);
      this.touched.add(part.key);
    }
    for (const key of frame.gone) {
      this.parts.delete(key);
      this.touched.add(key);
    }
    this.move(frame);
    return 'applied';
  }

  beat(beat: Beat): Effect {
    if (this.older(beat)) {
      this.lowerBeats++;
      return this.lowerBeats >= LOWER_BEATS_TO_FORGET ? 'forget' : 'dropped';
    }
    this.lowerBeats = 0;
    const now = this.at;
    if (!now || !this.same(beat) || beat.n > now.n) return 'ask';
    if (beat.n < now.n) return 'dropped';
    if (beat.upTo > now.upTo) this.at = { ...now, upTo: beat.upTo };
    return 'alive';
  }

  /** Of an earlier owner of the same morning, or of an earlier morning's epoch. */
  private older(message: { morning: string; epoch: number }): boolean {
    const now = this.at;
    return now !== null && message.morning === now.morning && message.epoch < now.epoch;
  }

  private same(message: { morning: string; epoch: number }): boolean {
    const now = this.at;
    return now !== null && message.morning === now.morning && message.epoch === now.epoch;
  }

  private move(to: Stand): void {
    this.lowerBeats = 0;
    this.at = {
      morning: to.morning,
      epoch: to.epoch,
      n: to.n,
      upTo: to.upTo,
      forecastOf: to.forecastOf,
    };
  }
}
