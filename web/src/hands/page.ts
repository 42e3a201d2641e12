import { LitElement } from 'lit';
import type { CommandUnion, PartUnion, PersonPart, SuitePart } from '../generated/wire.ts';
import { EarlierEvent, Live, type Page, suiteIn } from '../live/index.ts';
import { dateOf, entryOver, type SunupEntry } from '../look/index.ts';
import { clockSeconds } from '../words/index.ts';
import { hhmm } from './clock.ts';
import { type Said, SaidLog, type Saying } from './said.ts';
import './sign-on.ts';
import type { SunupSignOn } from './sign-on.ts';

/** For how long a touch can be taken back by one touch, milliseconds. */
export const TAKE_BACK_MS = 20_000;

/** What a page's own touches need to know, beside what they say. */
export interface TouchOptions {
  about?: readonly string[];
  /** The token of the second person's signature, where it has one. */
  second?: string | undefined;
}

/** What the pages for hands have in common: the live picture, what was said here, the clock. */
export abstract class BoardPage extends LitElement {
  readonly live: Live;
  readonly said: SaidLog;
  /** The suite that the page's address names, if any. */
  readonly inSuite: string | undefined;
  private readonly page: Page;
  private entry: SunupEntry | undefined;
  private ticker: ReturnType<typeof setInterval> | undefined;

  /**
   * @param date of the morning that the page wants to see; none for the one that is on
   * @param keeps which parts this screen keeps for being opened while the board is away
   */
  constructor(page: Page, screen: string, date?: string, keeps?: (part: PartUnion) => boolean) {
    super();
    this.page = page;
    this.inSuite = suiteIn(location.search);
    const shown = {
      suite: this.inSuite,
      ...(date === undefined ? {} : { date }),
      ...(keeps === undefined ? {} : { keeps }),
    };
    this.live = new Live({ page, screen, ...shown });
    this.said = new SaidLog(this.live);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.live.addEventListener('change', this.onChange);
    this.live.addEventListener('state', this.onDraw);
    this.live.addEventListener('earlier', this.onEarlier);
    this.said.addEventListener('change', this.onDraw);
    this.ticker = setInterval(this.onDraw, 1_000);
    this.entry = entryOver(this.live, this.page);
    this.live.start();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.live.removeEventListener('change', this.onChange);
    this.live.removeEventListener('state', this.onDraw);
    this.live.removeEventListener('earlier', this.onEarlier);
    this.said.removeEventListener('change', this.onDraw);
    clearInterval(this.ticker);
    this.entry?.remove();
    this.live.stop();
  }

  /** Who is signed on here, if anybody. */
  get person(): string | undefined {
    return undefined;
  }

  /** When what is touched now was done, if it is entered afterwards from paper. */
  get doneAt(): number | undefined {
    return undefined;
  }

  /** Where screens are paired people sign on by code and PIN. */
  get paired(): boolean {
    return this.live.state.entry.paired !== undefined;
  }

  /** The page's own place for signing on, once it is drawn. */
  get signing(): SunupSignOn | null {
    return this.renderRoot.querySelector<SunupSignOn>('sunup-sign-on');
  }

  /**
   * A second person signs the touch that comes then. Where screens are not paired there is nothing
   * to sign with: the person is only named, and the board says so.
   *
   * @param relieves true if that person is signed on here from then on
   */
  signedByTwo(
    other: PersonPart,
    kind: CommandUnion['type'],
    then: (second?: string) => void,
    relieves = false,
  ): void {
    if (this.paired && this.signing) this.signing.openSecond(other, kind, then, relieves);
    else then();
  }

  /** The morning as a whole, once it has been seen. */
  get suite(): SuitePart | undefined {
    return this.live.list('suite')[0];
  }

  get zone(): string {
    return this.suite?.zone ?? 'UTC';
  }

  get now(): number {
    return this.live.now();
  }

  hhmm(at: number | undefined): string {
    return hhmm(at, this.zone);
  }

  /** A time to come says which day only if it is not today. */
  until(at: number | undefined): string {
    const far = at !== undefined && dateOf(at, this.zone) !== dateOf(this.now, this.zone);
    return `${this.hhmm(at)}${far ? ' tomorrow' : ''}`;
  }

  hhmmss(at: number): string {
    return clockSeconds(at, this.zone);
  }

  list<K extends PartUnion['part']>(kind: K): readonly Extract<PartUnion, { part: K }>[] {
    return this.live.list(kind);
  }

  /** One touch, one or more commands. */
  say(label: string, sayings: readonly Saying[], options: TouchOptions = {}): Said {
    const person = this.person;
    const doneAt = this.doneAt;
    const said = doneAt === undefined ? label : `${label}, done ${this.hhmm(doneAt)}`;
    const { second, ...rest } = options;
    return this.said.say(said, sayings, {
      ...rest,
      ...(second === undefined ? {} : { second }),
      ...(person ? { person } : {}),
      ...(doneAt === undefined ? {} : { doneAt }),
    });
  }

  /** One command. */
  tell(label: string, command: CommandUnion, options: TouchOptions & { seen?: number } = {}): Said {
    const { seen, ...rest } = options;
    return this.say(label, [{ command, ...(seen === undefined ? {} : { seen }) }], rest);
  }

  takeBack(said: Said): void {
    this.said.undo(said, this.person);
  }

  private readonly onDraw = (): void => this.requestUpdate();

  private readonly onEarlier = (event: Event): void => {
    if (event instanceof EarlierEvent) this.said.resume(event.touches);
  };

  private readonly onChange = (): void => {
    this.said.reached(this.live.upTo);
    this.requestUpdate();
  };
}
