import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { shot, violations } from './chromium.ts';
import { saved } from './saved.ts';

/** A board that was judged takes the most room on paper: too hopeful early, a better guide later. */
export async function judged(page: Page): Promise<void> {
  const skillOf = (skill: number): object => ({
    n: 420,
    board: 0.2,
    other: 0.2,
    skill,
    interval: { lower: skill - 0.17, upper: skill + 0.13 },
  });
  const large = (off: number, verdict: string): object => ({
    said: 0.42 + off,
    came: 0.42,
    off: {
      verdict,
      value: off,
      interval: { lower: off - 0.06, upper: off + 0.06 },
      p: 0.01,
      adjusted: 0.02,
    },
  });
  const scoreAt = (before: number): object => ({
    n: 480,
    mornings: 40,
    brier: {
      score: 0.2,
      base: 0.3,
      reliability: 0.04,
      resolution: 0.05,
      uncertainty: 0.21,
      within: 0,
    },
    brierInterval: { lower: 0.18, upper: 0.22 },
    spiegelhalter: 6.6,
    large: before > 20 ? large(0.23, 'DIFFERS') : large(before > 10 ? 0.02 : -0.2, 'DIFFERS'),
    curve: Array.from({ length: 10 }, (_, i) => {
      const said = i / 10 + 0.05;
      return {
        from: i / 10,
        to: i / 10 + 0.1,
        n: 48,
        said,
        came: said,
        interval: { lower: 0, upper: 1 },
      };
    }),
    overAverage: skillOf(before > 20 ? -0.03 : 0.3),
    overPercentDone: skillOf(before > 20 ? -0.03 : 0.25),
    named: { x: 30, n: 120, share: 0.25, interval: { lower: 0.21, upper: 0.3 } },
  });
  await page.route('**/api/review/trial?*', (route) => {
    const before = Number(new URL(route.request().url()).searchParams.get('before'));
    const all = scoreAt(before);
    return route.fulfill({
      json: { minutesBefore: before, forecasts: 480, recomputed: 0, all, deskActed: all },
    });
  });
  await page.route('**/api/review/trial-apart?*', (route) =>
    route.fulfill({
      json: {
        split: 'ROOM',
        moments: [60, 40, 20, 10].map((minutesBefore) => ({
          minutesBefore,
          groups: Array.from({ length: 6 }, (_, i) =>
            i === 5
              ? { name: '6', forecasts: 7, mornings: 7 }
              : {
                  name: String(i + 1),
                  forecasts: 80,
                  mornings: 80,
                  large: large(i / 20, i > 2 ? 'DIFFERS' : 'NONE_SEEN'),
                  overAverage: { verdict: 'NONE_SEEN', value: 0.1, p: 0.2, adjusted: 0.9 },
                },
          ),
        })),
      },
    }),
  );
  await page.getByLabel('forecasts', { exact: true }).selectOption('40');
  await page.getByText('3 % worse (20 % worse to 10 % better), on 420 forecasts').first().waitFor();
  await page.getByText('All figures are of this choice.').waitFor();
  expect(await page.locator('.verdict li').allInnerTexts()).toEqual([
    "At 60 and 40 minutes before the target it was too hopeful: it said on time for 65 in 100, and 42 came. Beside the site's average and percent done it is not seen to be better or worse.",
    "At 20 minutes before the target it was too hopeful: it said on time for 44 in 100, and 42 came. It was a better guide than the site's average and than percent done.",
    "At 10 minutes before the target it was too gloomy: it said on time for 22 in 100, and 42 came. After 480 of these forecasts the desk acted, which alone makes a board look gloomy. It was a better guide than the site's average and than percent done.",
  ]);
  const rooms = page.getByRole('region', { name: 'The board by room' });
  await rooms.getByRole('row', { name: /^6 too few to say/ }).waitFor();
  await rooms.getByText('said 62, came 42: too hopeful +20 (+14 to +26)').first().waitFor();
  expect(await saved(page, 'The board by room as CSV')).toMatch(
    /\r\n5,60,80,80,62\.0,42\.0,20\.0,14\.0,26\.0,0\.0200,too hopeful,10\.0,/,
  );
  expect(await saved(page, 'The verdict by moment as JSON')).toContain('"in words": "too hopeful"');
  expect(await violations(page)).toEqual([]);
  await page
    .getByRole('heading', { name: 'Whether to believe the board' })
    .scrollIntoViewIfNeeded();
  await shot(page, 'review-verdict');
}

