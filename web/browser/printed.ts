import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { touch } from './hands.ts';

const MM_PER_POINT = 25.4 / 72;

/**
 * What comes out of the printer: the pages of the PDF that Chromium makes of a page, each with its
 * width and height in mm. Keeps it under browser/shots, which git does not.
 */
export async function printedPages(
  page: Page,
  name: string,
  options: Parameters<Page['pdf']>[0],
): Promise<[number, number][]> {
  const pdf = await page.pdf({ ...options, printBackground: false });
  const shots = join(import.meta.dirname, 'shots');
  await mkdir(shots, { recursive: true });
  await writeFile(join(shots, `${name}.pdf`), pdf);
  const boxes = pdf.toString('latin1').matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g);
  return [...boxes].map(([, wide, high]) => [
    Number(wide) * MM_PER_POINT,
    Number(high) * MM_PER_POINT,
  ]);
}

/** Of a drug that was drawn just now: one label, as large as it is to be, and nothing beside it. */
export async function printsItsLabel(station: Page): Promise<void> {
  await station.evaluate(() => {
    window.print = () => (document.documentElement.dataset['printed'] = 'one label');
  });
  await touch(station, 'Print its label');
  await station.locator('html[data-printed="one label"]').waitFor();
  await station.emulateMedia({ media: 'print' });
  await station
    .locator('.printed .drug-label')
    .screenshot({ path: 'browser/shots/real-label.png' });
  expect(await station.locator('header').isVisible()).toBe(false);
  // As people print: the browser leaves out backgrounds unless the page asks for them.
  const [label, more] = await printedPages(station, 'label', { preferCSSPageSize: true });
  expect(more).toBeUndefined();
  expect(label!.map((mm) => Math.round(mm))).toEqual([40, 15]);
  await station.emulateMedia({ media: null });
  await station.evaluate(() => window.dispatchEvent(new Event('afterprint')));
}
