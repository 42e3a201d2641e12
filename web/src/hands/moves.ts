import type { CommandUnion, IdeaPart, MovePart } from '../generated/wire.ts';
import { roleName } from './words.ts';

/** An answer with the word on its button. */
export interface MoveAnswerWord {
  word: string;
  command: CommandUnion;
}

/** "saves about 6.2 min (± 0.8)": twice the standard error, nineteen times in twenty. */
export function savedWords(idea: IdeaPart): string {
  if (idea.savedMinutes === undefined) {
    return 'nothing was computed: for the teams to talk about';
  }
  const within = (2 * (idea.errorMinutes ?? 0)).toFixed(1);
  return `saves about ${idea.savedMinutes.toFixed(1)} min (± ${within}) over the suite`;
}

/** "room 2 +20.0, room 1 −5.0": what it gives and what it costs. */
export function gainWords(idea: IdeaPart): string {
  return idea.rooms
    .map((g) => `room ${g.room} ${g.minutes < 0 ? '−' : '+'}${Math.abs(g.minutes).toFixed(1)}`)
    .join(', ');
}

/** Who is asked has so long, by the morning's time, before it is the desk's again. */
export const BACK_MS = 2 * 60_000;

/** True if nobody has answered for so long that the desk asks somebody else, or telephones. */
export function isBack(move: MovePart, now: number): boolean {
  return move.state === 'asked' && now - move.askedAt >= BACK_MS;
}

/** Who was asked and what became of it. */
export function moveWords(move: MovePart, hhmm: (at: number) => string, now: number): string {
  const answered = move.answeredAt === undefined ? '' : ` ${hhmm(move.answeredAt)}`;
  const by = move.answeredBy === undefined ? '' : ` by ${roleName(move.answeredBy)}`;
  switch (move.state) {
    case 'asked':
      return isBack(move, now)
        ? `asked of ${move.who} ${hhmm(move.askedAt)}, no answer: back at the desk`
        : `asked of ${move.who} ${hhmm(move.askedAt)}, no answer yet`;
    case 'accepted':
      return `${move.who}: accepted${by}${answered}, the forecast counts on it`;
    case 'declined':
      return `${move.who}: cannot${by}${answered}`;
    case 'not-safe':
      return `called not safe${by}${answered}: off for this morning`;
    case 'done':
      return `done${by}${answered}`;
    case 'withdrawn':
      return 'not asked any more';
  }
}

/** A place that opens, or a later start, is not a room's to promise. */
const NOT_THE_ROOMS: readonly string[] = ['open-earlier', 'later'];

/** What a room's people can say of a move: that it is not safe always. */
export function roomAnswers(move: MovePart): MoveAnswerWord[] {
  const all = moveAnswers(move);
  return NOT_THE_ROOMS.includes(move.move.type) ? all.filter((a) => a.word === 'Not safe') : all;
}

/** What can still be said of a move. */
export function moveAnswers(move: MovePart): MoveAnswerWord[] {
  const answer = (word: string, said: 'accept' | 'cannot' | 'not-safe'): MoveAnswerWord => ({
    word,
    command: { type: 'answer-move', move: move.id, answer: said },
  });
  const done: MoveAnswerWord = { word: 'Done', command: { type: 'done-move', move: move.id } };
  if (move.state === 'asked') {
    return [answer('Accept', 'accept'), answer('Cannot', 'cannot'), answer('Not safe', 'not-safe')];
  }
  return move.state === 'accepted'
    ? [done, answer('Cannot', 'cannot'), answer('Not safe', 'not-safe')]
    : [];
}
