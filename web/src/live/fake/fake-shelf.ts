import type { Kept, Shelf } from '../shelf.ts';

/** A shelf in memory; `broken` makes it keep nothing. */
export class FakeShelf implements Shelf {
  readonly kept = new Map<string, Kept>();
  broken = false;

  load(): Kept[] {
    return [...this.kept.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  }

  put(kept: Kept): boolean {
    if (this.broken) return false;
    this.kept.set(kept.id, kept);
    return true;
  }

  remove(id: string): void {
    this.kept.delete(id);
  }
}
