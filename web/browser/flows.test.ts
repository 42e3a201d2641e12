import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type Board, startBoard } from './board.ts';
import { complaints, shot, violations } from './chromium.ts';
import { emptyBoard, inMinutes } from './daytime.ts';
import { HEAD, take, touch } from './hands.ts';
import { Screens } from './screens.ts';
import { LANDSCAPE } from './standin/looked.ts';

const WALL = { width: 1920, height: 1080 };
/** Rule 2's five seconds, and one more to see and say it. */
const LOUD_WITHIN_MS = 6_000;

let screens: Screens;
let board: Board;

/** One board for all: each test has a room of its own, so that a start of the board is paid once. */
beforeAll(async () => {
  [screens, board] = await Promise.all([Screens.begin(), emptyBoard()]);
});
afterAll(async () => {
  await screens.close();
  await board.stop();
});
afterEach(() => screens.clear());

async function screen(path: string, size = LANDSCAPE): Promise<Page> {
  const page = await screens.open(size, 25_000);
  await page.goto(`${board.address}${path}`);
  return page;
}

async function signOn(station: Page): Promise<void> {
  await touch(station, /^I am here/);
  await station
    .getByText(/arrived \d\d:\d\d/)
    .first()
    .waitFor();
}

describe('pages on a real board', () => {
  it('should make rooms of the desk’s own list, mistakes named first', async () => {
    const wall = await screen('/wall', WALL);
    await wall.getByText('Nothing is planned').waitFor();
    await shot(wall, 'real-wall-empty');
    const desk = await screen('/desk');
    await touch(desk, 'case list');
    await desk.getByLabel('the case list as CSV').fill('room,start,technique\n1,7 o’clock,general');
    await touch(desk, 'Look at it first');
    await desk.getByText(/line 2, start:/).waitFor();
    await shot(desk, 'real-desk-list-wrong');
    const at = inMinutes(60);
    const rows = ['hernia', 'hip', 'knee', 'hand', 'foot', 'ear'].map(
      (what, i) => `${i + 1},${at},general,${i === 2 ? 'block' : ''},${what},surgery`,
    );
    await take(desk, [HEAD, ...rows].join('\n'));
    await desk.getByRole('button', { name: 'room 6', exact: true }).waitFor();
    await wall.locator('g.room').nth(5).waitFor();
    expect(await violations(desk)).toEqual([]);
    await shot(desk, 'real-desk-list-taken');
  });

  it('should take a set-up in at most ten touches and show it at the desk', async () => {
    const desk = await screen('/desk');
    await touch(desk, 'people');
    await touch(desk, 'technician 1 arrived');
    const station = await screen('/station/1');
    const wrong = complaints(station);
    let touches = 0;
    const one = async (name: string | RegExp) => {
      touches++;
      await touch(station, name);
    };
    const number = async (digits: string, enter: RegExp) => {
      touches++;
      for (const digit of digits) {
        await station.getByRole('button', { name: digit, exact: true }).click();
      }
      await touch(station, enter);
    };
    await one(/^I am here/);
    await one('Machine: gone through');
    await number('40', /^40 mL\/min/);
    await number('1850', /^1,850 psi, closed again/);
    await number('32', /^32 cmH2O/);
    await one(/^Rest gone through/);
    await one('Drugs: gone through');
    await one(/^technician 1/);
    await one('at hand');
    await one(/^Report ready/);
    await station.getByText(/^reported \d\d:\d\d by anaesthetist, /).waitFor();
    await station.getByText(/self test 40 mL\/min · cylinder 1,850 psi/).waitFor();
    await shot(station, 'real-station-ready');
    expect(touches).toBeLessThanOrEqual(10);
    expect(await station.getByRole('button', { name: /: gone through$/ }).count()).toBe(0);
    expect(await violations(station)).toEqual([]);
    expect(wrong).toEqual([]);

    await touch(desk, 'room 1');
    await desk.getByText(/reported ready \d\d:\d\d by anaesthetist/).waitFor();
    await shot(desk, 'real-desk-room');
    expect(await violations(desk)).toEqual([]);
  });

  it('should move the wall in another browser when a station is touched', async () => {
    const wall = await screen('/wall', WALL);
    const station = await screen('/station/2');
    await signOn(station);
    await touch(station, 'wheels in');
    await station.getByText(/wheels in with \d+ open/).waitFor();
    await touch(station, 'induction');
    await wall.locator('.started').first().waitFor({ state: 'attached' });
    await shot(wall, 'real-wall-moved');
    await station.getByText(/started \d\d:\d\d/).waitFor();
    await touch(station, 'Take back');
    await station.getByText(/min$/).first().waitFor();
  });

  it('should agree a stagger at the desk and show it at the station', async () => {
    const desk = await screen('/desk');
    const station = await screen('/station/3');
    await touch(desk, 'room 3');
    await desk.getByLabel('agreed start').fill('23:45');
    await touch(desk, 'Agree a later start');
    await station.getByText(/23:45 agreed/).waitFor();
    await desk.getByText('room 3: 23:45 agreed').waitFor();
    await shot(desk, 'real-desk-agreed');
  });

  it('should take the holding nurse’s touches and take one back', async () => {
    const holding = await screen('/holding');
    const wrong = complaints(holding);
    for (const name of ['arrived', 'papers', 'drip', 'surgeon', 'sent for']) {
      await holding.getByRole('button', { name: `room 4 ${name}`, exact: true }).click();
      await holding.getByRole('button', { name: new RegExp(`^room 4 ${name} \\d\\d:`) }).waitFor();
    }
    await touch(holding, 'Take back');
    await holding.getByRole('button', { name: 'room 4 sent for', exact: true }).waitFor();
    await shot(holding, 'real-holding');
    expect(await violations(holding)).toEqual([]);
    expect(wrong).toEqual([]);
  });

  it('should show the server’s own words for what it does not take', async () => {
    const station = await screen('/station/5');
    await touch(station, 'Someone else');
    await touch(station, /^technician 1/);
    await station
      .getByText(/arrived \d\d:\d\d/)
      .first()
      .waitFor();
    await touch(station, /^Monitors /);
    await touch(station, /alarms audible: more/);
    await touch(station, 'not needed for this case');
    await station.getByText('This role may not do that.').waitFor();
    await shot(station, 'real-station-refused');
    expect(await station.getByRole('button', { name: /alarms audible: good/ }).count()).toBe(1);
  });

  it('should lose nothing when the plug is pulled, and say what is not sent', async () => {
    const station = await screen('/station/6');
    const wall = await screen('/wall', WALL);
    await wall.locator('main:not(.old) g.room').nth(5).waitFor();
    const numbers = () => wall.locator('g.room .number').allTextContents();
    const before = await numbers();
    await signOn(station);
    await touch(station, 'Suction: gone through');
    await station.getByText(/gone through \d\d:\d\d/).waitFor();
    await board.kill();
    const band = wall.locator('sunup-banner .band.stale');
    await band.waitFor({ timeout: LOUD_WITHIN_MS });
    expect((await band.boundingBox())!.width).toBe(WALL.width);
    await touch(station, 'IV: gone through');
    await station.getByText('1 not sent').waitFor();
    await station.getByText(/Not live/).waitFor();
    await shot(station, 'real-station-cut');
    board = await startBoard(['--empty', '--port', new URL(board.address).port], board.data);
    await station.getByText('Everything is sent').waitFor({ timeout: 30_000 });
    await station.getByRole('button', { name: /^IV gone through/ }).waitFor();
    await station.getByRole('button', { name: /^Suction gone through/ }).waitFor();
    await band.waitFor({ state: 'detached' });
    expect(await numbers()).toEqual(before);
  });
});
