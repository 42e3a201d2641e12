import type {
  Answer,
  CommandUnion,
  PartUnion,
  ServerMessageUnion,
  Told,
} from '../generated/wire.ts';
import { AwaitedView } from './awaited.ts';
import { Channel, type Effect } from './channel.ts';
import { toldMessage, toldParts } from '../words/index.ts';
import { MorningClock } from './clock.ts';
import { PICTURE_AGE_MAX_MS, PICTURE_MS, STALE_LOOK_MS } from './constants.ts';
import { DbShelf } from './db-shelf.ts';
import { BeatEvent, ChangeEvent, EarlierEvent, TroubleEvent } from './events.ts';
import { Echo } from './echo.ts';
import { Entry, type EntryState } from './entry.ts';
import type { ScreenKey } from './key.ts';
import { uuidv7 } from './ids.ts';
import { Outbox, type Sent } from './outbox.ts';
import { type Kept, type Picture, pictureChanged, type Shelf } from './shelf.ts';
import { defaultUrl, type OpenSocket, Socket } from './socket.ts';
import { realTimers, type Timers } from './timers.ts';

export type Page = 'wall' | 'desk' | 'station' | 'holding' | 'pocket';

export interface LiveState {
  /** A socket is open. It proves nothing about what is shown; `stale` does. */
  readonly connected: boolean;
  /** No proof of life for five seconds: what is shown may be old. True before the first one. */
  readonly stale: boolean;
  /** The journal does not answer: nothing is taken, touches are kept and sent later. */
  readonly readOnly: boolean;
  /** The server has no suite of the id in this page's address; absent while it has. */
  readonly noSuite?: boolean;
  /** Something has been shown since the page was opened. */
  readonly everSeen: boolean;
  /** Too many touches are unanswered: nothing more is taken on this screen. */
  readonly full: boolean;
  /** Where screens are paired: what this one is, and who is signed on. */
  readonly entry: EntryState;
  /** False if touches would not survive a reload of this page. */
  readonly durable: boolean;
}

export interface LiveOptions {
  readonly page: Page;
  /** The screen's name, for example `station-7`. Kept touches belong to it. */
  readonly screen: string;
  /** A desk's: the date of the morning that it wants to see; none for the one that is on. */
  readonly date?: string;
  /** The suite that it shows, by its id; none for the server's first. */
  readonly suite?: string | undefined;
  readonly url?: string;
  readonly timers?: Timers;
  readonly open?: OpenSocket;
  readonly shelf?: Shelf;
  /** This screen's key; the browser's own unless a test gives another. */
  readonly key?: ScreenKey;
  /**
   * Which parts this screen keeps, so that it can be opened and touched while the board is away.
   * Without it nothing is kept but touches.
   */
  readonly keeps?: (part: PartUnion) => boolean;
}

export interface SendOptions {
  readonly seen?: number;
  readonly person?: string;
  /** The token of a second signature. */
  readonly second?: string;
  readonly label?: string;
  readonly touch?: string;
  readonly about?: readonly string[];
  /** When it was done by the morning's time, if not now: the time entered stays the touch's. */
  readonly doneAt?: number;
}

type Listed<K extends PartUnion['part']> = Extract<PartUnion, { part: K }>;

/**
 * The live picture of a morning on one screen, and the way for touches to the board. Events:
 * `change` (a {@link ChangeEvent}, at most one a picture), `state`, `beat`, `trouble`, `earlier` (an
 * {@link EarlierEvent}).
 */
export class Live extends EventTarget {
  private readonly options: LiveOptions;
  private readonly timers: Timers;
  private readonly channel = new Channel();
  private readonly clock = new MorningClock();
  private readonly shelf: Shelf;
  private readonly outbox: Outbox;
  private readonly socket: Socket;
  private readonly echo: Echo;
  readonly entry: Entry;
  private readonly lists = new Map<string, readonly PartUnion[]>();
  private changePending = false;
  private readonly awaited: AwaitedView;
  private readOnly = false;
  private everSeen = false;
  private noSuite = false;
  private beatCount = 0;
  private current: LiveState;
  /** The picture that this page kept last. */
  private shown: Picture | undefined;

  constructor(options: LiveOptions) {
    super();
    this.options = options;
    this.timers = options.timers ?? realTimers;
    this.shelf = options.shelf ?? new DbShelf(shelfName(options));
    this.outbox = new Outbox(
      this.shelf,
      this.timers,
      (message) => this.socket.send(message),
      () => this.refreshState(true),
    );
    this.socket = new Socket(
      options.url ?? defaultUrl(),
      {
        opened: () => this.opened(),
        message: (message) => this.received(message),
        closed: () => this.closed(),
        silentMost: () => this.awaited.silentMost(),
      },
      this.timers,
      options.open,
    );
    this.echo = new Echo(this.timers, (message) => this.socket.send(message));
    this.awaited = new AwaitedView(this.timers, () => this.socket.send({ m: 'ask-view' }));
    this.entry = new Entry(
      {
        send: (message) => this.socket.send(message),
        again: () => this.socket.again(),
        changed: () => this.refreshState(true),
      },
      options.key,
    );
    this.current = this.readState();
  }

