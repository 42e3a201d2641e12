import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { PartUnion } from '../src/generated/wire.ts';
import { complaints, shot, violations } from './chromium.ts';
import { FakeBoard } from './fake/board.ts';
import {
  at,
  calmRooms,
  mixedRooms,
  NEEDS,
  need,
  room,
  startedRooms,
  suite,
} from './fake/mornings.ts';
import { Screens } from './screens.ts';

const DIST = join(import.meta.dirname, '..', 'dist');
const SIZE = { width: 1920, height: 1080 };

/** Rooms that may be loud at once. */
const LOUD_MAX = 3;

let screens: Screens;
let board: FakeBoard;
let page: Page;

beforeAll(async () => {
  screens = await Screens.begin();
});
afterAll(() => screens.close());
afterEach(async () => {
  await screens.clear();
  await board.stop();
});

async function wall(parts: PartUnion[], clock: string, query = ''): Promise<string[]> {
  board = new FakeBoard(DIST, parts, at(clock));
  const address = await board.start();
  page = await screens.open(SIZE, 30_000);
  const found = complaints(page);
  await page.goto(`${address}/wall${query}`);
  await page.locator('main:not(.old)').waitFor();
  await page.evaluate(() => document.fonts.ready);
  return found;
}

const mixed = (count: number): PartUnion[] => [
  suite({ cases: count, onTime: Math.round(count * 0.69), quiet: Math.max(1, count >> 4) }),
  ...mixedRooms(count),
  ...NEEDS,
];

/** As long as a line's words can be. */
const LONGEST = 'patient on the way: waits for supervisor';

const longest = (parts: PartUnion[]): PartUnion[] =>
  parts.map((one) => (one.part === 'need' ? { ...one, words: LONGEST } : one));

/** Some of the rooms are outside the scale, neighbours too. */
const beyond = (count: number): PartUnion[] => [
  ...mixed(count).filter((one) => one.part !== 'room'),
  ...mixedRooms(count).map((one, i) =>
    i % 13 === 5 || i % 13 === 6 ? room(i, one.room, 'late', 31 + i * 3) : one,
  ),
];

/** Five lines of which nobody has taken any. */
const nobodyOnAny = (): PartUnion[] =>
  mixed(16).map((one) =>
    one.part === 'need' ? { ...need(one.rank, one.room, 'late', one.minutes + 5, one.words) } : one,
  );

const { onTime: _, ...NO_FORECAST } = suite({ quiet: 16 });

type State = [string, PartUnion[], string, string?];

const STATES: readonly State[] = [
  ['12-rooms', mixed(12), '07:04'],
  ['16-rooms', mixed(16), '07:04'],
  ['24-rooms', mixed(24), '07:04'],
  ['40-rooms', mixed(40), '07:04'],
  ['60-rooms', longest(mixed(60)), '07:14'],
  ['12-rooms-6-metres', mixed(12), '07:04', '?inches=55&metres=6'],
  ['16-rooms-6-metres', longest(mixed(16)), '07:21', '?inches=55&metres=6'],
  ['24-rooms-6-metres', mixed(24), '07:08', '?inches=55&metres=6'],
  ['40-rooms-6-metres', beyond(40), '07:08', '?inches=55&metres=6'],
  ['nobody-on-any', nobodyOnAny(), '07:08'],
  ['wrong-address', mixed(16), '06:44', '?inches=none'],
  ['nothing-planned', [suite({ phase: 'none', cases: 0, onTime: 0, quiet: 0 })], '06:00'],
  [
    'draft',
    [
      suite({ phase: 'draft', onTime: 0, quiet: 0, date: '2026-11-26' }),
      ...mixedRooms(16).map((one) =>
        room(one.order, one.room, 'ahead', 0, 5, {
          could10: undefined,
          could50: undefined,
          could90: undefined,
        }),
      ),
    ],
    '15:10',
  ],
  [
    'no-figures',
    [
      NO_FORECAST,
      ...mixedRooms(16).map((one) =>
        room(one.order, one.room, 'unheard', 0, 5, {
          could10: undefined,
          could50: undefined,
          could90: undefined,
        }),
      ),
    ],
    '06:10',
  ],
  [
    'asked-for',
    [
      ...mixed(16),
      ...NEEDS.slice(0, 3).map((need) => ({ ...need, help: true })),
      need(5, '10', 'help', 0, 'asks for someone, not urgent', { help: true }),
    ],
    '07:04',
  ],
  ['nothing-late', [suite({ onTime: 16, quiet: 0 }), ...calmRooms(16)], '07:09'],
  ['all-started', [suite({ onTime: 12, quiet: 0 }), ...startedRooms(16)], '08:02'],
  ['noon', [suite({ onTime: 12, quiet: 0 }), ...startedRooms(16)], '12:01'],
  ['closed', [suite({ phase: 'closed', onTime: 12, quiet: 0 }), ...startedRooms(16)], '12:30'],
];

describe('the wall in each of its states', () => {
  it.each(STATES)('shouldBeReadableAndBreakNoRule: %s', async (name, parts, clock, query) => {
    const found = await wall(parts, clock, query);
    await shot(page, `wall-${name}`);
    expect(await violations(page)).toEqual([]);
    expect(found).toEqual([]);
    const cut = await page
      .locator('sunup-needs .words')
      .evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth).length);
    expect(cut).toBe(0);
    expect(await page.locator('sunup-needs .loud').count()).toBeLessThanOrEqual(LOUD_MAX);
    const lines = await page.locator('sunup-needs .row').count();
    expect(await page.locator('.needs h2', { hasText: 'Needs someone' }).count()).toBe(
      lines > 0 ? 1 : 0,
    );
    if (name === 'asked-for') {
      const asking = page.locator('.needs').getByText(/asks for someone/);
      expect(await asking.allInnerTexts()).toHaveLength(4);
    }
  });
});
