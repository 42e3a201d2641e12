import { createHash, X509Certificate } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import type { Board } from './board.ts';
import { complaints, shot, violations } from './chromium.ts';
import { emptyBoard, inMinutes } from './daytime.ts';
import { digits, HEAD, take, touch } from './hands.ts';
import { type IdentityProvider, identityProvider } from './provider.ts';
import { Screens } from './screens.ts';
import { LANDSCAPE } from './standin/looked.ts';

const PIN = '480915';
const NURSE_PIN = '739164';

let screens: Screens;
let board: Board;
let provider: IdentityProvider;

beforeAll(async () => {
  provider = await identityProvider();
  // Over TLS, as other machines reach it: what a browser asks in it no other client asks.
  board = await emptyBoard(['--pair', '--tls', '--sign-in', provider.file]);
  provider.know(board.address);
  screens = await Screens.begin([await keyOf(board)]);
});
afterAll(async () => {
  await screens.close();
  await board.stop();
  await provider.stop();
});
afterEach(() => screens.clear());

/** The hash of the board's public key, by which a browser trusts it without its root. */
async function keyOf(of: Board): Promise<string> {
  const pem = await readFile(join(of.data, 'board', 'tls', 'server.pem'));
  const key = new X509Certificate(pem).publicKey.export({ type: 'spki', format: 'der' });
  return createHash('sha256').update(key).digest('base64');
}

async function screen(path: string): Promise<Page> {
  const page = await screens.open(LANDSCAPE, 25_000);
  await page.goto(`${board.address}${path}`);
  return page;
}

/** Signs on at a real identity provider, and tells the address by which it sent the browser back. */
async function byProvider(at: Page, who: string): Promise<string> {
  const back = at.waitForRequest((r) => new URL(r.url()).pathname === '/signed-in');
  await touch(at, 'Sign on with hospital account');
  await at.locator('input[name=login]').fill(who);
  await at.locator('input[name=password]').fill('not looked at');
  await at.locator('button[type=submit]').click();
  await at.getByText('Continue').click();
  return (await back).url();
}

/** The secret path of the first administrator's link. */
async function firstLink(): Promise<string> {
  const said = () => board.said.find((line) => line.includes('#first='));
  await expect.poll(said).toBeDefined();
  return said()!.trim().slice(board.address.length);
}

async function begin(): Promise<Page> {
  const desk = await screen(await firstLink());
  await desk.getByLabel('your code').fill('K1');
  await desk.getByLabel('PIN', { exact: true }).fill(PIN);
  await desk.getByLabel('the PIN again').fill(PIN);
  await touch(desk, 'Begin');
  await touch(desk, 'screens');
  await desk.getByText('desk-main').waitFor();
  return desk;
}

