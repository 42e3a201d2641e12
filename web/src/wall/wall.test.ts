import { describe, expect, it } from 'vitest';
import type { NeedPart, RoomPart, SuitePart } from '../generated/wire.ts';
import { gathered, LINES_MAX, lineSizes, LOUD_MAX, loudKeys } from './needs.ts';
import { Past } from './past.ts';
import { readSettings, smallestLetters } from './settings.ts';
import {
  alsoWords,
  askWords,
  calm,
  calmOld,
  countWords,
  headingWords,
  lookAgain,
  needFigure,
  restWords,
  roomWord,
} from './words.ts';

const at = (clock: string): number => Date.parse(`2026-11-25T${clock}:00Z`);

const suite = (over: Partial<SuitePart> = {}): SuitePart => ({
  part: 'suite',
  key: 'suite',
  hospital: 'Kestrel Bay',
  suite: 'Main suite',
  date: '2026-11-25',
  zone: 'UTC',
  phase: 'open',
  startEvent: 'wheels-in',
  graceMinutes: 0,
  horizon: at('07:30'),
  cases: 4,
  onTime: 3,
  quiet: 0,
  demo: true,
  ...over,
});

const room = (over: Partial<RoomPart> = {}): RoomPart => ({
  part: 'room',
  key: 'room/1',
  room: '1',
  order: 0,
  target: at('07:30'),
  agreed: false,
  standing: 'ahead',
  lateMinutes: 0,
  orMore: false,
  word: 'ahead',
  readyOpen: 0,
  use: 'free',
  revision: 1,
  ...over,
});

const need = (name: string, over: Partial<NeedPart> = {}): NeedPart => ({
  part: 'need',
  key: `need/${name}`,
  rank: 0,
  room: name,
  kind: 'late',
  minutes: 11,
  orMore: false,
  saveable: 9,
  words: 'surgeon not seen',
  holdup: 'x',
  help: false,
  ...over,
});

describe('the settings of the wall', () => {
  it('shouldComeFromTheAddress', () => {
    const read = readSettings('?inches=65&metres=4.5&screen=wall-east');
    expect(read).toEqual({ inches: 65, metres: 4.5, screen: 'wall-east', wrong: [] });
  });

  it('shouldFallBackAndSayWhatIsWrong', () => {
    const read = readSettings('?inches=abc&metres=900');
    expect(read).toMatchObject({ inches: 55, metres: 3 });
    expect(read.wrong).toEqual([
      'inches must be from 10 to 150, not “abc”',
      'metres must be from 0.5 to 20, not “900”',
    ]);
    expect(readSettings('?inches=').wrong.length).toBe(1);
  });

  it('shouldAskForLettersByDistanceAndSize', () => {
    expect(smallestLetters({ inches: 55, metres: 6 })).toBeCloseTo(67.6, 1);
    expect(smallestLetters({ inches: 65, metres: 3 })).toBeCloseTo(28.6, 1);
  });
});

describe('the lines', () => {
  it('shouldBeLoudOnlyIfNobodyHasTakenThemAndAtMostThree', () => {
    const needs = [
      need('1', { takenBy: 'desk' }),
      need('2'),
      need('3', { kind: 'tight' }),
      need('4', { kind: 'stuck' }),
      need('5', { kind: 'ask' }),
      need('6'),
    ];
    expect([...loudKeys(needs)]).toEqual(['need/2', 'need/4', 'need/5']);
    expect(LOUD_MAX).toBe(3);
  });

  it('shouldBeFiveOnAUsualWallAndFewerWhenLettersAreLarge', () => {
    expect(lineSizes(33.8, 920)).toMatchObject({ lines: LINES_MAX, twoLines: false });
    // 55 inches at 6 metres: what is left of 1080 beside the head and the caution.
    const far = lineSizes(67.6, 871);
    expect(far).toMatchObject({ lines: 3, twoLines: true });
    expect(far.lines * far.rowHeight + far.heading).toBeLessThanOrEqual(871 - 350);
    expect(lineSizes(67.6, 300).lines).toBe(1);
    // Numbers in three rows take the place of a line, not of the horizon.
    expect(lineSizes(67.6, 871, 3).lines).toBe(2);
    expect(lineSizes(49.6, 904).lines).toBe(4);
  });

  it('shouldHaveAHeadingAtEverySizeOfLetters', () => {
    for (const letter of [25, 34, 49.6, 67.6]) {
      expect(lineSizes(letter, 880).heading).toBeGreaterThanOrEqual(letter);
    }
  });

  it('shouldSayMinutesOrTheWord', () => {
    expect(needFigure(need('1'))).toBe('+11');
    expect(needFigure(need('1', { kind: 'stuck', minutes: 26 }))).toBe('stuck');
    expect(needFigure(need('1', { kind: 'ask', minutes: 0 }))).toBe('ask');
    expect(needFigure(need('1', { minutes: 0 }))).toBe('late');
    expect(needFigure(need('1', { kind: 'tight', minutes: 0 }))).toBe('tight');
    expect(needFigure(need('1', { minutes: 240, orMore: true }))).toBe('over 4 h');
  });

  it('shouldSayWhenToLookAgain', () => {
    const taken = need('1', { lookAgainAt: at('07:10') });
    expect(lookAgain(taken, 'UTC', at('07:04'))).toBe('look again 07:10');
    expect(lookAgain(taken, 'UTC', at('07:10'))).toBe('look again now');
    expect(lookAgain(taken, 'America/New_York', at('07:04'))).toBe('look again 02:10');
    expect(lookAgain(need('1'), 'UTC', 0)).toBe('');
  });
});

