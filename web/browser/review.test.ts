import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Board, startBoard } from './board.ts';
import { HEAD, take, touch } from './hands.ts';
import { complaints, openBrowser, shot, violations } from './chromium.ts';
import { printedPages } from './printed.ts';
import { comparesTwoPeriods, judged, saysThatItIsWorking } from './review-looks.ts';
import { saved } from './saved.ts';
import { WEST, wordsOfWest } from './west.ts';

let browser: Browser;
let board: Board;

beforeAll(async () => {
  [browser, board] = await Promise.all([openBrowser(), startBoard(['--empty'])]);
});
afterAll(async () => {
  await browser.close();
  await board.stop();
});

/** Half a year of six rooms: Mondays are slow, eyes are late, and from March on all is better. */
function history(): string {
  const rows = ['date,room,booked,started,service,cancelled,reason'];
  const day = new Date('2025-11-03T00:00:00Z');
  for (let d = 0; d < 180; d++, day.setUTCDate(day.getUTCDate() + 1)) {
    const weekday = day.getUTCDay();
    if (weekday === 0 || weekday === 6) continue;
    const date = day.toISOString().slice(0, 10);
    for (let room = 1; room <= 6; room++) {
      const chance = ((d * 31 + room * 17 + ((d * room) % 7) * 13) % 40) - 22;
      const late = Math.max(
        0,
        chance + (weekday === 1 ? 8 : 0) + (room > 4 ? 6 : 0) - (date >= '2026-03' ? 7 : 0),
      );
      const service = room > 4 ? 'eyes' : 'bones';
      const reason = late > 8 ? (room > 4 ? 'surgeon' : room > 2 ? 'patient' : 'anaesthesia') : '';
      rows.push(`${date},${room},07:30,07:${30 + Math.min(29, late)},${service},,${reason}`);
    }
  }
  return rows.join('\n');
}

/** By keys alone: how a figure is counted, and between what it may lie. */
async function readsWhatFiguresMean(page: Page): Promise<void> {
  const median = page.getByText('how it is counted').and(page.getByLabel(/: median$/));
  await median.focus();
  await page.keyboard.press('Enter');
  await page
    .getByText(/Half of all starts are no later than this/)
    .and(page.locator('p'))
    .waitFor();
  expect(await page.locator('.summary dd small').allInnerTexts()).toEqual([
    ...new Array(5).fill(expect.stringMatching(/^\d+\.\d to \d+\.\d$/)),
  ]);
  expect(await page.locator('p.test').first().innerText()).toMatch(
    /chi-square [\d.]+ on \d+ degrees of freedom, p .*(not adjusted|times as wide)/,
  );
  expect(await page.locator('main details.how').count()).toBeGreaterThan(12);
  expect(await violations(page)).toEqual([]);
  await median.click();
}

