import { describe, expect, it } from 'vitest';
import type { ChancePart, DrugsPart, SuitePart } from '../generated/wire.ts';
import { item, person, plan, room } from '../hands/made/parts.ts';
import {
  caseOf,
  dateIn,
  dayAfter,
  deskRows,
  heardWords,
  isFree,
  late,
  onTimeWords,
  owesReason,
  peopleInOrder,
  percent,
  uncountedWords,
  voidedBySwap,
} from './model.ts';

const MINUTE = 60_000;

describe('the desk', () => {
  it('should say in which rooms controlled drugs are not counted out before a morning is closed', () => {
    const drugs = (room: string, ...open: string[]) => ({ room, open }) as DrugsPart;
    expect(uncountedWords([drugs('1')])).toBe('');
    expect(uncountedWords([drugs('10', 'x'), drugs('9', 'x'), drugs('9', 'y')])).toBe(
      'Controlled drugs not counted out: rooms 9, 10',
    );
  });

  it('should never print certainty', () => {
    expect([percent(0), percent(0.004), percent(0.615), percent(1)]).toEqual([
      '1 %',
      '1 %',
      '62 %',
      '99 %',
    ]);
  });

  it('should give no mean beside a start that is hours away', () => {
    const chance = (over: Partial<ChancePart>) => late(over as ChancePart);
    expect(chance({ meanLateMinutes: 6.4 })).toBe('6.4 min late');
    expect(chance({ meanLateMinutes: 240, moreThanHours: 12 })).toBe('');
    expect(chance({})).toBe('');
  });

  it('should say that every room was heard from only of an open morning of which it is so', () => {
    const suite = (over: Partial<SuitePart>) =>
      ({ phase: 'open', cases: 4, onTime: 3, quiet: 0, ...over }) as SuitePart;
    expect(heardWords(suite({}))).toBe('a word from every room');
    expect(heardWords(suite({ quiet: 2 }))).toBe('no word from 2');
    expect(heardWords(suite({ phase: 'draft' }))).toBe('nobody reports yet');
    expect(heardWords(suite({ phase: 'closed' }))).toBe('');
  });

  it('should see another date if its address asks for one', () => {
    expect(dateIn('?date=2026-11-26')).toBe('2026-11-26');
    expect(dateIn('?date=tomorrow')).toBeUndefined();
    expect(dateIn('')).toBeUndefined();
    expect(dayAfter('2026-11-30')).toBe('2026-12-01');
  });

  it('should count nothing on time before anything was computed, nor in a draft', () => {
    const suite = (over: Partial<SuitePart>) =>
      ({ phase: 'open', cases: 4, quiet: 0, ...over }) as SuitePart;
    const ahead = [{ ...room('1'), standing: 'ahead' as const }];
    expect(onTimeWords(suite({}), ahead)).toBe('4 first cases');
    expect(onTimeWords(suite({ onTime: 3 }), ahead)).toBe('3 of 4 look on time');
    expect(onTimeWords(suite({ phase: 'draft', onTime: 4 }), ahead)).toBe('4 first cases');
    const started = [{ ...room('1'), standing: 'started' as const }];
    expect(onTimeWords(suite({ onTime: 3 }), started)).toBe('3 of 4 started on time');
    expect(onTimeWords(suite({ onTime: 3 }), [...started, ...ahead])).toBe('3 of 4 on time');
  });

  it('should list rooms in the wall’s order with the case that stands', () => {
    const rows = deskRows(
      [room('2'), room('1')],
      [plan('C2x', '2', { cancelled: true }), plan('C2', '2')],
      [],
      [],
    );
    expect(rows.map((r) => [r.room.room, r.plan?.caseId])).toEqual([
      ['1', undefined],
      ['2', 'C2'],
    ]);
    expect(caseOf([plan('C9', '9', { cancelled: true })], '9')?.caseId).toBe('C9');
  });

  it('should name what a swap voids: case things made ready, not the room’s, not the patient’s', () => {
    const items = [
      item('case:C3/drugs.drawn', { state: 'good', room: '3' }),
      item('case:C3/airway.tubes', { state: 'in-hand', room: '3' }),
      item('case:C3/airway.plan-b', { room: '3' }),
      item('case:C3/patient.papers', { state: 'good', room: '3' }),
      item('case:C3/team.brief', { state: 'good', room: '3' }),
      item('room:3/machine.bag', { state: 'good', room: '3' }),
      item('case:C7/drugs.drawn', { state: 'good', room: '7' }),
    ];
    const lost = voidedBySwap(items, plan('C3', '3'), plan('C7', '7'));
    expect(lost.map((l) => [l.room, l.items.map((i) => i.item)])).toEqual([
      ['3', ['case:C3/drugs.drawn', 'case:C3/airway.tubes']],
      ['7', ['case:C7/drugs.drawn']],
    ]);
  });

  it('should call free whoever is here for a case that is cancelled', () => {
    const rows = deskRows(
      [room('1'), room('2')],
      [plan('C1', '1', { cancelled: true }), plan('C2', '2')],
      [],
      [],
    );
    const here = person('A1', { ownRoom: '1', arrivedAt: 1 });
    expect(isFree(here, rows)).toBe(true);
    expect(isFree({ ...here, leftAt: 2 }, rows)).toBe(false);
    expect(isFree({ ...here, room: '2' }, rows)).toBe(false);
    expect(isFree(person('A1', { ownRoom: '1' }), rows)).toBe(false);
    expect(isFree(person('T1', { arrivedAt: 1 }), rows)).toBe(false);
  });

  it('should ask for a reason only once the grace minutes are past', () => {
    const row = (startedAt?: number) => ({
      room: room('3', { target: 0, ...(startedAt === undefined ? {} : { startedAt }) }),
      plan: plan('C3', '3'),
      chance: undefined,
      need: undefined,
    });
    expect(owesReason(row(), 5, 6 * MINUTE - 1)).toBe(false);
    expect(owesReason(row(), 5, 6 * MINUTE)).toBe(true);
    expect(owesReason(row(5 * MINUTE + 59_000), 5, 60 * MINUTE)).toBe(false);
    expect(owesReason(row(6 * MINUTE), 5, 60 * MINUTE)).toBe(true);
  });

  it('should put first who should be here and is not', () => {
    const people = [
      person('here', { arrivedAt: 1 }),
      person('later', { plannedAt: 90 * MINUTE }),
      person('says later', { plannedAt: 10 * MINUTE, expectedAt: 80 * MINUTE }),
      person('missing', { plannedAt: 10 * MINUTE }),
      person('gone', { arrivedAt: 1, leftAt: 2 }),
    ];
    expect(peopleInOrder(people, 30 * MINUTE).map((p) => p.person)).toEqual([
      'missing',
      'says later',
      'later',
      'here',
      'gone',
    ]);
  });
});
