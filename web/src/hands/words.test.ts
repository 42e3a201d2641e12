import { describe, expect, it } from 'vitest';
import { person } from './made/parts.ts';
import { personName } from './words.ts';

describe('the name of a person', () => {
  it('should tell a stand-in from the one whom the plan has for the room', () => {
    const planned = person('anaesthetist-2', { ownRoom: '2' });
    const standIn = person('relief-1', { ownRoom: '2' });
    expect(personName(planned)).toBe('anaesthetist of 2');
    expect(personName(standIn)).toBe('anaesthetist of 2 (relief-1)');
  });
});
