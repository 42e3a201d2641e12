import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { PAIRS } from '../src/words/tables.ts';
import { shot, violations } from './chromium.ts';
import { inMinutes } from './daytime.ts';
import { HEAD, take, touch } from './hands.ts';
import { cutWords, LANDSCAPE } from './standin/looked.ts';

/** A second suite, which writes in the other way. */
export const WEST = {
  suite: 'west',
  suiteName: 'West suite',
  english: 'american',
  pressure: 'kPa',
  clock: 12,
};

/**
 * A morning of that suite on one screen after another: what is read, and that every page follows.
 *
 * @param page at the desk of the suite
 * @param address of the board
 */
export async function writtenInWest(page: Page, address: string): Promise<void> {
  const go = async (path: string, size = LANDSCAPE) => {
    await page.setViewportSize(size);
    await page.goto(`${address}${path}?suite=west`);
  };
  const at = inMinutes(60);
  await take(
    page,
    [HEAD, `1,${at},general,,hip,surgery`, `2,${at},general,,knee,surgery`].join('\n'),
  );
  await touch(page, 'people');
  await touch(page, 'technician 1 arrived');
  await writtenAsInWest(page, 'desk');

  await go('/station/1');
  await touch(page, /^I am here/);
  await page
    .getByText(/arrived \d{1,2}:\d\d pm/)
    .first()
    .waitFor();
  await touch(page, 'Machine: gone through');
  const type = async (digits: string) => {
    for (const digit of digits) {
      await page.getByRole('button', { name: digit, exact: true }).click();
    }
  };
  await type('40');
  await touch(page, /^40 mL\/min/);
  await page.getByText('reads 0 to 20684 kPa · good: 6895 kPa or more').waitFor();
  // The number of a gauge in bar, then that of one in psi: both are far too low for kPa.
  for (const other of ['137', '1987']) {
    await type(other);
    await page.getByText('outside what is good').waitFor();
    for (let i = 0; i < other.length; i++) await touch(page, 'delete');
  }
  await type('137000');
  await touch(page, /^137,000 kPa/);
  await page.getByText("can't be meant: it reads 0 to 20684 kPa").waitFor();
  await shot(page, 'real-west-pad');
  expect(await violations(page)).toEqual([]);
  for (let i = 0; i < 6; i++) await touch(page, 'delete');
  await type('13700');
  await touch(page, /^13,700 kPa, closed again/);
  await type('32');
  await touch(page, /^32 cmH2O/);
  await page.getByText(/cylinder 13,700 kPa/).waitFor();
  await writtenAsInWest(page, 'station');
  const answer = await fetch(`${address}/api/readings?suite=west&room=1`);
  const { series } = (await answer.json()) as {
    series: { item: string; unit: string; days: { value: number }[] }[];
  };
  const cylinder = series.find((s) => s.item === 'machine.cylinder')!;
  expect(cylinder.unit).toBe('psi');
  // NIST SP 811, B.8.
  expect(cylinder.days[0]!.value).toBeCloseTo(1987.017, 3);

  await touch(page, /^anesthetist of 1/);
  await touch(page, 'Enter from paper');
  await type('1201');
  await page.getByRole('button', { name: 'am', exact: true }).click();
  await touch(page, 'Done at this time');
  await page.getByText('From paper: done at 12:01 am, entered now').waitFor();

  await go('/holding');
  await page.getByText('Room 1').first().waitFor();
  await writtenAsInWest(page, 'holding');
  await go('/paper');
  await page.getByText('____ kPa (good: 6895 kPa or more)').first().waitFor();
  await writtenAsInWest(page, 'paper');
  await go('/pocket', { width: 390, height: 844 });
  await page.getByText('anesthetist').first().waitFor();
  await writtenAsInWest(page, 'pocket');
  await go('/wall', { width: 1920, height: 1080 });
  await page.locator('g.room').nth(1).waitFor();
  await writtenAsInWest(page, 'wall');
  await go('/sheets');
  await page.getByText('anesthetist').first().waitFor();
  await page.getByText('number from 6895 kPa').first().waitFor();
  await writtenAsInWest(page, 'sheets');
  await touch(page, 'change start.transport');
  await page.getByLabel('who, all at once').fill('transporter or anesthetist');
  await touch(page, 'Put it into the draft');
  await page
    .locator('.case')
    .getByText(/anesthetist/)
    .first()
    .waitFor();
  await touch(page, 'change airway.tubes');
  await writtenAsInWest(page, 'sheets-change');
  await go('/review');
  await page.getByRole('heading', { name: 'What this rests on' }).waitFor();
  await wordsOfWest(page, 'review');
}

/**
 * No word and no time of the other way stands on the page, and axe has nothing to say. Keys of items
 * and of equipment are names, and a sheet's file is shown as it is written.
 */
async function writtenAsInWest(page: Page, name: string): Promise<void> {
  expect(await wordsOfWest(page, name)).toMatch(/\d{1,2}:\d\d [ap]m/);
}

/** The same of a page on which no time needs to stand. @returns its text */
export async function wordsOfWest(page: Page, name: string): Promise<string> {
  const text = await page.evaluate(() => {
    const shown = (node: Node): string => {
      if (node instanceof Text) return node.data;
      if (node instanceof Element && ['STYLE', 'SCRIPT', 'PRE'].includes(node.tagName)) return '';
      const inside = node instanceof Element && node.shadowRoot ? [node.shadowRoot] : [];
      return [...inside, ...node.childNodes].map(shown).join(' ');
    };
    return shown(document.body);
  });
  await shot(page, `real-west-${name}`);
  expect(text.match(/.{0,60}(?<![\d:])(?:0\d|1[3-9]|2[0-3]):[0-5]\d\b/g), name).toBeNull();
  const british = new RegExp(
    `.{0,60}(?<!\\w[.-])\\b(?:${PAIRS.map(([word]) => word).join('|')})\\b`,
    'gi',
  );
  expect(text.match(british), name).toBeNull();
  expect(await cutWords(page), name).toEqual([]);
  expect(await violations(page), name).toEqual([]);
  return text;
}
