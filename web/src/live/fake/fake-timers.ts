import type { Timers } from '../timers.ts';

interface Due {
  readonly at: number;
  readonly call: () => void;
}

/** Time that passes when a test says so. */
export class FakeTimers implements Timers {
  private at = 1_000;
  private slept = 0;
  private readonly due = new Set<Due>();
  private frames: (() => void)[] = [];

  now(): number {
    return this.at;
  }

  date(): number {
    return 1_700_000_000_000 + this.at + this.slept;
  }

  random(): number {
    return 1;
  }

  after(ms: number, call: () => void): () => void {
    const due = { at: this.at + ms, call };
    this.due.add(due);
    return () => this.due.delete(due);
  }

  frame(call: () => void): void {
    this.frames.push(call);
  }

  /** Lets time pass; what falls due happens in order. */
  pass(ms: number): void {
    const until = this.at + ms;
    for (;;) {
      const next = [...this.due].sort((a, b) => a.at - b.at)[0];
      if (!next || next.at > until) break;
      this.due.delete(next);
      this.at = next.at;
      next.call();
    }
    this.at = until;
  }

  /** The machine sleeps: its monotonic clock stands still, and nothing falls due. */
  sleep(ms: number): void {
    this.slept += ms;
  }

  /** Draws one picture. @returns how many calls waited for it */
  draw(): number {
    const calls = this.frames;
    this.frames = [];
    for (const call of calls) call();
    return calls.length;
  }
}
