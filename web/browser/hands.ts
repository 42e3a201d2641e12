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

/** A room with a count that is open: the morning can't be closed, its case can be cancelled. */
export async function cancelled(desk: Page, room: string): Promise<void> {
  await touch(desk, 'Close the morning…');
  await desk.getByText(`Controlled drugs not counted out: ${room}`).waitFor();
  await touch(desk, 'Not yet');
  await touch(desk, room);
  await touch(desk, 'Cancel the case…');
  await touch(desk, 'Cancel the case');
}

/** A number on the page's keys. */
export async function digits(page: Page, typed: string): Promise<void> {
  for (const digit of typed) {
    await page.getByRole('button', { name: digit, exact: true }).click();
  }
}
