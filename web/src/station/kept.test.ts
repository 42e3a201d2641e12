import { describe, expect, it } from 'vitest';
import { item } from '../hands/made/parts.ts';
import { keptAt } from './kept.ts';

describe('what a station keeps while the board is away', () => {
  it('should be its own room, with the swap that it has not confirmed yet', () => {
    const swap = (room: string) => ({
      part: 'swap' as const,
      key: `swap/${room}`,
      room,
      with: '3',
      at: 0,
      left: [],
      lacks: [],
      revision: 1,
    });
    expect(keptAt('1', swap('1'))).toBe(true);
    expect(keptAt('1', swap('2'))).toBe(false);
    expect(keptAt('1', item('room:1/machine.bag', { room: '1' }))).toBe(true);
    expect(keptAt('1', item('room:2/machine.bag', { room: '2' }))).toBe(false);
  });
});
