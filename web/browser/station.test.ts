import type { Server } from 'node:http';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { CommandUnion, ItemPart, RoomPart, SuitePart } from '../src/generated/wire.ts';
import { StandIn } from './standin/board.ts';
import { shot, violations } from './chromium.ts';
import { Screens } from './screens.ts';
import { LANDSCAPE, overflowing, PORTRAIT, scrolls, smallTargets } from './standin/looked.ts';
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

async function station(size = LANDSCAPE, room = '5'): Promise<{ page: Page; board: StandIn }> {
  const board = new StandIn(morning(12));
  boards.push(board);
  const page = await screens.open(size, 6_000);
  await board.on(page);
  await page.goto(`${address}/station/${room}`);
  await page.getByText('Everything is sent').waitFor();
  return { page, board };
}

/** Arrived, and a sweep touched while the board gives no answer. */
async function touchUnanswered(
  page: Page,
  board: StandIn,
  what: string | RegExp = 'Suction: gone through',
): Promise<void> {
  await page.getByRole('button', { name: /^I am here/ }).click();
  await page.getByText('arrived 07:0').waitFor();
  board.silent = true;
  await page.getByRole('button', { name: what }).click();
  await page.getByText(/[1-9] not sent/).waitFor();
}

/** Touches that are counted: a button, or a number typed with its own enter button. */
class Hands {
  touches = 0;
  private readonly page: Page;
  constructor(page: Page) {
    this.page = page;
  }

  async touch(name: string | RegExp): Promise<void> {
    this.touches++;
    await this.page.getByRole('button', { name }).first().click();
  }

  async number(digits: string, enter: RegExp): Promise<void> {
    this.touches++;
    for (const digit of digits) {
      await this.page.getByRole('button', { name: digit, exact: true }).click();
    }
    await this.page.getByRole('button', { name: enter }).click();
  }
}

describe('station', () => {
  it('should take a normal adult set-up in at most ten touches, numbers included', async () => {
    const { page, board } = await station();
    board.set({ ...person(board, 'T1'), arrivedAt: SEVEN });
    const hands = new Hands(page);

    await hands.touch(/^I am here/);
    await hands.touch('Machine: gone through');
    await hands.number('40', /^40 mL\/min/);
    await shot(page, 'station-cylinder');
    await hands.number('1850', /^1,850 psi, closed again/);
    await hands.number('32', /^32 cmH2O/);
    await hands.touch(/^Rest gone through/);
    await hands.touch('Drugs: gone through');
    await hands.touch(/^technician/);
    await hands.touch('at hand');
    await hands.touch(/^Report ready/);

    await page.getByText(/reported 07:0\d by anaesthetist, nothing open/).waitFor();
    await shot(page, 'station-ready');
    const open = [...board.parts.values()].filter(
      (p) => p.part === 'item' && p.room === '5' && p.state !== 'good' && isSetUp(p.section),
    );
    expect(open).toEqual([]);
    expect(hands.touches).toBeLessThanOrEqual(10);
    expect(types(board)).toContain('report-ready');
  });
});

function person(board: StandIn, id: string) {
  return board.parts.get(`person/${id}`) as Extract<
    ReturnType<StandIn['parts']['get']>,
    { part: 'person' }
  >;
}

function isSetUp(section: string): boolean {
  return ['machine', 'suction', 'monitors', 'airway', 'iv', 'drugs', 'special'].includes(section);
}

function types(board: StandIn): CommandUnion['type'][] {
  return board.taken.map((c) => c.type);
}

