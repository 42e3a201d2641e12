import { NotDone, troubleWords } from '../../live/index.ts';
import { figures, type Listed, work } from './api.ts';
import { Bench } from './bench.ts';

/** How soon a figure that the pharmacy takes back is gone from a station. */
const LOOK_MS = 5_000;

/** The figures at a station: which are on, what is entered, and what the board says of it. */
export class FiguresDesk {
  /** True while it lies over the sections and the right-hand side. */
  shown = false;
  readonly bench = new Bench();
  /** The site's figures, or why they could not be asked for; undefined until they are there. */
  list: readonly Listed[] | string | undefined;
  private readonly room: string;
  private readonly changed: () => void;
  private readonly now: () => number;
  private wanted: string | undefined;
  private looks = 0;
  private looking: ReturnType<typeof setInterval> | undefined;

  /** @param now by the board's clock */
  constructor(room: string, changed: () => void, now: () => number) {
    this.room = room;
    this.changed = changed;
    this.now = now;
  }

  /** @param name of the figure to go to at once if it is released; else all are listed */
  open(name?: string): void {
    this.shown = true;
    this.wanted = name;
    this.bench.open(undefined);
    this.fetch();
    this.looking ??= setInterval(() => this.look(), LOOK_MS);
  }

  close(): void {
    this.shown = false;
    clearInterval(this.looking);
    this.looking = undefined;
    this.choose(undefined);
  }

  choose(figure: Listed | undefined): void {
    this.bench.open(figure);
    this.changed();
  }

  /** Asked for each time: what the pharmacy released or took back must show. */
  fetch(): void {
    this.list = undefined;
    this.changed();
    void figures()
      .catch((e: unknown) => troubleWords(e))
      .then((list) => {
        this.list = list;
        this.bench.confirmed = typeof list !== 'string';
        this.goToWanted();
        this.changed();
      });
  }

  private goToWanted(): void {
    const name = this.wanted;
    this.wanted = undefined;
    if (name === undefined || typeof this.list !== 'object') return;
    this.bench.open(this.list.find((f) => f.card.name === name && f.off === undefined));
  }

  /** Looks again, in silence, whether what is shown is still released. */
  private look(): void {
    if (typeof this.list !== 'object') return;
    const look = ++this.looks;
    void figures().then(
      (list) => {
        // An answer that was overtaken may be from before a figure was taken back.
        if (look !== this.looks) return;
        this.list = list;
        this.bench.follow(list);
        this.changed();
      },
      (e: unknown) => {
        if (look !== this.looks) return;
        this.bench.confirmed = false;
        // It answered, and none is on: not the same as a board that is away.
        if (e instanceof NotDone && e.status !== undefined) {
          this.bench.open(undefined);
          this.list = e.message;
        }
        this.changed();
      },
    );
  }

  work(): void {
    const question = this.bench.question(this.room);
    if (!question) {
      return;
    }
    const take = this.bench.asked();
    this.changed();
    void work(question)
      .then(
        (answer) => take(answer, '', this.now()),
        (e: unknown) => take(undefined, troubleWords(e)),
      )
      .finally(() => this.changed());
  }
}
