import type { Page, WebSocketRoute } from 'playwright-core';
import type {
  Answer,
  CasePart,
  ClientMessageUnion,
  CommandUnion,
  ItemPart,
  PartUnion,
  PersonPart,
  RoomPart,
  Send,
  ServerMessageUnion,
} from '../../src/generated/wire.ts';
import { SEVEN } from './morning.ts';

/** A refusal that the next commands of a type get. */
export interface Refusing {
  type: CommandUnion['type'];
  code: string;
  words: string;
}

/**
 * Stands in for the board where a test needs states that a real morning seldom gives: it takes every
 * touch at its word and knows no rules. Flows are tested against the real one.
 */
export class StandIn {
  readonly parts = new Map<string, PartUnion>();
  readonly taken: CommandUnion[] = [];
  refusing: Refusing | undefined;
  /** While true nothing is answered. */
  silent = false;
  readOnly = false;
  private seq = 1;
  private n = 0;
  private readonly started = performance.now();
  private readonly sockets = new Set<WebSocketRoute>();
  private timer: ReturnType<typeof setInterval> | undefined;

  constructor(parts: readonly PartUnion[]) {
    for (const part of parts) {
      this.parts.set(part.key, part);
    }
  }

  async on(page: Page): Promise<void> {
    this.timer ??= setInterval(() => this.beat(), 1_000);
    await page.routeWebSocket('**/live', (socket) => {
      this.sockets.add(socket);
      socket.onClose(() => this.sockets.delete(socket));
      socket.onMessage((data) => this.heard(socket, data));
    });
  }

  stop(): void {
    clearInterval(this.timer);
  }

  get now(): number {
    return SEVEN + Math.round(performance.now() - this.started);
  }

  /** Changes a part and tells all screens. */
  set(...changed: PartUnion[]): void {
    for (const part of changed) {
      this.parts.set(part.key, part);
    }
    this.seq++;
    this.n++;
    this.all({ m: 'frame', ...this.at(), forecastOf: 1, audience: 'desk', set: changed, gone: [] });
  }

  item(ref: string): ItemPart {
    return this.parts.get(`item/${ref}`) as ItemPart;
  }

  private at() {
    return { morning: 'main/2026-11-26', epoch: 1, n: this.n, upTo: this.seq };
  }

  private beat(): void {
    if (!this.silent) {
      this.all({
        m: 'beat',
        ...this.at(),
        morningClock: this.now,
        rate: 1,
        confirmedAt: 1,
        readOnly: this.readOnly,
      });
    }
  }

  private heard(socket: WebSocketRoute, data: string | Buffer): void {
    const message = JSON.parse(data.toString()) as ClientMessageUnion;
    if (this.silent) {
      return;
    }
    if (message.m === 'hello' || message.m === 'ask-view') {
      this.to(socket, {
        m: 'view',
        ...this.at(),
        forecastOf: 1,
        audience: 'desk',
        parts: [...this.parts.values()],
      });
      this.beat();
    } else if (message.m === 'tick') {
      this.to(socket, { m: 'tock', sentAt: message.sentAt, morningClock: this.now, rate: 1 });
    } else if (message.m === 'send') {
      this.answer(socket, message);
    }
  }

  private answer(socket: WebSocketRoute, send: Send): void {
    const answer: Answer = { m: 'answer', id: send.id, status: 'done' };
    if (this.readOnly) {
      this.to(socket, { ...answer, status: 'later' });
      return;
    }
    if (this.refusing?.type === send.command.type) {
      const { code, words } = this.refusing;
      this.to(socket, { ...answer, status: 'refused', code, words });
      return;
    }
    this.taken.push(send.command);
    const changed = this.apply(send.command);
    if (changed.length > 0) {
      this.set(...changed);
    }
    this.to(socket, { ...answer, upTo: this.seq });
  }

  private apply(c: CommandUnion): PartUnion[] {
    const revision = this.seq + 1;
    const item = (state: ItemPart['state'], more: Partial<ItemPart> = {}): PartUnion[] => {
      const ref = (c as unknown as { item: string }).item;
      return [{ ...this.item(ref), state, since: this.now, revision, ...more }];
    };
    switch (c.type) {
      case 'arrive':
      case 'join': {
        const person = this.parts.get(`person/${c.person}`) as PersonPart;
        return [
          {
            ...person,
            arrivedAt: person.arrivedAt ?? this.now,
            ...(c.room ? { room: c.room } : {}),
            revision,
          },
        ];
      }
      case 'begin':
        return item('in-hand', { stillGoing: false });
      case 'good': {
        const asks = this.item(c.item).asks;
        const by = c.evidence;
        const bad =
          (by.kind === 'number' &&
            ((asks.low !== undefined && by.value < asks.low) ||
              (asks.high !== undefined && by.value > asks.high))) ||
          (by.kind === 'choice' && by.word.startsWith('!'));
        return item(bad ? 'fault' : 'good', { evidence: by, ...(bad ? { what: 'reading' } : {}) });
      }
      case 'sweep':
        return [...this.parts.values()]
          .filter(
            (p): p is ItemPart =>
              p.part === 'item' &&
              p.room === c.room &&
              p.section === c.section &&
              p.state !== 'good' &&
              !c.except?.includes(p.item),
          )
          .map((p) => ({
            ...p,
            state: 'good',
            since: this.now,
            revision,
            evidence: { kind: 'swept' },
          }));
      case 'fault':
        return item('fault', { what: c.what ?? 'fault' });
      case 'mend':
      case 'reopen':
        return item('open');
      case 'leave-out':
        return item('left-out', { what: c.reason ?? '' });
      case 'expect-item':
        return item(this.item(c.item).state, { expectedAt: c.at });
      case 'reach': {
        const plan = this.parts.get(`case/${c.caseId}`) as CasePart;
        return [{ ...plan, steps: [...plan.steps, { step: c.step, at: this.now }], revision }];
      }
      case 'report-ready': {
        const room = this.parts.get(`room/${c.room}`) as RoomPart;
        return [{ ...room, readyAt: this.now, readyBy: 'anaesthetist', readyOpen: 0, revision }];
      }
      default:
        return [];
    }
  }

  private all(message: ServerMessageUnion): void {
    for (const socket of this.sockets) {
      this.to(socket, message);
    }
  }

  private to(socket: WebSocketRoute, message: ServerMessageUnion): void {
    socket.send(Buffer.from(JSON.stringify(message)));
  }
}