/** Two periods with dates of their own, by what is asked, refused, mended and read. */
export async function comparesTwoPeriods(page: Page): Promise<void> {
  await page.getByText('Give both dates of both periods.').waitFor();
  const dates = {
    'one period, from': '2025-11-03',
    'one period, to': '2025-12-31',
    'less the other, from': '2025-12-15',
    'less the other, to': '2026-04-30',
  };
  for (const [label, date] of Object.entries(dates)) {
    await page.getByLabel(label, { exact: true }).fill(date);
  }
  await page
    .getByRole('alert')
    .filter({
      hasText: /The two periods overlap: 2025-12-15 to 2025-12-31 lie in both.*end before/,
    })
    .waitFor();
  expect(await page.getByLabel('one period, to', { exact: true }).inputValue()).toBe('2025-12-31');
  expect(await page.getByText(/first cases on \d+ mornings started on time/).count()).toBe(1);

  await page.getByLabel('less the other, from', { exact: true }).fill('2026-03-02');
  await page
    .getByRole('row', { name: /^2025-11-03 to 2025-12-31 less 2026-03-02 to 2026-04-30/ })
    .getByText('differs')
    .first()
    .waitFor();
  await page.getByLabel('causes put together', { exact: true }).selectOption('reported');
  const title = 'Minutes by cause, 2025-11-03 to 2025-12-31 less 2026-03-02 to 2026-04-30';
  const causes = page.getByRole('region', { name: title });
  await causes
    .getByRole('row', { name: /^anaesthesia 1\.44 0\.27 \+1\.2 \(\+\d.* differs p under 0\.001/ })
    .waitFor();
  await page
    .getByText(/^All minutes late: \+\d+\.\d .* It cost more by anaesthesia \+1\.2 min/)
    .waitFor();
  const file = await saved(page, `${title} as CSV`);
  expect(file).toMatch(/\r\n(surgeon|patient|anaesthesia),\d+\.\d{3},\d+\.\d{3},\d+\.\d{3},/);
  const how = page.getByLabel(/: minutes by cause of two periods$/);
  await how.focus();
  await page.keyboard.press('Enter');
  await page
    .getByText(/the one period less the other\. Starts of one morning/)
    .first()
    .waitFor();
  expect(await violations(page)).toEqual([]);
  await causes.scrollIntoViewIfNeeded();
  await shot(page, 'review-periods');
}

/** Answers of a figure wait until they are let go. */
async function held(page: Page, figure: string): Promise<() => void> {
  let release = (): void => undefined;
  const until = new Promise<void>((then) => {
    release = then;
  });
  await page.route(`**/api/review/${figure}*`, async (route) => {
    await until;
    await route.continue();
  });
  return () => release();
}

const high = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollHeight);

/** While answers of a new choice are on their way, the old ones are not taken for them. */
export async function saysThatItIsWorking(page: Page): Promise<void> {
  const state = page.locator('.working');
  await page.getByText('All figures are of this choice.').waitFor();
  const measures = await held(page, 'measures');
  const shares = await held(page, 'shares');
  const before = await high(page);
  await page.getByLabel('room', { exact: true }).selectOption('5');
  await page
    .getByText(
      'Working: asking the board. Parts marked “of the choice before” are not of this one yet.',
    )
    .waitFor();
  expect(await state.getAttribute('role')).toBe('status');
  expect(await page.locator('section.old').count()).toBeGreaterThan(8);
  expect(await high(page), 'nothing jumps because the page asks').toBe(before);
  measures();
  const chart = page.locator('section', { hasText: 'Is it getting better?' });
  await chart.getByText('of the choice before').waitFor();
  const summary = page.locator('section', { has: page.locator('h2', { hasText: 'On time' }) });
  await summary.first().getByText('of the choice before').waitFor({ state: 'detached' });
  expect(await violations(page)).toEqual([]);
  await page.getByText('Is it getting better?').first().scrollIntoViewIfNeeded();
  await page.evaluate(() => scrollBy(0, 400));
  await shot(page, 'review-working');
  shares();
  await page.getByText('All figures are of this choice.').waitFor();
  expect(await page.locator('section.old').count()).toBe(0);
  await keepsWhatIsNotAnswered(page);
  await page.getByLabel('room', { exact: true }).selectOption('');
}

/** A part that is not answered is marked for what it is, and the choices stand as they were. */
async function keepsWhatIsNotAnswered(page: Page): Promise<void> {
  const words = 'The board has too much to do. Ask again in a moment.';
  await page.route('**/api/review/lateness*', (route) =>
    route.fulfill({ status: 503, json: { title: 'Not now', status: 503, words } }),
  );
  await page.getByLabel('weekday', { exact: true }).selectOption('monday');
  await page.getByRole('alert').filter({ hasText: words }).waitFor();
  await page.getByText(/^Not all was answered\./).waitFor();
  expect(await page.locator('section.old h2').allInnerTexts()).toEqual([
    'How starts lie about their targets',
  ]);
  expect(await page.getByLabel('weekday', { exact: true }).inputValue()).toBe('monday');
  expect(await page.getByLabel('one period, to', { exact: true }).inputValue()).toBe('2025-12-31');
  await page.unroute('**/api/review/lateness*');
  await page.getByLabel('weekday', { exact: true }).selectOption('');
  await page.getByText('All figures are of this choice.').waitFor();
}
