import { describe, expect, it } from 'vitest';
import type { Answer, CommandUnion } from '../generated/wire.ts';
import { SAID_LIMIT, SaidLog } from './said.ts';

/** A line whose answers a test gives. */
class HeldLine {
  readonly sent: CommandUnion[] = [];
  readonly options: { seen?: number; person?: string; touch?: string }[] = [];
  private readonly waiting: ((answer: Answer) => void)[] = [];

  now(): number {
    return 1_000;
  }

  send(command: CommandUnion, options: (typeof this.options)[number]): Promise<Answer> {
    this.sent.push(command);
    this.options.push(options);
    return new Promise((resolve) => this.waiting.push(resolve));
  }

  async answer(at: number, answer: Partial<Answer>): Promise<void> {
    this.waiting[at]!({ m: 'answer', id: `c${at}`, status: 'done', ...answer });
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
}

const SWEEP: CommandUnion = { type: 'sweep', room: '5', section: 'suction' };

describe('what was said', () => {
  it('should be on the board only once the board has reached its answer', async () => {
    const line = new HeldLine();
    const log = new SaidLog(line);
    const said = log.say('suction gone through', [{ command: SWEEP }], { about: ['suction'] });
    expect([said.state, log.pending('suction')]).toEqual(['waiting', said]);
    await line.answer(0, { upTo: 9 });
    expect(said.state).toBe('answered');
    log.reached(8);
    expect(said.state).toBe('answered');
    log.reached(9);
    expect([said.state, log.pending('suction')]).toEqual(['on-board', undefined]);
  });

  it('should be refused as a whole if one of its commands is, in the server’s words', async () => {
    const line = new HeldLine();
    const log = new SaidLog(line);
    const said = log.say('rest', [{ command: SWEEP }, { command: SWEEP }]);
    await line.answer(0, { upTo: 9 });
    await line.answer(1, { status: 'refused', code: 'not-allowed', words: 'Ask the desk.' });
    expect([said.state, said.words]).toEqual(['refused', 'Ask the desk.']);
    expect(log.refused()).toEqual([said]);
    log.putAway(said);
    expect(log.refused()).toEqual([]);
  });

  it('should take back every command of a touch, the last first, and only once', async () => {
    const line = new HeldLine();
    const log = new SaidLog(line);
    const said = log.say('rest', [{ command: SWEEP }, { command: SWEEP }], { person: 'A5' });
    expect(log.undo(said)).toBeUndefined();
    await line.answer(0, { upTo: 9 });
    await line.answer(1, { upTo: 10 });
    expect(log.lastToUndo(1_500, 1_000)).toBe(said);
    log.undo(said, 'A5');
    expect(line.sent.slice(2)).toEqual([
      { type: 'undo', command: 'c1' },
      { type: 'undo', command: 'c0' },
    ]);
    expect(log.undo(said)).toBeUndefined();
    expect(line.options.every((o) => o.person === 'A5')).toBe(true);
  });

  it('should tell a touch that is refused after a reload once, however many commands it had', async () => {
    const line = new HeldLine();
    const before = new SaidLog(line);
    before.say('rest', [{ command: SWEEP }, { command: SWEEP }]);
    before.say('rest', [{ command: SWEEP }]);
    const [one, other, later] = line.options.map((o) => o.touch!);
    const log = new SaidLog(line);
    for (const touch of [one!, other!, later!]) {
      log.refusedLate(touch, 'rest, touched 06:50', 900, 'not-allowed', 'Ask the desk.');
    }
    log.refusedLate(other!, 'rest, touched 06:50', 900, 'started', 'The room has started.');
    expect(log.refused().map((s) => s.words)).toEqual([
      'Ask the desk. The room has started.',
      'Ask the desk.',
    ]);
  });

  it('should offer to take back only for a while', async () => {
    const line = new HeldLine();
    const log = new SaidLog(line);
    log.say('one', [{ command: SWEEP }]);
    await line.answer(0, { upTo: 9 });
    expect(log.lastToUndo(2_001, 1_000)).toBeUndefined();
  });

  it('should keep what is not answered when it forgets the oldest', async () => {
    const line = new HeldLine();
    const log = new SaidLog(line);
    const first = log.say('first', [{ command: SWEEP }]);
    for (let i = 0; i < SAID_LIMIT + 5; i++) {
      log.say(`${i}`, [{ command: SWEEP }]);
      await line.answer(i + 1, { upTo: 0 });
    }
    expect(log.list.length).toBe(SAID_LIMIT);
    expect(log.list).toContain(first);
  });
});
