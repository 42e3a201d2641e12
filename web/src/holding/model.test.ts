import { describe, expect, it } from 'vitest';
import { item, plan, room } from '../hands/made/parts.ts';
import { COLUMNS, rows } from './model.ts';

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
});
