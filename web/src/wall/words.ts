import type { NeedPart, RoomPart, SuitePart } from '../generated/wire.ts';
import {
  clockTime,
  dateOf,
  dateWords,
  lateBy,
  say as sayCommon,
  speaker,
  type CommonKey,
} from '../look/index.ts';
import { clockBrief, minuteOfDay } from '../words/index.ts';
import { textWidth, WIDTH } from './geometry.ts';
import type { NeedLine } from './needs.ts';

const british = {
  title: 'Wall',
  'count.draft': '{cases} first cases planned',
  'count.on-time': '{onTime} of {cases} look on time',
  'count.part': '{onTime} of {cases} on time',
  'count.no-figures': '{cases} first cases · no figures yet',
  'count.old': 'as it was at {time}',
  'count.never': 'not live yet',
  'count.over': '{onTime} of {cases} started on time',
  late: '{rooms} late',
  quiet: '{rooms} no word',
  needs: 'Needs someone',
  'needs.old': 'Needed someone at {time}',
  'needs.more': '{rooms} more below the line',
  'needs.and': 'and {lines} more',
  'needs.also': 'also {rooms}',
  'need.stuck': 'stuck',
  'need.ask': 'ask',
  'need.help': 'help',
  'need.late': 'late',
  'need.tight': 'tight',
  'need.nobody': 'nobody yet',
  'need.also': 'ask {rooms} too',
  'need.look-again': 'look again {time}',
  'need.look-now': 'look again now',
  past: 'past morning',
  caution: 'ready means reported ready, not safe · replaces no check',
  legend: 'what the signs mean',
  'legend.late': 'below the line: late',
  'legend.ready': 'full: reported ready',
  'legend.ahead': 'open: will be in time',
  'legend.tight': 'half: tight',
  'legend.unheard': 'dotted: no word, a guess',
  'legend.stuck': 'bar: stuck on a fault',
  'legend.now': 'blue: now, sinks to the line',
  'legend.started': 'started',
  'legend.long': 'long: unsure',
  'legend.needs': 'list: most minutes to save first',
  'legend.bare': 'underlined: late',
  'legend.ticks': 'leads to its room',
  'letters.small': 'too many rooms to be read from {metres} m on {inches} inches',
  'none.head': 'Nothing is planned',
  'none.text': 'The desk takes the case list.',
  'draft.head': 'Draft for {date}',
  'draft.text': 'first at {time} · nobody reports yet',
  'old.head': 'As it was at {time}',
  'calm.head': 'Every room looks on time',
  'calm.text': 'nobody is needed anywhere',
  'calm.rest': 'The rest looks on time',
  'calm.rest-text': '{rooms} still to start · nobody is needed anywhere',
  'quiet.all': 'No room was heard from yet',
  'quiet.head': 'All that is heard of looks on time',
  'quiet.text': 'no word yet from {rooms}',
  'quiet.rooms': '{count} rooms',
  'below.head': 'Nobody is needed',
  'tight.head': 'Nobody is listed yet',
  'tight.text': '{rooms} tight',
  'below.text': '{rooms} below the line, nothing to be saved from here',
  'started.head': 'All first cases have started',
  'started.text': '{onTime} of {cases} on time',
  'over.head': 'The morning is over',
  'over.text': '{onTime} of {cases} first cases started on time',
  'over.open': '{onTime} of {cases} started on time · {rooms} not started',
  'closed.head': 'This morning is closed',
  'started.at': 'in {time}',
  'started.by': 'by {time}',
  'unheard.short': 'quiet',
  'no-figures.short': '–',
  'no-figures.head': 'No figures',
  'no-figures.text': 'nobody can say yet whether {rooms} will start on time',
} as const;

export const say = speaker(british);

/** What of the suite the words under the numbers depend on. */
export interface WordSetting {
  readonly zone: string;
  readonly horizon: number | undefined;
  readonly draft: boolean;
}

/** The word under a room's number. The clock time stands there where the room has its own. */
export function roomWord(room: RoomPart, setting: WordSetting, short: boolean): string {
  const { zone, horizon, draft } = setting;
  if (room.standing === 'started' && room.startedAt !== undefined) {
    if (room.startInferred) {
      return say('started.by', { time: (short ? clockBrief : clockTime)(room.startedAt, zone) });
    }
    return short
      ? clockBrief(room.startedAt, zone)
      : say('started.at', { time: clockTime(room.startedAt, zone) });
  }
  const own = room.target !== undefined && room.target !== horizon;
  const calm = ['ahead', 'agreed', 'ready'].includes(room.standing);
  if (own && (calm || draft)) return (short ? clockBrief : clockTime)(room.target!, zone);
  if (draft && room.standing !== 'none') return '';
  if (short && (room.standing === 'unheard' || room.standing === 'no-figures')) {
    return say(`${room.standing}.short`);
  }
  return room.word || sayCommon(`standing.${room.standing}` as CommonKey);
}

