import { describe, expect, it } from 'vitest';
import type { EvePart } from '../generated/wire.ts';
import { item } from '../hands/made/parts.ts';
import { eveItems, eveOpen } from './eve.ts';

const eve = (kind: string): EvePart => ({
  part: 'eve',
  key: `eve/${kind}`,
  kind,
  rooms: ['1'],
  words: kind,
});

describe('the evening look', () => {
  const trays = item('case:C1/instruments.trays', { eve: 'good', order: 2 });
  const bed = item('case:C1/team.bed', { eve: 'good', state: 'good', order: 1 });
  const consent = item('case:C1/patient.consent', { eve: 'fault', order: 3 });
  const drugs = item('case:C1/drugs.drawn');

  it('should list what may be told today, and of the rest what is wrong', () => {
    expect(eveItems([trays, bed, consent, drugs])).toEqual([bed, trays]);
    const bad = { ...consent, state: 'fault' as const };
    expect(eveItems([trays, bad])).toEqual([trays, bad]);
  });

  it('should count what is not settled, and not that a set-up is plain', () => {
    expect(eveOpen([eve('options')], [bed])).toBe(0);
    expect(eveOpen([eve('options'), eve('people')], [trays, bed])).toBe(2);
  });
});
