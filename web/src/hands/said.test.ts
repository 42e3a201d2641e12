import { describe, expect, it } from 'vitest';
import type { Answer, CommandUnion } from '../generated/wire.ts';
import type { Earlier, Kept, Sent } from '../live/index.ts';
import { SAID_LIMIT, SaidLog } from './said.ts';

const soon = () => new Promise((resolve) => setTimeout(resolve, 0));

/** A line whose answers a test gives. */
class HeldLine {
  readonly sent: CommandUnion[] = [];
  readonly options: { seen?: number; person?: string; touch?: string }[] = [];
  shelved = Promise.resolve();
  private readonly waiting: ((answer: Answer) => void)[] = [];

  now(): number {
    return 1_000;
  }

  send(command: CommandUnion, options: (typeof this.options)[number]): Sent {
    this.sent.push(command);
    this.options.push(options);
    const answer = new Promise<Answer>((resolve) => this.waiting.push(resolve));
    return { kept: this.shelved, answer };
  }

  async answer(at: number, answer: Partial<Answer>): Promise<void> {
    this.waiting[at]!({ m: 'answer', id: `c${at}`, status: 'done', ...answer });
    await soon();
  }
}

const SWEEP: CommandUnion = { type: 'sweep', room: '5', section: 'suction' };

describe('what was said', () => {
  it('should be on the board only once the board has reached its answer', async () => {
    const line = new HeldLine();
    const log = new SaidLog(line);
    const said = log.say('suction gone through', [{ command: SWEEP }], { about: ['suction'] });
    expect([said.state, log.pending('suction')]).toEqual(['keeping', undefined]);
    await soon();
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

  it('should go on after a reload with what is not answered, one entry a touch', async () => {
    const log = new SaidLog(new HeldLine());
    const answers: ((answer: Answer) => void)[] = [];
    const earlier = (id: string, touch: string): Earlier => {
      const kept: Kept = {
        id,
        touch,
        label: 'rest',
        about: ['suction'],
        command: SWEEP,
        touchedAt: 900,
        offset: 50,
      };
      return { kept, answer: new Promise((resolve) => answers.push(resolve)) };
    };
    log.resume([earlier('a', 'one'), earlier('b', 'one'), earlier('c', 'two')]);
    expect(log.list.map((s) => [s.label, s.at, s.state])).toEqual([
      ['rest', 950, 'waiting'],
      ['rest', 950, 'waiting'],
    ]);
    expect(log.pending('suction')).toBe(log.list[1]);
    const refused = { m: 'answer', status: 'refused', words: 'Ask the desk.' } as const;
    answers[0]!({ ...refused, id: 'a' });
    answers[1]!({ ...refused, id: 'b' });
    answers[2]!({ m: 'answer', id: 'c', status: 'done', upTo: 9 });
    await soon();
    expect(log.refused().map((s) => s.words)).toEqual(['Ask the desk.']);
    expect([log.list[1]!.state, log.list[1]!.ids]).toEqual(['answered', ['c']]);
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
