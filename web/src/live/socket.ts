import type { ClientMessageUnion, ServerMessageUnion } from '../generated/wire.ts';
import { decode, encode } from './codec.ts';
import {
  BACK_OFF_MS,
  CONNECT_MS,
  JITTER_LEAST,
  MESSAGE_BYTES_MAX,
  PATH,
  SUBPROTOCOL,
} from './constants.ts';
import type { Timers } from './timers.ts';

/** What the client needs of a browser's WebSocket. */
export interface RawSocket {
  binaryType: string;
  readonly readyState: number;
  onopen: (() => void) | null;
  onmessage: ((event: { data: unknown }) => void) | null;
  onclose: (() => void) | null;
  send(data: Uint8Array<ArrayBuffer>): void;
  close(): void;
}

export type OpenSocket = (url: string, protocol: string) => RawSocket;

export interface SocketEvents {
  opened(): void;
  message(message: ServerMessageUnion): void;
  closed(): void;
  /** How long an open socket may bring nothing now, before it is closed. */
  silentMost(): number;
}

const OPEN = 1;

const openReal: OpenSocket = (url, protocol) => new WebSocket(url, protocol) as RawSocket;

/** Where the board that gave this page takes sockets. */
export function defaultUrl(): string {
  const scheme = location.protocol === 'https:' ? 'wss:' : 'ws:';
  return `${scheme}//${location.host}${PATH}`;
}

/** How long to wait before try number `tries` (from 0), with jitter `random` in [0, 1). */
export function backOff(tries: number, random: number): number {
  const step = BACK_OFF_MS[Math.min(tries, BACK_OFF_MS.length - 1)]!;
  return step * (JITTER_LEAST + (1 - JITTER_LEAST) * random);
}

/**
 * One WebSocket that comes back: opens, reads, and after any end opens again with growing waits.
 * It goes on while the page is hidden: a wall behind another window must still be true.
 */
export class Socket {
  private readonly url: string;
  private readonly events: SocketEvents;
  private readonly timers: Timers;
  private readonly open: OpenSocket;
  private raw: RawSocket | null = null;
  private tries = 0;
  private triedAt = 0;
  private running = false;
  private cancelTimer: () => void = () => {};

  constructor(url: string, events: SocketEvents, timers: Timers, open: OpenSocket = openReal) {
    this.url = url;
    this.events = events;
    this.timers = timers;
    this.open = open;
  }

  /** When the newest try to open began: all that comes on it was sent after that. */
  get begunAt(): number {
    return this.triedAt;
  }

  get connected(): boolean {
    return this.raw !== null && this.raw.readyState === OPEN;
  }

  start(): void {
    if (this.running) return;
    this.running = true;
    this.connect();
  }

  stop(): void {
    this.running = false;
    this.drop();
  }

  /** @returns false if there is no open socket; nothing is queued here */
  send(message: ClientMessageUnion): boolean {
    if (!this.connected) return false;
    this.raw!.send(encode(message));
    return true;
  }

  /** Closes the socket and opens another. */
  again(): void {
    this.drop();
  }

  private connect(): void {
    let raw: RawSocket;
    this.triedAt = this.timers.now();
    try {
      raw = this.open(this.url, SUBPROTOCOL);
    } catch {
      this.later();
      return;
    }
    this.raw = raw;
    raw.binaryType = 'arraybuffer';
    raw.onopen = () => {
      if (this.raw !== raw) return;
      this.events.opened();
      this.watch(this.timers.now());
    };
    raw.onmessage = (event) => {
      if (this.raw === raw) this.read(event.data);
    };
    raw.onclose = () => {
      if (this.raw === raw) this.drop();
    };
    this.setTimer(CONNECT_MS, () => this.drop());
  }

  private read(data: unknown): void {
    if (!(data instanceof ArrayBuffer) || data.byteLength > MESSAGE_BYTES_MAX) {
      this.drop();
      return;
    }
    this.watch(this.timers.now());
    let message: ServerMessageUnion | null;
    try {
      message = decode(data);
    } catch {
      this.drop();
      return;
    }
    if (message === null) return;
    // Only what was understood shows that the server is well; an open socket alone does not.
    this.tries = 0;
    this.events.message(message);
  }

  /** Closes what looks open but has gone silent: a cut cable closes no socket by itself. */
  private watch(since: number): void {
    const left = since + this.events.silentMost() - this.timers.now();
    if (left <= 0) this.drop();
    // What it waits for may have changed by then.
    else this.setTimer(left, () => this.watch(since));
  }

  private drop(): void {
    const raw = this.raw;
    this.raw = null;
    this.cancelTimer();
    if (raw) {
      raw.onopen = raw.onmessage = raw.onclose = null;
      raw.close();
      this.events.closed();
    }
    if (this.running) this.later();
  }

  private later(): void {
    this.setTimer(backOff(this.tries++, this.timers.random()), () => this.connect());
  }

  private setTimer(ms: number, call: () => void): void {
    this.cancelTimer();
    this.cancelTimer = this.timers.after(ms, call);
  }
}
