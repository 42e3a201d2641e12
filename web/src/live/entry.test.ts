import { describe, expect, it } from 'vitest';
import type { PartUnion, Paired, Pairing, View } from '../generated/wire.ts';
import { pathOf } from './entry.ts';
import { FakeNetwork } from './fake/fake-network.ts';
import { FakeShelf } from './fake/fake-shelf.ts';
import { FakeTimers } from './fake/fake-timers.ts';
import { NoKeys, type ScreenKey, type Signed } from './key.ts';
import { Live } from './live.ts';

const PAIRING: Pairing = {
  m: 'pairing',
  code: 'BCDF2346',
  address: '10.0.0.7',
  at: 1_000,
  until: 301_000,
};
const PAIRED: Paired = {
  m: 'paired',
  screen: 'station-7',
  page: 'station',
  suite: 'main',
  room: '7',
  pass: 'a.1.b',
};

/** A key that signs by writing down what it signs. */
class WrittenKey implements ScreenKey {
  before = false;
  due = false;
  turned = 0;
  broken = false;

  async prove(nonce: string): Promise<Signed> {
    if (this.broken) throw new NoKeys();
    return { key: 'k1', signature: `k1 over ${nonce}` };
  }
  async next(nonce: string): Promise<Signed | undefined> {
    return this.due ? { key: 'k2', signature: `k2 over ${nonce}` } : undefined;
  }
  async turn(): Promise<void> {
    this.turned++;
  }
  async known(): Promise<void> {}
  async unknown(): Promise<boolean> {
    const before = this.before;
    this.before = false;
    return before;
  }
}

function screen() {
  const timers = new FakeTimers();
  const network = new FakeNetwork();
  const key = new WrittenKey();
  const live = new Live({
    page: 'station',
    screen: 'station-7',
    url: 'ws://x/live',
    timers,
    shelf: new FakeShelf(),
    open: network.open,
    key,
  });
  live.start();
  network.last.accept();
  return { live, timers, network, key };
}

/** Lets what waits for the key go on. */
const settle = async (): Promise<void> => {
  for (let i = 0; i < 10; i++) await Promise.resolve();
};

describe('a screen that is paired', () => {
  it('shouldAnswerAChallengeWithItsKeyAndShowTheCodeOnlyWhileItIsNotKnown', async () => {
    const { live, network } = screen();
    network.last.deliver({ m: 'challenge', nonce: 'n1' });
    await settle();
    expect(network.last.sent).toContainEqual({
      m: 'prove',
      key: 'k1',
      signature: 'k1 over n1',
    });
    network.last.deliver(PAIRING);
    await settle();
    expect(live.state.entry.pairing?.code).toBe('BCDF2346');
    network.last.deliver(PAIRED);
    await settle();
    expect(live.state.entry.pairing).toBeUndefined();
    expect(pathOf(live.state.entry.paired!)).toBe('/station/7');
  });

  it('shouldTryTheKeyFromBeforeWhenTheNewOneIsNotKnown', async () => {
    const { live, network, key, timers } = screen();
    const first = network.last;
    key.before = true;
    first.deliver(PAIRING);
    await settle();
    expect(live.state.entry.pairing).toBeUndefined();
    timers.pass(1_000);
    expect(network.last).not.toBe(first);
  });

  it('shouldTurnToANewKeyOnlyAfterTheBoardKnowsIt', async () => {
    const { network, key } = screen();
    key.due = true;
    network.last.deliver({ m: 'challenge', nonce: 'n1' });
    network.last.deliver(PAIRED);
    await settle();
    expect(network.last.sent).toContainEqual({
      m: 'new-key',
      key: 'k2',
      signature: 'k2 over n1',
    });
    expect(key.turned).toBe(0);
    network.last.deliver({ m: 'told', id: 'new-key', done: true, words: '' });
    await settle();
    expect(key.turned).toBe(1);
  });

  it('shouldSayThatAPageWithoutKeysCanNotBePaired', async () => {
    const { live, network, key } = screen();
    key.broken = true;
    network.last.deliver({ m: 'challenge', nonce: 'n1' });
    await settle();
    expect(live.state.entry.noKeys).toBe(true);
  });

  it('shouldSendATouchWithTheSignOnThatItWasMadeUnderAlsoLater', async () => {
    const { live, network, timers } = screen();
    network.last.deliver(PAIRED);
    network.last.deliver({
      m: 'signed',
      session: 's1',
      code: 'K1',
      role: 'anaesthetist',
      as: '7-anaesthetist',
    });
    const view: View = {
      m: 'view',
      morning: 'main/2026-11-25',
      epoch: 1,
      n: 1,
      upTo: 1,
      forecastOf: 1,
      audience: 'staff',
      parts: [] as PartUnion[],
    };
    network.last.deliver(view);
    void live.send({ type: 'report-ready', room: '7' });
    await settle();
    network.last.end();
    timers.pass(1_000);
    network.last.accept();
    network.last.deliver({ m: 'signed' });
    expect(live.state.entry.signed).toBeUndefined();
    const sent = network.last.sent.filter((m) => m.m === 'send');
    expect(sent).toHaveLength(1);
    expect(sent[0]).toMatchObject({ session: 's1' });
  });

  it('shouldSendATouchWithTheSecondPersonsSignature', async () => {
    const { live, network } = screen();
    network.last.deliver(PAIRED);
    const asked = live.countersign('N7', '4809', '7-circulating', 'good');
    expect(network.last.sent).toContainEqual(
      expect.objectContaining({ m: 'countersign', code: 'N7', as: '7-circulating', kind: 'good' }),
    );
    network.last.deliver({ m: 'told', id: 'countersign', done: true, words: '', token: 't1' });
    const { token } = await asked;
    void live.send({ type: 'report-ready', room: '7' }, { second: token! });
    await settle();
    expect(network.last.sent.find((m) => m.m === 'send')).toMatchObject({ second: 't1' });
  });

  it('shouldAnswerWhatWasAskedWhenTheSocketIsCut', async () => {
    const { live, network } = screen();
    const asked = live.entry.signOn('K1', '4809');
    network.last.end();
    expect((await asked).done).toBe(false);
  });
});
