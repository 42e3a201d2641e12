// The reading task: pictures of walls of 16, 24 and 40 rooms at 55 and 75 inches from seeded
// mornings, and in a folder apart the key: what the page had drawn at that moment.
// A reader who has seen no key says which rooms are late and why; web/docs/reading.md tells how.
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { atMoment, openBrowser } from './playing.mjs';
import { score } from './reading-score.mjs';
import { questions, taskPage } from './reading-task.mjs';

const DEMO = join(import.meta.dirname, '../../ops/src/main/resources/demo');
const WALLS = [
  { rooms: 16, seed: 21 },
  { rooms: 24, seed: 22 },
  { rooms: 40, seed: 23 },
];
const INCHES = [55, 75];
const METRES = 6;
const MORNING = { date: '2026-11-25', from: '06:30', at: '07:08', zone: 'Europe/Lisbon' };
/** Times real time that a morning is played at, one after the other until it was played well. */
const SPEEDS = [60, 30, 15];
/** Of the rooms are heard of, and so many are late, before there is anything to read. */
const HEARD = 0.8;
const LATE_LEAST = 2;
/** Real time that the board may take to catch up with the morning once its clock has slowed down. */
const WAIT_MS = 90_000;
/** A board that still takes in what it was told late changes its count: it has stood for so long. */
const SETTLED_MS = 15_000;
const LOOK_MS = 500;
/** Pictures that are tried until one has nothing changing in it. */
const TRIES = 20;
const SIZE = { width: 1920, height: 1080 };
/** A screen of 16 to 9 is so much wider than half its height over its diagonal. */
const WIDE = 16 / Math.hypot(16, 9);
/** Normal sight tells apart one minute of arc and no less. */
const MINUTES_OF_ARC = (60 * 180) / Math.PI;
const KINDS = [
  ['general', ''],
  ['general', 'block'],
  ['spinal', ''],
  ['general', 'child'],
  ['general', 'lines'],
];

/** A hospital of so many rooms, made from the demo's own. */
async function hospital(rooms) {
  const site = JSON.parse(await readFile(join(DEMO, 'site.json'), 'utf8'));
  const ids = Array.from({ length: rooms }, (_, i) => String(i + 1));
  const many = (role, letter, count, at) =>
    Array.from({ length: count }, (_, i) => ({ id: `${letter}${i + 1}`, role, at }));
  site.rooms = ids.map((id) => ({ id }));
  site.roaming = [
    ...ids
      .filter((_, i) => i % 2 === 0)
      .map((id, i) => ({
        id: `V${i + 1}`,
        role: 'supervisor',
        covers: [id, String(Number(id) + 1)],
        at: '06:30',
      })),
    ...many('technician', 'T', Math.ceil(rooms / 6), '06:15'),
    ...many('holding', 'H', Math.ceil(rooms / 3), '06:00'),
    ...many('porter', 'P', Math.ceil(rooms / 2), '06:30'),
    ...many('cleaner', 'E', Math.ceil(rooms / 6), '06:00'),
    ...many('desk', 'D', 1, '06:00'),
  ];
  const rows = ids.map((id, i) => {
    const [technique, options] = KINDS[i % KINDS.length];
    const start = i % 4 === 3 ? '08:00' : '07:30';
    return `${id},${start},${technique},${options},invented,general surgery,Su${id}`;
  });
  const story = JSON.parse(await readFile(join(DEMO, 'story.json'), 'utf8'));
  return {
    'site.json': JSON.stringify(site),
    'cases.csv': ['room,start,technique,options,procedure,service,surgeon', ...rows, ''].join('\n'),
    'story.json': JSON.stringify({ ...story, agreed: [] }),
  };
}

if (process.argv[2] === '--score') {
  process.exit(await score(...folders(process.argv[3])));
}
const [into, apart] = folders(process.argv[2]);
await mkdir(join(into, 'pictures'), { recursive: true });
await mkdir(join(into, 'seen'), { recursive: true });
await mkdir(apart, { recursive: true });
const only =
  process.argv[3] === undefined ? WALLS : WALLS.filter((w) => w.rooms === Number(process.argv[3]));
const browser = await openBrowser();
try {
  for (const wall of only) {
    for (const { inches, picture, key, clock } of await played(wall)) {
      const name = nameOf(wall.rooms, inches);
      await writeFile(join(into, 'pictures', `${name}.png`), picture);
      await writeFile(join(apart, `${name}.json`), key);
      await writeFile(join(into, 'seen', `${name}.png`), await seen(browser, picture, inches));
      console.log(`${name} at ${clock}`);
    }
  }
  const names = WALLS.flatMap(({ rooms }) =>
    INCHES.map((inches) => ({ name: nameOf(rooms, inches), inches })),
  );
  await writeFile(join(into, 'task.html'), taskPage(names, METRES, WIDE));
  await writeFile(join(into, 'questions.md'), questions(names, METRES));
  console.log(`open ${join(into, 'task.html')}; then ops/reading --score ${into}`);
} finally {
  await browser.close();
}

