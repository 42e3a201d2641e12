import type { HouseStyle } from '../generated/wire.ts';

/** British words, 24 hours, pressures as each sheet gives them: what the wire has too. */
export const FIRST: HouseStyle = { english: 'british', clock: 24 };

let followed: HouseStyle = FIRST;

/** How this page writes. A page shows one site, so it is kept once for all that is on it. */
export function style(): HouseStyle {
  return followed;
}

/** What the board says of the site; nothing said is the first way. */
export function follow(site: HouseStyle | undefined): void {
  followed = site ?? FIRST;
}
