export { LiveController } from './controller.ts';
export { BeatEvent, ChangeEvent, Live, RefusedEvent, TroubleEvent } from './live.ts';
export type { LiveOptions, LiveState, Page } from './live.ts';
export { OutboxFull } from './outbox.ts';
export type { Kept } from './shelf.ts';
export { inSuite, suiteIn } from './suite.ts';
