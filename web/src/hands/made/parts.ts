import type { CasePart, ItemPart, NextPart, PersonPart, RoomPart } from '../../generated/wire.ts';

/** Parts for tests: plain ones, with what a test is about said by the test. */

export function item(ref: string, more: Partial<ItemPart> = {}): ItemPart {
  const key = ref.slice(ref.indexOf('/') + 1);
  return {
    part: 'item',
    key: `item/${ref}`,
    item: ref,
    room: '5',
    order: 0,
    section: key.split('.')[0] as ItemPart['section'],
    name: key,
    who: [],
    state: 'open',
    since: 0,
    asks: { kind: 'touch', choices: [], witness: false },
    together: false,
    stillGoing: false,
    core: false,
    revision: 1,
    ...more,
  };
}

/** Room 5's next case. */
export const second: NextPart = {
  part: 'next',
  key: 'next/5.2',
  room: '5',
  caseId: '5.2',
  technique: 'general',
  options: [],
  at: 0,
};

export function room(name: string, more: Partial<RoomPart> = {}): RoomPart {
  return {
    part: 'room',
    key: `room/${name}`,
    room: name,
    order: Number(name),
    agreed: false,
    standing: 'ahead',
    lateMinutes: 0,
    orMore: false,
    word: 'ahead',
    readyOpen: 0,
    use: 'free',
    revision: 1,
    ...more,
  };
}

export function plan(id: string, inRoom: string, more: Partial<CasePart> = {}): CasePart {
  return {
    part: 'case',
    key: `case/${id}`,
    caseId: id,
    room: inRoom,
    bookedAt: 0,
    technique: 'general',
    options: [],
    cancelled: false,
    steps: [],
    flagged: [],
    reasonAgreed: false,
    revision: 1,
    ...more,
  };
}

export function person(id: string, more: Partial<PersonPart> = {}): PersonPart {
  return {
    part: 'person',
    key: `person/${id}`,
    person: id,
    role: 'anaesthetist',
    label: id,
    covers: [],
    waitedFor: [],
    plannedAt: 0,
    revision: 1,
    ...more,
  };
}
