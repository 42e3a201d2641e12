import type { Answer, CommandUnion, Send } from '../generated/wire.ts';
import { IN_FLIGHT_MAX, LATER_MS, OUTBOX_MAX, RESEND_MS } from './constants.ts';
import type { Kept, Shelf } from './shelf.ts';
import type { Timers } from './timers.ts';

/** Nothing more is taken: too many commands are unanswered. */
export class OutboxFull extends Error {
  constructor() {
    super(
      `${OUTBOX_MAX} touches are waiting to be sent. Nothing more is taken on this screen: ` +
        'use paper and tell the desk.',
    );
  }
}

/** A command on its way. */
export interface Sent {
  /** It is safe on this screen now, or the screen says that it keeps nothing. */
  readonly kept: Promise<void>;
  /** It may come after days. */
  readonly answer: Promise<Answer>;
}

/** A command that was touched before the page was opened, and what becomes of it. */
export interface Earlier {
  readonly kept: Kept;
  readonly answer: Promise<Answer>;
}

interface Entry {
  kept: Kept;
  readonly key: string | null;
  /** Kept on this screen, so that it may be sent: what is answered was never lost before. */
  shelved: boolean;
  /** Monotonic time before which it is not sent (again). */
  notBefore: number;
  onTheWay: boolean;
  readonly answer: (answer: Answer) => void;
}

/**
 * What a command is about, for waiting behind a refusal: commands about the same thing are sent
 * one after the other. Null: it never waits for another.
 */
export function about(command: CommandUnion): string | null {
  const fields = command as unknown as Record<string, unknown>;
  for (const name of ['item', 'unit', 'caseId', 'person', 'place'] as const) {
    const value = fields[name];
    if (typeof value === 'string') return `${name}:${value}`;
  }
  return null;
}

/**
 * Commands until they are answered: sent again under the same id, kept over a reload, bounded. A
 * refusal holds what was already waiting about the same thing until a person lets it go.
 */
export class Outbox {
  private readonly shelf: Shelf;
  private readonly timers: Timers;
  private readonly transmit: (message: Send) => boolean;
  private readonly changed: () => void;
  private readonly entries: Entry[] = [];
  private online = false;
  /** What was kept before comes first: nothing goes until it is known. */
  private opened = false;
  private safely = true;
  private cancelTimer: () => void = () => {};

  constructor(
    shelf: Shelf,
    timers: Timers,
    transmit: (message: Send) => boolean,
    changed: () => void,
  ) {
    this.shelf = shelf;
    this.timers = timers;
    this.transmit = transmit;
    this.changed = changed;
  }

  /** Takes back what this screen has kept, before what was touched meanwhile. */
  earlier(touches: readonly Kept[]): Earlier[] {
    const before: Earlier[] = [];
    const entries: Entry[] = [];
    for (const kept of touches) {
      if (this.entries.some((e) => e.kept.id === kept.id)) continue;
      const answer = new Promise<Answer>((resolve) => {
        entries.push({ ...entry(kept, resolve), shelved: true });
      });
      before.push({ kept, answer });
    }
    this.entries.unshift(...entries);
    this.opened = true;
    this.pump();
    this.changed();
    return before;
  }

  /** This screen keeps nothing: what is touched is sent, and the page says so. */
  keepsNothing(): void {
    this.safely = false;
    this.earlier([]);
  }

  /** Commands without an answer, held ones included. */
  get unsent(): number {
    return this.entries.length;
  }

  get full(): boolean {
    return this.entries.length >= OUTBOX_MAX;
  }

  /** False if the browser did not keep a command: it would not survive a reload. */
  get durable(): boolean {
    return this.safely;
  }

  /** Commands that wait for a person, the refused one excluded. */
  get held(): readonly Kept[] {
    return this.entries.filter((e) => e.kept.refusal).map((e) => e.kept);
  }

