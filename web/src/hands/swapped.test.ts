import { describe, expect, it } from 'vitest';
import type { Section } from '../generated/wire.ts';
import {
  changeWord,
  lacksWords,
  type LeftItem,
  toDealWith,
  wayWords,
  withTheCase,
} from './swapped.ts';

const left = (to: string | undefined, ...keys: string[]): LeftItem[] =>
  keys.map((key) => ({
    key,
    section: key.split('.')[0] as Section,
    ...(to === undefined ? {} : { to }),
  }));

const words = (items: LeftItem[]) =>
  toDealWith(items, '1').map((deal) => `${deal.words}: ${deal.things.join(', ')}`);

describe('what a swap leaves in a room', () => {
  it('should be discarded if it was drawn or opened, moved if it was fetched, else done again', () => {
    expect(
      words(
        left(
          '7',
          'airway.tubes',
          'drugs.drawn',
          'drugs.controlled',
          'special.ultrasound',
          'room.table',
          'instruments.trays',
          'instruments.field',
          'instruments.count',
          'machine.ventilator',
        ),
      ),
    ).toEqual([
      'discard: drugs drawn, drugs controlled, instruments field',
      'take to 7: special ultrasound, room table, instruments trays',
      'do again: airway tubes, instruments count, machine ventilator',
    ]);
  });

  it('should say nothing of what there is none of', () => {
    expect(words(left('7', 'drugs.drawn'))).toEqual(['discard: drugs drawn']);
    expect(words([])).toEqual([]);
  });

  it('should go after its own case if the room was swapped again, each thing said once', () => {
    const kinds = ['instruments.trays', 'drugs.drawn', 'airway.tubes'];
    expect(words([...left('2', ...kinds), ...left('3', ...kinds)])).toEqual([
      'discard: drugs drawn of 2 cases',
      'take to 2: instruments trays',
      'take to 3: instruments trays',
      'do again: airway tubes',
    ]);
  });

  it('should stay, and be looked at anew, if its case has come back', () => {
    expect(words(left('1', 'instruments.trays', 'drugs.drawn'))).toEqual([
      'discard: drugs drawn',
      'do again: instruments trays',
    ]);
  });

  it('should be put away if its case is cancelled', () => {
    expect(words(left(undefined, 'instruments.trays'))).toEqual(['put away: instruments trays']);
  });
});

describe('a case that was moved to a free room', () => {
  it('should say in the room that it left where it is, and what goes with it', () => {
    const went = { way: 'went' as const, with: '5' };
    expect(wayWords(went, '06:45')).toBe('The case of this room was moved to 5 at 06:45');
    // It may have been moved on since: then 5 would be wrong.
    expect(withTheCase(went)).toContain('printed labels go with the case');
    expect(withTheCase(went)).not.toContain('5');
    const tubes = { key: 'airway.tubes', section: 'airway' as const, to: '5' };
    expect(toDealWith([tubes], '1', 'went').map((deal) => deal.words)).toEqual(['counts no more']);
    expect(toDealWith([tubes], '1').map((deal) => deal.words)).toEqual(['do again']);
    expect(changeWord(went)).toBe('move');
  });

  it('should say in the room that it came to what was done elsewhere only', () => {
    const came = { way: 'came' as const, with: '1' };
    expect(wayWords(came, '06:45')).toBe('Another case is here: moved from 1 at 06:45');
    expect(withTheCase(came)).toBe('');
    expect(lacksWords({ lacks: ['airway.tubes', 'drugs.drawn'] })).toBe(
      'not yet done here: airway tubes, drugs drawn',
    );
    expect(lacksWords({ lacks: [] })).toBe('');
  });
});
