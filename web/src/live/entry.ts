import type {
  AccessAskUnion,
  ClientMessageUnion,
  Paired,
  Pairing,
  Role,
  ServerMessageUnion,
  Signed,
  Told,
} from '../generated/wire.ts';
import { BrowserKey, NoKeys, type ScreenKey } from './key.ts';
import { knowPass } from './pass.ts';

/** How this screen stands with the board, where screens are paired. */
export interface EntryState {
  /** The code that it shows until somebody types it at a desk. */
  readonly pairing?: Pairing;
  /** What it is. */
  readonly paired?: Paired;
  /** Who is signed on here; nobody if it is not there. */
  readonly signed?: Signed & { session: string; code: string; role: Role };
  /** This page can't keep a key. */
  readonly noKeys?: boolean;
}

/** What an entry uses of the page's socket. */
export interface EntryLine {
  send(message: ClientMessageUnion): boolean;
  /** Opens another socket at once. */
  again(): void;
  changed(): void;
}

/** What an identity provider sends back with a browser. */
export interface BroughtBack {
  readonly code: string;
  readonly state: string;
  readonly iss?: string;
}

/** What stands behind the `#` of a page to which a browser came back: what it brought, or nothing. */
export function broughtBack(hash: string): BroughtBack | undefined {
  if (!hash.startsWith('#signed-in?')) return undefined;
  const fields = new URLSearchParams(hash.slice('#signed-in?'.length));
  const iss = fields.get('iss');
  return {
    code: fields.get('code') ?? '',
    state: fields.get('state') ?? '',
    ...(iss === null ? {} : { iss }),
  };
}

/** A question to the board went unanswered: the socket was cut. */
const CUT: Omit<Told, 'id'> = {
  m: 'told',
  done: false,
  words: 'The board was not reached. Try again.',
};

/**
 * Who this screen is and who is signed on at it: answers the board's challenge, shows a code while
 * the board does not know it, and asks about screens and people. Where screens are not paired the
 * board sends no challenge and nothing of this happens.
 */
export class Entry {
  private readonly line: EntryLine;
  private readonly key: ScreenKey;
  private readonly waiting = new Map<string, (told: Told) => void>();
  private asked = 0;
  private nonce = '';
  private now: EntryState = {};

  constructor(line: EntryLine, key: ScreenKey = new BrowserKey()) {
    this.line = line;
    this.key = key;
  }

  get state(): EntryState {
    return this.now;
  }

  /** True if the message was one for the entry. */
  received(message: ServerMessageUnion): boolean {
    switch (message.m) {
      case 'challenge':
        this.nonce = message.nonce;
        void this.prove(message.nonce);
        return true;
      case 'pairing':
        void this.unknown(message);
        return true;
      case 'paired':
        this.change({ ...this.now, pairing: undefined, noKeys: undefined, paired: message });
        void this.known();
        return true;
      case 'signed':
        this.change({ ...this.now, signed: somebody(message) });
        return true;
      case 'told':
        this.waiting.get(message.id)?.(message);
        return true;
      default:
        return false;
    }
  }

  /** The socket ended: what was asked on it is not answered any more. */
  cut(): void {
    for (const [id, tell] of [...this.waiting]) tell({ ...CUT, id });
  }

  /** Asks something about screens and people. */
  async ask(ask: AccessAskUnion): Promise<Told> {
    const id = `ask-${++this.asked}`;
    return this.question(id, { m: 'manage', id, ask });
  }

  async signOn(code: string, pin: string, role?: Role, as?: string): Promise<Told> {
    return this.question('sign-on', {
      m: 'sign-on',
      code,
      pin,
      ...(role === undefined ? {} : { role }),
      ...(as === undefined ? {} : { as }),
    });
  }

  /** Somebody else signs beside whoever is signed on; the answer has the token. */
  async countersign(
    code: string,
    pin: string,
    as: string,
    morning: string,
    kind: string,
  ): Promise<Told> {
    const m = 'countersign';
    return this.question(m, { m, code, pin, as, morning, kind });
  }

  /** By the identity provider: the answer has the address to go to. */
  async signIn(path: string, role?: Role, as?: string): Promise<Told> {
    return this.question('sign-in', {
      m: 'sign-in',
      path,
      ...(role === undefined ? {} : { role }),
      ...(as === undefined ? {} : { as }),
    });
  }

  /** What this browser brought back from there. */
  async signedIn(back: BroughtBack): Promise<Told> {
    return this.question('signed-in', { m: 'signed-in', ...back });
  }

  async signOff(): Promise<Told> {
    return this.question('sign-off', { m: 'sign-off' });
  }

  /** This phone wants to be told by its browser's push service, for whoever is signed on now. */
  async pushOn(endpoint: string, key: string, auth: string): Promise<Told> {
    return this.question('push', { m: 'push-on', endpoint, key, auth });
  }

  /** It does not want to be told any more. */
  async pushOff(): Promise<Told> {
    return this.question('push', { m: 'push-off' });
  }

  /** The first administrator, by the link of the board's console. */
  async firstLink(link: string, code: string, pin: string): Promise<Told> {
    return this.question('first-link', { m: 'first-link', link, code, pin });
  }

  private async question(id: string, message: ClientMessageUnion): Promise<Told> {
    this.waiting.get(id)?.({ ...CUT, id });
    return new Promise((resolve) => {
      this.waiting.set(id, (told) => {
        this.waiting.delete(id);
        resolve(told);
      });
      if (!this.line.send(message)) this.waiting.get(id)?.({ ...CUT, id });
    });
  }

  private async prove(nonce: string): Promise<void> {
    try {
      this.line.send({ m: 'prove', ...(await this.key.prove(nonce)) });
    } catch (e) {
      if (!(e instanceof NoKeys)) console.error('the screen has no key', e);
      this.change({ ...this.now, noKeys: true });
    }
  }

  private async unknown(pairing: Pairing): Promise<void> {
    if (this.now.pairing?.code === pairing.code) return;
    if (await this.key.unknown()) {
      this.line.again();
      return;
    }
    this.change({ pairing });
  }

  private async known(): Promise<void> {
    await this.key.known();
    const next = await this.key.next(this.nonce);
    if (!next) return;
    const told = await this.question('new-key', { m: 'new-key', ...next });
    if (told.done) await this.key.turn();
  }

  private change(to: { [K in keyof EntryState]: EntryState[K] | undefined }): void {
    this.now = Object.fromEntries(
      Object.entries(to).filter(([, value]) => value !== undefined),
    ) as EntryState;
    knowPass(this.now.paired?.pass);
    this.line.changed();
  }
}

function somebody(message: Signed): EntryState['signed'] {
  const { session, code, role } = message;
  return session === undefined || code === undefined || role === undefined
    ? undefined
    : { ...message, session, code, role };
}

/** The page of a screen that was paired as something. */
export function pathOf(paired: Paired): string {
  const room = paired.room === undefined ? '' : `/${encodeURIComponent(paired.room)}`;
  return `/${paired.page}${room}`;
}
