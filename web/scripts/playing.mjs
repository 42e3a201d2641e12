// A board that plays a demo morning up to a moment, and the tests' browser: for pictures.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { chromium } from 'playwright-core';

const ROOT = join(import.meta.dirname, '..', '..');
const PATHS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const START_MS = 90_000;
/** Fast up to some minutes before the moment, then so slow that its minute lasts. */
const FAST = 60;
const SLOW = 4;
const SLOW_MINUTES = 4;

export async function openBrowser() {
  const path = process.env['CHROMIUM'] ?? PATHS.find((candidate) => existsSync(candidate));
  if (!path) throw new Error('No Chromium here. Install it (apt-get install chromium).');
  return chromium.launch({ executablePath: path, args: ['--no-sandbox', '--disable-gpu'] });
}

function minutes(clock) {
  const [hours, rest] = clock.split(':').map(Number);
  return hours * 60 + rest;
}

async function start(args) {
  const child = spawn(
    'java',
    [
      `-Dsunup.home=${ROOT}`,
      '-cp',
      `${join(ROOT, 'ops/target/classes')}:${join(ROOT, 'ops/target/lib')}/*`,
      'sunup.ops.Main',
      'run',
      '--port',
      '0',
      '--past',
      '0',
      ...args,
    ],
    { stdio: ['ignore', 'pipe', 'ignore'] },
  );
  const address = await new Promise((resolve, reject) => {
    const timer = setTimeout(() => {
      child.kill();
      reject(new Error('the board did not start in time'));
    }, START_MS);
    child.once('exit', () => reject(new Error('the board ended: is the port or folder free?')));
    createInterface(child.stdout).on('line', (line) => {
      const found = /^board (http:\/\/\S+?)\/?$/.exec(line);
      if (!found) return;
      clearTimeout(timer);
      child.removeAllListeners('exit');
      resolve(found[1]);
    });
  });
  const stop = async () => {
    if (child.exitCode !== null) return;
    child.kill('SIGTERM');
    await once(child, 'exit');
  };
  return { address, stop };
}

/** The morning's clock as the wall's socket tells it, in minutes since midnight. */
async function until(browser, address, zone, moment) {
  const page = await browser.newPage();
  const reached = new Promise((resolve) => {
    page.on('websocket', (socket) =>
      socket.on('framereceived', ({ payload }) => {
        const message = JSON.parse(payload.toString());
        if (message.m !== 'beat') return;
        const clock = new Intl.DateTimeFormat('en-GB', {
          timeZone: zone,
          hour: '2-digit',
          minute: '2-digit',
        }).format(message.morningClock);
        if (minutes(clock) >= moment) resolve();
      }),
    );
  });
  await page.goto(`${address}/wall`);
  await reached;
  await page.close();
}

/**
 * `files` are put into the demo's folder in place of its own.
 *
 * Plays a morning up to `at`, then calls `prepare(address)` and, in that minute, `look(pages)`.
 */
export async function atMoment(browser, { date, seed, from, at, zone, files = {} }, prepare, look) {
  const folder = await mkdtemp(join(tmpdir(), 'sunup-pictures-'));
  try {
    await mkdir(join(folder, 'demo'));
    for (const [name, text] of Object.entries(files)) {
      await writeFile(join(folder, 'demo', name), text);
    }
    const same = ['--data', folder, '--date', date, '--seed', String(seed), '--at', from];
    const fast = await start([...same, '--speed', String(FAST)]);
    try {
      await until(browser, fast.address, zone, minutes(at) - SLOW_MINUTES);
    } finally {
      await fast.stop();
    }
    const slow = await start(['--data', folder, '--date', date, '--speed', String(SLOW)]);
    try {
      const pages = await prepare(slow.address);
      await until(browser, slow.address, zone, minutes(at));
      await look(pages);
    } finally {
      await slow.stop();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