describe('station as it looks', () => {
  for (const [name, size] of [
    ['landscape', LANDSCAPE],
    ['portrait', PORTRAIT],
  ] as const) {
    it(`should need no scrolling, have large targets and no axe violation, ${name}`, async () => {
      const { page, board } = await station(size);
      const look = async (state: string) => {
        await shot(page, `station-${state}-${name}`);
        expect(await scrolls(page), state).toBe(false);
        const cut = await overflowing(page);
        expect(cut, state).toEqual([]);
        expect(await smallTargets(page, 56), state).toEqual([]);
        expect(await violations(page), state).toEqual([]);
      };
      await look('start');

      await page.getByRole('button', { name: /^I am here/ }).click();
      board.set({ ...board.item('case:C5/airway.tubes'), state: 'fault', what: 'cuff leaks' });
      board.set({ ...board.item('room:5/machine.bag'), state: 'in-hand', stillGoing: true });
      board.set({
        ...board.item('case:C5/drugs.drawn'),
        state: 'good',
        since: SEVEN - 220 * MINUTE,
        lapsesAt: SEVEN + 20 * MINUTE,
      });
      await page.getByRole('button', { name: 'Suction: gone through' }).click();
      await page.getByText(/gone through 07:0/).waitFor();
      await look('work');

      await page
        .getByRole('button', { name: /^Machine bag since/ })
        .first()
        .click();
      await look('section');
      // A site's section with more than fits: the others are one touch away, not a scroll.
      const bag = board.item('room:5/machine.bag');
      for (const one of ['x', 'y']) board.set({ ...bag, key: `item/${one}`, item: one, order: 8 });
      await page.getByRole('button', { name: 'Next 2 of 11' }).click();
      await look('section-next');
      await page.getByRole('button', { name: 'First 9 of 11' }).click();
      await page.getByRole('button', { name: /spare oxygen source: more/ }).click();
      await look('item');
      await page.getByRole('button', { name: 'Close', exact: true }).click();
      await page.getByRole('button', { name: 'Close machine' }).click();
      await page.getByRole('button', { name: 'Monitors: all but…' }).click();
      await page.getByRole('button', { name: /alarms audible: not done/ }).click();
      await look('all-but');
      await page.getByRole('button', { name: 'Close monitors' }).click();
      await page.getByRole('button', { name: 'Machine: gone through' }).click();
      await look('number');
      await page.getByRole('button', { name: 'Close' }).first().click();
      await page.getByRole('button', { name: 'Send someone, not urgent' }).click();
      await look('help');
      await page.getByRole('button', { name: 'Close' }).first().click();
      await page.getByRole('button', { name: /^Room and team/ }).click();
      await look('beside');
      await page.getByRole('button', { name: /^anaesthetist of 5/ }).click();
      await look('who');
    });
  }

  it('should show a refusal in the server’s words and never as done', async () => {
    const { page, board } = await station();
    await page.getByRole('button', { name: /^I am here/ }).click();
    await page.getByText('arrived 07:0').waitFor();
    board.refusing = { type: 'sweep', code: 'evidence-missing', words: 'Say the leak first.' };
    await page.getByRole('button', { name: 'Suction: gone through' }).click();
    await page.getByText('Say the leak first.').waitFor();
    expect(await page.getByRole('button', { name: 'Suction: gone through' }).count()).toBe(1);
    await shot(page, 'station-refused');
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'I have read it' }).click();
    expect(await page.getByText('Say the leak first.').count()).toBe(0);
  });

  it('should show a refusal also when the page was loaded again before it came', async () => {
    const { page, board } = await station();
    await touchUnanswered(page, board);
    board.refusing = { type: 'sweep', code: 'evidence-missing', words: 'Say the leak first.' };
    await page.reload();
    board.silent = false;
    await page.getByText('Say the leak first.').waitFor({ timeout: 20_000 });
    await page.getByText(/^Not taken: suction gone through, touched 07:0\d/i).waitFor();
    await shot(page, 'station-refused-late');
    expect(await violations(page)).toEqual([]);
  });

  it('should tell a refused touch for the rest once, though it was several commands', async () => {
    const { page, board } = await station();
    await touchUnanswered(page, board, /^Rest gone through/);
    await page.getByText(/[3-9] not sent/).waitFor();
    board.refusing = { type: 'sweep', code: 'not-open', words: 'The morning is closed.' };
    await page.reload();
    board.silent = false;
    await page.getByText('Everything is sent').waitFor({ timeout: 20_000 });
    expect(await page.getByText('The morning is closed.').count()).toBe(1);
    await page.getByRole('button', { name: 'I have read it' }).click();
    expect(await page.getByText('The morning is closed.').count()).toBe(0);
  });

  it('should say that figures are old, and that nobody goes yet though the room is stuck', async () => {
    const { page, board } = await station();
    await page.getByText('nobody goes yet').waitFor();
    const suite = board.parts.get('suite') as SuitePart;
    board.set({ ...suite, figuresOf: SEVEN - 10 * MINUTE });
    await page.getByText('figures of 06:50, no newer ones').waitFor();
    expect(await scrolls(page)).toBe(false);
    expect(await violations(page)).toEqual([]);
    await shot(page, 'station-old-figures');
  });

  it('should say in a sentence that a room has no case, and ask nothing there', async () => {
    const { page } = await station(LANDSCAPE, '77');
    await page.getByText('This morning has no room 77: look at the address').waitFor();
    expect(await page.getByRole('button').count()).toBe(0);
    expect(await page.getByRole('img', { name: 'moves while the board is live' }).count()).toBe(1);
    expect(await violations(page)).toEqual([]);
  });

  it('should say that a touch is not sent while the board is away, and lose nothing', async () => {
    const { page, board } = await station();
    await touchUnanswered(page, board);
    await page.getByText(/Not live since/).waitFor({ timeout: 10_000 });
    await shot(page, 'station-stale');
    expect(await scrolls(page)).toBe(false);
    expect(await violations(page)).toEqual([]);
    expect(board.item('room:5/suction.strong').state).toBe('open');
    board.silent = false;
    await page.getByText('Everything is sent').waitFor({ timeout: 20_000 });
    expect(types(board)).toEqual(['arrive', 'sweep']);
  });

  it('should show the last mornings only after today’s reading, and tell a slow leak', async () => {
    const { page, board } = await station();
    const asked: string[] = [];
    const days = [1900, 1870, 1850, 1820, 1790, 1760, 1740, 1710].map((value, i) => ({
      date: `2026-11-${19 + i}`,
      value,
    }));
    const slow = { from: 1900, to: 1710, perMorning: -27, mornings: 8 };
    const { item, name, asks } = board.item('room:5/machine.cylinder');
    const series = { room: '5', item: item.split('/')[1], name, ...asks, days, slow };
    await page.route('**/api/readings?**', async (route) => {
      asked.push(route.request().url());
      await route.fulfill({ json: { series: [series] } });
    });
    await page.getByRole('button', { name: /^Machine 9 things/ }).click();
    await page.getByRole('button', { name: /^backup oxygen cylinder.*more/ }).click();
    expect(await page.locator('.plot').count()).toBe(0);
    expect(asked).toEqual([]);
    board.set({
      ...board.item('room:5/machine.cylinder'),
      state: 'good',
      evidence: { kind: 'number', value: 1710, unit: 'psi', undone: true },
    });
    await page.locator('.plot').waitFor();
    for (const [form, size] of [
      ['portrait', PORTRAIT],
      ['landscape', LANDSCAPE],
    ] as const) {
      await page.setViewportSize(size);
      await shot(page, `station-plot-${form}`);
    }
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByText('falls slowly, 1,900 to 1,710 psi in 8 mornings').waitFor();
    await shot(page, 'station-slow');
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Tell the technician' }).click();
    await page.getByRole('button', { name: 'Technician told' }).waitFor();
    // The page says it as soon as it is kept here; the board has it a moment later.
    await expect.poll(() => board.taken.at(-1)).toMatchObject({ type: 'ask-help', room: '5' });
    expect(asked).toHaveLength(1);
  });

  it('should never refuse "starting now" and name what is open', async () => {
    const { page, board } = await station();
    await page.getByRole('button', { name: /^wheels in/ }).click();
    await page.getByText(/wheels in with \d+ open: /).waitFor();
    await expect.poll(() => types(board)).toEqual(['reach']);
    board.set({ ...(board.parts.get('room/5') as RoomPart), startedAt: SEVEN + MINUTE });
    await page.getByText('started 07:01').waitFor();
    await shot(page, 'station-started');
    const bag = board.parts.get('item/room:5/machine.bag') as ItemPart;
    board.set({ ...bag, state: 'good', goodUntil: SEVEN + 20 * 60 * MINUTE });
    await page.getByRole('button', { name: /^For the next case here/ }).click();
    await page.getByText('until 03:00 tomorrow').waitFor();
    for (const size of [PORTRAIT, LANDSCAPE]) {
      await page.setViewportSize(size);
      await shot(page, `station-next-case-${size.width}`);
      expect(await overflowing(page)).toEqual([]);
    }
    expect(await violations(page)).toEqual([]);
  });
});
