import type { Trouble } from '../generated/wire.ts';
import type { Earlier } from './outbox.ts';

/** What changed since the last one. At most one a picture. */
export class ChangeEvent extends Event {
  readonly keys: ReadonlySet<string>;

  constructor(keys: ReadonlySet<string>) {
    super('change');
    this.keys = keys;
  }
}

/** A heartbeat that proved what is shown: the moving mark moves by it and by nothing else. */
export class BeatEvent extends Event {
  constructor() {
    super('beat');
  }
}

/** What was touched before this page was loaded and is not answered yet. */
export class EarlierEvent extends Event {
  readonly touches: readonly Earlier[];

  constructor(touches: readonly Earlier[]) {
    super('earlier');
    this.touches = touches;
  }
}

/** The server could not read something of ours. */
export class TroubleEvent extends Event {
  readonly trouble: Trouble;

  constructor(trouble: Trouble) {
    super('trouble');
    this.trouble = trouble;
  }
}
