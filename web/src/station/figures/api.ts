import { inSuite, suiteIn } from '../../live/index.ts';
import { passHeaders } from '../../live/pass.ts';

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

/** The board's own words, or that it is not there. */
export class NotWorked extends Error {}

const AWAY = 'The board does not answer, and figures are worked out there. Try again.';

/** All figures of the site, those off with the reason. */
export async function figures(): Promise<Listed[]> {
  const got = (await ask('/api/bedside')) as { figures: Listed[] };
  return got.figures;
}

/** One figure worked out for the case in the room. Nothing of it is kept at the board. */
export async function work(question: Question): Promise<CaseAnswer> {
  return (await ask('/api/bedside/work', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(question),
  })) as CaseAnswer;
}

/** A figure is wanted now or not at all. */
const WAIT_MS = 8_000;

async function ask(path: string, init: RequestInit = {}): Promise<unknown> {
  let response: Response;
  let body: { detail?: string; message?: string };
  try {
    response = await fetch(inSuite(path, suiteIn(location.search)), {
      ...init,
      headers: { ...init.headers, ...passHeaders() } as Record<string, string>,
      cache: 'no-store',
      signal: AbortSignal.timeout(WAIT_MS),
    });
    body = (await response.json()) as typeof body;
  } catch {
    throw new NotWorked(AWAY);
  }
  if (!response.ok) {
    throw new NotWorked(body.detail ?? body.message ?? AWAY);
  }
  return body;
}
