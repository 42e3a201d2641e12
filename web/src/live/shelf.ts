import type { CommandUnion } from '../generated/wire.ts';

/** A command that is not answered yet. */
export interface Kept {
  readonly id: string;
  /** The morning that was on the screen when it was touched. */
  readonly morning?: string;
  readonly command: CommandUnion;
  readonly seen?: number;
  readonly touchedAt: number;
  readonly offset: number;
  readonly person?: string;
  /** What was said, in words, for a refusal that comes after a reload; it is not sent. */
  readonly label?: string;
  /** The touch that it was said with, beside other commands; it is not sent. */
  readonly touch?: string;
  /** Set when it was refused or waits behind a refusal: a person has to look. */
  readonly refusal?: { readonly code: string; readonly words: string };
}

/** Where kept commands survive a reload. One entry a command, so that two tabs do not overwrite. */
export interface Shelf {
  load(): Kept[];
  /** @returns false if it could not be kept safely */
  put(kept: Kept): boolean;
  remove(id: string): void;
}

/** The browser's local storage, under the screen's name. */
export class LocalShelf implements Shelf {
  private readonly prefix: string;
  private readonly storage: Storage | null;

  constructor(screen: string, storage: Storage | null = safeStorage()) {
    this.prefix = `sunup.outbox/${screen}/`;
    this.storage = storage;
  }

  load(): Kept[] {
    const found: Kept[] = [];
    if (!this.storage) return found;
    for (let i = 0; i < this.storage.length; i++) {
      const key = this.storage.key(i);
      if (!key?.startsWith(this.prefix)) continue;
      const kept = parse(this.storage.getItem(key));
      if (kept) found.push(kept);
    }
    return found.sort((a, b) => (a.id < b.id ? -1 : 1));
  }

  put(kept: Kept): boolean {
    try {
      if (!this.storage) return false;
      this.storage.setItem(this.prefix + kept.id, JSON.stringify(kept));
      return true;
    } catch {
      return false;
    }
  }

  remove(id: string): void {
    try {
      this.storage?.removeItem(this.prefix + id);
    } catch {
      // It will be sent once more after a reload, under the same id: the answer is the same.
    }
  }
}

function safeStorage(): Storage | null {
  try {
    return globalThis.localStorage ?? null;
  } catch {
    return null;
  }
}

function parse(text: string | null): Kept | null {
  try {
    const value: unknown = JSON.parse(text ?? 'null');
    const ok = typeof value === 'object' && value !== null && 'id' in value && 'command' in value;
    return ok ? (value as Kept) : null;
  } catch {
    return null;
  }
}
