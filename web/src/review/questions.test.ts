import { describe, expect, it } from 'vitest';
import { type Asked, NOTHING } from './model.ts';
import { lacks, questionsOf } from './questions.ts';

const free = { price: '', currency: '', source: '' };

const asks = (asked: Asked): Map<string, string> =>
  new Map(
    questionsOf(asked, free).map(([key, figure, query]) => [key, `${figure}?${query.toString()}`]),
  );

describe('what the page asks', () => {
  it('asks for two periods once all four dates are there, and for nothing of from and to', () => {
    const some = { ...NOTHING, split: 'periods', from: '2025-11-01', 'first-from': '2026-01-01' };
    expect(lacks(some)).toBe('Give both dates of both periods.');
    expect(asks(some).has('compared')).toBe(false);
    const all = {
      ...some,
      'first-to': '2026-03-31',
      'second-from': '2026-04-01',
      'second-to': '2026-06-30',
      room: '3',
    };
    const dates =
      'first-from=2026-01-01&first-to=2026-03-31&second-from=2026-04-01&second-to=2026-06-30';
    expect(asks(all).get('compared')).toBe(`compare?room=3&${dates}`);
    expect(asks(all).get('causesCompared')).toBe(`causes-compared?room=3&${dates}&by=section`);
    expect(asks(all).get('summary')).toBe('measures?from=2025-11-01&room=3');
  });

  it('asks where the minutes moved at a marked change, and judges the board at each moment', () => {
    const asked = asks({ ...NOTHING, change: '2026-03-16', each: 'service', weekday: 'monday' });
    expect(asked.get('causesMoved')).toBe(
      'causes-compared?weekday=monday&by=section&at=2026-03-16',
    );
    for (const before of ['60', '40', '20', '10']) {
      expect(asked.get(`trial${before}`)).toBe(`trial?weekday=monday&before=${before}`);
    }
    expect(asked.get('trialsApart')).toBe('trial-apart?weekday=monday&split=service');
    expect(asks(NOTHING).has('causesMoved')).toBe(false);
    expect(lacks({ ...NOTHING, split: 'change' })).toContain('marked change');
  });
});