function nameOf(rooms, inches) {
  return `${rooms}-rooms-${inches}-inches`;
}

/** The reader's folder, and one apart with what the pages had drawn. */
function folders(named = 'reading') {
  const folder = resolve(named);
  return [folder, `${folder}-keys`];
}

/**
 * The wall of a played morning at each size. A machine that is too slow for the speed tells the
 * board too late what its people did: then it is played again at half of it, and what is pictured is
 * in any case a morning in which rooms were heard of and some are late.
 */
async function played({ rooms, seed }) {
  const files = await hospital(rooms);
  const found = [];
  for (const fast of SPEEDS) {
    const morning = { ...MORNING, seed, files, fast, slow: 1 };
    const walls = await atMoment(morning, wallsOf, (pages) => pictures(pages, rooms, found));
    if (walls) return walls;
    console.error(`${rooms} rooms at ${fast} times real time: ${found.at(-1)}; slower now`);
  }
  throw new Error(
    `${rooms} rooms: no morning with late rooms was played (${found.join('; ')}). ` +
      'Let nothing else run on this machine, or take another seed.',
  );
}

async function wallsOf(address) {
  const pages = [];
  for (const inches of INCHES) {
    const page = await browser.newPage({ viewport: SIZE });
    await page.goto(`${address}/wall?inches=${inches}&metres=${METRES}`);
    pages.push({ page, inches });
  }
  return pages;
}

/** The pictures once the morning has caught up; null, with what was seen, if it does not. */
async function pictures(pages, rooms, found) {
  const began = performance.now();
  let same = { key: '', since: began };
  for (;;) {
    const { heard, late, lines, key } = await standing(pages[0].page);
    if (key !== same.key) same = { key, since: performance.now() };
    const settled = performance.now() - same.since >= SETTLED_MS;
    if (settled && heard >= rooms * HEARD && late >= LATE_LEAST && lines >= 1) break;
    if (performance.now() - began > WAIT_MS) {
      found.push(`${heard} of ${rooms} rooms heard of, ${late} late, ${lines} lines`);
      return null;
    }
    await setTimeout(LOOK_MS);
  }
  const walls = [];
  for (const { page, inches } of pages) {
    walls.push({ inches, ...(await pictured(page)) });
    await page.close();
  }
  return walls;
}

async function standing(page) {
  const count = (what) => page.locator(what).count();
  return {
    heard: await count('g.room:not(.unheard):not(.no-figures)'),
    late: await count('g.room:is(.late, .stuck)'),
    lines: await count('sunup-needs .row'),
    key: await page.locator('.facts').innerText(),
  };
}

/** The picture with no more in it than normal sight has of the wall at that distance. */
async function seen(browser, picture, inches) {
  const across = (inches * 0.0254 * WIDE) / METRES;
  const width = Math.round(2 * Math.atan(across / 2) * MINUTES_OF_ARC);
  const height = Math.round((width * SIZE.height) / SIZE.width);
  const page = await browser.newPage({ viewport: { width, height } });
  const data = picture.toString('base64');
  await page.setContent(
    `<body style="margin:0"><img width="${width}" height="${height}" src="data:image/png;base64,${data}">`,
  );
  await page.waitForFunction(() => document.images[0].complete);
  const small = await page.screenshot();
  await page.close();
  return small;
}

/** What the page has drawn: the rooms that are late or stuck, and the lines below as they stand. */
async function drawn(page) {
  const late = await page
    .locator('g.room')
    .evaluateAll((rooms) =>
      rooms
        .filter((room) => room.matches('.late, .stuck'))
        .map((room) => room.querySelector('.number').textContent.trim()),
    );
  const needs = await page.locator('sunup-needs .row').evaluateAll((rows) =>
    rows.map((row) => {
      const text = (name) => row.querySelector(`.${name}`).textContent.replace(/\s+/g, ' ').trim();
      return {
        room: text('room'),
        figure: text('figure'),
        words: text('words'),
        taken: text('taken'),
      };
    }),
  );
  return `${JSON.stringify({ late, needs }, null, 2)}\n`;
}

/** A picture with its key: what was drawn is the same before and after it was taken. */
async function pictured(page) {
  // Lines change places slowly; what is pictured has come to its place.
  await page.emulateMedia({ reducedMotion: 'reduce' });
  for (let tries = 0; tries < TRIES; tries++) {
    const before = await drawn(page);
    const picture = await page.screenshot();
    if (before === (await drawn(page))) {
      return { picture, key: before, clock: await page.locator('.clock').innerText() };
    }
  }
  throw new Error('the wall changes faster than it is pictured');
}
