import type { Told } from '../generated/wire.ts';
import type { EntryState } from '../live/entry.ts';

/**
 * How this phone stands: told while it is locked, or not, and why not.
 *
 * - `not-here`: the site does not allow it, or screens are not paired
 * - `cannot`: this browser has no push
 * - `refused`: the browser was told to refuse it
 */
export type TellingState = 'not-here' | 'cannot' | 'refused' | 'off' | 'asking' | 'on';

/** What a browser can do about pushes. */
export interface PushBrowser {
  /** False where there is no such thing. */
  readonly able: boolean;
  permission(): NotificationPermission;
  ask(): Promise<NotificationPermission>;
  /** The browser's subscription for this key: the one that it has, or else a new one. */
  subscribe(key: string, anew: boolean): Promise<PushSubscriptionJSON | undefined>;
  unsubscribe(): Promise<void>;
  /** The sign-on under which it was last switched on here. */
  kept(): string | null;
  keep(session: string | null): void;
}

/** The page's way to the board. */
export interface TellingLine {
  pushOn(endpoint: string, key: string, auth: string): Promise<Told>;
  pushOff(): Promise<Told>;
}

const FAILED =
  'The browser could not reach its push service. While this page is open it tells you all the same.';

/**
 * Whether this phone is told while it is locked that something is asked. It belongs to one sign-on:
 * whoever signs on next is not told until he or she asks for it.
 */
export class Telling {
  /** What went wrong when it was last touched, in words. */
  wrong = '';
  private readonly browser: PushBrowser;
  private readonly line: TellingLine;
  private readonly changed: () => void;
  private session: string | undefined;
  private on = false;
  private asking = false;

  constructor(browser: PushBrowser, line: TellingLine, changed: () => void) {
    this.browser = browser;
    this.line = line;
    this.changed = changed;
  }

  state(entry: EntryState): TellingState {
    if (entry.paired?.push === undefined || entry.signed?.as === undefined) return 'not-here';
    if (!this.browser.able) return 'cannot';
    if (this.asking) return 'asking';
    if (this.browser.permission() === 'denied') return 'refused';
    return this.on && this.session === entry.signed.session ? 'on' : 'off';
  }

  /** The entry has changed: a page that was loaded anew goes on as before; another's ends. */
  follow(entry: EntryState): void {
    const session = entry.signed?.session;
    const key = entry.paired?.push;
    if (session === undefined || key === undefined || session === this.session) return;
    this.session = session;
    this.on = false;
    this.wrong = '';
    if (!this.browser.able) return;
    const kept = this.browser.kept();
    if (kept === session) {
      void this.subscribe(key, session, false);
    } else if (kept !== null) {
      this.browser.keep(null);
      this.browser.unsubscribe().catch(() => undefined);
    }
  }

  /** Touched: the browser asks, once, and nothing is asked of it before. */
  async turnOn(entry: EntryState): Promise<void> {
    const key = entry.paired?.push;
    const session = entry.signed?.session;
    if (key === undefined || session === undefined || this.asking) return;
    this.wrong = '';
    this.busy(true);
    const allowed = await this.browser.ask().catch(() => 'denied' as const);
    if (allowed === 'granted') await this.subscribe(key, session, true);
    this.busy(false);
  }

  async turnOff(): Promise<void> {
    this.on = false;
    this.browser.keep(null);
    this.changed();
    // The board forgets it first: a browser that is not reached now is told nothing any more.
    const told = await this.line.pushOff();
    this.wrong = told.done ? '' : told.words;
    await this.browser.unsubscribe().catch(() => undefined);
    this.changed();
  }

  private async subscribe(key: string, session: string, anew: boolean): Promise<void> {
    try {
      const made = await this.browser.subscribe(key, anew);
      const { endpoint, keys } = made ?? {};
      const point = keys?.['p256dh'];
      const auth = keys?.['auth'];
      if (endpoint === undefined || point === undefined || auth === undefined) return;
      const told = await this.line.pushOn(endpoint, point, auth);
      this.on = told.done && session === this.session;
      this.wrong = told.done ? '' : told.words;
      if (this.on) this.browser.keep(session);
    } catch {
      this.wrong = FAILED;
    }
    this.changed();
  }

  private busy(asking: boolean): void {
    this.asking = asking;
    this.changed();
  }
}

const KEPT = 'sunup.pocket/told';

/** The browser that this page is in. */
export const thisBrowser: PushBrowser = {
  get able() {
    return 'serviceWorker' in navigator && 'PushManager' in window && 'Notification' in window;
  },
  permission: () => Notification.permission,
  ask: () => Notification.requestPermission(),
  async subscribe(key, anew) {
    const { pushManager } = await navigator.serviceWorker.ready;
    const had = await pushManager.getSubscription();
    if (had !== null) {
      if (base64url(had.options.applicationServerKey) === key) return had.toJSON();
      // The board has another key than it had: what is for the old one is worth nothing.
      await had.unsubscribe();
    }
    if (!anew) return undefined;
    const made = await pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: key });
    return made.toJSON();
  },
  async unsubscribe() {
    const { pushManager } = await navigator.serviceWorker.ready;
    await (await pushManager.getSubscription())?.unsubscribe();
  },
  kept() {
    try {
      return localStorage.getItem(KEPT);
    } catch {
      return null;
    }
  },
  keep(session) {
    try {
      if (session === null) localStorage.removeItem(KEPT);
      else localStorage.setItem(KEPT, session);
    } catch {
      // Nothing is kept here: after a reload it is off until it is touched again.
    }
  },
};

function base64url(bytes: ArrayBuffer | null): string {
  const text = String.fromCharCode(...new Uint8Array(bytes ?? new ArrayBuffer(0)));
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}
