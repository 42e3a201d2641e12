/** Lines change places no more than once in so many milliseconds of real time. */
export const SORT_MS = 60_000;
/** In a rehearsal that runs fast, lines may change places more often, but never more than this. */
export const SORT_LEAST_MS = 5_000;

export interface Shown {
  readonly keys: readonly string[];
  readonly sortedAt: number;
}

/**
 * The order of the lines on the wall. Between two sorts lines keep their places: what is gone
 * leaves, what is new comes last.
 *
 * @param shown what stands there
 * @param ranked the keys worst first
 * @param at monotonic milliseconds
 * @param rate morning seconds per second
 */
export function settle(
  shown: Shown | null,
  ranked: readonly string[],
  at: number,
  rate: number,
): Shown {
  const wait = Math.max(SORT_LEAST_MS, SORT_MS / Math.max(1, rate));
  if (!shown || shown.keys.length === 0 || at - shown.sortedAt >= wait) {
    return { keys: ranked, sortedAt: at };
  }
  const wanted = new Set(ranked);
  const staying = shown.keys.filter((key) => wanted.has(key));
  const there = new Set(staying);
  return {
    keys: [...staying, ...ranked.filter((key) => !there.has(key))],
    sortedAt: shown.sortedAt,
  };
}
