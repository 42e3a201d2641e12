import './banner.ts';
import './caution.ts';
import './entry.ts';
import './mark.ts';

export { oldFigures } from './figures.ts';
export { entryOver, type SunupEntry } from './entry.ts';
export { badge, proof } from './proof.ts';
export { clockTime, dateOf, dateWords, dayWords, minutesBetween } from './time.ts';
export { lateBrief, lateBy, say } from './words.ts';
export type { CommonKey } from './words.ts';
export { speaker, type Fill, type Words } from '../words/index.ts';
