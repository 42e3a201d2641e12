import { describe, expect, it } from 'vitest';
import type { ServerMessageUnion } from '../generated/wire.ts';
import { BACK_OFF_MS, CONNECT_MS } from './constants.ts';
import { FakeNetwork } from './fake/fake-network.ts';
import { FakeTimers } from './fake/fake-timers.ts';
import { backOff, Socket } from './socket.ts';

const tock: ServerMessageUnion = { m: 'tock', sentAt: 1, morningClock: 1, rate: 1 };

function started() {
  const timers = new FakeTimers();
  const network = new FakeNetwork();
  const told: string[] = [];
  const silent = { most: 4_000 };
  const socket = new Socket(
    'ws://x/live',
    {
      opened: () => told.push('opened'),
      message: (message) => told.push(message.m),
      closed: () => told.push('closed'),
      silentMost: () => silent.most,
    },
    timers,
    network.open,
  );
  socket.start();
  return { timers, network, told, socket, silent };
}

describe('the socket', () => {
  it('shouldAskForItsProtocolAndSendBytes', () => {
    const { network, socket } = started();
    expect(socket.send({ m: 'ask-view' })).toBe(false);
    network.last.accept();
    expect(network.protocols).toEqual(['sunup.1']);
    expect(network.last.binaryType).toBe('arraybuffer');
    expect(socket.send({ m: 'ask-view' })).toBe(true);
    expect(network.last.sent).toEqual([{ m: 'ask-view' }]);
  });

  it('shouldComeBackWithGrowingWaitsUpToFiveSeconds', () => {
    const { network, timers } = started();
    for (const wait of [...BACK_OFF_MS, 5_000, 5_000]) {
      const before = network.sockets.length;
      network.last.end();
      timers.pass(wait - 1);
      expect(network.sockets.length).toBe(before);
      timers.pass(1);
      expect(network.sockets.length).toBe(before + 1);
    }
  });

  it('shouldShortenWaitsByJitterButNotBelowHalf', () => {
    expect(backOff(0, 0)).toBe(50);
    expect(backOff(0, 0.999)).toBeCloseTo(100, 0);
    expect(backOff(99, 0)).toBe(2_500);
  });

  it('shouldStartItsWaitsAnewOnlyAfterSomethingWasUnderstood', () => {
    const { network, timers } = started();
    network.last.end();
    timers.pass(100);
    network.last.accept();
    network.last.end();
    timers.pass(100);
    expect(network.sockets.length).toBe(2);
    timers.pass(150);
    network.last.accept();
    network.last.deliver(tock);
    network.last.end();
    timers.pass(100);
    expect(network.sockets.length).toBe(4);
  });

  it('shouldCloseAnOpenSocketThatBringsNothing', () => {
    const { network, timers, told } = started();
    network.last.accept();
    timers.pass(3_999);
    expect(told).toEqual(['opened']);
    timers.pass(1);
    expect(told).toEqual(['opened', 'closed']);
    expect(network.sockets[0]!.closed).toBe(true);
  });

  it('should give a socket the time that it is allowed then, also if that was changed meanwhile', () => {
    const { network, timers, told, silent } = started();
    network.last.accept();
    network.last.deliver(tock);
    timers.pass(3_000);
    silent.most = 15_000;
    timers.pass(11_999);
    expect(told).toEqual(['opened', 'tock']);
    timers.pass(1);
    expect(told.at(-1)).toBe('closed');
  });

  it('shouldGiveUpASocketThatDoesNotOpen', () => {
    const { network, timers } = started();
    timers.pass(CONNECT_MS + BACK_OFF_MS[0]);
    expect(network.sockets.length).toBe(2);
  });

  it('shouldCloseWhenSomethingCannotBeReadAndHearNothingMoreFromIt', () => {
    const { network, told } = started();
    const first = network.last;
    first.accept();
    first.raw(new TextEncoder().encode('{"no":"kind"}').buffer);
    expect(first.closed).toBe(true);
    first.deliver(tock);
    expect(told).toEqual(['opened', 'closed']);
  });

  it('shouldPassOverKindsOfMessagesThatItDoesNotKnow', () => {
    const { network, told } = started();
    network.last.accept();
    network.last.raw(new TextEncoder().encode('{"m":"from-the-future"}').buffer);
    network.last.deliver(tock);
    expect(told).toEqual(['opened', 'tock']);
  });

  it('shouldStayClosedWhenStopped', () => {
    const { network, timers, socket } = started();
    network.last.accept();
    socket.stop();
    timers.pass(60_000);
    expect(network.sockets.length).toBe(1);
  });
});