it('should pair a station by its code, sign its nurse on by PIN, and close it when it is revoked', async () => {
  const desk = await begin();
  expect(desk.url()).not.toContain('first=');
  const station = await screen('/holding');
  const wrong = complaints(station);
  const code = await station.locator('sunup-entry .code').innerText();
  expect(await violations(station)).toEqual([]);
  await shot(station, 'pairing-code');

  await desk.getByLabel('code that a new screen shows').fill(code.toLowerCase());
  await touch(desk, /^Look$/);
  await desk.getByText('127.0.0.1').first().waitFor();
  await desk.getByLabel('what the screen is').selectOption('holding');
  await touch(desk, 'It is ours');
  await station.locator('sunup-entry').waitFor({ state: 'hidden' });
  await station.getByText('nothing is planned yet').waitFor();

  await touch(desk, 'Add a person');
  await desk.getByLabel('code, no name').fill('H7');
  await desk.getByLabel('first PIN').fill(NURSE_PIN);
  await desk.locator('input[name=role-holding]').check();
  await touch(desk, /^Add$/);
  await desk.getByText('H7 may sign on').waitFor();
  await touch(desk, 'Add a person');
  await desk.getByLabel('code, no name').fill('V7');
  await desk.getByLabel('first PIN').fill(NURSE_PIN);
  await desk.locator('input[name=role-supervisor]').check();
  await touch(desk, /^Add$/);
  await desk.getByText('V7 may sign on').waitFor();
  await touch(station, /^Sign on/);
  await station.getByLabel('your code').fill('H7');
  for (const digit of NURSE_PIN) await touch(station, digit);
  await shot(station, 'pairing-pin');
  await touch(station, 'enter');
  await station.getByText('H7 · holding').waitFor();
  await station.reload();
  await station.getByText('H7 · holding').waitFor();

  // At a screen of the site the provider does what a PIN does.
  await touch(station, /^H7 · holding/);
  await touch(station, 'Sign H7 off');
  await station.getByText('touches are unsigned').waitFor();
  await touch(station, /^Sign on/);
  expect(wrong).toEqual([]);
  await byProvider(station, 'H7');
  await station.getByText('H7 · holding').waitFor();
  // The provider's own pages load things that are not here.
  wrong.length = 0;
  expect(new URL(station.url()).hash).toBe('');

  await take(desk, `${HEAD}\n1,${inMinutes(60)},general,block,hip,ortho`);
  await station.getByText('nothing is planned yet').waitFor({ state: 'hidden' });

  // Two sign for a block: who did it is signed on, the other types code and PIN beside.
  await touch(desk, 'people');
  await touch(desk, /^holding.* 1 arrived$/);
  await touch(desk, 'supervisor 1 arrived');
  await touch(station, /^room 1 block/);
  // Who arrives last moves the others: not touched before both are there.
  await station.getByRole('button', { name: 'supervisor 1' }).first().waitFor();
  await touch(station, /^holding.* 1$/);
  await station.getByLabel('your code').fill('H7');
  await digits(station, NURSE_PIN);
  await touch(station, 'enter');
  await touch(station, 'supervisor 1');
  await station.getByText('Second signature: supervisor 1').waitFor();
  await station.getByLabel('your code').fill('V7');
  await digits(station, NURSE_PIN);
  await shot(station, 'pairing-second');
  await touch(station, 'enter');
  await station.locator('button.good[data-item$="/patient.block"]').waitFor();

  // A phone of one's own, paired at no desk, is known while its person is signed on.
  const phone = await screen('/pocket');
  await phone.locator('sunup-entry .code').waitFor();
  const back = await byProvider(phone, 'V7');
  await phone.getByText('V7 · supervisor').waitFor();
  expect(new URL(phone.url()).hash).toBe('');
  // What brought it back counts once; somebody whom the board does not know is told so.
  expect((await phone.goto(back))!.status()).toBe(400);
  await phone.goto(`${board.address}/pocket`);
  await touch(phone, /^V7 · supervisor/);
  await touch(phone, 'Sign V7 off');
  await phone.locator('sunup-entry .code').waitFor();
  await provider.stop();
  await touch(phone, 'Sign on with hospital account');
  await phone.getByText(/hospital account does not answer/).waitFor();
  await shot(phone, 'pairing-own');

  // The same screen looks back, also as somebody who is told no names, and saves a file by its pass.
  await desk.goto(`${board.address}/review`);
  const protocol = await desk.evaluate(() => {
    const [page] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
    return page?.nextHopProtocol;
  });
  expect(protocol).toBe('h2');
  await desk.getByText('Nothing is kept yet.').waitFor();
  const days = Array.from({ length: 12 }, (_, i) => `2025-11-${10 + i},1,07:30,07:3${i % 5}`);
  await desk.getByLabel(/history before Sunup/).setInputFiles({
    name: 'history.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(['date,room,booked,started', ...days].join('\n')),
  });
  await desk.getByText(/first cases on 12 mornings/).waitFor();
  const [saved] = await Promise.all([desk.waitForEvent('download'), touch(desk, 'Rows as CSV')]);
  expect(saved.suggestedFilename()).toBe('first-cases.csv');
  expect(await readFile(await saved.path(), 'utf8')).toContain('date,');
  await desk.goto(`${board.address}/desk`);
  await desk.getByText('K1 · admin').waitFor();

  await touch(desk, 'screens');
  await touch(desk, 'Look again');
  await shot(desk, 'pairing-desk');
  expect(await violations(desk)).toEqual([]);
  await touch(desk, 'holding-main: not ours any more');
  await touch(desk, 'holding-main is none of ours: close it now');
  await station.locator('sunup-entry .code').waitFor();
  expect(wrong).toEqual([]);
});