/** What a line says in place of minutes. */
export function needFigure(need: NeedPart): string {
  if (need.kind === 'stuck' || need.kind === 'ask' || need.kind === 'help') {
    return say(`need.${need.kind}`);
  }
  return need.minutes > 0
    ? lateBy(need.minutes, need.orMore)
    : say(need.kind === 'tight' ? 'need.tight' : 'need.late');
}

/** The rooms among these that have asked for someone, in words; empty if none has. */
export function askWords(needs: readonly NeedPart[]): string {
  const rooms = needs.filter((need) => need.help).map((need) => need.room);
  if (rooms.length === 0) return '';
  return sayCommon(rooms.length === 1 ? 'asks.one' : 'asks.more', { rooms: rooms.join(', ') });
}

/** What stands for the lines that find no place: their rooms, if they are few. */
export function restWords(rest: readonly NeedLine[]): string {
  const rooms = [...new Set(rest.flatMap((line) => [line.need.room, ...line.also]))];
  return rooms.length <= NAMES_MAX
    ? say('needs.also', { rooms: rooms.join(', ') })
    : say('needs.and', { lines: rooms.length });
}

/** What stands beside "Needs someone": calls first, then lines that find no place, then other rooms. */
export interface HeadingWord {
  readonly text: string;
  readonly asks: boolean;
}

/**
 * What there is room for beside "Needs someone".
 *
 * @param rest lines that find no place
 * @param more rooms below the line that are not listed at all
 */
export function headingWords(
  rest: readonly NeedLine[],
  more: number,
  letter: number,
): readonly HeadingWord[] {
  const words = [
    { text: askWords(rest.map((line) => line.need)), asks: true },
    { text: rest.length > 0 ? restWords(rest) : '', asks: false },
    { text: more > 0 ? say('needs.more', { rooms: more }) : '', asks: false },
  ].filter((word) => word.text !== '');
  let left = WIDTH - HEADING_MARGIN - textWidth(say('needs'), letter);
  return words.filter(({ text }) => {
    const wide = textWidth(` · ${text}`, letter, true);
    if (wide > left) return false;
    left -= wide;
    return true;
  });
}

/** The other rooms that a line to be asked about speaks for. */
export function alsoWords(rooms: readonly string[]): string {
  const few = rooms.length <= NAMES_MAX;
  return say('need.also', {
    rooms: few ? rooms.join(', ') : say('quiet.rooms', { count: rooms.length }),
  });
}

/** When to look again, in words; empty if nothing was said. */
export function lookAgain(need: NeedPart, zone: string, now: number): string {
  if (need.lookAgainAt === undefined) return '';
  if (need.lookAgainAt <= now) return say('need.look-now');
  return say('need.look-again', { time: clockTime(need.lookAgainAt, zone) });
}

/** What the wall says instead of a list. */
export interface Calm {
  readonly head: string;
  readonly text: string;
}

/** More rooms than this are counted, not named. */
const NAMES_MAX = 6;
/** Left and right of the wall, in units. */
const HEADING_MARGIN = 72;
const NOON_MINUTES = 12 * 60;

/**
 * The words that stand where the list would, or null if the list has lines.
 *
 * @param now the morning's time
 */
export function calm(
  suite: SuitePart | undefined,
  rooms: readonly RoomPart[],
  needs: readonly NeedPart[],
  now: number,
): Calm | null {
  if (!suite || suite.phase === 'none') return { head: say('none.head'), text: say('none.text') };
  if (suite.phase === 'draft') return draft(suite, rooms);
  const figures = { onTime: suite.onTime ?? '–', cases: suite.cases };
  const withCase = rooms.filter((room) => room.standing !== 'none');
  const waiting = withCase.filter((room) => room.standing !== 'started');
  if (suite.phase === 'closed') {
    return { head: say('closed.head'), text: say('over.text', figures) };
  }
  if (isOver(suite, rooms, now)) {
    const text = waiting.length
      ? say('over.open', { ...figures, rooms: waiting.length })
      : say('over.text', figures);
    const asking = askWords(needs);
    return { head: say('over.head'), text: asking ? `${text} · ${asking}` : text };
  }
  if (needs.length > 0) return null;
  if (withCase.length > 0 && waiting.length === 0) {
    return { head: say('started.head'), text: say('started.text', figures) };
  }
  return nothingToDo(waiting, withCase.length - waiting.length);
}

