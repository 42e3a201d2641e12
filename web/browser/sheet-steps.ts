import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { shot, violations } from './chromium.ts';
import { touch } from './hands.ts';

/** Vaporisers become a choice of words that lapses, at the page of the sheets. */
export async function asksForALevel(page: Page): Promise<void> {
  await touch(page, 'change machine.vaporisers');
  await page.getByLabel('asked for').selectOption('choice');
  await page.getByLabel('good words, with commas').fill('full');
  await page.getByLabel('words for a fault').fill('low, empty');
  await page.getByLabel('lapses after minutes').fill('600');
  await touch(page, 'Put it into the draft');
  await page
    .locator('.case')
    .getByText(/evidence kind touch, now kind choice, choices \(full, !low, !empty\)/)
    .first()
    .waitFor();
}

/** An option of the suite's own that takes an item away and does not go with sedation. */
export async function newOption(page: Page): Promise<void> {
  await touch(page, 'Add a sheet…');
  await page.getByLabel('what the desk calls it').fill('Awake intubation');
  await shot(page, 'real-sheets-new');
  await touch(page, 'Add it to the draft');
  await page
    .getByText(/^awake-intubation\.json, line \d+$/)
    .first()
    .waitFor();
  const found = page.getByLabel('an item that it finds on the list');
  await found.selectOption('suction.strong');
  await page.getByText('It may never be left out.').waitFor();
  await found.selectOption('monitors.record');
  await touch(page, 'Take it away');
  await touch(page, 'Title and what it goes with');
  await page.getByRole('group', { name: 'Does not go with' }).getByLabel('Sedation').check();
  await shot(page, 'real-sheets-head');
  expect(await violations(page)).toEqual([]);
  await touch(page, 'Put it into the draft');
  await page.getByText('Not with sedation.').waitFor();
}

/** An item that every list has can't be left out, and numbers that can't be are named; it is open then. */
export async function coreStays(page: Page): Promise<void> {
  await touch(page, 'change suction.strong');
  await page.getByText('May never be left out: every list has it').waitFor();
  expect(await page.getByLabel('may never be left out of a case').count()).toBe(0);
  await page.getByLabel('answers for items 1 to 15').fill('2, 16');
  await touch(page, 'Put it into the draft');
  await page.getByText('whole numbers 1 to 15').first().waitFor();
  await touch(page, /^take back: .*suction\.strong changed \(asa\)/);
  await touch(page, 'change suction.strong');
}