  /** @throws OutboxFull if nothing more is taken */
  add(kept: Kept): Sent {
    if (this.full) throw new OutboxFull();
    let answered: (answer: Answer) => void;
    const answer = new Promise<Answer>((resolve) => (answered = resolve));
    const added = entry(kept, answered!);
    this.entries.push(added);
    return { kept: this.shelve(added), answer };
  }

  private async shelve(added: Entry): Promise<void> {
    try {
      await this.shelf.put(added.kept);
    } catch {
      this.safely = false;
    }
    added.shelved = true;
    this.pump();
    this.changed();
  }

  /** A socket is open and the hello is said: everything unanswered goes again. */
  connected(): void {
    this.online = true;
    for (const entry of this.entries) {
      entry.onTheWay = false;
      entry.notBefore = 0;
    }
    this.pump();
  }

  disconnected(): void {
    this.online = false;
    this.cancelTimer();
  }

  answered(answer: Answer): void {
    const at = this.entries.findIndex((e) => e.kept.id === answer.id);
    if (at < 0) return;
    const entry = this.entries[at]!;
    if (answer.status === 'later') {
      entry.onTheWay = false;
      entry.notBefore = this.timers.now() + LATER_MS;
    } else {
      this.entries.splice(at, 1);
      this.shelf.remove(entry.kept.id);
      if (answer.status === 'refused') this.hold(entry.key, answer);
      entry.answer(answer);
    }
    this.pump();
    this.changed();
  }

  /** A person looked: these go on their way after all. */
  release(ids: readonly string[]): void {
    for (const entry of this.entries) {
      if (!entry.kept.refusal || !ids.includes(entry.kept.id)) continue;
      const { refusal: _, ...kept } = entry.kept;
      entry.kept = kept;
      this.again(kept);
    }
    this.pump();
    this.changed();
  }

  /** A person looked: these are not wanted any more. Only held ones can be dropped. */
  discard(ids: readonly string[]): void {
    for (const id of ids) {
      const at = this.entries.findIndex((e) => e.kept.id === id && e.kept.refusal);
      if (at < 0) continue;
      const [entry] = this.entries.splice(at, 1);
      this.shelf.remove(id);
      entry!.answer({ m: 'answer', id, status: 'dropped' });
    }
    this.pump();
    this.changed();
  }

  /** Keeps what became of a touch that is safe already. */
  private again(kept: Kept): void {
    this.shelf.put(kept).catch(() => {
      this.safely = false;
      this.changed();
    });
  }

  private hold(key: string | null, answer: Answer): void {
    if (key === null) return;
    const refusal = { code: answer.code ?? '', words: answer.words ?? '' };
    for (const entry of this.entries) {
      if (entry.key !== key || entry.onTheWay) continue;
      entry.kept = { ...entry.kept, refusal };
      this.again(entry.kept);
    }
  }

  /** Sends what may go now and looks again when the next thing is due. */
  private pump(): void {
    this.cancelTimer();
    if (!this.online || !this.opened) return;
    const now = this.timers.now();
    const busy = new Set<string>();
    let onTheWay = 0;
    let due = Number.POSITIVE_INFINITY;
    for (const entry of this.entries) {
      if (entry.kept.refusal || (entry.key !== null && busy.has(entry.key))) continue;
      if (entry.key !== null) busy.add(entry.key);
      if (!entry.shelved) continue;
      if (onTheWay >= IN_FLIGHT_MAX) break;
      onTheWay++;
      if (entry.notBefore <= now) {
        if (!this.transmit(message(entry.kept))) return;
        entry.onTheWay = true;
        entry.notBefore = now + RESEND_MS;
      }
      due = Math.min(due, entry.notBefore);
    }
    if (Number.isFinite(due)) {
      this.cancelTimer = this.timers.after(Math.max(1, due - now), () => this.pump());
    }
  }
}

function entry(kept: Kept, answer: Entry['answer']): Entry {
  return { kept, key: about(kept.command), shelved: false, notBefore: 0, onTheWay: false, answer };
}

function message(kept: Kept): Send {
  const { refusal: _refusal, label: _label, touch: _touch, about: _about, ...rest } = kept;
  return { m: 'send', ...rest };
}
