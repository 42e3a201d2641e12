import type { Page } from 'playwright-core';
import { shot } from './chromium.ts';
import { digits, touch } from './hands.ts';
import { looked, signOn } from './set-up.ts';
import { LANDSCAPE, PORTRAIT } from './standin/looked.ts';

/** In a room whose first case was set up: it starts, and the next one is set up by another list. */
export async function secondCase(station: Page): Promise<void> {
  const look = async (state: string) => {
    for (const size of [PORTRAIT, LANDSCAPE]) {
      await station.setViewportSize(size);
      await shot(station, `next-${state}-${size.width}`);
      await looked(station);
    }
  };
  await signOn(station);
  await touch(station, 'induction');
  await touch(station, /^For the next case here/);
  await look('carries');
  await touch(station, 'Set the next case up here');
  await look('list');
  await touch(station, /^general \+ block/);
  await station.getByText('Next case', { exact: true }).waitFor();
  await touch(station, /^Machine 5 of 9 open/);
  await station.getByText(/^carried over · 1,850 psi, closed again · /).waitFor();
  await look('section');
  await touch(station, 'Machine gone through');
  await digits(station, '35');
  await touch(station, /^35 cmH2O/);
  await station
    .getByText(/circuit 35 cmH2O/)
    .first()
    .waitFor();
  await touch(station, /^Rest gone through/);
  await station.getByRole('button', { name: /^Airway gone through/ }).waitFor();
  await look('work');

  await station.reload();
  await touch(station, /^Next case here: go on/);
  await station
    .getByText(/circuit 35 cmH2O/)
    .first()
    .waitFor();
  await touch(station, 'First case');
  await station
    .getByText(/circuit 32 cmH2O/)
    .first()
    .waitFor();
}