describe('a call for someone', () => {
  it('shouldBeCountedBehindTheLinesIfItIsNotAmongThem', () => {
    expect(askWords([need('1'), need('2')])).toBe('');
    expect(askWords([need('1'), need('8', { help: true })])).toBe('8 asks for someone');
    const two = [need('8', { help: true }), need('11', { help: true })];
    expect(askWords(two)).toBe('8, 11 ask for someone');
  });
});

describe('what the wall says first', () => {
  const far = { could50: at('07:25') };

  it('shouldCountWhatLooksOnTimeOnlyOnceThereAreFigures', () => {
    const { onTime: _, ...unknown } = suite({ cases: 2 });
    const two = [room(far), room()];
    expect(countWords(unknown, two, at('06:00'))).toBe('2 first cases · no figures yet');
    const zero = suite({ cases: 2, onTime: 0 });
    expect(countWords(zero, two, at('06:00'))).toBe('0 of 2 look on time');
    const started = room({ standing: 'started', startedAt: at('07:30') });
    expect(countWords(suite(), [started], at('07:40'))).toBe('3 of 4 started on time');
    expect(countWords(suite(), [started, room()], at('07:40'))).toBe('3 of 4 on time');
  });

  it('shouldSayOfWhichTimeItIsOnceItIsNotLive', () => {
    expect(countWords(suite(), [room(far)], at('07:04'), at('07:04'))).toBe('as it was at 07:04');
    expect(countWords(suite(), [room(far)], at('07:04'), null)).toBe('not live yet');
    const words = calm(suite(), [room(far)], [], at('07:04'))!;
    expect(calmOld(words, at('07:04'), 'UTC')).toEqual({
      head: 'As it was at 07:04',
      text: 'Every room looks on time · nobody is needed anywhere',
    });
  });
});

describe('lines of large letters', () => {
  const line = (of: string, kind: NeedPart['kind'], more: Partial<NeedPart> = {}): NeedPart =>
    ({ key: `need/${of}`, room: of, kind, help: false, words: '', ...more }) as NeedPart;
  const needs = [
    line('7', 'ask'),
    line('9', 'ask'),
    line('13', 'late'),
    line('10', 'ask', { takenBy: 'desk' }),
    line('23', 'ask', { help: true }),
    line('24', 'ask'),
  ];

  it('should let silent rooms share one, unless somebody is on it or it calls', () => {
    expect(gathered(needs, true).map((one) => [one.need.room, ...one.also])).toEqual([
      ['7', '9', '24'],
      ['13'],
      ['10'],
      ['23'],
    ]);
    expect(gathered(needs, false).map((one) => one.need)).toEqual(needs);
    expect(alsoWords(['9', '24'])).toBe('ask 9, 24 too');
    expect(alsoWords(['1', '2', '3', '4', '5', '6', '7'])).toBe('ask 7 rooms too');
  });
});

