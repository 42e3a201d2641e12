import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { violations } from './chromium.ts';
import { touch } from './hands.ts';
import { overflowing, scrolls, smallTargets } from './standin/looked.ts';

/** Signs the room's own anaesthetist on. */
export async function signOn(station: Page): Promise<void> {
  await touch(station, /^I am here/);
  await station
    .getByText(/arrived \d\d:\d\d/)
    .first()
    .waitFor();
}

/**
 * A normal adult set-up. A touch is a button; a number counts as one, its digits as contacts of the
 * finger beside it. At each step nothing is cut off and nothing has to be scrolled.
 */
export async function setUp(station: Page): Promise<void> {
  let touches = 0;
  let contacts = 0;
  const began = performance.now();
  let looked = 0;
  const fits = async () => {
    const from = performance.now();
    expect(await scrolls(station)).toBe(false);
    expect(await overflowing(station)).toEqual([]);
    looked += performance.now() - from;
  };
  const one = async (name: string | RegExp) => {
    touches++;
    contacts++;
    await touch(station, name);
    await fits();
  };
  const number = async (digits: string, enter: RegExp) => {
    touches++;
    for (const digit of digits) {
      contacts++;
      await station.getByRole('button', { name: digit, exact: true }).click();
    }
    contacts++;
    await touch(station, enter);
    await fits();
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
  const seconds = (performance.now() - began - looked) / 1000;
  const { width, height } = station.viewportSize()!;
  console.log(
    `${width}x${height}: ${touches} touches, ${contacts} contacts, ${seconds.toFixed(1)} s of the page`,
  );
  expect(touches).toBeLessThanOrEqual(10);
  expect(contacts).toBeLessThanOrEqual(18);
  expect(await station.getByRole('button', { name: /: gone through$/ }).count()).toBe(0);
}

/** Nothing scrolls, nothing is cut off, targets are large, and axe has nothing to say. */
export async function looked(station: Page): Promise<void> {
  expect(await scrolls(station)).toBe(false);
  expect(await overflowing(station)).toEqual([]);
  expect(await smallTargets(station, 48)).toEqual([]);
  expect(await violations(station)).toEqual([]);
}
