import type { CommandUnion, PartUnion } from '../generated/wire.ts';
import { PICTURE_ANEW_MS } from './constants.ts';

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
  /** Where screens are paired: the sign-on that it was touched under. */
  readonly session?: string;
  /** The token of a second signature, where the touch has one. */
  readonly second?: string;
  /** What was said, in words, to show it after a reload; it is not sent. */
  readonly label?: string;
  /** The touch that it was said with, beside other commands; it is not sent. */
  readonly touch?: string;
  /** Keys of what it is about, to show it there after a reload; they are not sent. */
  readonly about?: readonly string[];
  /** Set when it was refused or waits behind a refusal: a person has to look. */
  readonly refusal?: { readonly code: string; readonly words: string };
}

/** What a screen last showed, for a page that is opened while the board is away. */
export interface Picture {
  readonly morning: string;
  readonly parts: readonly PartUnion[];
  /** This screen's own clock when it was kept, epoch milliseconds. */
  readonly keptAt: number;
  /** The morning's clock then, and how many of its seconds go by in a real one. */
  readonly clock: number;
  readonly rate: number;
  /** The morning's time of the last proof of life. */
  readonly lastLiveAt: number;
}

/** What a screen has kept, as it is found when the page is opened. */
export interface Found {
  /** In the order in which they were touched. */
  readonly touches: readonly Kept[];
  readonly picture?: Picture | undefined;
}

/** Where touches and the last picture survive a reload, and a browser that is ended without warning. */
export interface Shelf {
  /** Rejects if this browser keeps nothing. */
  open(): Promise<Found>;
  /** Resolves once it is on the disk. Rejects if it could not be kept. */
  put(kept: Kept): Promise<void>;
  remove(id: string): void;
  /** Keeps this picture instead of the one before. */
  show(picture: Picture): void;
}

/** True if the picture is another than the one kept, or that one's time of proof is getting old. */
export function pictureChanged(
  kept: Picture,
  morning: string,
  parts: readonly PartUnion[],
  date: number,
): boolean {
  return (
    date - kept.keptAt >= PICTURE_ANEW_MS ||
    kept.morning !== morning ||
    kept.parts.length !== parts.length ||
    // A part that changed is another object.
    parts.some((part, i) => part !== kept.parts[i])
  );
}