describe('lines that find no place', () => {
  it('should be named by their rooms while these are few, those that share a line too', () => {
    const lines = gathered(
      [need('4'), need('9', { kind: 'ask' }), need('2', { kind: 'ask' })],
      true,
    );
    expect(restWords(lines)).toBe('also 4, 9, 2');
    const many = ['1', '2', '3', '4', '5', '6', '7'].map((name) => need(name));
    expect(restWords(gathered(many, true))).toBe('and 7 more');
  });
});

describe('the heading over the lines', () => {
  const rest = gathered([need('8', { help: true }), need('12'), need('30')], false);

  it('should say beside itself which rooms call, which found no line, and how many more are late', () => {
    expect(headingWords(rest, 4, 34).map((word) => word.text)).toEqual([
      '8 asks for someone',
      'also 8, 12, 30',
      '4 more below the line',
    ]);
    expect(headingWords(rest, 4, 34)[0]!.asks).toBe(true);
    expect(headingWords([], 0, 34)).toEqual([]);
  });

  it('should leave out what has no room rather than cut it off, calls last of all', () => {
    const large = headingWords(rest, 4, 67.6).map((word) => word.text);
    expect(large).toContain('8 asks for someone');
    expect(large).not.toContain('4 more below the line');
  });
});

describe('a past morning', () => {
  it('should stand as it stood at its minute, also when it goes back', () => {
    const late = room({ standing: 'late', word: 'late' });
    const past = new Past({
      date: '2026-11-25',
      zone: 'UTC',
      from: at('06:30'),
      to: at('07:40'),
      kept: 1,
      recomputed: 0,
      frames: [
        { at: at('06:30'), suite: suite(), rooms: [room(), room({ key: 'room/2' })], needs: [] },
        { at: at('07:00'), rooms: [late] },
      ],
    });
    const standings = (): string[] => past.list('room').map((r) => r.standing);
    expect(standings()).toEqual(['ahead', 'ahead']);
    const rooms = past.list('room');
    past.goTo(at('06:45'));
    // Nothing of it is laid out anew while nothing changes.
    expect(past.list('room')).toBe(rooms);
    past.goTo(at('07:00'));
    expect(standings()).toEqual(['late', 'ahead']);
    past.goTo(at('07:20'));
    expect(standings()).toEqual(['late', 'ahead']);
    past.goTo(at('06:59'));
    expect(standings()).toEqual(['ahead', 'ahead']);
    past.goTo(at('09:00'));
    expect(past.now()).toBe(at('07:40'));
    expect(past.list('suite')[0]?.onTime).toBe(3);
  });
});

describe('the word under a number', () => {
  const setting = { zone: 'UTC', horizon: at('07:30'), draft: false };

  it('shouldBeTheServersUnlessTheRoomHasItsOwnTime', () => {
    expect(roomWord(room(), setting, false)).toBe('ahead');
    const blind = room({ standing: 'no-figures', word: 'no figures' });
    expect(roomWord(blind, setting, false)).toBe('no figures');
    expect(roomWord(blind, setting, true)).toBe('–');
    const own = { target: at('08:00') };
    expect(roomWord(room(own), setting, false)).toBe('08:00');
    expect(roomWord(room({ ...own, standing: 'late', word: 'late' }), setting, false)).toBe('late');
  });

  it('shouldBeTheTimeOfAStartInShortIfItMust', () => {
    const started = room({ standing: 'started', word: 'started', startedAt: at('07:02') });
    expect(roomWord(started, setting, false)).toBe('in 07:02');
    expect(roomWord(started, setting, true)).toBe('07:02');
    const inferred = { ...started, startInferred: true };
    expect(roomWord(inferred, setting, false)).toBe('by 07:02');
    expect(roomWord(inferred, setting, true)).toBe('by 07:02');
  });

  it('shouldSayNothingOfStandingsInADraft', () => {
    expect(roomWord(room(), { ...setting, draft: true }, false)).toBe('');
  });
});

