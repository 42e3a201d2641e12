import type { Found, Kept, Picture, Shelf } from '../shelf.ts';

/** A shelf in memory; `broken` makes it keep nothing, `slow` keeps only when a test says so. */
export class FakeShelf implements Shelf {
  readonly kept = new Map<string, Kept>();
  picture: Picture | undefined;
  broken = false;
  slow = false;
  private waiting: (() => void)[] = [];

  async open(): Promise<Found> {
    if (this.broken) throw new Error('nothing is kept here');
    const touches = [...this.kept.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
    return { touches, picture: this.picture };
  }

  async put(kept: Kept): Promise<void> {
    if (this.broken) throw new Error('nothing is kept here');
    if (this.slow) await new Promise<void>((resolve) => this.waiting.push(resolve));
    this.kept.set(kept.id, kept);
  }

  remove(id: string): void {
    this.kept.delete(id);
  }

  show(picture: Picture): void {
    this.picture = picture;
  }

  /** What was put is on the disk now. */
  sync(): void {
    for (const go of this.waiting.splice(0)) go();
  }
}
