import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Board } from './board.ts';
import { complaints, shot } from './chromium.ts';
import { emptyBoard, inMinutes } from './daytime.ts';
import { HEAD, take, touch } from './hands.ts';
import { Screens } from './screens.ts';
import { looked } from './set-up.ts';
import { LANDSCAPE, PORTRAIT } from './standin/looked.ts';

const PATIENCE_MS = 15_000;
const ANSWER_MS = 6_000;

/** A number with its unit, or a word; under the beginning of the input's label. */
type Entries = readonly (readonly [label: string, value: string, unit?: string])[];

let board: Board;
let screens: Screens;
let page: Page;
let wrong: string[];

/** As somebody with gloves: each input touched, its keys, its unit, and then worked out. */
async function work(entries: Entries): Promise<void> {
  for (const [label, value, unit] of entries) {
    await page
      .locator('.inputs')
      .getByRole('button', { name: new RegExp(`^${label}`) })
      .click();
    if (unit === undefined) {
      await page.locator('.choices').getByRole('button', { name: value, exact: true }).click();
      continue;
    }
    for (const digit of value) {
      const name = digit === '.' ? 'point' : digit;
      await page.getByRole('button', { name, exact: true }).click();
    }
    await page.locator('.units').getByRole('button', { name: unit, exact: true }).click();
  }
  await touch(page, 'Work it out');
}

/** What the page answers, in the place where answers and refusals stand. */
async function given(words: string | RegExp): Promise<void> {
  await expect
    .poll(() => page.locator('.given').innerText(), { timeout: ANSWER_MS })
    .toMatch(words);
}

/** One figure of the list: opened, right, looked at both ways, then wrong in its own ways. */
async function figure(
  title: string,
  right: Entries,
  says: readonly (string | RegExp)[],
  ...mistakes: readonly (readonly [Entries, string | RegExp])[]
): Promise<void> {
  await page.locator('.tiles').getByRole('button', { name: title, exact: true }).click();
  await work(right);
  const worked = page.locator('.worked');
  for (const words of says) await given(words);
  for (const size of [PORTRAIT, LANDSCAPE]) {
    await page.setViewportSize(size);
    const name = title.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');
    await shot(page, `figure-${name}-${size.width}`);
    await looked(page);
  }
  for (const [entries, reason] of mistakes) {
    await work(entries);
    await given(reason);
    expect(await worked.count(), String(reason)).toBe(0);
  }
  await touch(page, 'All figures');
}