  start(): void {
    void this.open();
    this.socket.start();
    if (this.options.keeps) this.everyPicture(this.options.keeps);
    this.everyLook();
    this.echo.start();
  }

  /**
   * A second person signs what whoever is signed on here will touch now.
   *
   * @param kind the type of the command that the answer's token is for
   */
  async countersign(
    code: string,
    pin: string,
    as: string,
    kind: CommandUnion['type'],
  ): Promise<Told> {
    return this.entry.countersign(code, pin, as, this.channel.morning ?? '', kind);
  }

  /** Closes the socket for good; for tests and pages that go away. */
  stop(): void {
    this.socket.stop();
  }

  get parts(): ReadonlyMap<string, PartUnion> {
    return this.channel.parts;
  }

  get<T extends PartUnion>(key: string): T | undefined {
    return this.channel.parts.get(key) as T | undefined;
  }

  /** All parts of a kind, in no particular order. The same array until one of them changes. */
  list<K extends PartUnion['part']>(kind: K): readonly Listed<K>[] {
    let list = this.lists.get(kind);
    if (!list) {
      list = [...this.channel.parts.values()].filter((part) => part.part === kind);
      this.lists.set(kind, list);
    }
    return list as readonly Listed<K>[];
  }

  get state(): LiveState {
    return this.current;
  }

  /** The morning's time in epoch milliseconds; it may run faster than real time in a rehearsal. */
  now(): number {
    return this.clock.now(this.timers.now(), this.timers.date());
  }

  /** Morning seconds per real second. */
  get rate(): number {
    return this.clock.rate;
  }

  /** The morning's time at which what is shown was last proved, or null. */
  get lastLiveAt(): number | null {
    return this.clock.lastLiveAt;
  }

  /** How many heartbeats proved the picture since the page was opened. */
  get beats(): number {
    return this.beatCount;
  }

  /** Journal sequence that is on the screen; a touch is "on the board" at its answer's `upTo`. */
  get upTo(): number {
    return this.channel.stand?.upTo ?? 0;
  }

  /** True when the effects of this answer are on the screen. */
  onBoard(answer: Answer): boolean {
    return answer.status === 'done' && (answer.upTo ?? 0) <= this.upTo;
  }

  /** Touches without an answer. */
  get unsent(): number {
    return this.outbox.unsent;
  }

  /** Touches that wait behind a refusal until a person lets them go or drops them. */
  get held(): readonly Kept[] {
    return this.outbox.held;
  }

  releaseHeld(ids: readonly string[]): void {
    this.outbox.release(ids);
  }

  discardHeld(ids: readonly string[]): void {
    this.outbox.discard(ids);
  }

  /**
   * Sends a command, again and again until it is answered, over reloads too.
   *
   * @param opts `seen` is the revision of what the person saw, `person` who is signed on, `label`
   *   what was said in words, `touch` the same for all commands of one touch, `about` keys of what
   *   it is about
   * @returns when it is kept here, and the answer: `done`, `refused`, or `dropped` if a person
   *   dropped it while it was held
   * @throws OutboxFull if nothing more is taken
   */
  send(command: CommandUnion, opts: SendOptions = {}): Sent {
    const touchedAt = this.timers.date();
    const { morning } = this.channel;
    return this.outbox.add({
      id: uuidv7(touchedAt),
      ...(morning === undefined ? {} : { morning }),
      command,
      ...(opts.seen === undefined ? {} : { seen: opts.seen }),
      ...(opts.person === undefined ? {} : { person: opts.person }),
      ...sessionOf(this.entry.state),
      ...(opts.second === undefined ? {} : { second: opts.second }),
      ...(opts.label === undefined ? {} : { label: opts.label }),
      ...(opts.touch === undefined ? {} : { touch: opts.touch }),
      ...(opts.about === undefined ? {} : { about: opts.about }),
      touchedAt,
      offset: Math.round((opts.doneAt ?? this.now()) - touchedAt),
    });
  }

  /** What this screen has kept: touches go on their way, the last picture stands until a newer one. */
  private async open(): Promise<void> {
    try {
      const { touches, picture } = await this.shelf.open();
      if (picture && this.options.keeps) this.restore(picture);
      const earlier = this.outbox.earlier(touches);
      if (earlier.length > 0) this.dispatchEvent(new EarlierEvent(earlier));
    } catch {
      this.outbox.keepsNothing();
    }
  }

  private restore(picture: Picture): void {
    const age = this.timers.date() - picture.keptAt;
    if (this.everSeen || age < 0 || age > PICTURE_AGE_MAX_MS) return;
    const clock = picture.clock + age * picture.rate;
    this.clock.restore(this.timers.now(), clock, picture.rate, picture.lastLiveAt);
    this.channel.restore(picture.morning, toldParts(picture.parts));
    this.everSeen = true;
    this.changedParts();
    this.refreshState();
  }