describe('what the wall says instead of lines', () => {
  const head = (over: Partial<SuitePart>, rooms: RoomPart[], clock = '07:04') =>
    calm(suite(over), rooms, [], at(clock))?.head;

  it('shouldSayThatNothingIsPlanned', () => {
    expect(calm(undefined, [], [], 0)?.head).toBe('Nothing is planned');
    expect(head({ phase: 'none' }, [])).toBe('Nothing is planned');
  });

  it('shouldSayThatItIsADraftAndForWhichDay', () => {
    const draft = suite({ phase: 'draft', date: '2026-11-26' });
    expect(calm(draft, [room()], [], at('15:00'))).toEqual({
      head: 'Draft for Thursday 26 November',
      text: 'first at 07:30 · nobody reports yet',
    });
  });

  it('shouldSayOfADraftWhenItsFirstCaseBeginsNotWhenMostDo', () => {
    const draft = suite({ phase: 'draft', date: '2026-11-26' });
    const rooms = [room(), room(), room({ room: '9', target: at('07:15') })];
    expect(calm(draft, rooms, [], at('15:00'))?.text).toBe('first at 07:15 · nobody reports yet');
    const none = [room({ standing: 'none', target: at('07:15') })];
    expect(calm(draft, none, [], at('15:00'))?.text).toBe('');
  });

  it('shouldSayThatEveryRoomLooksOnTime', () => {
    expect(head({}, [room(), room({ standing: 'ready' })])).toBe('Every room looks on time');
  });

  it('shouldNotSayOfEveryRoomWhatIsTrueOfTheRestOnly', () => {
    const rooms = [room({ standing: 'started' }), room({ room: '8', standing: 'ahead' })];
    expect(calm(suite(), rooms, [], at('08:00'))).toEqual({
      head: 'The rest looks on time',
      text: '1 still to start · nobody is needed anywhere',
    });
  });

  it('shouldNotCallASilentRoomLateNorOnTime', () => {
    const rooms = [room(), room({ room: '8', standing: 'unheard' })];
    const words = calm(suite(), rooms, [], at('07:04'));
    expect(words?.head).not.toBe('Every room looks on time');
    expect(words?.text).toBe('no word yet from 8');
    expect(calm(suite(), [rooms[1]!], [], at('06:04'))?.head).toBe('No room was heard from yet');
  });

  it('shouldNotSayThatAllIsWellWhileARoomIsBelowTheLine', () => {
    expect(head({}, [room({ standing: 'late' })])).not.toBe('Every room looks on time');
    expect(head({}, [room({ standing: 'stuck' })])).not.toBe('Every room looks on time');
    expect(head({}, [room({ standing: 'tight' })])).not.toBe('Every room looks on time');
  });

  it('shouldNotSayThatNobodyIsNeededWhileARoomIsTight', () => {
    const tight = room({ standing: 'tight' });
    expect(head({}, [tight])).toBe('Nobody is listed yet');
    expect(calm(suite(), [tight, room({ standing: 'late' })], [], at('07:04'))).toEqual({
      head: 'Nobody is listed yet',
      text: '1 below the line, nothing to be saved from here · 1 tight',
    });
    expect(head({}, [room({ standing: 'late' })])).toBe('Nobody is needed');
  });

  it('shouldNotCallARoomWithoutFiguresOnTime', () => {
    const blind = room({ room: '8', standing: 'no-figures' });
    expect(calm(suite(), [room(), blind], [], at('07:04'))).toEqual({
      head: 'No figures',
      text: 'nobody can say yet whether 8 will start on time',
    });
  });

  it('shouldNotSayThatAMorningIsOverBeforeItBegins', () => {
    const tomorrow = room({ target: at('07:30') + 24 * 3_600_000 });
    const next = suite({ date: '2026-11-26' });
    expect(calm(next, [tomorrow], [], at('13:00'))?.head).not.toBe('The morning is over');
    const afternoon = [room({ target: at('14:30') })];
    expect(head({}, afternoon, '13:00')).not.toBe('The morning is over');
    expect(head({}, afternoon, '14:31')).toBe('The morning is over');
  });

  it('shouldLeaveTheLinesWhenThereAreSome', () => {
    expect(calm(suite(), [room()], [need('1')], at('07:04'))).toBeNull();
  });

  it('shouldSayThatAllHaveStartedAndSumUpFromNoon', () => {
    const started = [room({ standing: 'started' }), room({ standing: 'none' })];
    expect(head({}, started)).toBe('All first cases have started');
    expect(head({}, started, '12:00')).toBe('The morning is over');
    expect(head({ phase: 'closed' }, started)).toBe('This morning is closed');
    const open = calm(suite(), [...started, room()], [need('1')], at('12:00'));
    expect(open?.text).toBe('3 of 4 started on time · 1 not started');
    const asks = calm(suite(), [room()], [need('1', { help: true })], at('12:00'));
    expect(asks?.text).toMatch(/ · 1 asks for someone$/);
  });
});
