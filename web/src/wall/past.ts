import type { NeedPart, PartUnion, RoomPart, SuitePart } from '../generated/wire.ts';

/** What changed in one minute of a past morning; the rest stands. */
export interface PastFrame {
  readonly at: number;
  readonly suite?: SuitePart;
  readonly rooms: readonly RoomPart[];
  readonly needs?: readonly NeedPart[];
}

/** A closed morning minute by minute; the record of `/api/review/past`. */
export interface PastMorning {
  readonly date: string;
  readonly zone: string;
  readonly from: number;
  readonly to: number;
  readonly kept: number;
  readonly recomputed: number;
  readonly frames: readonly PastFrame[];
}

type Listed<K extends PartUnion['part']> = Extract<PartUnion, { part: K }>;

/**
 * A past morning in the place of a live one: the wall draws it as it stood at one minute. It never
 * beats, so that nothing can prove it live.
 */
export class Past extends EventTarget {
  readonly past = true;
  readonly state = { stale: false };
  readonly rate = 1;
  readonly lastLiveAt = null;
  readonly morning: PastMorning;
  private time: number;
  /** The first frame that has not come yet. */
  private next = 0;
  private readonly byKey = new Map<string, RoomPart>();
  private suite: readonly SuitePart[] = [];
  private rooms: readonly RoomPart[] = [];
  private needs: readonly NeedPart[] = [];

  constructor(morning: PastMorning) {
    super();
    this.morning = morning;
    this.time = morning.from;
    this.build();
  }

  now(): number {
    return this.time;
  }

  /** Shows another moment, within the morning. */
  goTo(time: number): void {
    const { from, to } = this.morning;
    this.time = Math.max(from, Math.min(to, time));
    this.build();
    this.dispatchEvent(new Event('change'));
  }

  list<K extends PartUnion['part']>(kind: K): readonly Listed<K>[] {
    const lists: Partial<Record<PartUnion['part'], readonly PartUnion[]>> = {
      suite: this.suite,
      room: this.rooms,
      need: this.needs,
    };
    return (lists[kind] ?? []) as readonly Listed<K>[];
  }

  /** The picture of this minute: all that changed up to it, from where it stands if that was before. */
  private build(): void {
    const { frames } = this.morning;
    const back = this.next > 0 && frames[this.next - 1]!.at > this.time;
    if (back) {
      this.next = 0;
      this.byKey.clear();
      this.suite = [];
      this.needs = [];
    }
    let moved = back;
    for (; this.next < frames.length && frames[this.next]!.at <= this.time; this.next++) {
      const frame = frames[this.next]!;
      if (frame.suite !== undefined) this.suite = [frame.suite];
      if (frame.needs !== undefined) this.needs = frame.needs;
      for (const room of frame.rooms) this.byKey.set(room.key, room);
      moved ||= frame.rooms.length > 0;
    }
    // The same array as long as no room changes: the wall lays nothing out anew then.
    if (moved) this.rooms = [...this.byKey.values()];
  }
}
