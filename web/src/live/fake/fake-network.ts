import type { ClientMessageUnion, ServerMessageUnion } from '../../generated/wire.ts';
import type { RawSocket } from '../socket.ts';

const decoder = new TextDecoder();
const encoder = new TextEncoder();

/** One end of a connection that a test holds the other end of. */
export class FakeSocket implements RawSocket {
  binaryType = '';
  readyState = 0;
  onopen: (() => void) | null = null;
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onclose: (() => void) | null = null;
  readonly sent: ClientMessageUnion[] = [];
  closed = false;

  send(data: Uint8Array<ArrayBuffer>): void {
    this.sent.push(JSON.parse(decoder.decode(data)) as ClientMessageUnion);
  }

  close(): void {
    this.closed = true;
    this.readyState = 3;
  }

  accept(): void {
    this.readyState = 1;
    this.onopen?.();
  }

  /** As a server that hears the screen: before a heartbeat the last tick is answered. */
  deliver(message: ServerMessageUnion): void {
    const tick = this.of('tick').at(-1);
    if (message.m === 'beat' && tick) {
      const { morningClock, rate } = message;
      this.deliverLate({ m: 'tock', sentAt: tick.sentAt, morningClock, rate });
    }
    this.deliverLate(message);
  }

  /** What lay on the line: no tick was heard before it. */
  deliverLate(message: ServerMessageUnion): void {
    this.raw(encoder.encode(JSON.stringify(message)).buffer);
  }

  raw(data: unknown): void {
    this.onmessage?.({ data });
  }

  end(): void {
    this.readyState = 3;
    this.onclose?.();
  }

  of<M extends ClientMessageUnion['m']>(kind: M): Extract<ClientMessageUnion, { m: M }>[] {
    return this.sent.filter((one) => one.m === kind) as Extract<ClientMessageUnion, { m: M }>[];
  }
}

/** Where fake sockets come from. */
export class FakeNetwork {
  readonly sockets: FakeSocket[] = [];
  readonly protocols: string[] = [];

  readonly open = (_url: string, protocol: string): FakeSocket => {
    const socket = new FakeSocket();
    this.sockets.push(socket);
    this.protocols.push(protocol);
    return socket;
  };

  get last(): FakeSocket {
    return this.sockets.at(-1)!;
  }
}
