import type { SuitePart } from '../generated/wire.ts';
import type { Live } from '../live/index.ts';

/**
 * What lets a wall hang for weeks: its picture moves by a few pixels so that nothing burns in, a new
 * build is taken over outside the busy hours, and a page that stands is loaded anew. Only once the
 * server has just answered: a browser's own error page would stay for good.
 */

const MINUTE_MS = 60_000;
const LOOK_MS = 5_000;
const SHIFT_MS = 5 * MINUTE_MS;
const BUILD_MS = 10 * MINUTE_MS;
/** No picture was drawn, or nothing proved the board, for so long: the page stands. */
export const STANDS_MS = MINUTE_MS;
export const SOCKET_STANDS_MS = 3 * MINUTE_MS;
/** Least time between two reloads, so that a fault that stays does not make the wall blink. */
export const RELOAD_MS = 10 * MINUTE_MS;
/** Around the targets a wall is looked at, and does not go away for a new build. */
const BUSY_BEFORE_MS = 150 * MINUTE_MS;
const BUSY_AFTER_MS = 120 * MINUTE_MS;

const STEPS: readonly (readonly [number, number])[] = [
  [0, 0],
  [3, 0],
  [3, 3],
  [0, 3],
  [-3, 3],
  [-3, 0],
  [-3, -3],
  [0, -3],
  [3, -3],
];

/** Where the picture stands after so long, in pixels right and down; every five minutes another. */
export function shiftAt(ms: number): readonly [number, number] {
  return STEPS[Math.floor(ms / SHIFT_MS) % STEPS.length]!;
}

/** True while people steer by the wall: around the suite's targets of an open or drafted morning. */
export function busy(suite: SuitePart | undefined, now: number): boolean {
  if (suite === undefined || suite.phase === 'none' || suite.phase === 'closed') return false;
  const { horizon } = suite;
  if (horizon === undefined) return suite.phase === 'open';
  return now >= horizon - BUSY_BEFORE_MS && now <= horizon + BUSY_AFTER_MS;
}

/** What a wall knows of itself; all times by one clock that does not jump. */
export interface Upkeep {
  readonly now: number;
  readonly loadedAt: number;
  readonly drewAt: number;
  readonly provedAt: number;
  readonly visible: boolean;
  readonly newBuild: boolean;
  readonly busy: boolean;
}

/** Whether the page is to be loaded anew, and why. */
export function reloadFor(up: Upkeep): 'clock' | 'socket' | 'build' | undefined {
  if (up.now - up.loadedAt < RELOAD_MS) return undefined;
  if (up.visible && up.now - up.drewAt >= STANDS_MS) return 'clock';
  if (up.now - up.provedAt >= SOCKET_STANDS_MS) return 'socket';
  return up.newBuild && !up.busy ? 'build' : undefined;
}

/** Keeps this page for weeks. @returns what ends it */
export function keepUp(wall: HTMLElement, live: Live): () => void {
  const loadedAt = performance.now();
  let drewAt = loadedAt;
  let provedAt = loadedAt;
  let lookedAt = loadedAt;
  let first: string | undefined;
  let newBuild = false;
  let ended = false;

  const drew = (): void => void (drewAt = performance.now());
  const proved = (): void => void (provedAt = performance.now());
  live.addEventListener('beat', proved);

  /** The page as the server has it, or undefined if it does not answer. */
  const page = async (): Promise<string | undefined> => {
    try {
      const answer = await fetch('/wall', {
        cache: 'no-cache',
        signal: AbortSignal.timeout(LOOK_MS),
      });
      return answer.ok ? await answer.text() : undefined;
    } catch {
      return undefined;
    }
  };

  const look = async (): Promise<void> => {
    // Asked for each time, so that a picture that is drawn no more is known by it.
    requestAnimationFrame(drew);
    const now = performance.now();
    const [right, down] = shiftAt(now - loadedAt);
    wall.style.translate = `${right}px ${down}px`;
    if (first === undefined || now - lookedAt >= BUILD_MS) {
      lookedAt = now;
      const text = await page();
      first ??= text;
      newBuild = text !== undefined && text !== first;
    }
    const suite = live.list('suite')[0];
    const visible = document.visibilityState === 'visible';
    const why = reloadFor({
      now: performance.now(),
      loadedAt,
      drewAt,
      provedAt,
      visible,
      newBuild,
      busy: busy(suite, live.now()),
    });
    if (why !== undefined && !ended && (await page()) !== undefined) location.reload();
  };

  const ticker = setInterval(() => void look(), LOOK_MS);
  void look();
  return () => {
    ended = true;
    clearInterval(ticker);
    live.removeEventListener('beat', proved);
  };
}