/**
 * The list is empty, but some have not started: is all well, or is there only nothing to do?
 *
 * @param started how many have; they may have been late, so no word is said of all rooms then
 */
function nothingToDo(waiting: readonly RoomPart[], started: number): Calm {
  const below = belowTheLine(waiting).length;
  const tight = waiting.filter((room) => room.standing === 'tight').length;
  if (below > 0) {
    const text = say('below.text', { rooms: below });
    return tight > 0
      ? { head: say('tight.head'), text: `${text} · ${say('tight.text', { rooms: tight })}` }
      : { head: say('below.head'), text };
  }
  const blind = waiting.filter((room) => room.standing === 'no-figures');
  if (blind.length > 0) {
    return { head: say('no-figures.head'), text: say('no-figures.text', { rooms: names(blind) }) };
  }
  const quiet = waiting.filter((room) => room.standing === 'unheard');
  if (quiet.length > 0) {
    const all = quiet.length === waiting.length;
    return {
      head: say(all ? 'quiet.all' : 'quiet.head'),
      text: say('quiet.text', { rooms: names(quiet) }),
    };
  }
  if (tight > 0) return { head: say('tight.head'), text: say('tight.text', { rooms: tight }) };
  if (started > 0) {
    return { head: say('calm.rest'), text: say('calm.rest-text', { rooms: waiting.length }) };
  }
  return { head: say('calm.head'), text: say('calm.text') };
}

function names(rooms: readonly RoomPart[]): string {
  return rooms.length > NAMES_MAX
    ? say('quiet.rooms', { count: rooms.length })
    : rooms.map((room) => room.room).join(', ');
}

/** Rooms that will not start on time as things stand. Silence is not among the reasons. */
export function belowTheLine(rooms: readonly RoomPart[]): readonly RoomPart[] {
  return rooms.filter((room) => room.standing === 'late' || room.standing === 'stuck');
}

function draft(suite: SuitePart, rooms: readonly RoomPart[]): Calm {
  const targets = rooms.flatMap((room) => (room.standing === 'none' ? [] : (room.target ?? [])));
  return {
    head: say('draft.head', { date: dateWords(suite.date) }),
    // The first of them, which need not be when most begin.
    text:
      targets.length === 0
        ? ''
        : say('draft.text', { time: clockTime(Math.min(...targets), suite.zone) }),
  };
}

/**
 * What the wall says first.
 *
 * @param old the time of the last proof of life if the picture is not live, null before the first
 */
export function countWords(
  suite: SuitePart | undefined,
  rooms: readonly RoomPart[],
  now: number,
  old?: number | null,
): string {
  if (!suite || suite.phase === 'none') return suite?.hospital ?? 'Sunup';
  if (old === null) return say('count.never');
  if (old !== undefined) return say('count.old', { time: clockTime(old, suite.zone) });
  const figures = { cases: suite.cases, onTime: suite.onTime ?? '–' };
  if (suite.phase === 'draft') return say('count.draft', figures);
  const waiting = rooms.some((room) => !['started', 'none'].includes(room.standing));
  if (suite.phase === 'closed' || !waiting || isOver(suite, rooms, now)) {
    return say('count.over', figures);
  }
  if (suite.onTime === undefined) return say('count.no-figures', figures);
  const some = rooms.some((room) => room.standing === 'started');
  return say(some ? 'count.part' : 'count.on-time', figures);
}

/** What was calm, no longer said as if it were live. */
export function calmOld(words: Calm, at: number | null, zone: string): Calm {
  const text = [words.head, words.text].filter((part) => part !== '').join(' · ');
  return at === null
    ? { head: say('count.never'), text }
    : { head: say('old.head', { time: clockTime(at, zone) }), text };
}

/**
 * From noon of its day the wall sums the morning up, once no first case is still to come: one whose
 * list came after noon, or that is shown from noon of the day before, has yet to begin.
 */
export function isOver(suite: SuitePart, rooms: readonly RoomPart[], now: number): boolean {
  const today = dateOf(now, suite.zone);
  if (today < suite.date) return false;
  const past = today > suite.date || minuteOfDay(now, suite.zone) >= NOON_MINUTES;
  return past && rooms.every((room) => room.target === undefined || room.target <= now);
}
