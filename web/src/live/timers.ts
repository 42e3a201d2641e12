/** Time as the live client sees it, so that its tests need not wait. */
export interface Timers {
  /** Monotonic milliseconds, `performance.now()`. */
  now(): number;
  /** The screen's own wall clock, epoch milliseconds. */
  date(): number;
  /** Calls once, after at least `ms`. @returns a function that takes it back */
  after(ms: number, call: () => void): () => void;
  /** Calls once before the next picture is drawn. */
  frame(call: () => void): void;
  /** Uniform in [0, 1). */
  random(): number;
}

export const realTimers: Timers = {
  now: () => performance.now(),
  date: () => Date.now(),
  after(ms, call) {
    const handle = setTimeout(call, ms);
    return () => clearTimeout(handle);
  },
  frame: (call) => void requestAnimationFrame(() => call()),
  random: () => Math.random(),
};
