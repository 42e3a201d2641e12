import type { Server } from 'node:http';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { SuitePart } from '../src/generated/wire.ts';
import { StandIn } from './standin/board.ts';
import { shot, violations } from './chromium.ts';
import { Screens } from './screens.ts';
import { LANDSCAPE, PORTRAIT, smallTargets } from './standin/looked.ts';
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

async function holding(size = LANDSCAPE): Promise<{ page: Page; board: StandIn }> {
  const board = new StandIn(morning(12));
  boards.push(board);
  const page = await screens.open(size, 6_000);
  await board.on(page);
  await page.goto(`${address}/holding`);
  await page.getByText('Everything is sent').waitFor();
  return { page, board };
}

describe('holding', () => {
  it('should say that figures are old when no newer ones come', async () => {
    const { page, board } = await holding();
    const suite = board.parts.get('suite') as SuitePart;
    board.set({ ...suite, figuresOf: SEVEN - 10 * MINUTE });
    await page.getByText('figures of 06:50, no newer ones').waitFor();
    expect(await violations(page)).toEqual([]);
  });

  it('should take a case from arrived to left in eight touches', async () => {
    const { page, board } = await holding();
    const touches = [
      'arrived',
      'papers',
      'consent',
      'assessment',
      'drip',
      'surgeon',
      'sent for',
      'left',
    ];
    for (const [i, name] of touches.entries()) {
      const cell = new RegExp(`^room 7 ${name}( waiting|$)`);
      await page.getByRole('button', { name: cell }).click();
      await expect.poll(() => board.taken.length).toBe(i + 1);
    }
    expect(board.taken.map((c) => c.type)).toEqual([
      ...Array<string>(6).fill('good'),
      'reach',
      'good',
    ]);
    await shot(page, 'holding-touched');
  });

  it('should take "phoned, says 07:20" and take a touch back', async () => {
    const { page, board } = await holding();
    await page.getByRole('button', { name: 'room 3: more' }).click();
    await page.getByRole('button', { name: /^surgeon seen in the building/ }).click();
    await page.getByRole('button', { name: '07:20', exact: true }).click();
    await page.getByText('says 07:20').waitFor();
    expect(board.taken.at(-1)).toMatchObject({ type: 'expect-item', at: SEVEN + 20 * MINUTE });
    await page.getByRole('button', { name: 'room 3 papers', exact: true }).click();
    await page.getByRole('button', { name: 'Take back' }).click();
    await expect.poll(() => board.taken.at(-1)?.type).toBe('undo');
  });

  for (const [name, size] of [
    ['landscape', LANDSCAPE],
    ['portrait', PORTRAIT],
  ] as const) {
    it(`should have large targets and no axe violation, ${name}`, async () => {
      const { page, board } = await holding(size);
      const look = async (state: string) => {
        await shot(page, `holding-${state}-${name}`);
        expect(await smallTargets(page, 48), state).toEqual([]);
        expect(await violations(page), state).toEqual([]);
      };
      for (const room of ['1', '2', '4', '6']) {
        const set = (key: string, more: object) =>
          board.set({ ...board.item(`case:C${room}/${key}`), ...more });
        set('patient.arrived', { state: 'good', since: SEVEN - 30 * MINUTE });
        set('patient.papers', { state: 'good', since: SEVEN - 12 * MINUTE });
        set('patient.consent', { state: 'fault', what: 'paper missing' });
        set('surgeon.seen', { expectedAt: SEVEN - 2 * MINUTE });
        set('patient.drip', { state: 'left-out', since: SEVEN });
        set('patient.assessment', { state: 'in-hand', since: SEVEN });
      }
      await look('start');
      await page.getByRole('button', { name: 'room 3: more' }).click();
      await look('row');
      await page.getByRole('button', { name: /^identity, fasting/ }).click();
      await look('item');
    });
  }
});
