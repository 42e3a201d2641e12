import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Board, startBoard } from './board.ts';
import { complaints, openBrowser, shot, violations } from './chromium.ts';
import { smallTargets } from './standin/looked.ts';

const PHONE = { width: 390, height: 844 };

let browser: Browser;
let board: Board;

beforeAll(async () => {
  [browser, board] = await Promise.all([openBrowser(), startBoard(['--speed', '1'])]);
});
afterAll(async () => {
  await browser.close();
  await board.stop();
});

async function screen(path: string, viewport = PHONE): Promise<Page> {
  const context = await browser.newContext({ viewport, reducedMotion: 'reduce' });
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await page.goto(`${board.address}${path}`);
  return page;
}

/** What the browser's push service delivers is shown while nobody looks at the page, and only then. */
async function told(phone: Page): Promise<void> {
  const { origin } = new URL(board.address);
  await phone.context().grantPermissions(['notifications'], { origin });
  const session = await phone.context().newCDPSession(phone);
  const registered = new Promise<string>((found) => {
    session.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const one = registrations.find((r) => r.scopeURL === `${origin}/pocket`);
      if (one) found(one.registrationId);
    });
  });
  await session.send('ServiceWorker.enable');
  const registrationId = await registered;
  const notices = async () =>
    phone.evaluate(async () => {
      const all = await (
        await navigator.serviceWorker.getRegistration('/pocket')
      )?.getNotifications();
      return all?.map((one) => `${one.title}: ${one.body}`);
    });
  const worker = phone.context().serviceWorkers()[0]!;
  // In front: what is asked stands on the page.
  await worker.evaluate(() =>
    (globalThis as unknown as { tell(words: string): Promise<void> }).tell('not needed'),
  );
  expect(await notices()).toEqual([]);
  // Another page takes its place: nobody looks at the phone's.
  await phone.goto(`${board.address}/wall`);
  await session.send('ServiceWorker.deliverPushMessage', {
    origin,
    registrationId,
    data: 'something is asked of you',
  });
  await expect.poll(notices).toEqual(['Sunup: something is asked of you']);
  await phone.goto(`${board.address}/pocket`);
  await phone.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
}

describe('a phone', () => {
  it('should bring a call to whoever can go, and open without the board and nothing old on it', async () => {
    const phone = await screen('/pocket');
    const wrong = complaints(phone);
    const technician = phone.getByRole('button', { name: /^technician/ }).first();
    await technician.waitFor();
    await shot(phone, 'pocket-who');
    expect(await violations(phone)).toEqual([]);
    await technician.click();
    await phone.getByRole('heading', { name: 'Asked of you' }).waitFor();

    const station = await screen('/station/2', { width: 1280, height: 800 });
    await station.getByRole('button', { name: /Send someone/ }).click();
    await station
      .getByRole('button', { name: /^technician/ })
      .first()
      .click();
    const go = phone.getByRole('button', { name: 'I go to room 2' });
    await go.waitFor();
    await shot(phone, 'pocket-asked');
    expect(await violations(phone)).toEqual([]);
    expect(await smallTargets(phone, 48)).toEqual([]);
    await go.click();
    await go.waitFor({ state: 'detached' });
    await phone.getByText(/you go to room 2 · on the board/).waitFor();
    expect(wrong).toEqual([]);

    await phone.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await phone.getByText('This site tells no locked phones: look at this page.').waitFor();
    await told(phone);
    await board.kill();
    await phone.reload();
    await phone.getByText('Not live · waiting for the board').waitFor();
    await phone.getByText('Looking for the board. Nothing is shown until it answers.').waitFor();
    expect(await phone.getByRole('button', { name: /^technician/ }).count()).toBe(0);
    await shot(phone, 'pocket-offline');
  });
});
