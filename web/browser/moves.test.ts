import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Board } from './board.ts';
import { complaints, shot, violations } from './chromium.ts';
import { emptyBoard, inMinutes } from './daytime.ts';
import { HEAD, take, touch } from './hands.ts';
import { Screens } from './screens.ts';
import { signOn } from './set-up.ts';
import { LANDSCAPE, scrolls, smallTargets } from './standin/looked.ts';

let screens: Screens;
let board: Board;

beforeAll(async () => {
  screens = await Screens.begin();
});
afterAll(async () => {
  await screens.close();
  await board.stop();
});

async function screen(path: string): Promise<Page> {
  const page = await screens.open(LANDSCAPE, 60_000);
  await page.goto(`${board.address}${path}`);
  return page;
}

/** A morning of two rooms whose drugs wait for a pharmacy that opens late. */
async function late(): Promise<Page> {
  board = await emptyBoard();
  const desk = await screen('/desk');
  const at = inMinutes(45);
  const rows = [`1,${at},general,,hernia,surgery`, `2,${at},general,,hip,orthopaedics`];
  await take(desk, [HEAD, ...rows].join('\n'));
  await touch(desk, 'equipment');
  await desk.getByLabel('pharmacy opens at').fill(inMinutes(75));
  const pharmacy = desk.locator('form', { hasText: 'pharmacy' }).last();
  await pharmacy.getByRole('button', { name: 'Opens then' }).click();
  return desk;
}

