import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { build } from 'vite';
import { openBrowser, shot } from './chromium.ts';
import { FakeBoard } from './fake/board.ts';
import type { Harness } from './harness.ts';

const OWN_WORK_MS = 8;
const SLOW_DOWN = 4;
const WORKED = 300;
const DRAWN = 60;
const FRAMES = 10_000;
/** What the heap may differ by between two collections: noise, less than 60 bytes a frame. */
const HEAP_NOISE = 512 * 1024;

let browser: Browser;
let board: FakeBoard;
let page: Page;
let devtools: CDPSession;
let out: string;

declare const harness: Harness;

beforeAll(async () => {
  const root = join(import.meta.dirname, '..');
  out = await mkdtemp(join(tmpdir(), 'sunup-harness-'));
  await build({
    root,
    logLevel: 'error',
    configFile: false,
    build: {
      outDir: out,
      emptyOutDir: true,
      target: 'es2022',
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rollupOptions: { input: { harness: join(root, 'browser/harness.html') } },
    },
  });
  board = new FakeBoard(out, [], 0);
  const address = await board.start();
  browser = await openBrowser();
  page = await browser.newPage({ viewport: { width: 1280, height: 720 } });
  await page.goto(`${address}/browser/harness.html`);
  await page.waitForFunction(() => harness.rooms() === 60);
  devtools = await page.context().newCDPSession(page);
});

afterAll(async () => {
  await browser.close();
  await board.stop();
  await rm(out, { recursive: true });
});

async function heap(): Promise<number> {
  // Twice: what the first collection finalises the second takes away.
  await devtools.send('HeapProfiler.collectGarbage');
  await devtools.send('HeapProfiler.collectGarbage');
  return (await devtools.send('Runtime.getHeapUsage')).usedSize;
}

/**
 * Milliseconds of own work a frame (decode, apply, render), in the page's own processor time, so
 * that what else runs on the machine does not count; the slow-down does.
 */
async function ownWork(): Promise<number> {
  await page.evaluate((count) => harness.prepare(count), WORKED);
  const before = await metrics();
  await page.evaluate(() => harness.work());
  const after = await metrics();
  return (after.get('TaskDuration')! - before.get('TaskDuration')!) * (1_000 / WORKED);
}

/** The same frames with a picture each: what the browser adds for style and layout. */
async function drawing(): Promise<{ median: number; layout: number }> {
  await page.evaluate((count) => harness.prepare(count), DRAWN);
  const before = await metrics();
  const times = await page.evaluate(() => harness.play());
  const after = await metrics();
  const each = (name: string) => ((after.get(name)! - before.get(name)!) * 1_000) / DRAWN;
  times.sort((a, b) => a - b);
  const layout = each('LayoutDuration') + each('RecalcStyleDuration');
  return { median: times[times.length >> 1]!, layout };
}

async function metrics(): Promise<Map<string, number>> {
  const { metrics: list } = await devtools.send('Performance.getMetrics');
  return new Map(list.map((one) => [one.name, one.value]));
}

describe('the wall with sixty rooms', () => {
  it('shouldDoItsOwnWorkWithinEightMillisecondsAFrameOnASlowScreen', async () => {
    await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
    await page.evaluate(() => harness.burst(200));
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOW_DOWN });
    const own = await ownWork();
    const drawn = await drawing();
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    console.log(
      `at ${SLOW_DOWN}x a frame takes ${own.toFixed(2)} ms of own work; drawn, by the clock, ` +
        `${drawn.median.toFixed(1)} ms (median), and ${drawn.layout.toFixed(2)} ms of style and layout`,
    );
    await shot(page, 'wall-harness');
    expect(own).toBeGreaterThan(0.05);
    expect(own).toBeLessThanOrEqual(OWN_WORK_MS);
  });

  it('shouldNotGrowOverTenThousandFrames', async () => {
    await page.evaluate(() => harness.burst(1_000));
    const before = await heap();
    await page.evaluate((frames) => harness.burst(frames), FRAMES);
    const after = await heap();
    console.log(`heap ${(before / 1e6).toFixed(2)} MB, then ${(after / 1e6).toFixed(2)} MB`);
    expect(after - before).toBeLessThanOrEqual(HEAP_NOISE);
  });
});
