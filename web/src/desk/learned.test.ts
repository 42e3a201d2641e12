import { nothing } from 'lit';
import { expect, it } from 'vitest';
import type { LearnedPart, LearnedTime } from '../generated/wire.ts';
import type { Desk } from './main.ts';
import { learnedPanel, learnedWords } from './learned.ts';

const time: LearnedTime = {
  item: 'suction works',
  sheetUsual: 1,
  sheetOneInTen: 2,
  usual: 1.25,
  oneInTen: 2.5,
  measured: 40,
};

const part = (times: LearnedTime[], mornings: number): LearnedPart => ({
  part: 'learned',
  key: 'learned',
  upTo: '2026-11-24',
  mornings,
  times,
  how: [],
});

it('should say how many durations of this morning were learned and from what', () => {
  expect(learnedWords(part([time, time], 12))).toBe(
    "2 durations of this morning learned from 12 closed mornings up to 2026-11-24; all others are the sheets'",
  );
  expect(learnedWords(part([time], 1))).toContain(
    '1 duration of this morning learned from the closed morning 2026-11-24',
  );
  const how = { what: 'Words come', first: 'at once', now: 'at once', why: '9 words' };
  expect(learnedWords({ ...part([time], 12), how: [how] })).toContain(
    '1 duration of this morning and how people report learned from',
  );
});

it('should stand beside an owner of an earlier version that says nothing of how people report', () => {
  const { how: _, ...older } = part([time], 12);
  expect(learnedWords(older as LearnedPart)).toContain('1 duration of this morning learned from');
  const at = { list: () => [older] } as unknown as Desk;
  expect(learnedPanel(at)).not.toBe(nothing);
});
