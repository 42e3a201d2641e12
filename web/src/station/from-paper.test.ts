import { expect, it } from 'vitest';
import { typedTime } from './from-paper.ts';

it('should take four digits and say the half of the day last, each taken back by one key', () => {
  const typed = (...keys: string[]) => keys.reduce(typedTime, '');
  expect(typed('0', '6', '5', '0', '9')).toBe('0650');
  expect(typed('6', '5', '0', 'am')).toBe('650 am');
  expect(typed('6', '5', '0', 'am', 'pm')).toBe('650 pm');
  expect(typed('6', '5', '0', 'am', '1')).toBe('650 am');
  expect(typed('6', '5', '0', 'am', 'back')).toBe('650');
  expect(typed('6', 'back')).toBe('');
});
