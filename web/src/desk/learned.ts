import { html, nothing, type TemplateResult } from 'lit';
import type { LearnedHow, LearnedPart, LearnedTime } from '../generated/wire.ts';
import type { Desk } from './main.ts';

const minutes = (value: number): string => String(Math.round(value * 10) / 10);

/** Frames of an owner of an earlier version, beside this one's pages, say nothing of it. */
const reporting = (part: LearnedPart): LearnedHow[] => part.how ?? [];

/** "14 durations of this morning learned from 12 closed mornings up to 2026-11-24; ...". */
export function learnedWords(part: LearnedPart): string {
  const n = part.times.length;
  const told = reporting(part).length === 0 ? '' : ' and how people report';
  const what = n === 1 ? '1 duration' : `${n} durations`;
  const of = part.mornings === 1 ? 'the closed morning' : `${part.mornings} closed mornings up to`;
  return `${what} of this morning${told} learned from ${of} ${part.upTo}; all others are the sheets'`;
}

const line = (time: LearnedTime): TemplateResult =>
  html`<div class="line">
    <span class="grow"
      >${time.item}<small
        >usually ${minutes(time.usual)} min, one in ten over ${minutes(time.oneInTen)}; the sheet
        says ${minutes(time.sheetUsual)} and ${minutes(time.sheetOneInTen)}; ${time.measured}
        measured</small
      ></span
    >
  </div>`;

const how = (one: LearnedHow): TemplateResult =>
  html`<div class="line">
    <span class="grow"
      >${one.what}<small>${one.now}; first settings: ${one.first}; ${one.why}</small></span
    >
  </div>`;

/** Which durations the forecasts of this morning go by, if not by the sheets, and how people report. */
export function learnedPanel(at: Desk): TemplateResult | typeof nothing {
  const part = at.list('learned')[0];
  if (part === undefined) return nothing;
  const told = reporting(part);
  if (part.times.length + told.length === 0) return nothing;
  return html`<details class="card">
    <summary>${learnedWords(part)}</summary>
    ${part.times.map(line)} ${told.map(how)}
  </details>`;
}
