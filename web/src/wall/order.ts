/** Lines change places no more than once in so many milliseconds of real time. */
export const SORT_MS = 60_000;
/** In a rehearsal that runs fast, lines may change places more often, but never more than this. */
export const SORT_LEAST_MS = 5_000;

export interface Shown {
  readonly keys: readonly string[];
  readonly sortedAt: number;
  /** Which of them could not wait. */
  readonly urgent: ReadonlySet<string>;
}

const NONE: ReadonlySet<string> = new Set();

/**
 * The order of the lines on the wall. Between two sorts lines keep their places: what is gone
 * leaves, what is new comes last; what becomes urgent goes at once to where it belongs.
 *
 * @param shown what stands there
 * @param ranked the keys worst first
 * @param at monotonic milliseconds
 * @param rate morning seconds per second
 * @param urgent those of them that can't wait for the next sort
 */
export function settle(
  shown: Shown | null,
  ranked: readonly string[],
  at: number,
  rate: number,
  urgent: ReadonlySet<string> = NONE,
): Shown {
  const wait = Math.max(SORT_LEAST_MS, SORT_MS / Math.max(1, rate));
  if (!shown || shown.keys.length === 0 || at - shown.sortedAt >= wait) {
    return { keys: ranked, sortedAt: at, urgent };
  }
  const wanted = new Set(ranked);
  const staying = shown.keys.filter((key) => wanted.has(key));
  const there = new Set(staying);
  let keys = [...staying, ...ranked.filter((key) => !there.has(key))];
  for (const key of ranked.filter((one) => urgent.has(one) && !shown.urgent.has(one))) {
    const rest = keys.filter((one) => one !== key);
    const after = new Set(ranked.slice(ranked.indexOf(key) + 1));
    const place = rest.findIndex((one) => after.has(one));
    keys = place < 0 ? [...rest, key] : [...rest.slice(0, place), key, ...rest.slice(place)];
  }
  return { keys, sortedAt: shown.sortedAt, urgent };
}
