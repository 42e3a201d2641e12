import type { Answer, CommandUnion } from '../generated/wire.ts';
import { uuidv7 } from '../live/ids.ts';
import type { Earlier, Kept, SendOptions, Sent } from '../live/index.ts';

/** How far something that was said here has come. */
export type SaidState = 'keeping' | 'waiting' | 'answered' | 'on-board' | 'refused';

/** One touch and what became of it. A touch may carry several commands. */
export interface Said {
  readonly n: number;
  /** Of the touch, the same over a reload. */
  readonly touch: string;
  /** What was said, in words. */
  readonly label: string;
  /** The morning's clock at the touch. */
  readonly at: number;
  /** Touched before the page was opened again. */
  readonly earlier: boolean;
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
  send(command: CommandUnion, options: SendOptions): Sent;
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
 * What was said from this screen. A touch is "keeping" until this screen has it on its disk,
 * "waiting" until it was answered, "answered" once the board has kept it, and "on the board" only
 * when the board's sequence has reached it.
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
   * @param options `doneAt` is when it was done, if that was not now
   */
  say(
    label: string,
    sayings: readonly Saying[],
    options: { about?: readonly string[]; person?: string; doneAt?: number; second?: string } = {},
  ): Said {
    const touch = uuidv7(this.line.now());
    const said = this.enter({
      touch,
      label,
      at: this.line.now(),
      earlier: false,
      about: options.about ?? [],
      undoable: sayings.every((s) => TAKEN_BACK.includes(s.command.type)),
      state: 'keeping',
    });
    try {
      const sent = sayings.map((s) =>
        this.line.send(s.command, {
          label,
          touch,
          about: said.about,
          ...(s.seen === undefined ? {} : { seen: s.seen }),
          ...(options.person === undefined ? {} : { person: options.person }),
          ...(options.doneAt === undefined ? {} : { doneAt: options.doneAt }),
          ...(options.second === undefined ? {} : { second: options.second }),
        }),
      );
      void Promise.all(sent.map((s) => s.kept)).then(() => this.kept(said));
      void this.settle(
        said,
        sent.map((s) => s.answer),
      );
    } catch (refused) {
      said.state = 'refused';
      said.words = refused instanceof Error ? refused.message : String(refused);
    }
    this.changed();
    return said;
  }

  /** What was said here before the page was opened again, and is not answered yet. */
  resume(earlier: readonly Earlier[]): void {
    for (const touch of new Set(earlier.map(({ kept }) => touchOf(kept)))) {
      const of = earlier.filter(({ kept }) => touchOf(kept) === touch);
      const { kept } = of[0]!;
      const said = this.enter({
        touch,
        label: kept.label ?? kept.command.type.replaceAll('-', ' '),
        at: kept.touchedAt + kept.offset,
        earlier: true,
        about: kept.about ?? [],
        undoable: of.every((one) => TAKEN_BACK.includes(one.kept.command.type)),
        state: 'waiting',
      });
      void this.settle(
        said,
        of.map((one) => one.answer),
      );
    }
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

  private enter(
    what: Pick<Said, 'touch' | 'label' | 'at' | 'earlier' | 'about' | 'undoable' | 'state'>,
  ): Said {
    const rest = { words: '', code: '', ids: [], upTo: 0, undone: false, seen: false };
    const said: Said = { n: ++this.counter, ...what, ...rest };
    this.list.push(said);
    this.trim();
    return said;
  }

  private kept(said: Said): void {
    if (said.state !== 'keeping') return;
    said.state = 'waiting';
    this.changed();
  }

  private async settle(said: Said, answers: readonly Promise<Answer>[]): Promise<void> {
    const words = new Set<string>();
    for (const answer of await Promise.all(answers)) {
      if (answer.status === 'done') {
        said.ids.push(answer.id);
        said.upTo = Math.max(said.upTo, answer.upTo ?? 0);
      } else {
        said.code ||= answer.code ?? '';
        words.add(answer.words ?? NOT_TAKEN);
      }
    }
    said.words = [...words].join(' ');
    said.state = words.size > 0 ? 'refused' : said.upTo <= this.board ? 'on-board' : 'answered';
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

function touchOf(kept: Kept): string {
  return kept.touch ?? kept.id;
}
