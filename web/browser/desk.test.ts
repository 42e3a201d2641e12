import type { Server } from 'node:http';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { shot, violations } from './chromium.ts';
import { Screens } from './screens.ts';
import { StandIn } from './standin/board.ts';
import { LANDSCAPE, PORTRAIT, scrolls, smallTargets } from './standin/looked.ts';
import { MINUTE, morning, SEVEN } from './standin/morning.ts';
import { servePages } from './standin/pages.ts';

let screens: Screens;
let server: Server;
let address: string;
const boards: StandIn[] = [];

beforeAll(async () => {
  screens = await Screens.begin();
  ({ server, address } = await servePages());
});
afterAll(async () => {
  await screens.close();
  server.close();
});
afterEach(async () => {
  boards.splice(0).forEach((b) => b.stop());
  await screens.clear();
});

async function desk(size = LANDSCAPE): Promise<{ page: Page; board: StandIn }> {
  const board = new StandIn(morning(12));
  boards.push(board);
  const page = await screens.open(size, 6_000);
  await board.on(page);
  await page.goto(`${address}/desk`);
  await page.getByText('Everything is sent').waitFor();
  return { page, board };
}

describe('desk', () => {
  it('should answer the call of a room that is stuck, beside taking its holdup', async () => {
    const { page, board } = await desk();
    await page.getByText('asks for someone').waitFor();
    for (const part of board.parts.values()) {
      if (part.part === 'person' && part.role === 'technician') {
        board.set({ ...part, arrivedAt: SEVEN - 30 * MINUTE });
      }
    }
    await page.getByRole('button', { name: /^Take it: room 5/ }).waitFor();
    await page.getByRole('button', { name: 'Someone goes to room 5' }).click();
    await page.getByLabel('who goes to room 5').selectOption('T1');
    await page.getByRole('button', { name: 'Goes to 5' }).click();
    await expect
      .poll(() => board.taken.at(-1))
      .toEqual({ type: 'answer-help', room: '5', by: 'T1' });
  });

  it('should tell what changed since it was looked at, until somebody has seen it', async () => {
    const { page, board } = await desk();
    const found = [...board.parts.values()].find((p) => p.part === 'room' && p.room === '3')!;
    if (found.part !== 'room') throw new Error('no room 3');
    board.set({ ...found, standing: 'stuck', word: 'stuck' });
    await page.getByRole('button', { name: 'changed (1)' }).click();
    await page.getByText(/→ stuck/).waitFor();
    // The morning's time, not that of whoever runs this.
    await page.getByText(/^Changed since 07:0\d$/).waitFor();
    await shot(page, 'desk-changed');
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Seen: mark from now' }).click();
    await page.getByText('nothing that matters has changed').waitFor();
    await page.getByRole('button', { name: 'changed', exact: true }).waitFor();
  });

  it('should agree a later start with what the screen showed', async () => {
    const { page, board } = await desk();
    await page.getByRole('button', { name: 'room 3', exact: true }).click();
    await page.getByLabel('agreed start').fill('7:50');
    await page.getByRole('button', { name: 'Agree a later start' }).click();
    await expect
      .poll(() => board.taken.at(-1))
      .toEqual({
        type: 'agree-later',
        caseId: 'C3',
        at: SEVEN + 50 * MINUTE,
      });
    await page.getByText('room 3: 07:50 agreed').first().waitFor();
  });

  it('should say what is wrong with a time and send nothing', async () => {
    const { page, board } = await desk();
    await page.getByRole('button', { name: 'room 3', exact: true }).click();
    await page.getByLabel('agreed start').fill('later');
    await page.getByRole('button', { name: 'Agree a later start' }).click();
    const message = await page
      .getByLabel('agreed start')
      .evaluate((input) => (input as HTMLInputElement).validationMessage);
    expect(message).toBe('a time of day, like 07:20');
    expect(board.taken).toEqual([]);
  });

  it('should name what a swap voids before it swaps', async () => {
    const { page, board } = await desk();
    board.set({ ...board.item('case:C3/drugs.drawn'), state: 'good', since: SEVEN });
    await page.getByRole('button', { name: 'room 3', exact: true }).click();
    await page.getByLabel('swap with room').selectOption('7');
    await page.getByRole('button', { name: 'Look at a swap…' }).click();
    await page.getByText('discard: drugs drawn').waitFor();
    await shot(page, 'desk-swap');
    expect(board.taken).toEqual([]);
    await page.getByRole('button', { name: 'Swap 3 and 7' }).click();
    await expect
      .poll(() => board.taken.at(-1))
      .toEqual({ type: 'swap-cases', one: 'C3', other: 'C7' });
  });

  it('should take a holdup with what was said and when to look again', async () => {
    const { page, board } = await desk();
    await page.getByRole('button', { name: /^Take it: room 5/ }).click();
    await page.getByLabel('what was said, no names').fill('technician comes after 9');
    await page.getByRole('button', { name: 'look again 07:10' }).click();
    await expect
      .poll(() => board.taken.at(-1))
      .toEqual({
        type: 'take-holdup',
        room: '5',
        holdup: 'h1',
        said: 'technician comes after 9',
        lookAgainAt: SEVEN + 10 * MINUTE,
      });
  });

  it('should show what changed meanwhile instead of what was meant', async () => {
    const { page, board } = await desk();
    board.refusing = {
      type: 'claim',
      code: 'changed-meanwhile',
      words: 'It changed meanwhile: by holding at 06:59. Look again, then decide.',
    };
    await page.getByRole('button', { name: 'equipment' }).click();
    await page.getByLabel('ultrasound 1: room').selectOption('2');
    await page.getByRole('button', { name: 'Is there' }).click();
    await page.getByText('It changed meanwhile: by holding at 06:59.').waitFor();
    await page.getByText('not taken', { exact: true }).waitFor();
    await shot(page, 'desk-refused');
  });

  it('should be usable by keyboard alone', async () => {
    const { page, board } = await desk();
    await page.getByRole('button', { name: 'people' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'anaesthetist of 5 arrived' }).focus();
    await page.keyboard.press('Space');
    await expect.poll(() => board.taken.at(-1)?.type).toBe('arrive');
  });

  for (const [name, size] of [
    ['landscape', LANDSCAPE],
    ['portrait', PORTRAIT],
  ] as const) {
    it(`should have no small target and no axe violation in any panel, ${name}`, async () => {
      const { page } = await desk(size);
      const look = async (state: string) => {
        await shot(page, `desk-${state}-${name}`);
        if (size === LANDSCAPE) {
          expect(await scrolls(page), state).toBe(false);
        }
        expect(await smallTargets(page, 48), state).toEqual([]);
        expect(await violations(page), state).toEqual([]);
      };
      await look('needs');
      await page.getByRole('button', { name: /^Take it: room 5/ }).click();
      await look('take');
      await page.getByRole('button', { name: 'room 4', exact: true }).first().click();
      await look('room');
      await page.getByRole('button', { name: 'people' }).click();
      await page.getByRole('button', { name: 'anaesthetist of 5: more' }).click();
      await look('people');
      await page.getByRole('button', { name: 'equipment' }).click();
      await look('things');
      await page.getByRole('button', { name: 'case list' }).click();
      await look('list');
      await page.getByRole('button', { name: 'notes' }).click();
      await look('notes');
      await page.getByRole('button', { name: 'try on a copy' }).click();
      await look('copy');
    });
  }
});
