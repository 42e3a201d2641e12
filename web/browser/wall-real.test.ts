import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Board, startBoard } from './board.ts';
import { complaints, shot, violations } from './chromium.ts';
import { Screens } from './screens.ts';

const SIZE = { width: 1920, height: 1080 };
const PATIENCE_MS = 50_000;

let screens: Screens;
let board: Board;

beforeAll(async () => {
  [screens, board] = await Promise.all([
    Screens.begin(),
    startBoard(['--speed', '30', '--seed', '1']),
  ]);
});
afterAll(async () => {
  await screens.close();
  await board.stop();
});

describe('the wall on a real board', () => {
  it('shouldShowTheRoomsOfTheDemoAndWhoNeedsSomeone', async () => {
    const page = await screens.open(SIZE, PATIENCE_MS);
    const found = complaints(page);
    await page.goto(`${board.address}/wall`);
    await page.locator('main:not(.old)').waitFor();
    await page.locator('g.room').nth(11).waitFor();
    expect(await page.locator('g.room').count()).toBe(12);
    await page.locator('g.room.shape-lens').first().waitFor();
    await page.locator('.row').first().waitFor();
    await shot(page, 'wall-real');
    expect(await violations(page)).toEqual([]);
    expect(found).toEqual([]);
  });
});
