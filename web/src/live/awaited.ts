import { SILENT_SOCKET_MS, SILENT_VIEW_MS, VIEW_WAIT_MS } from './constants.ts';
import type { Timers } from './timers.ts';

/** The view that a screen waits for, if it does: asked for once in a while, and given time. */
export class AwaitedView {
  private readonly timers: Timers;
  private readonly send: () => boolean;
  private askedAt: number | null = null;

  /** @param send asks the board for one: false if nothing is open */
  constructor(timers: Timers, send: () => boolean) {
    this.timers = timers;
    this.send = send;
  }

  /** There is another socket: the board sends one by itself, or what was missed. */
  opened(): void {
    this.askedAt = this.timers.now();
  }

  /** A view came, or what came fits what is there. */
  came(): void {
    this.askedAt = null;
  }

  /** Asks for one, unless that was done just now. */
  ask(): void {
    const now = this.timers.now();
    if (this.askedAt !== null && now - this.askedAt < VIEW_WAIT_MS) return;
    if (this.send()) this.askedAt = now;
  }

  /** How long the line may bring nothing now: a large view on a slow one takes long. */
  silentMost(): number {
    return this.askedAt === null ? SILENT_SOCKET_MS : SILENT_VIEW_MS;
  }
}