/** What stands in a table can be taken away as a file. */
async function savesItsTables(page: Page): Promise<void> {
  await page.getByText('All measures as a table').click();
  const measures = await saved(page, 'All measures as CSV');
  expect(measures).toMatch(/\r\nmedian,\d+\.\d\d,minutes,\d+\.\d\d,\d+\.\d\d,\d+,"?Half of all/);
  await page.getByText('All measures as a table').click();
  expect(await saved(page, 'Rooms by weekday as CSV')).toMatch(/\r\n6,Fri,\d+,\d+\.\d\d,/);
  const compared = await saved(page, 'Comparisons as CSV');
  expect(compared).toMatch(/\r\neyes,all others,\d+,\d+,\d+,starts within mornings,/);
  const days = JSON.parse(
    await saved(page, 'Minutes by cause and weekday, per start as JSON'),
  ) as Record<string, string>[];
  const all = days.find((row) => row['cause'] === 'all minutes late, per start');
  expect(Number(all?.['Mon'])).toBeGreaterThan(Number(all?.['Tue']));
}

/** The two pages of the issue, and the others when they are asked for. */
async function printsTwoPagesOrAll(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  const paper = { format: 'A4', preferCSSPageSize: true };
  await page.getByRole('button', { name: 'Print two pages' }).click();
  expect(await printedPages(page, 'review', paper)).toHaveLength(2);
  const letter = { ...paper, format: 'Letter' };
  expect(await printedPages(page, 'review-letter', letter)).toHaveLength(2);
  await page.getByRole('button', { name: 'Print with appendix' }).click();
  await page.emulateMedia({ media: 'print' });
  for (const part of ['How it is counted', 'Rooms by weekday', 'Compare honestly']) {
    expect(await page.getByRole('heading', { name: part }).isVisible()).toBe(true);
  }
  await page.emulateMedia({ media: null });
  const all = await printedPages(page, 'review-appendix', paper);
  expect(all.length).toBeGreaterThan(2);
  expect(all.length).toBeLessThan(6);
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
}

async function bring(page: Page, text: string): Promise<void> {
  await page
    .getByLabel(/history before Sunup/)
    .setInputFiles({ name: 'history.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
}

/** A screen of its own that shows nothing yet. */
async function screen(): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(25_000);
  return page;
}

describe('the review', () => {
  it('should take a history and show where its minutes went, to eyes, keys and paper', async () => {
    const page = await screen();
    const wrong = complaints(page);
    await page.goto(`${board.address}/review`);
    await page.getByText('Nothing is kept yet.').waitFor();
    await bring(page, 'date,room,booked,started\n2025-11-03,99,07:30,07:31\n');
    await page.getByText(/line 2, room/).waitFor();
    await bring(page, history());
    await page.getByText(/first cases on \d+ mornings started on time/).waitFor();

    await page.getByLabel('marked change', { exact: true }).fill('2026-03-01');
    await page.getByLabel('compare', { exact: true }).selectOption('change');
    await page
      .getByRole('row', { name: /from 2026-03-01/ })
      .getByText('differs')
      .first()
      .waitFor();
    await page.getByLabel('compare', { exact: true }).selectOption('service');
    await page.getByRole('row', { name: /eyes/ }).getByText('differs').first().waitFor();
    await page.getByLabel('put together').selectOption('reported');
    await page.getByText('surgeon').first().waitFor();
    expect(new URL(page.url()).searchParams.get('change')).toBe('2026-03-01');

    const chart = page.getByRole('img', { name: /^Share on time by period/ });
    await chart.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowRight');
    await page.getByText(/2025-11-10: \d+ %, \d+ of 30; limits/).waitFor();
    await page.getByText('Share on time as a table').click();
    expect(await page.getByRole('row', { name: /^2025-11-10/ }).count()).toBeGreaterThan(0);
    expect(await violations(page)).toEqual([]);
    await shot(page, 'review');
    await readsWhatFiguresMean(page);
    await savesItsTables(page);
    await judged(page);
    await printsTwoPagesOrAll(page);
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Share on time as JSON' }).click(),
    ]);
    expect(file.suggestedFilename()).toBe('share-on-time.json');
    const cut = await page.locator('svg.causes text').evaluateAll((all) =>
      all
        .filter((text) => {
          const [box, whole] = [text, text.closest('svg')!].map((e) => e.getBoundingClientRect());
          return box!.left < whole!.left || box!.right > whole!.right;
        })
        .map((text) => text.textContent),
    );
    expect(cut).toEqual([]);

    await page.getByLabel('room', { exact: true }).selectOption('5');
    await page.getByLabel('weekday', { exact: true }).selectOption('monday');
    await page.getByLabel('from', { exact: true }).fill('2026-04-01');
    await page
      .getByText(/figures of fewer than 10 are not shown/)
      .first()
      .waitFor();
    expect(wrong).toEqual([]);
  });

  it('should compare two periods that do not touch, and say when it is working', async () => {
    const page = await screen();
    const wrong = complaints(page);
    await page.goto(`${board.address}/review?split=periods`);
    await comparesTwoPeriods(page);
    await saysThatItIsWorking(page);
    // What was refused is told by the browser's console too.
    expect(wrong.filter((words) => !/400|503/.test(words))).toEqual([]);
  });

  it('should play a closed morning on the wall, by keys, and never as if it were live', async () => {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    const page = await context.newPage();
    page.setDefaultTimeout(25_000);
    await page.goto(`${board.address}/desk`);
    await take(page, `${HEAD}\n1,07:30,general,,,\n2,07:30,general,,,\n`);
    await touch(page, 'Close the morning…');
    await touch(page, 'Close it');
    await page.getByText('the morning is closed').first().waitFor();
    const wrong = complaints(page);
    await page.goto(`${board.address}/review`);
    await page.getByRole('button', { name: 'Make the facts anew' }).click();
    await page.getByText(/The morning of .* was the last that was closed/).waitFor();
    await page.getByText(/durations that it did not move/).click();
    await page
      .getByRole('row', { name: /nothing measured: the sheet's word stands/ })
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Play it' }).click();

    const past = page.getByRole('dialog', { name: /^Past morning, / });
    await past.getByText('It is over: nothing here happens now.', { exact: false }).waitFor();
    const band = await past.locator('.band').boundingBox();
    expect(band?.width).toBe(1280);
    const clock = past.locator('output');
    const first = await clock.innerText();
    await page.keyboard.press('ArrowRight');
    await past.getByText(/^paused at /).waitFor();
    expect(await clock.innerText()).not.toBe(first);
    await page.keyboard.press('ArrowLeft');
    expect(await clock.innerText()).toBe(first);
    await page.keyboard.press('End');
    expect(await past.locator('sunup-mark').count()).toBe(0);
    expect(await violations(page)).toEqual([]);
    await shot(page, 'past');
    await page.keyboard.press('Escape');
    await past.waitFor({ state: 'detached' });
    expect(wrong).toEqual([]);

    // The same figures where the site writes in the other way.
    const { english, pressure, clock: hours } = WEST;
    await page.route('**/api/site*', async (route) => {
      const response = await route.fetch();
      const site = (await response.json()) as object;
      await route.fulfill({ json: { ...site, style: { english, pressure, clock: hours } } });
    });
    await page.goto(`${board.address}/review?by=reported`);
    await page.getByText(/The morning of .* was the last that was closed/).waitFor();
    await page.getByText(/durations that it did not move/).click();
    await page
      .getByText(/anesthetic assessment/)
      .first()
      .waitFor();
    expect(await wordsOfWest(page, 'review-full')).toContain('anesthesia');
  });
});
