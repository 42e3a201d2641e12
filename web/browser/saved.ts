import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';

/** What a button that saves a file saves. */
export async function saved(page: Page, button: string): Promise<string> {
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  return readFile(await file.path(), 'utf8');
}
