import type { SuitePart } from '../generated/wire.ts';
import { clockTime } from './time.ts';
import { say } from './words.ts';

/** That the figures on the screen are old and no newer ones came; empty if they are not. */
export function oldFigures(suite: SuitePart | undefined): string {
  return suite?.figuresOf === undefined
    ? ''
    : say('figures.failed', { time: clockTime(suite.figuresOf, suite.zone) });
}
