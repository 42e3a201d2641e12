import type { Page } from 'playwright-core';

/** The first line of a case list. */
export const HEAD = 'room,start,technique,options,procedure,service';

export async function touch(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name }).first().click();
}

/** Takes a list at the desk and opens the morning. */
export async function take(desk: Page, csv: string): Promise<void> {
  await touch(desk, 'case list');
  await desk.getByLabel('the case list as CSV').fill(csv);
  await touch(desk, 'Look at it first');
  await touch(desk, 'Take this list');
  await touch(desk, 'Open the morning');
  await desk.getByText('Close the morning…').waitFor();
}
