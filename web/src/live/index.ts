export { type EntryState, pathOf } from './entry.ts';
export { LiveController } from './controller.ts';
export { BeatEvent, ChangeEvent, EarlierEvent, Live, TroubleEvent } from './live.ts';
export type { LiveOptions, LiveState, Page, SendOptions } from './live.ts';
export { passHeaders } from './pass.ts';
export { OutboxFull } from './outbox.ts';
export type { Earlier, Sent } from './outbox.ts';
export type { Kept } from './shelf.ts';
export { inSuite, suiteIn } from './suite.ts';
