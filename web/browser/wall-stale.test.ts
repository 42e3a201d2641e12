import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Live } from '../src/live/index.ts';
import { shot, violations } from './chromium.ts';
import { FakeBoard } from './fake/board.ts';
import { at, mixedRooms, NEEDS, room, suite } from './fake/mornings.ts';
import { Screens } from './screens.ts';

const DIST = join(import.meta.dirname, '..', 'dist');
const SIZE = { width: 1920, height: 1080 };
/** Rule 2's five seconds, and one more to see and say it. */
const LOUD_WITHIN_MS = 6_000;

let screens: Screens;
let board: FakeBoard;
let page: Page;

beforeAll(async () => {
  screens = await Screens.begin();
});
afterAll(() => screens.close());
beforeEach(async () => {
  board = new FakeBoard(DIST, [suite(), ...mixedRooms(16), ...NEEDS], at('07:04'));
  page = await screens.open(SIZE, 30_000);
  await page.goto(`${await board.start()}/wall`);
  await page.locator('main:not(.old) .clock', { hasText: '07:04' }).waitFor();
});
afterEach(async () => {
  await screens.clear();
  await board.stop();
});

const banner = () => page.locator('sunup-banner .band.stale');

async function expectLoud(): Promise<void> {
  const from = Date.now();
  await banner().waitFor({ timeout: LOUD_WITHIN_MS });
  expect(Date.now() - from).toBeLessThan(LOUD_WITHIN_MS);
  expect(await banner().innerText()).toContain('Not live since 07:04');
  const box = (await banner().boundingBox())!;
  expect(box.x).toBe(0);
  expect(box.width).toBe(SIZE.width);
}

describe('a wall that is not live', () => {
  it('shouldSaySoOverItsWholeWidthWhenHeartbeatsStopAndRecover', async () => {
    board.beating = false;
    await expectLoud();
    expect(await page.locator('.clock').innerText()).toBe('--:--');
    expect(await page.locator('.figure').allInnerTexts()).toEqual(['–', '–', '–', '–', '–']);
    expect(await violations(page)).toEqual([]);
    // Nothing on it counts any more, and it says of when it is.
    expect(await page.locator('h1').innerText()).toBe('as it was at 07:04');
    expect(await page.locator('.needs h2').innerText()).toBe('Needed someone at 07:04');
    for (const counting of ['.beyond', '.now', '.past']) {
      expect(await page.locator(counting).filter({ visible: true }).count()).toBe(0);
    }
    await shot(page, 'wall-stale');
    board.beating = true;
    await banner().waitFor({ state: 'detached' });
    expect(await page.locator('.clock').innerText()).toBe('07:04');
    expect(await page.locator('.figure').allInnerTexts()).toContain('+11');
  });

  it('shouldSaySoWhenTheBoardIsGoneAndComeBackByItself', async () => {
    const before = board.received.filter((message) => message.m === 'hello').length;
    board.beating = false;
    board.cut();
    await expectLoud();
    board.beating = true;
    await banner().waitFor({ state: 'detached' });
    expect(board.received.filter((message) => message.m === 'hello').length).toBeGreaterThan(
      before,
    );
  });

  it('shouldNotTakeHeartbeatsOfAnEarlierOwnerAsProof', async () => {
    board.phaseOfBeat = { epoch: 0 };
    await expectLoud();
  });

  it('shouldNotTakeHeartbeatsAsProofOfAPictureThatItDoesNotHave', async () => {
    board.phaseOfBeat = { n: 99 };
    await expectLoud();
    expect(board.received.some((message) => message.m === 'ask-view')).toBe(true);
  });

  it('shouldMoveItsMarkByHeartbeatsOnly', async () => {
    const angle = () => page.locator('sunup-mark .sun').getAttribute('style');
    const first = await angle();
    await expect.poll(angle, { timeout: 3_000 }).not.toBe(first);
    board.beating = false;
    await expectLoud();
    const stopped = await angle();
    board.frame([suite({ onTime: 3 }), room(0, '1', 'late', 12)]);
    await page.waitForFunction(() => {
      const wall = document.querySelector('sunup-wall') as unknown as { live: Live };
      return wall.live.list('suite')[0]?.onTime === 3;
    });
    expect(await angle()).toBe(stopped);
    // A picture without proof of life is not drawn either.
    expect(await page.locator('h1').innerText()).toBe('as it was at 07:04');
    board.beating = true;
    await page.locator('h1', { hasText: '3 of 16' }).waitFor();
    expect(await angle()).not.toBe(stopped);
  });
});
