// A board that plays a demo morning up to a moment, and the tests' browser: for pictures.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout } from 'node:timers/promises';
import { chromium } from 'playwright-core';

const ROOT = join(import.meta.dirname, '..', '..');
const PATHS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const START_MS = 90_000;
/**
 * Fast up to some minutes before the moment, then so slow that its minute lasts; slow for as many
 * minutes as it is times faster than real time, which is a minute on any clock.
 */
const FAST = 60;
const SLOW = 4;
/** How often the demo's clock is looked at. */
const LOOK_MS = 100;

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
    const timer = globalThis.setTimeout(() => {
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

/** The demo's clock as it writes it down, in minutes since midnight; reading it costs the board nothing. */
async function clockOf(folder, zone) {
  const { morningClock } = JSON.parse(await readFile(join(folder, 'demo', 'demo.json'), 'utf8'));
  const clock = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hour: '2-digit',
    minute: '2-digit',
  }).format(morningClock);
  return minutes(clock);
}

async function until(folder, zone, moment) {
  while ((await clockOf(folder, zone)) < moment) await setTimeout(LOOK_MS);
}

/**
 * Plays a morning up to `at`, then calls `prepare(address)` and, in that minute, `look(pages)`.
 *
 * @param morning `files` are put into the demo's folder in place of its own; `fast` is how many times
 *   as fast as real time it is played up to some minutes before the moment
 */
export async function atMoment(morning, prepare, look) {
  const { date, seed, from, at, zone, files = {}, fast = FAST, slow = SLOW } = morning;
  const folder = await mkdtemp(join(tmpdir(), 'sunup-pictures-'));
  try {
    await mkdir(join(folder, 'demo'));
    for (const [name, text] of Object.entries(files)) {
      await writeFile(join(folder, 'demo', name), text);
    }
    const same = ['--data', folder, '--date', date, '--seed', String(seed), '--at', from];
    const first = await start([...same, '--speed', String(fast)]);
    try {
      await until(folder, zone, minutes(at) - slow);
    } finally {
      await first.stop();
    }
    const board = await start(['--data', folder, '--date', date, '--speed', String(slow)]);
    try {
      const pages = await prepare(board.address);
      await until(folder, zone, minutes(at));
      return await look(pages);
    } finally {
      await board.stop();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
