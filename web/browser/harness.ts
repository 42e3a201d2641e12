import type {
  Beat,
  ClientMessageUnion,
  Frame,
  RoomPart,
  Tock,
  View,
} from '../src/generated/wire.ts';
import { Live } from '../src/live/index.ts';
import type { RawSocket } from '../src/live/socket.ts';
import { realTimers, type Timers } from '../src/live/timers.ts';
import '../src/look/index.ts';
import { smallestLetters } from '../src/wall/settings.ts';
import '../src/wall/wall.ts';
import type { SunupWall } from '../src/wall/wall.ts';
import { at, mixedRooms, NEEDS, suite } from './fake/mornings.ts';

/**
 * Feeds real messages as bytes into the real client and the real wall, one frame a picture, and
 * measures the page's own work of each: decoding, applying and rendering.
 */

const ROOMS = 60;
const CHANGED_A_FRAME = 12;
const HORIZON = at('07:30');
const stand = { morning: 'main/2026-11-25', epoch: 1, upTo: 1, forecastOf: 1 };
const rooms = mixedRooms(ROOMS);

class FakeSocket implements RawSocket {
  binaryType = '';
  readyState = 1;
  onopen: (() => void) | null = null;
  onmessage: ((event: { data: unknown }) => void) | null = null;
  onclose: (() => void) | null = null;
  /** Answers ticks, or the wall would be stale. */
  send(data: Uint8Array<ArrayBuffer>): void {
    const message = JSON.parse(new TextDecoder().decode(data)) as ClientMessageUnion;
    if (message.m !== 'tick') return;
    const { sentAt } = message;
    queueMicrotask(() => {
      const { morningClock, rate } = beat();
      deliver(bytes({ m: 'tock', sentAt, morningClock, rate }));
    });
  }
  close(): void {}
}

const socket = new FakeSocket();
let drawing: (() => void) | null = null;
const timers: Timers = { ...realTimers, frame: (call) => void (drawing = call) };

const live = new Live({ page: 'wall', screen: 'harness', url: 'x', timers, open: () => socket });
const wall = document.createElement('sunup-wall') as SunupWall;
wall.live = live;
wall.settings = { inches: 55, metres: 3, screen: 'harness', wrong: [] };
wall.style.setProperty('--letter', String(smallestLetters(wall.settings)));
document.body.append(wall);
live.start();
socket.onopen?.();

let n = 0;
const encoder = new TextEncoder();
const bytes = (message: View | Frame | Beat | Tock): ArrayBuffer =>
  encoder.encode(JSON.stringify(message)).buffer as ArrayBuffer;

function deliver(data: ArrayBuffer): void {
  socket.onmessage?.({ data });
}

function frame(): Frame {
  const set: RoomPart[] = [];
  for (let i = 0; i < CHANGED_A_FRAME; i++) {
    const room = rooms[(n * CHANGED_A_FRAME + i) % ROOMS]!;
    const shift = ((n * 7 + i * 3) % 9) - 4;
    set.push({
      ...room,
      could10: room.could10! + shift * 60_000,
      could50: room.could50! + shift * 60_000,
      could90: room.could90! + shift * 60_000,
      revision: n,
    });
  }
  const minutes = 3 + (n % 9);
  const needs = NEEDS.map((one) => (one.kind === 'late' ? { ...one, minutes } : one));
  const onTime = 30 + (n % 20);
  n++;
  return {
    m: 'frame',
    audience: 'wall',
    ...stand,
    n,
    set: [suite({ cases: ROOMS, onTime }), ...set, ...needs],
    gone: [],
  };
}

function beat(): Beat {
  return {
    m: 'beat',
    morning: stand.morning,
    epoch: 1,
    n,
    upTo: 1,
    morningClock: HORIZON - 26 * 60_000 + n * 100,
    rate: 1,
    confirmedAt: 0,
    readOnly: false,
  };
}

let prepared: ArrayBuffer[][] = [];

/** Makes the messages of `frames` frames, with a heartbeat at every tenth. */
function prepare(frames: number): void {
  prepared = Array.from({ length: frames }, (_, i) => {
    const messages = [bytes(frame())];
    if (i % 10 === 0) messages.push(bytes(beat()));
    return messages;
  });
}

async function draw(messages: readonly ArrayBuffer[]): Promise<void> {
  for (const message of messages) deliver(message);
  drawing?.();
  drawing = null;
  await wall.updateComplete;
}

/** Plays what was prepared, one frame a picture. @returns the own work of each in milliseconds */
async function play(): Promise<number[]> {
  const work: number[] = [];
  for (const messages of prepared) {
    await new Promise(requestAnimationFrame);
    const from = performance.now();
    await draw(messages);
    work.push(performance.now() - from);
  }
  return work;
}

/** Plays what was prepared without waiting for pictures: nothing but the page's own work. */
async function work(): Promise<void> {
  for (const messages of prepared) await draw(messages);
}

/** Many frames, a picture now and then, for the heap. */
async function burst(frames: number): Promise<void> {
  for (let left = frames; left > 0; left -= 100) {
    prepare(Math.min(100, left));
    await work();
    await new Promise(requestAnimationFrame);
  }
  prepared = [];
}

n = 1;
deliver(
  bytes({
    m: 'view',
    audience: 'wall',
    ...stand,
    n,
    parts: [suite({ cases: ROOMS }), ...rooms, ...NEEDS],
  }),
);
deliver(bytes(beat()));

export interface Harness {
  prepare(frames: number): void;
  play(): Promise<number[]>;
  work(): Promise<void>;
  burst(frames: number): Promise<void>;
  rooms(): number;
}
(globalThis as unknown as { harness: Harness }).harness = {
  prepare,
  play,
  work,
  burst,
  rooms: () => wall.renderRoot.querySelectorAll('g.room').length,
};
