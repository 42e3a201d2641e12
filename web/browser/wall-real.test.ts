import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Board, startBoard } from './board.ts';
import { complaints, shot, violations } from './chromium.ts';
import { Screens } from './screens.ts';

const SIZE = { width: 1920, height: 1080 };
const LOUD_WITHIN_MS = 6_000;
const REAL_MS = 50_000;

let screens: Screens;
let boards: Board[] = [];

vi.setConfig({ testTimeout: 120_000 });

beforeAll(async () => {
  screens = await Screens.begin();
});
afterEach(async () => {
  await screens.clear();
  for (const board of boards) await board.stop();
  boards = [];
});
afterAll(() => screens.close());

async function start(args: readonly string[], data?: string): Promise<Board> {
  const board = await startBoard(args, data);
  boards.push(board);
  return board;
}

async function open(address: string): Promise<{ page: Page; found: string[] }> {
  const page = await screens.open(SIZE, REAL_MS);
  const found = complaints(page);
  await page.goto(`${address}/wall`);
  await page.locator('main:not(.old)').waitFor();
  return { page, found };
}

describe('the wall on a real board', () => {
  it('shouldShowTheRoomsOfTheDemoAndWhoNeedsSomeone', async () => {
    const board = await start(['--speed', '30', '--seed', '1']);
    const { page, found } = await open(board.address);
    await page.locator('g.room').nth(11).waitFor();
    expect(await page.locator('g.room').count()).toBe(12);
    await page.locator('g.room.shape-lens').first().waitFor();
    await page.locator('.row').first().waitFor();
    await shot(page, 'wall-real');
    expect(await violations(page)).toEqual([]);
    expect(found).toEqual([]);
  });

  it('shouldSayThatNothingIsPlannedOnAnEmptyBoard', async () => {
    const board = await start(['--empty']);
    const { page, found } = await open(board.address);
    await page.getByText('Nothing is planned').waitFor();
    await shot(page, 'wall-real-empty');
    expect(found).toEqual([]);
  });

  it('shouldBeLoudWhenThePlugIsPulledAndComeBackTheSame', async () => {
    const first = await start(['--no-rehearsal', '--speed', '1']);
    const { page } = await open(first.address);
    await page.locator('g.room').nth(11).waitFor();
    const numbers = () => page.locator('g.room .number').allTextContents();
    const before = await numbers();
    await first.kill();
    const band = page.locator('sunup-banner .band.stale');
    await band.waitFor({ timeout: LOUD_WITHIN_MS });
    expect((await band.boundingBox())!.width).toBe(SIZE.width);
    const { port } = new URL(first.address);
    await start(['--no-rehearsal', '--speed', '1', '--port', port], first.data);
    await band.waitFor({ state: 'detached' });
    expect(await numbers()).toEqual(before);
  });
});
