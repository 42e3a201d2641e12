import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Board } from './board.ts';
import { complaints, shot, violations } from './chromium.ts';
import { emptyBoard, inMinutes } from './daytime.ts';
import { HEAD, take, touch } from './hands.ts';
import { Screens } from './screens.ts';
import { signOn } from './set-up.ts';
import { LANDSCAPE, overflowing, scrolls, smallTargets } from './standin/looked.ts';

let screens: Screens;
let board: Board;

beforeAll(async () => {
  screens = await Screens.begin();
  board = await emptyBoard();
});
afterAll(async () => {
  await screens.close();
  await board.stop();
});

async function screen(path: string): Promise<Page> {
  const page = await screens.open(LANDSCAPE, 60_000);
  await page.goto(`${board.address}${path}`);
  return page;
}

describe('a case that a new list moves to a free room', () => {
  it('should be confirmed in both rooms, each told what stays and what it lacks', async () => {
    const desk = await screen('/desk');
    const wrong = complaints(desk);
    const at = inMinutes(45);
    const head = `case,${HEAD}`;
    await take(
      desk,
      [head, `A,1,${at},general,,hernia,surgery`, `B,2,${at},general,,hip,orthopaedics`].join('\n'),
    );
    const [one, two] = [await screen('/station/1'), await screen('/station/2')];
    await signOn(one);
    await touch(one, 'Airway: gone through');
    await one.getByRole('button', { name: /^Airway gone through/ }).waitFor();

    await touch(desk, 'case list');
    const moved = [head, `A,2,${at},general,block,hernia,surgery`].join('\n');
    await desk.getByLabel('the case list as CSV').fill(moved);
    await touch(desk, 'Look at it first');
    await desk.getByRole('heading', { name: 'This adds 0, changes 1, cancels 1' }).waitFor();
    await shot(desk, 'real-desk-list-moves');
    await touch(desk, 'Take this list');

    await one.getByText(/The case of this room was moved to 2 at \d\d:\d\d/).waitFor();
    await two.getByText(/Another case is here: moved from 1 at \d\d:\d\d/).waitFor();
    const lacks = two.getByText(/^not yet done here:/);
    expect(await lacks.innerText()).toContain('airway tubes');
    expect(await lacks.innerText()).not.toContain('block');
    for (const [station, name] of [
      [one, 'real-station-case-went'],
      [two, 'real-station-case-came'],
    ] as const) {
      await shot(station, name);
      expect(await scrolls(station)).toBe(false);
      expect(await overflowing(station)).toEqual([]);
      expect(await smallTargets(station, 48)).toEqual([]);
      expect(await violations(station)).toEqual([]);
    }
    await touch(desk, /^needs/);
    await desk.getByText(/the move of its case from 1 is not yet confirmed/).waitFor();
    await touch(two, 'Move confirmed');
    await lacks.waitFor({ state: 'detached' });
    await touch(one, 'Move confirmed');
    await desk.getByText(/is not yet confirmed in the room/).waitFor({ state: 'detached' });
    expect(wrong).toEqual([]);
  });
});
