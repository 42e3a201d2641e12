// Takes the pictures of all pages for the documents: the demo's morning from a fixed seed at a
// fixed time. `ops/pictures` builds first and calls this. They are kept with the documents, so
// that a reader without a build sees them; WebP keeps them small.
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { atMoment, openBrowser } from './playing.mjs';

const INTO = join(import.meta.dirname, '..', 'docs');
const MORNING = {
  date: '2026-11-25',
  seed: 14,
  from: '06:25',
  at: '07:12',
  zone: 'Europe/Lisbon',
};
const PICTURES = [
  { name: 'wall', path: '/wall', width: 1280, height: 720 },
  { name: 'desk', path: '/desk', width: 1280, height: 800 },
  { name: 'station', path: '/station/7', width: 1024, height: 768 },
  { name: 'holding', path: '/holding', width: 1280, height: 800 },
  { name: 'pocket', path: '/pocket', width: 390, height: 760, touch: 'supervisor V3' },
];
const QUALITY = 82;

/** The browser itself writes WebP; the library's own call writes only PNG and JPEG. */
async function take(page, path) {
  const session = await page.context().newCDPSession(page);
  const { data } = await session.send('Page.captureScreenshot', {
    format: 'webp',
    quality: QUALITY,
  });
  await writeFile(path, Buffer.from(data, 'base64'));
}

const browser = await openBrowser();
try {
  await mkdir(INTO, { recursive: true });
  await atMoment(
    MORNING,
    async (address) => {
      const pages = [];
      for (const picture of PICTURES) {
        const { width, height } = picture;
        const page = await browser.newPage({ viewport: { width, height } });
        const answer = await page.goto(address + picture.path);
        if (!answer.ok()) throw new Error(`there is no page ${picture.path}`);
        if (picture.touch) await page.getByRole('button', { name: picture.touch }).click();
        pages.push({ page, picture });
      }
      return pages;
    },
    async (pages) => {
      for (const { page, picture } of pages) {
        const path = join(INTO, `${picture.name}.webp`);
        await take(page, path);
        console.log(path);
      }
    },
  );
} finally {
  await browser.close();
}