describe('a move', () => {
  it('should reach the room that it is for, and be off once somebody there calls it not safe', async () => {
    const desk = await late();
    const wrong = complaints(desk);
    await touch(desk, /^moves/);
    const ask = desk.getByRole('button', { name: /^Ask pharmacy: ask pharmacy to open/ });
    await ask.waitFor();
    await desk
      .getByText(/saves about \d+\.\d min/)
      .first()
      .waitFor();
    await shot(desk, 'real-desk-moves');
    expect(await violations(desk)).toEqual([]);
    await ask.click();
    await desk.getByText(/asked of pharmacy \d\d:\d\d, no answer yet/).waitFor();

    const stations = [await screen('/station/1'), await screen('/station/2')];
    const notSafe = /^Not safe: ask pharmacy to open/;
    await Promise.any(stations.map((s) => s.getByRole('button', { name: notSafe }).waitFor()));
    const counts = await Promise.all(
      stations.map((s) => s.getByRole('button', { name: notSafe }).count()),
    );
    const station = stations[counts.findIndex((n) => n > 0)]!;
    await station.getByText(/asked of pharmacy \d\d:\d\d, no answer yet/).waitFor();
    expect(await station.getByRole('button', { name: /^Accept/ }).count()).toBe(0);
    await shot(station, 'real-station-move');
    expect(await violations(station)).toEqual([]);

    await touch(desk, /^Accept, as told by telephone: ask pharmacy/);
    const counting = /accepted by desk \d\d:\d\d, the forecast counts on it/;
    await desk.getByText(counting).waitFor();
    await station.getByText(counting).waitFor();
    await shot(desk, 'real-desk-move-accepted');

    await touch(station, notSafe);
    await desk.getByText(/called not safe by .* \d\d:\d\d: off for this morning/).waitFor();
    expect(await desk.getByRole('button', { name: /^Ask pharmacy/ }).count()).toBe(0);
    expect(wrong).toEqual([]);
  });

  it('should be worked out on a copy, side by side with the morning, and change nothing', async () => {
    const desk = await screen('/desk');
    const wrong = complaints(desk);
    await touch(desk, 'people');
    for (const room of [1, 2]) await touch(desk, `anaesthetist of ${room} arrived`);
    await desk.getByText('no word from').waitFor({ state: 'detached' });
    const opening = desk.getByRole('heading', { name: /^pharmacy · opens/ });
    await touch(desk, 'equipment');
    const before = await opening.innerText();
    await touch(desk, 'try on a copy');
    await desk.getByLabel('copy: pharmacy opens at').fill(inMinutes(5));
    const pharmacy = desk.locator('form', { hasText: 'pharmacy' }).last();
    await pharmacy.getByRole('button', { name: 'Opens then' }).click();
    const sides = desk.locator('table.sides');
    await desk
      .getByText(/saves \d+\.\d ± \d+\.\d min/)
      .first()
      .waitFor();
    await sides.locator('tbody tr').nth(1).waitFor();
    expect(await sides.locator('tbody tr').count()).toBe(2);
    await touch(desk, 'Change something else');
    await touch(desk, 'Swap their cases');
    await desk.getByText('cases of 1 and 2 swapped').waitFor();
    await sides.waitFor();
    await shot(desk, 'real-desk-copy');
    expect(await scrolls(desk)).toBe(false);
    expect(await smallTargets(desk, 48)).toEqual([]);
    expect(await violations(desk)).toEqual([]);

    await touch(desk, 'Throw the copy away');
    await touch(desk, 'equipment');
    expect(await opening.innerText()).toBe(before);
    expect(wrong).toEqual([]);
  });

  it('should be a swap only once the desk saw what it voids, and each room says it at its station', async () => {
    const desk = await screen('/desk');
    const wrong = complaints(desk);
    const [one, two] = [await screen('/station/1'), await screen('/station/2')];
    await touch(desk, 'people');
    await touch(desk, 'technician 1 arrived');
    await signOn(one);
    await touch(one, 'Airway: gone through');
    await touch(one, 'Drugs: gone through');
    await touch(one, /^technician 1/);
    await touch(one, 'at hand');
    await one.getByRole('button', { name: /^Airway gone through/ }).waitFor();
    await touch(desk, 'room 1');
    await desk.getByLabel('swap with room').selectOption('2');
    await touch(desk, 'Look at a swap…');
    await desk.getByText(/discard: drugs drawn.* · do again: airway tubes/).waitFor();
    await shot(desk, 'real-desk-swap');
    expect(await violations(desk)).toEqual([]);
    await touch(desk, 'Swap 1 and 2');
    await desk.getByText('not yet confirmed in room 1 · not yet confirmed in room 2').waitFor();

    await one.getByText(/Another case is here: swapped with 2 at \d\d:\d\d/).waitFor();
    await one.getByText(/^discard:\s+drugs drawn/).waitFor();
    await shot(one, 'real-station-swap');
    expect(await scrolls(one)).toBe(false);
    expect(await smallTargets(one, 48)).toEqual([]);
    expect(await violations(one)).toEqual([]);
    await touch(one, 'Swap confirmed');
    await one.getByText(/Another case is here/).waitFor({ state: 'detached' });
    await desk
      .getByText(/confirmed in room 1 \d\d:\d\d by .* · not yet confirmed in room 2/)
      .waitFor();
    await touch(desk, /^needs/);
    await desk.getByText(/the swap with 1 is not yet confirmed in the room/).waitFor();
    await touch(two, 'Swap confirmed');
    await desk.getByText(/is not yet confirmed in the room/).waitFor({ state: 'detached' });
    expect(wrong).toEqual([]);
  });

  it('should be taken by an emergency in one touch, a person or a room', async () => {
    const desk = await screen('/desk');
    await touch(desk, 'people');
    await touch(desk, 'anaesthetist of 1: more');
    await touch(desk, 'Emergency takes anaesthetist of 1');
    await desk.getByText(/^left \d\d:\d\d$/).waitFor();
    await touch(desk, 'room 2');
    await touch(desk, 'Emergency takes it');
    await desk.getByRole('heading', { name: /^The room: emergency/ }).waitFor();
    expect(await desk.getByRole('button', { name: 'Emergency takes it' }).count()).toBe(0);
    const station = await screen('/station/2');
    await station
      .locator('header')
      .getByText(/emergency/)
      .waitFor();
    await shot(station, 'real-station-emergency');
  });

  it('should not be needed where the evening look has mended what tomorrow lacks', async () => {
    const tomorrow = new Date(Date.now() + 24 * 3_600_000).toISOString().slice(0, 10);
    const desk = await screen(`/desk?date=${tomorrow}`);
    const wrong = complaints(desk);
    await touch(desk, 'case list');
    const rows = ['1,07:30,general,block,hip,orthopaedics', '2,07:30,general,block,hand,plastics'];
    await desk.getByLabel('the case list as CSV').fill([HEAD, ...rows].join('\n'));
    await touch(desk, 'Look at it first');
    await touch(desk, 'Take this list');
    await touch(desk, /^evening look/);
    await desk.getByText(/ultrasound: 2 rooms may want one at \d\d:\d\d, there is 1/).waitFor();
    const trays = desk.getByLabel(/^room 1: .*(tray|instrument|cart)/i);
    await trays.selectOption('!implant missing');
    await touch(desk, /^Say: room 1, .*(tray|instrument|cart)/i);
    await desk.getByRole('button', { name: /^Mended: room 1/ }).waitFor();
    await touch(desk, 'Something is missing…');
    await shot(desk, 'real-desk-evening');
    expect(await scrolls(desk)).toBe(false);
    expect(await smallTargets(desk, 48)).toEqual([]);
    expect(await violations(desk)).toEqual([]);
    await touch(desk, /^Mended: room 1/);
    await trays.waitFor();
    expect(wrong).toEqual([]);
  });
});
