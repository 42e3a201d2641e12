import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { readFileSync } from 'node:fs';
import { chromium, type Browser, type Page } from 'playwright-core';

const PATHS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Starts the machine's own Chromium. `CHROMIUM` names another one. */
export async function openBrowser(): Promise<Browser> {
  const path = process.env['CHROMIUM'] ?? PATHS.find((candidate) => existsSync(candidate));
  if (!path) throw new Error('No Chromium here. Install it (apt-get install chromium).');
  return chromium.launch({
    executablePath: path,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--js-flags=--expose-gc',
    ],
  });
}

/** Keeps a picture of the page under browser/shots, which git does not. */
export async function shot(page: Page, name: string): Promise<void> {
  await page.screenshot({ path: join(import.meta.dirname, 'shots', `${name}.png`) });
}

/** What a page broke of the accessibility rules, in words; and what it logged as an error. */
export async function violations(page: Page): Promise<string[]> {
  const source = readFileSync(
    createRequire(import.meta.url).resolve('axe-core/axe.min.js'),
    'utf8',
  );
  await page.evaluate(source);
  return page.evaluate(async () => {
    const axe = (globalThis as unknown as { axe: { run(): Promise<AxeResult> } }).axe;
    const result = await axe.run();
    return result.violations.map(
      (one) => `${one.id}: ${one.help} (${one.nodes.map((node) => node.target).join(', ')})`,
    );
  });
}

interface AxeResult {
  violations: { id: string; help: string; nodes: { target: unknown }[] }[];
}

/** Collects what the page complains of: script errors and broken content security. */
export function complaints(page: Page): string[] {
  const found: string[] = [];
  page.on('pageerror', (error) => found.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') found.push(message.text());
  });
  return found;
}
