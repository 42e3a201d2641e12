export {
  clockBrief,
  clockHere,
  clockSeconds,
  clockTime,
  minuteOfDay,
  timeExample,
  timeOfDay,
  timesIn,
  widestTime,
} from './clock.ts';
export { gauge, reading, shown, shownLeast, shownMost, shownUnit, withUnit } from './pressure.ts';
export { both, capital, filled, speaker, worded } from './say.ts';
export type { Fill, Words } from './say.ts';
export { FIRST, follow, style } from './style.ts';
export { BOTH_KEYS, type BothKey } from './tables.ts';
export { told, toldIn, toldMessage, toldParts } from './told.ts';
