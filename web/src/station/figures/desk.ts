import { troubleWords } from '../../live/index.ts';
import { figures, type Listed, work } from './api.ts';
import { Bench } from './bench.ts';

/** The figures at a station: which are on, what is entered, and what the board says of it. */
export class FiguresDesk {
  /** True while it lies over the sections and the right-hand side. */
  shown = false;
  readonly bench = new Bench();
  /** The site's figures, or why they could not be asked for; undefined until they are there. */
  list: readonly Listed[] | string | undefined;
  private readonly room: string;
  private readonly changed: () => void;

  constructor(room: string, changed: () => void) {
    this.room = room;
    this.changed = changed;
  }

  open(): void {
    this.shown = true;
    this.bench.open(undefined);
    this.fetch();
  }

  close(): void {
    this.shown = false;
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
        this.changed();
      });
  }

  work(): void {
    const question = this.bench.question(this.room);
    if (!question) {
      return;
    }
    const take = this.bench.asked();
    this.changed();
    void work(question)
      .then(take, (e: unknown) => take(undefined, troubleWords(e)))
      .finally(() => this.changed());
  }
}
