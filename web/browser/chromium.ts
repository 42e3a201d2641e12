import { existsSync, readFileSync } from 'node:fs';
import { readlink } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';

const PATHS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--js-flags=--expose-gc',
];

/** The machine's own Chromium. `CHROMIUM` names another one. */
function launching(): { executablePath: string; args: string[] } {
  const path = process.env['CHROMIUM'] ?? PATHS.find((candidate) => existsSync(candidate));
  if (!path) throw new Error('No Chromium here. Install it (apt-get install chromium).');
  return { executablePath: path, args: ARGS };
}

/**
 * @param trusted SHA-256 in base64 of the public keys whose certificates it takes though no
 *   authority that it knows signed them
 */
export async function openBrowser(trusted: readonly string[] = []): Promise<Browser> {
  const { executablePath, args } = launching();
  const keys = trusted.length ? [`--ignore-certificate-errors-spki-list=${trusted.join(',')}`] : [];
  return chromium.launch({ executablePath, args: [...args, ...keys] });
}

/** A browser of its own whose storage stays in a folder, as on a room's machine. */
export interface Profile {
  readonly page: Page;
  /** Ends it without warning, as a machine that loses its power. */
  kill(): Promise<void>;
}

export async function openProfile(
  folder: string,
  viewport: { width: number; height: number },
): Promise<Profile> {
  const context = await chromium.launchPersistentContext(folder, {
    ...launching(),
    viewport,
    reducedMotion: 'reduce',
  });
  return {
    page: context.pages()[0] ?? (await context.newPage()),
    kill: async () => {
      const gone = new Promise((resolve) => context.once('close', resolve));
      // The browser's lock on its folder names its process.
      const [pid] = /\d+$/.exec(await readlink(join(folder, 'SingletonLock'))) ?? [];
      process.kill(Number(pid), 'SIGKILL');
      await gone;
    },
  };
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
