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

interface Entry {
  kept: Kept;
  readonly key: string | null;
  /** Monotonic time before which it is not sent (again). */
  notBefore: number;
  onTheWay: boolean;
  readonly answer: ((answer: Answer) => void) | null;
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
  private readonly refusedLate: (kept: Kept, answer: Answer) => void;
  private readonly entries: Entry[] = [];
  private online = false;
  private safely = true;
  private cancelTimer: () => void = () => {};

  constructor(
    shelf: Shelf,
    timers: Timers,
    transmit: (message: Send) => boolean,
    changed: () => void,
    refusedLate: (kept: Kept, answer: Answer) => void = () => {},
  ) {
    this.shelf = shelf;
    this.timers = timers;
    this.transmit = transmit;
    this.changed = changed;
    this.refusedLate = refusedLate;
    for (const kept of shelf.load().slice(0, OUTBOX_MAX)) this.push(kept, null);
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
  add(kept: Kept): Promise<Answer> {
    if (this.full) throw new OutboxFull();
    return new Promise((resolve) => {
      if (!this.shelf.put(kept)) this.safely = false;
      this.push(kept, resolve);
      this.pump();
      this.changed();
    });
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
      // Whoever touched it before a reload waits for no promise, and must hear of it all the same.
      if (!entry.answer && answer.status === 'refused') this.refusedLate(entry.kept, answer);
      entry.answer?.(answer);
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
      this.shelf.put(kept);
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
      entry!.answer?.({ m: 'answer', id, status: 'dropped' });
    }
    this.pump();
    this.changed();
  }

  private push(kept: Kept, answer: Entry['answer']): void {
    this.entries.push({
      kept,
      key: about(kept.command),
      notBefore: 0,
      onTheWay: false,
      answer,
    });
  }

  private hold(key: string | null, answer: Answer): void {
    if (key === null) return;
    const refusal = { code: answer.code ?? '', words: answer.words ?? '' };
    for (const entry of this.entries) {
      if (entry.key !== key || entry.onTheWay) continue;
      entry.kept = { ...entry.kept, refusal };
      this.shelf.put(entry.kept);
    }
  }

  /** Sends what may go now and looks again when the next thing is due. */
  private pump(): void {
    this.cancelTimer();
    if (!this.online) return;
    const now = this.timers.now();
    const busy = new Set<string>();
    let onTheWay = 0;
    let due = Number.POSITIVE_INFINITY;
    for (const entry of this.entries) {
      if (entry.kept.refusal || (entry.key !== null && busy.has(entry.key))) continue;
      if (entry.key !== null) busy.add(entry.key);
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

function message(kept: Kept): Send {
  const { refusal: _refusal, label: _label, touch: _touch, ...rest } = kept;
  return { m: 'send', ...rest };
}
