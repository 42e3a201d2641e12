import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize, sep } from 'node:path';
import type { Duplex } from 'node:stream';
import type {
  Beat,
  ClientMessageUnion,
  PartUnion,
  ServerMessageUnion,
} from '../../src/generated/wire.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

/** The policy that the real server sends: nothing inline, nothing from elsewhere. */
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; " +
  "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/**
 * A fake board for what the real one cannot be asked for: a chosen picture, heartbeats that stop,
 * an answer that does not come. Real files over a real socket on loopback.
 */
export class FakeBoard {
  readonly received: ClientMessageUnion[] = [];
  /** While false no heartbeat is sent. */
  beating = true;
  morningClock: number;
  rate = 1;
  phaseOfBeat: Partial<Beat> = {};
  onMessage: (message: ClientMessageUnion) => void = () => {};
  parts: PartUnion[];
  private readonly root: string;
  private readonly server: Server;
  private readonly sockets = new Set<Duplex>();
  private readonly timer: NodeJS.Timeout;
  private n = 1;
  epoch = 1;

  constructor(root: string, parts: PartUnion[], morningClock: number) {
    this.root = root;
    this.parts = parts;
    this.morningClock = morningClock;
    this.server = createServer((request, response) => {
      void this.file(request.url ?? '/').then(({ status, type, body }) => {
        response.writeHead(status, { 'content-type': type, 'content-security-policy': POLICY });
        response.end(body);
      });
    });
    this.server.on('upgrade', (request, socket) => this.upgrade(request, socket));
    this.timer = setInterval(() => this.beat(), 1_000);
  }

  /** @returns the address without a path */
  async start(): Promise<string> {
    await new Promise<void>((resolve) => this.server.listen(0, '127.0.0.1', resolve));
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}`;
  }

  async stop(): Promise<void> {
    clearInterval(this.timer);
    for (const socket of this.sockets) socket.destroy();
    this.server.closeAllConnections();
    await new Promise<void>((resolve) => this.server.close(() => resolve()));
  }

  /** Cuts all sockets; pages come back by themselves. */
  cut(): void {
    for (const socket of this.sockets) socket.destroy();
  }

  /** Sends a frame with these parts to all. */
  frame(set: PartUnion[], gone: string[] = []): void {
    const keys = new Set([...set.map((part) => part.key), ...gone]);
    this.parts = [...this.parts.filter((part) => !keys.has(part.key)), ...set];
    this.n++;
    this.all({ m: 'frame', audience: 'wall', ...this.stand(), set, gone });
  }

  /** Replaces the whole picture. */
  view(parts: PartUnion[]): void {
    this.parts = parts;
    this.n++;
    this.all({ m: 'view', audience: 'wall', ...this.stand(), parts });
  }

  beat(): void {
    if (!this.beating) return;
    this.morningClock += 1_000 * this.rate;
    const { morning, epoch, n, upTo } = this.stand();
    this.all({
      m: 'beat',
      morning,
      epoch,
      n,
      upTo,
      morningClock: this.morningClock,
      rate: this.rate,
      confirmedAt: Date.now(),
      readOnly: false,
      ...this.phaseOfBeat,
    });
  }

  all(message: ServerMessageUnion): void {
    for (const socket of this.sockets) write(socket, message);
  }

  private stand() {
    return {
      morning: 'main/2026-11-25',
      epoch: this.epoch,
      n: this.n,
      upTo: this.n,
      forecastOf: 1,
    };
  }

  private async file(
    url: string,
  ): Promise<{ status: number; type: string; body: Buffer | string }> {
    let path = new URL(url, 'http://x').pathname;
    const page = /^\/(wall|desk|station|holding)(\/.*)?$/.exec(path)?.[1];
    if (page) path = `/${page}.html`;
    if (path === '/') path = '/index.html';
    const full = normalize(join(this.root, path));
    if (!full.startsWith(this.root + sep)) return { status: 404, type: 'text/plain', body: 'no' };
    try {
      const type = TYPES[extname(full)] ?? 'application/octet-stream';
      return { status: 200, type, body: await readFile(full) };
    } catch {
      return { status: 404, type: 'text/plain', body: 'not there' };
    }
  }

  private upgrade(request: IncomingMessage, socket: Duplex): void {
    const accept = createHash('sha1')
      .update(`${request.headers['sec-websocket-key']}258EAFA5-E914-47DA-95CA-C5AB0DC85B11`)
      .digest('base64');
    socket.write(
      'HTTP/1.1 101 Switching Protocols\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n' +
        `Sec-WebSocket-Accept: ${accept}\r\nSec-WebSocket-Protocol: sunup.1\r\n\r\n`,
    );
    this.sockets.add(socket);
    let rest = Buffer.alloc(0);
    socket.on('data', (chunk: Buffer) => {
      rest = Buffer.concat([rest, chunk]);
      for (let read = readFrame(rest); read; read = readFrame(rest)) {
        rest = rest.subarray(read.length);
        if (read.opcode === 8) socket.destroy();
        else if (read.opcode === 2) this.take(socket, JSON.parse(read.payload.toString('utf8')));
      }
    });
    socket.on('close', () => this.sockets.delete(socket));
    socket.on('error', () => this.sockets.delete(socket));
  }

  private take(socket: Duplex, message: ClientMessageUnion): void {
    this.received.push(message);
    if (message.m === 'hello' || message.m === 'ask-view') {
      write(socket, { m: 'view', audience: 'wall', ...this.stand(), parts: this.parts });
      this.beat();
    } else if (message.m === 'tick') {
      const { morningClock, rate } = this;
      write(socket, { m: 'tock', sentAt: message.sentAt, morningClock, rate });
    }
    this.onMessage(message);
  }
}

function write(socket: Duplex, message: ServerMessageUnion): void {
  const payload = Buffer.from(JSON.stringify(message));
  const head = Buffer.alloc(payload.length < 126 ? 2 : payload.length < 65_536 ? 4 : 10);
  head[0] = 0x82;
  if (head.length === 2) head[1] = payload.length;
  else if (head.length === 4) {
    head[1] = 126;
    head.writeUInt16BE(payload.length, 2);
  } else {
    head[1] = 127;
    head.writeBigUInt64BE(BigInt(payload.length), 2);
  }
  socket.write(Buffer.concat([head, payload]));
}

/** A masked frame of a browser, up to 64 KiB; null if it is not all there yet. */
function readFrame(data: Buffer): { opcode: number; payload: Buffer; length: number } | null {
  if (data.length < 6) return null;
  let size = data[1]! & 0x7f;
  let at = 2;
  if (size === 126) {
    if (data.length < 8) return null;
    size = data.readUInt16BE(2);
    at = 4;
  }
  const length = at + 4 + size;
  if (data.length < length) return null;
  const mask = data.subarray(at, at + 4);
  const payload = Buffer.from(data.subarray(at + 4, length));
  for (let i = 0; i < payload.length; i++) payload[i] = payload[i]! ^ mask[i % 4]!;
  return { opcode: data[0]! & 0x0f, payload, length };
}
