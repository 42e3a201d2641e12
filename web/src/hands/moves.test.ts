import { describe, expect, it } from 'vitest';
import type { IdeaPart, MovePart } from '../generated/wire.ts';
import {
  BACK_MS,
  gainWords,
  isBack,
  moveAnswers,
  moveWords,
  roomAnswers,
  savedWords,
} from './moves.ts';

const idea: IdeaPart = {
  part: 'idea',
  key: 'idea/send.T1.2',
  rank: 0,
  move: { type: 'send', person: 'T1', room: '2' },
  words: 'technician T1 to room 2',
  room: '2',
  person: 'T1',
  who: 'technician T1',
  savedMinutes: 15,
  errorMinutes: 0.4,
  rooms: [
    { room: '2', minutes: 20 },
    { room: '1', minutes: -5 },
  ],
};

const move: MovePart = {
  part: 'move',
  key: 'move/send.T1.2',
  id: 'send.T1.2',
  move: { type: 'send', person: 'T1', room: '2' },
  words: 'technician T1 to room 2',
  room: '2',
  person: 'T1',
  who: 'technician T1',
  state: 'asked',
  askedBy: 'desk',
  askedAt: 0,
  revision: 9,
};

const hhmm = () => '07:02';

describe('a move in words', () => {
  it('should give its minutes with their error, and what it costs others', () => {
    expect(savedWords(idea)).toBe('saves about 15.0 min (± 0.8) over the suite');
    expect(gainWords(idea)).toBe('room 2 +20.0, room 1 −5.0');
  });

  it('should claim no minutes for what is only to be talked about', () => {
    const { savedMinutes: _, errorMinutes: __, ...talk } = idea;
    expect(savedWords(talk)).toBe('nothing was computed: for the teams to talk about');
  });

  it('should say whom it waits for until it is answered', () => {
    const at = move.askedAt;
    expect(moveWords(move, hhmm, at)).toBe('asked of technician T1 07:02, no answer yet');
    expect(isBack(move, at + BACK_MS - 1)).toBe(false);
    expect(isBack(move, at + BACK_MS)).toBe(true);
    expect(moveWords(move, hhmm, at + BACK_MS)).toBe(
      'asked of technician T1 07:02, no answer: back at the desk',
    );
    const accepted: MovePart = {
      ...move,
      state: 'accepted',
      answeredBy: 'technician',
      answeredAt: 1,
    };
    expect(isBack(accepted, at + BACK_MS)).toBe(false);
    expect(moveWords(accepted, hhmm, at)).toContain('the forecast counts on it');
  });

  it('should offer "not safe" as long as it is asked or accepted, and nothing after', () => {
    expect(moveAnswers(move).map((a) => a.word)).toEqual(['Accept', 'Cannot', 'Not safe']);
    expect(moveAnswers({ ...move, state: 'accepted' }).map((a) => a.word)).toEqual([
      'Done',
      'Cannot',
      'Not safe',
    ]);
    expect(moveAnswers({ ...move, state: 'not-safe' })).toEqual([]);
  });

  it('should let a room say of what is not its own only that it is not safe', () => {
    const open: MovePart = { ...move, move: { type: 'open-earlier', place: 'pharmacy', at: 0 } };
    expect(roomAnswers(open).map((a) => a.word)).toEqual(['Not safe']);
    expect(roomAnswers(move).map((a) => a.word)).toEqual(['Accept', 'Cannot', 'Not safe']);
  });
});