  /** Only what is proved is kept: a picture that is not live stays as old as it is. */
  private everyPicture(keeps: (part: PartUnion) => boolean): void {
    const { morning } = this.channel;
    const { lastLiveAt } = this.clock;
    if (morning !== undefined && lastLiveAt !== null && !this.readState().stale) {
      const parts = [...this.channel.parts.values()].filter(keeps);
      const keptAt = this.timers.date();
      if (!this.shown || pictureChanged(this.shown, morning, parts, keptAt)) {
        const clock = this.now();
        const rate = this.clock.rate;
        this.shown = { morning, parts, keptAt, clock, rate, lastLiveAt };
        this.shelf.show(this.shown);
      }
    }
    this.timers.after(PICTURE_MS, () => this.everyPicture(keeps));
  }

  private opened(): void {
    this.awaited.opened();
    const { screen, page, date, suite } = this.options;
    this.socket.send(this.channel.hello(screen, page, date, suite));
    this.echo.opened(this.socket.begunAt);
    this.outbox.connected();
    this.refreshState();
  }

  private closed(): void {
    this.outbox.disconnected();
    this.entry.cut();
    this.refreshState();
  }

  private received(written: ServerMessageUnion): void {
    if (this.wake()) return;
    const message = toldMessage(written);
    if (this.entry.received(message)) {
      // What was sent before the board knew the screen was not taken.
      if (message.m === 'paired') this.outbox.connected();
      return;
    }
    switch (message.m) {
      case 'view':
        this.awaited.came();
        this.follow(this.channel.view(message));
        break;
      case 'frame':
        this.follow(this.channel.frame(message));
        break;
      case 'beat': {
        const at = this.timers.now();
        const effect = this.channel.beat(message);
        if (effect === 'alive' && this.echo.fresh()) {
          this.clock.beat(at, message.morningClock, message.rate);
          this.clock.alive(at);
          this.readOnly = message.readOnly;
          this.beatCount++;
          this.dispatchEvent(new BeatEvent());
        }
        this.follow(effect);
        this.echo.tick();
        this.leaveUseless();
        break;
      }
      case 'answer':
        this.outbox.answered(message);
        break;
      case 'tock':
        this.echo.tock(message.sentAt);
        this.clock.tock(message.sentAt, this.timers.now(), message.morningClock, message.rate);
        break;
      case 'trouble':
        if (message.code === 'unknown-suite') this.noSuite = true;
        this.dispatchEvent(new TroubleEvent(message));
        break;
    }
    this.refreshState();
  }

  private follow(effect: Effect): void {
    // A socket that resumes gets no view.
    if (effect === 'applied' || effect === 'alive') this.awaited.came();
    if (effect === 'applied') {
      this.everSeen = true;
      this.changedParts();
    } else if (effect === 'ask') {
      this.awaited.ask();
    } else if (effect === 'forget') {
      this.channel.forget();
      this.clock.forget();
      this.changedParts();
      this.socket.send({ m: 'ask-view' });
    }
  }

  /** Applied at once, told once a picture: a burst of frames is drawn once. */
  private changedParts(): void {
    this.lists.clear();
    if (this.changePending) return;
    this.changePending = true;
    this.timers.frame(() => {
      this.changePending = false;
      this.dispatchEvent(new ChangeEvent(this.channel.takeTouched()));
    });
  }

  /** A line that passes a heartbeat now and then, each older than the last, is as bad as none. */
  private leaveUseless(): void {
    if (this.socket.connected && this.echo.useless(this.awaited.silentMost())) this.socket.again();
  }

  /** After a sleep nothing counts that was there before it. */
  private wake(): boolean {
    if (!this.echo.slept()) return false;
    this.clock.doubt();
    this.socket.again();
    return true;
  }

  private everyLook(): void {
    this.wake();
    this.refreshState();
    this.leaveUseless();
    this.timers.after(STALE_LOOK_MS, () => this.everyLook());
  }

  private readState(): LiveState {
    return {
      connected: this.socket.connected,
      stale: this.clock.stale(this.timers.now()),
      readOnly: this.readOnly,
      everSeen: this.everSeen,
      ...(this.noSuite && !this.everSeen ? { noSuite: true } : {}),
      full: this.outbox.full,
      // A wall takes no touches.
      durable: this.options.page === 'wall' || this.outbox.durable,
      entry: this.entry.state,
    };
  }

  private refreshState(always = false): void {
    const next = this.readState();
    const now = this.current;
    const same = (Object.keys(next) as (keyof LiveState)[]).every((key) => next[key] === now[key]);
    if (same && !always) return;
    this.current = next;
    this.dispatchEvent(new Event('state'));
  }
}

/** A touch goes with the sign-on under which it was made, also when it is sent later. */
function sessionOf(entry: EntryState): { session?: string } {
  return entry.signed === undefined ? {} : { session: entry.signed.session };
}

/** Two suites may name their screens alike; what is kept of one never goes to the other. */
function shelfName(options: LiveOptions): string {
  return options.suite === undefined ? options.screen : `${options.suite}:${options.screen}`;
}
