import type { ClientMessageUnion } from '../generated/wire.ts';
import { ECHO_MS, TICK_AGAIN_MS, TICK_MS } from './constants.ts';
import type { Timers } from './timers.ts';

/**
 * Knows whether what comes now can have lain on the line. A line that was cut delivers late what was
 * sent before the cut, one heartbeat perhaps and then nothing for seconds. So ticks are sent, and
 * since a socket keeps the order, what comes after the answer to one was sent after that tick. No
 * clock but this screen's counts.
 */
export class Echo {
  private readonly timers: Timers;
  private readonly send: (message: ClientMessageUnion) => boolean;
  private tickedAt: number | null = null;
  /** When the socket was asked for, or the newest tick was sent that has been answered. */
  private echoAt: number | null = null;
  private openedAt = 0;
  /** The wall clock less the monotonic one, when last looked at. */
  private ahead: number;

  /** @param send as the socket's: false if nothing is open */
  constructor(timers: Timers, send: (message: ClientMessageUnion) => boolean) {
    this.timers = timers;
    this.send = send;
    this.ahead = timers.date() - timers.now();
  }

  /**
   * There is another socket. That it is open may itself have lain on the line, and a view and a
   * heartbeat behind it: what is sure is when it was asked for.
   *
   * @param begunAt when the try to open it began
   */
  opened(begunAt: number): void {
    this.echoAt = begunAt;
    this.openedAt = this.timers.now();
    this.tickedAt = null;
    this.tick();
  }

  start(): void {
    this.timers.after(TICK_MS, () => {
      this.tick();
      this.start();
    });
  }

  /**
   * Sends a tick, unless one was sent just now. Heartbeats call this too: a hidden page's timers may
   * fall due once a minute only, but its messages come.
   */
  tick(): void {
    const at = this.timers.now();
    if (this.tickedAt !== null && at - this.tickedAt < TICK_AGAIN_MS) return;
    // Rounded down, or an answer could come before its tick.
    if (this.send({ m: 'tick', sentAt: Math.floor(at) })) this.tickedAt = at;
  }

  tock(sentAt: number): void {
    if (sentAt <= this.timers.now()) this.echoAt = Math.max(sentAt, this.echoAt ?? sentAt);
  }

  /**
   * True once after this machine slept, or its wall clock was set forward: the monotonic clock may
   * stand still in a sleep, and what lay on the line meanwhile would pass for new.
   */
  slept(): boolean {
    const before = this.ahead;
    this.ahead = this.timers.date() - this.timers.now();
    return this.ahead - before > ECHO_MS;
  }

  /**
   * True if the line is so slow that another one is better.
   *
   * @param most milliseconds for which it may answer no tick
   */
  useless(most: number): boolean {
    const since = Math.max(this.echoAt ?? this.openedAt, this.openedAt);
    return this.echoAt !== null && this.timers.now() - since > most;
  }

  /** True if what comes now was sent at most {@link ECHO_MS} ago. */
  fresh(): boolean {
    return this.echoAt !== null && this.timers.now() - this.echoAt <= ECHO_MS;
  }
}