describe('every bedside figure at the station', () => {
  beforeAll(async () => {
    [screens, board] = await Promise.all([Screens.begin(), emptyBoard()]);
    const desk = await screens.open(LANDSCAPE, PATIENCE_MS);
    await desk.goto(`${board.address}/desk`);
    await take(desk, `${HEAD}\n1,${inMinutes(45)},general,,hernia,surgery`);
    page = await screens.open(LANDSCAPE, PATIENCE_MS);
    wrong = complaints(page);
    await page.goto(`${board.address}/station/1`);
    await touch(page, 'Bedside figures');
    await page.getByRole('button', { name: 'MAC for age' }).waitFor();
  });
  beforeEach(async () => {
    const back = page.getByRole('button', { name: 'All figures' });
    if ((await back.count()) > 0) await back.click();
  });
  afterAll(async () => {
    await screens.close();
    await board.stop();
  });

  it('should work out cylinders in both units and refuse liquids, no flow and a slip of ten', async () => {
    await figure(
      'Backup cylinder: minutes left',
      [
        ['gas', 'oxygen'],
        ['size', 'US E'],
        ['gauge', '1900', 'psi'],
        ['flow', '5', 'L/min'],
      ],
      ['95 min (1 h 35 min)', '476 L'],
      [[['gas', 'nitrous oxide']], /nitrous oxide.*400 L are left/],
      [
        [
          ['gas', 'oxygen'],
          ['flow', '0', 'L/min'],
        ],
        /must be above 0/,
      ],
      [
        [
          ['flow', '5', 'L/min'],
          ['gauge', '1900', 'bar'],
        ],
        /gauge/,
      ],
    );
    await figure(
      'Cylinder by its water volume: minutes left',
      [
        ['gas', 'oxygen'],
        ['water', '14', 'L'],
        ['gauge', '138', 'bar'],
        ['flow', '2.1', 'L/min'],
        ['kept', '0', 'bar'],
      ],
      // Rounded down: 1906.7 L at 2.1 L/min.
      [/907 min/],
      [[['gas', 'carbon dioxide']], /carbon dioxide/],
    );
  });

  it('should lay out an airway with its neighbours, and nothing between its formulas', async () => {
    await figure(
      'Tube size',
      [
        ['age', '4', 'years'],
        ['tube', 'cuffed'],
      ],
      ['4.5 mm', 'have ready 4 mm and 5 mm'],
      [[['age', '14', 'years']], /between 12 and 16 years/],
      [[['age', '400', 'years']], /age/],
    );
    await figure('Tube depth at the lips', [['age', '4', 'years']], ['14 cm']);
    await figure('Laryngoscope blade', [['age', '4', 'years']], ['curved 1 to 2']);
    await figure(
      'Laryngeal mask size',
      [
        ['age', '4', 'years'],
        ['weight', '16', 'kg'],
      ],
      ['have ready 1.5 and 2.5', '10 mL'],
      // Right in kilograms, typed with the other unit: 7.3 kg is asked again.
      [[['weight', '16', 'lb']], /unusual at 4 years/],
    );
    await figure('Oral airway', [['build', 'medium adult']], [/100 mm/]);
    await figure(
      'Suction catheter for a tube',
      [['tube', '8', 'mm']],
      ['12 Fr', '14 Fr'],
      [[['tube', '80', 'mm']], /tube, inner width/],
    );
  });

  it('should keep both limits of a local anaesthetic, alone and together', async () => {
    await figure(
      'Local anaesthetic: ceiling',
      [
        ['age', '40', 'years'],
        ['weight', '80', 'kg'],
        ['drug', 'lidocaine plain'],
        ['concentration', '1', '%'],
      ],
      ['300 mg = 30 mL', /fixed 300 mg/],
      [[['drug', 'tetracaine plain']], /no source, no figure/],
      [[['weight', '8', 'kg']], /unusual at 40 years/],
    );
    await figure(
      'Local anaesthetics together: share of the ceilings',
      [
        ['weight', '80', 'kg'],
        ['drug 1', 'bupivacaine with vasoconstrictor'],
        ['concentration 1', '5', 'mg/mL'],
        ['volume 1', '20', 'mL'],
        ['drug 2', 'lidocaine with vasoconstrictor'],
        ['concentration 2', '10', 'mg/mL'],
        ['volume 2', '20', 'mL'],
        ['drug 3', 'ropivacaine plain'],
        ['concentration 3', '2', 'mg/mL'],
        ['volume 3', '10', 'mL'],
      ],
      // 100 of 225 mg, 200 of 500 mg and 20 of 200 mg.
      ['0.945', '100 mg = 20 mL'],
      [[['weight', '60', 'lb']], /unusual at 40 years/],
    );
    await figure(
      'Local anaesthetics together: share of the ceilings',
      [
        ['age', '5', 'months'],
        ['weight', '7', 'kg'],
        ['drug 1', 'bupivacaine with vasoconstrictor'],
        ['concentration 1', '2.5', 'mg/mL'],
        ['volume 1', '2', 'mL'],
        ['drug 2', 'lidocaine with vasoconstrictor'],
        ['concentration 2', '10', 'mg/mL'],
        ['volume 2', '1', 'mL'],
        ['drug 3', 'levobupivacaine with vasoconstrictor'],
        ['concentration 3', '2.5', 'mg/mL'],
        ['volume 3', '1', 'mL'],
      ],
      [/x 0\.7 below 6 months/, /second person works it out too/],
    );
    await page
      .locator('.tiles')
      .getByRole('button', { name: /^Local anaesthetics/ })
      .click();
    await work([
      ['age', '40', 'years'],
      ['weight', '80', 'kg'],
      ['drug 1', 'bupivacaine plain'],
      ['concentration 1', '5', 'mg/mL'],
      ['volume 1', '10', 'mL'],
      ['drug 2', 'lidocaine plain'],
    ]);
    await given(/needs drug, concentration and volume/);
    await touch(page, 'All figures');
    await figure(
      'Local anaesthetic: ceiling',
      [
        ['age', '5', 'months'],
        ['weight', '7', 'kg'],
        ['drug', 'lidocaine plain'],
        ['concentration', '10', 'mg/mL'],
      ],
      [/x 0\.7 below 6 months/, /second person works it out too/],
      [[['age', '0.5', 'months']], /no ceiling below 1 month/],
    );
  });

  it('should work out rescue, fluids, weights and arithmetic, each refusing outside its range', async () => {
    await figure(
      'Dantrolene for malignant hyperthermia',
      [
        ['age', '40', 'years'],
        ['weight', '80', 'kg'],
        ['vial', '20 mg'],
      ],
      [/200 mg/, /10 of 20 mg/],
    );
    await figure(
      'Lipid 20 % for local anaesthetic toxicity',
      [['weight', '70', 'kg']],
      [/20,000 mg = 100 mL/, /840 mL/],
    );
    await figure(
      'Body weights',
      [
        ['sex', 'male'],
        ['height', '70', 'in'],
        ['weight', '80', 'kg'],
      ],
      ['73 kg'],
    );
    await figure('Body weights', [['height', '50', 'in']], [/152\.4|60 in/]);
    await figure('Body surface', [['height', '180', 'cm']], [/\b2 m/]);
    await figure(
      'Concentration in all ways of writing',
      [['concentration', '200000', '1 : it']],
      [/5 micrograms\/mL/, '0.0005 %'],
      [[['concentration', '0', 'mg/mL']], /concentration/],
    );
    await figure(
      'Volume that holds an amount',
      [
        ['amount', '100', 'mg'],
        ['concentration', '1', '%'],
      ],
      [/= 10 mL/],
    );
    await figure(
      'Making up',
      [
        ['concentration', '1', 'mg/mL'],
        ['drawn', '1', 'mL'],
        ['whole', '10', 'mL'],
      ],
      [/100 micrograms\/mL/],
      [[['whole', '0.5', 'mL']], /can't be less than what is drawn/],
    );
    await figure(
      'Maintenance fluid, 4-2-1',
      [
        ['age', '4', 'years'],
        ['weight', '15', 'kg'],
      ],
      ['50 mL/h'],
      [
        [
          ['age', '40', 'years'],
          ['weight', '120', 'kg'],
        ],
        /above 100 kg/,
      ],
    );
    await figure('MAC for age', [['agent', 'sevoflurane']], ['1.8 %']);
    await figure(
      'Monitors of the basic standard',
      [
        ['general', 'yes'],
        ['gas', 'yes'],
        ['ventil', 'yes'],
        ['.*temperature', 'no'],
      ],
      [/oxygen analyser/, 'disconnection alarm, audible'],
    );
  });

  it('should take an answer away when the pharmacy withdraws the figure meanwhile', async () => {
    await page.locator('.tiles').getByRole('button', { name: 'MAC for age' }).click();
    await work([['agent', 'isoflurane']]);
    await page.locator('.worked').waitFor();
    const file = join(board.data, 'board', 'site.json');
    const site = JSON.parse(await readFile(file, 'utf8')) as {
      bedside: { releases: { figure: string }[] };
    };
    site.bedside.releases = site.bedside.releases.filter((r) => r.figure !== 'mac');
    await writeFile(file, JSON.stringify(site));
    await page.getByText(/This figure is off until the site's pharmacy releases it/).waitFor();
    expect(await page.locator('.worked').count()).toBe(0);
    await touch(page, 'All figures');
    await page.getByText(/^Off until the site's pharmacy/).waitFor();
    expect(await page.locator('.tiles').getByRole('button', { name: 'MAC for age' }).count()).toBe(
      0,
    );
    await shot(page, 'figure-off');
    expect(wrong).toEqual([]);
  });
});
