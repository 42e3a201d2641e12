import type { EvidenceUnion, PersonPart, Section } from '../generated/wire.ts';

/** A question for one answer after another; what is skipped becomes an exception of the sweep. */
export interface Asking {
  kind: 'ask';
  queue: string[];
  /** The section to be called gone through after the last answer. */
  then: Section | undefined;
  /** The later case whose section it is. */
  next: string | undefined;
  except: Set<string>;
  typed: string;
  wrong: string;
  /** What was given and waits for a second person. */
  given: EvidenceUnion | undefined;
}

/** What the right-hand side is used for. */
export type Side =
  | { kind: 'waits' }
  | { kind: 'who' }
  | { kind: 'help' }
  | { kind: 'next-case' }
  | { kind: 'next-list' }
  | { kind: 'item'; item: string }
  | { kind: 'paper'; typed: string; wrong: string }
  | HandingOver
  | Asking;

/** Both sign: who goes and who comes, and what the one who comes wants to see again. */
export interface HandingOver {
  kind: 'hand-over';
  from: PersonPart;
  to: PersonPart;
  again: Set<Section>;
  gives: boolean;
}

/** The section that is open, and what is not done in it while exceptions are being named. */
export interface OpenSection {
  section: Section;
  except: Set<string> | undefined;
  /** The first line that is shown, where not all of them fit. */
  from?: number;
}

/** The room of a station's address: `/station/7`. */
export function roomOf(path: string): string {
  return decodeURIComponent(/\/station\/([^/]+)/.exec(path)?.[1] ?? '');
}
