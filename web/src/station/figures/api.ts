import { ask } from '../../live/index.ts';
import { toldIn } from '../../words/index.ts';

/** What the board says of bedside figures, as `BedsideApi` writes it. */

export interface Input {
  name: string;
  label: string;
  kind: 'number' | 'choice';
  units: string[];
  choices: string[];
  needed: boolean;
  ofPatient: boolean;
}

export interface Card {
  name: string;
  title: string;
  formula: string;
  source: string;
  range: string;
  caution: string;
  dose: boolean;
  inputs: Input[];
}

export interface Listed {
  card: Card;
  /** Of the figure as it stands; another one is another figure. */
  fingerprint: string;
  released?: { by: string; on: string };
  /** Why it is off; absent if it is released. */
  off?: string;
}

export interface Entry {
  text: string;
  unit?: string;
  again?: string;
}

export interface Reason {
  input: string;
  message: string;
}

export type Line =
  | { line: 'plain'; label: string; text: string }
  | { line: 'sizes'; label: string; smaller?: string; size: string; larger?: string }
  | { line: 'dose'; label: string; mg: string; ml: string; concentration: string };

export interface Worked {
  answer: 'worked';
  lines: Line[];
  given: string[];
  worked: string;
  cautions: string[];
  secondPerson: boolean;
}

export type Answer =
  | Worked
  | { answer: 'off'; why: string }
  | { answer: 'refused'; reasons: Reason[] }
  | { answer: 'asked-again'; reasons: Reason[] };

export interface CaseAnswer {
  figure: string;
  caseId: string;
  revision: number;
  answer: Answer;
}

export interface Question {
  figure: string;
  room: string;
  caseId: string;
  revision: number;
  patient: Record<string, Entry>;
  own: Record<string, Entry>;
}

/** A figure is wanted now or not at all. */
const WAIT_MS = 8_000;

/** What of it is sentences: names, choices, units and sources stay as they are. */
const SENTENCES: ReadonlySet<string> = new Set([
  'title',
  'label',
  'formula',
  'range',
  'caution',
  'off',
  'why',
  'message',
  'text',
  'given',
  'worked',
  'cautions',
]);

const OTHERWISE = 'Figures are worked out there';

/** All figures of the site, those off with the reason. */
export async function figures(): Promise<Listed[]> {
  const signal = AbortSignal.timeout(WAIT_MS);
  const got = await ask<{ figures: Listed[] }>('/api/bedside', { otherwise: OTHERWISE, signal });
  return toldIn(got.figures, SENTENCES);
}

/** One figure worked out for the case in the room. Nothing of it is kept at the board. */
export async function work(question: Question): Promise<CaseAnswer> {
  const answer = await ask<CaseAnswer>('/api/bedside/work', {
    type: 'application/json',
    body: JSON.stringify(question),
    otherwise: OTHERWISE,
    signal: AbortSignal.timeout(WAIT_MS),
  });
  return toldIn(answer, SENTENCES);
}
