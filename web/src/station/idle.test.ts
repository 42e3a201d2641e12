import { describe, expect, it } from 'vitest';
import { plan, room } from '../hands/made/parts.ts';
import { idleWords } from './model.ts';

describe('a station that has nothing to ask', () => {
  const view = (over = {}) => ({ plan: undefined, room: undefined, next: undefined, ...over });

  it('should not say that nothing is asked before it has heard from the board', () => {
    expect(idleWords(false, undefined, view(), '1')).toContain('not known yet');
  });

  it('should say why nothing is asked, and nothing of it once there is a case', () => {
    expect(idleWords(true, 'none', view(), '1')).toContain('Nothing is planned');
    expect(idleWords(true, 'open', view({ room: room('1') }), '1')).toContain('no first case');
    expect(idleWords(true, 'open', view(), '99')).toContain('no room 99');
    expect(idleWords(true, 'open', view({ plan: plan('C1', '1') }), '1')).toBe('');
  });
});
