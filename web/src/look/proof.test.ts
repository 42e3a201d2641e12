import { expect, it } from 'vitest';
import { paceWords } from './proof.ts';

it('shouldSayThatAMorningIsADemoAndHowFastItsClockRuns', () => {
  expect(paceWords(true, 20)).toBe('demo at 20 times speed');
  expect(paceWords(true, 1)).toBe('demo');
  expect(paceWords(false, 20)).toBe('20 times speed');
  expect(paceWords(false, 1)).toBe('');
});
