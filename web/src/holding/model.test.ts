import { describe, expect, it } from 'vitest';
import type { ItemPart, StepAt, UnitPart } from '../generated/wire.ts';
import { item, plan, room } from '../hands/made/parts.ts';
import { COLUMNS, minutesSentFor, rows } from './model.ts';

describe('holding', () => {
  it('should have one row a first case in room order, eight touches, and what else is asked', () => {
    const found = rows(
      [room('2'), room('1'), room('3')],
      [plan('C2', '2'), plan('C1', '1'), plan('C3', '3', { cancelled: true })],
      [
        item('case:C1/patient.arrived', { room: '1' }),
        item('case:C1/start.sent-for', { room: '1', marks: 'sent-for' }),
        item('case:C1/patient.block', { room: '1' }),
        item('case:C2/surgeon.seen', { room: '2' }),
      ],
    );
    expect(found.map((r) => r.room.room)).toEqual(['1', '2']);
    expect(COLUMNS.length).toBe(8);
    expect(found[0]!.cells.map((c) => c?.item.split('/')[1])).toEqual([
      'patient.arrived',
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
      'start.sent-for',
      undefined,
    ]);
    expect(found[0]!.more.map((i) => i.item)).toEqual(['case:C1/patient.block']);
    expect(found[1]!.cells[5]?.item).toBe('case:C2/surgeon.seen');
  });

  it('should say of a block whether drug and ultrasound are at hand, until it is done', () => {
    const bay = (state: ItemPart['state'], units: Partial<UnitPart>[], drug: ItemPart['state']) =>
      rows(
        [room('3')],
        [plan('C3', '3')],
        [
          item('case:C3/patient.block', { room: '3', state }),
          item('case:C3/drugs.block', { room: '3', state: drug }),
          item('case:C3/special.ultrasound', { room: '3' }),
        ],
        units.map((u) => ({ kind: 'ultrasound', ...u }) as UnitPart),
      )[0]!.block;
    expect(bay('open', [{ with: '9' }], 'open')).toBe('drug not drawn · ultrasound in 9');
    expect(bay('open', [{ with: '9', promised: '3' }], 'good')).toBe(
      'drug drawn · ultrasound in 9, then here',
    );
    expect(bay('open', [{ with: '9' }, {}], 'good')).toBe('drug drawn · ultrasound free');
    expect(bay('open', [{ with: '3' }], 'good')).toBe('drug drawn · ultrasound here');
    expect(bay('good', [{ with: '9' }], 'good')).toBe('');
  });

  it('should count the minutes since a patient was sent for, until the room has him or her', () => {
    const sent = (...steps: string[]) =>
      rows(
        [room('1')],
        [plan('C1', '1', { steps: steps.map((step) => ({ step, at: 60_000 })) as StepAt[] })],
        [],
      )[0]!;
    expect(minutesSentFor(sent(), 600_000)).toBeUndefined();
    expect(minutesSentFor(sent('sent-for'), 600_000)).toBe(9);
    expect(minutesSentFor(sent('sent-for', 'wheels-in'), 600_000)).toBeUndefined();
  });
});
