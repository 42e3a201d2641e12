import { html, nothing, type TemplateResult } from 'lit';
import { BESIDE, SET_UP } from '../hands/words.ts';
import { type CommonKey, say } from '../look/index.ts';
import { worded } from '../words/index.ts';

/**
 * How a part stands.
 *
 * @param old what it shows is of an earlier choice
 * @param failed why the board can't answer, and what to ask instead
 */
export interface PartState {
  kind: string;
  old: boolean;
  failed?: string | undefined;
}

/** A section of the page; one whose answer has not come yet says so by dots. */
export function part(
  title: string,
  beside: unknown,
  body: TemplateResult | undefined,
  { kind, old, failed }: PartState,
): TemplateResult {
  return html`<section class="${kind} ${old ? 'old' : ''}">
    <div class="with">
      <h2>${title}</h2>
      ${old ? html`<span class="earlier">of the choice before</span>` : nothing} ${beside}
    </div>
    ${
      body ??
      (failed === undefined
        ? html`<p class="withheld">…</p>`
        : html`<p class="trouble" role="alert">${failed}</p>`)
    }
  </section>`;
}

/**
 * Whether the page is still asking, said once when it begins and once when it ends.
 *
 * @param old parts that still show an earlier choice
 * @param trouble the page says elsewhere that not all was answered
 */
export function workingWords(busy: boolean, old: number, trouble: boolean): TemplateResult {
  const words = busy
    ? 'Working: asking the board. Parts marked “of the choice before” are not of this one yet.'
    : trouble || old > 0
      ? 'Not all was answered. Parts marked “of the choice before” are not of this one.'
      : 'All figures are of this choice.';
  return html`<p class="working noprint ${busy ? 'now' : ''}" role="status">${words}</p>`;
}

/** Sections as the pages call them; all else as it stands, without its dashes. */
export function causeWords(label: string): string {
  if (label === 'plan') return 'too little time planned';
  const key = `section.${label}` as CommonKey;
  const words = SECTIONS.has(label) ? say(key) : worded(label);
  return words.replaceAll(/[-_.]/g, ' ');
}

const SECTIONS = new Set<string>([...SET_UP, ...BESIDE]);
