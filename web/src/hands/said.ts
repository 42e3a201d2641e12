import type { Answer, CommandUnion } from '../generated/wire.ts';
import { uuidv7 } from '../live/ids.ts';

/** How far something that was said here has come. */
export type SaidState = 'waiting' | 'answered' | 'on-board' | 'refused';

/** One touch and what became of it. A touch may carry several commands. */
export interface Said {
  readonly n: number;
  /** Of the touch, the same over a reload. */
  readonly touch: string;
  /** What was said, in words. */
  readonly label: string;
  /** The morning's clock at the touch. */
  readonly at: number;
  /** Keys of what it is about, so that a page can show it as not yet on the board. */
  readonly about: readonly string[];
  readonly undoable: boolean;
  state: SaidState;
  /** The server's words for a refusal. */
  words: string;
  code: string;
  /** Ids of the commands that were taken. */
  ids: string[];
  upTo: number;
  undone: boolean;
  /** Set once a person has put the refusal away. */
  seen: boolean;
}

/** A command with the revision of what was shown, for decisions. */
export interface Saying {
  command: CommandUnion;
  seen?: number;
}

/** What this needs of the connection. */
export interface Line {
  now(): number;
  send(
    command: CommandUnion,
    options: { seen?: number; person?: string; label?: string; touch?: string },
  ): Promise<Answer>;
}

/** What the board can take back: what was said of items and steps. */
const TAKEN_BACK: readonly CommandUnion['type'][] = [
  'begin',
  'good',
  'sweep',
  'fault',
  'take-fault',
  'mend',
  'reopen',
  'leave-out',
  'reach',
];

const NOT_TAKEN = 'This was not taken. Look again, then say it once more.';

/** Entries that are kept at most; the oldest that are finished go first. */
export const SAID_LIMIT = 60;

/**
 * What was said from this screen. A touch is "waiting" until it was answered, "answered" once it is
 * kept, and "on the board" only when the board's sequence has reached it.
 */
export class SaidLog extends EventTarget {
  readonly list: Said[] = [];
  private counter = 0;
  private board = 0;

  private readonly line: Line;

  constructor(line: Line) {
    super();
    this.line = line;
  }

  /**
   * Sends the commands one after another, in order.
   *
   * @param label what was said, in words
   */
  say(
    label: string,
    sayings: readonly Saying[],
    options: { about?: readonly string[]; person?: string } = {},
  ): Said {
    const touch = uuidv7(this.line.now());
    const said: Said = {
      n: ++this.counter,
      touch,
      label,
      at: this.line.now(),
      about: options.about ?? [],
      undoable: sayings.every((s) => TAKEN_BACK.includes(s.command.type)),
      state: 'waiting',
      words: '',
      code: '',
      ids: [],
      upTo: 0,
      undone: false,
      seen: false,
    };
    this.list.push(said);
    this.trim();
    const answers = sayings.map((s) =>
      this.line.send(s.command, {
        label,
        touch,
        ...(s.seen === undefined ? {} : { seen: s.seen }),
        ...(options.person === undefined ? {} : { person: options.person }),
      }),
    );
    void Promise.allSettled(answers).then((results) => {
      this.settle(said, results);
    });
    this.changed();
    return said;
  }

  /**
   * What was said here before the page was loaded again, and is refused now: one notice a touch,
   * however many of its commands are refused.
   */
  refusedLate(touch: string, label: string, touchedAt: number, code: string, words: string): void {
    const told = this.refused().find((s) => s.touch === touch);
    if (told) {
      if (!told.words.includes(words)) {
        told.words = `${told.words} ${words}`;
        this.changed();
      }
      return;
    }
    this.list.push({
      n: ++this.counter,
      touch,
      label,
      at: touchedAt,
      about: [],
      undoable: false,
      state: 'refused',
      words: words || NOT_TAKEN,
      code,
      ids: [],
      upTo: 0,
      undone: false,
      seen: false,
    });
    this.trim();
    this.changed();
  }

  /** Takes back what was said, command by command, the last first. */
  undo(said: Said, person?: string): Said | undefined {
    if (said.undone || said.ids.length === 0) {
      return undefined;
    }
    said.undone = true;
    const back = [...said.ids].reverse();
    return this.say(
      `taken back: ${said.label}`,
      back.map((id) => ({ command: { type: 'undo', command: id } })),
      { about: said.about, ...(person === undefined ? {} : { person }) },
    );
  }

  /** The board now includes everything up to this sequence. */
  reached(upTo: number): void {
    this.board = upTo;
    let any = false;
    for (const said of this.list) {
      if (said.state === 'answered' && said.upTo <= upTo) {
        said.state = 'on-board';
        any = true;
      }
    }
    if (any) {
      this.changed();
    }
  }

  /** The last touch, if it can be taken back and was within this many milliseconds. */
  lastToUndo(now: number, within: number): Said | undefined {
    const last = this.list.at(-1);
    return last && last.undoable && !last.undone && last.ids.length > 0 && now - last.at <= within
      ? last
      : undefined;
  }

  /** Refusals that nobody has put away. */
  refused(): Said[] {
    return this.list.filter((s) => s.state === 'refused' && !s.seen);
  }

  /** The last thing said about this key that is not on the board yet. */
  pending(key: string): Said | undefined {
    const going = (s: Said) => s.state === 'waiting' || s.state === 'answered';
    return this.list.filter((s) => going(s) && s.about.includes(key)).at(-1);
  }

  putAway(said: Said): void {
    said.seen = true;
    this.changed();
  }

  private settle(said: Said, results: PromiseSettledResult<Answer>[]): void {
    said.state = 'answered';
    for (const result of results) {
      if (result.status === 'rejected') {
        said.state = 'refused';
        said.words ||=
          result.reason instanceof Error ? result.reason.message : String(result.reason);
      } else if (result.value.status === 'done') {
        said.ids.push(result.value.id);
        said.upTo = Math.max(said.upTo, result.value.upTo ?? 0);
      } else {
        said.state = 'refused';
        said.code ||= result.value.code ?? '';
        said.words ||= result.value.words ?? NOT_TAKEN;
      }
    }
    if (said.state === 'answered' && said.upTo <= this.board) {
      said.state = 'on-board';
    }
    this.changed();
  }

  private trim(): void {
    while (this.list.length > SAID_LIMIT) {
      const done = this.list.findIndex(
        (s) => s.state === 'on-board' || (s.state === 'refused' && s.seen),
      );
      if (done < 0) {
        return;
      }
      this.list.splice(done, 1);
    }
  }

  private changed(): void {
    this.dispatchEvent(new Event('change'));
  }
}
