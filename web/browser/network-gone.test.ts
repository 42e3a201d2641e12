import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Board } from './board.ts';
import { Cable } from './cable.ts';
import { openProfile, type Profile, shot } from './chromium.ts';
import { emptyBoard, inMinutes } from './daytime.ts';
import { HEAD, take, touch } from './hands.ts';
import { Screens } from './screens.ts';
import { LANDSCAPE } from './standin/looked.ts';

const PATIENCE_MS = 25_000;

let board: Board;
let screens: Screens;
let cable: Cable;
let folder: string;
let machine: Profile;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'sunup-browser-'));
  [screens, board] = await Promise.all([Screens.begin(), emptyBoard()]);
  cable = await Cable.to(board.address);
});
afterAll(async () => {
  await Promise.all([machine.kill(), screens.close()]);
  cable.close();
  await board.stop();
  await rm(folder, { recursive: true, force: true });
});

/** The room's own machine, at the end of the cable. */
async function switchOn(): Promise<Page> {
  machine = await openProfile(folder, LANDSCAPE);
  machine.page.setDefaultTimeout(PATIENCE_MS);
  await machine.page.goto(`${cable.address}/station/1`);
  return machine.page;
}

const gone = (page: Page, section: string) =>
  page.getByRole('button', { name: new RegExp(`^${section} gone through \\d\\d:\\d\\d`) });

/** How many items of the room are good in the picture that the station has kept. */
function keptGood(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const asked = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error!);
      });
    const shelf = await asked(indexedDB.open('sunup.shelf'));
    const picture = await asked(
      shelf.transaction('pictures').objectStore('pictures').get('station-1'),
    );
    shelf.close();
    const { parts } = (picture ?? { parts: [] }) as { parts: { state?: string }[] };
    return parts.filter((part) => part.state === 'good').length;
  });
}

describe('a station whose network goes', () => {
  it('should lose nothing over two cuts and a lost machine, beside a second station on the room', async () => {
    const desk = await screens.open(LANDSCAPE, PATIENCE_MS);
    await desk.goto(`${board.address}/desk`);
    await take(desk, `${HEAD}\n1,${inMinutes(45)},general,,hernia,surgery`);

    let station = await switchOn();
    await touch(station, /^I am here/);
    await touch(station, 'Suction: gone through');
    await gone(station, 'Suction').waitFor();
    const second = await screens.open(LANDSCAPE, PATIENCE_MS);
    await second.goto(`${board.address}/station/1`);
    await touch(second, /^I am here/);

    cable.cut();
    await touch(station, 'IV: gone through');
    await station.getByText('1 not sent').waitFor();
    await touch(second, 'Monitors: gone through');
    await gone(second, 'Monitors').waitFor();
    expect(await gone(second, 'IV').count()).toBe(0);
    cable.mend();
    await station.getByText('Everything is sent').waitFor();
    await gone(station, 'Monitors').waitFor();
    await gone(second, 'IV').waitFor();
    await station.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await expect.poll(() => keptGood(station), { timeout: PATIENCE_MS }).toBeGreaterThan(2);

    cable.cut();
    await touch(station, 'Airway: gone through');
    await station.getByText('1 not sent').waitFor();
    await station.getByRole('button', { name: /^Airway touched, not sent yet/ }).waitFor();
    await machine.kill();
    station = await switchOn();
    await station.getByText(/^Not live since/).waitFor();
    await station.getByText('1 not sent').waitFor();
    await station.getByRole('button', { name: /^Airway touched, not sent yet/ }).waitFor();
    await gone(station, 'Suction').waitFor();
    await shot(station, 'real-station-opened-while-cut');
    await touch(station, /^I am here/);
    await touch(station, 'Special: gone through');
    await station.getByText('2 not sent').waitFor();

    cable.mend();
    await station.getByText('Everything is sent').waitFor();
    for (const page of [station, second]) {
      for (const section of ['Suction', 'Monitors', 'IV', 'Airway', 'Special']) {
        await gone(page, section).waitFor();
      }
    }
    expect(await station.getByText(/^Not taken/).count()).toBe(0);
  });
});
