import { html, type TemplateResult } from 'lit';
import { BESIDE, SET_UP } from '../hands/words.ts';
import { type CommonKey, say } from '../look/index.ts';
import { worded } from '../words/index.ts';

/** A section of the page; one whose answer has not come yet says so by dots. */
export function part(
  title: string,
  beside: unknown,
  body: TemplateResult | undefined,
  kind = '',
): TemplateResult {
  return html`<section class=${kind}>
    <div class="with">
      <h2>${title}</h2>
      ${beside}
    </div>
    ${body ?? html`<p class="withheld">…</p>`}
  </section>`;
}

/** Sections as the pages call them; all else as it stands, without its dashes. */
export function causeWords(label: string): string {
  const key = `section.${label}` as CommonKey;
  const words = SECTIONS.has(label) ? say(key) : worded(label);
  return words.replaceAll(/[-_.]/g, ' ');
}

const SECTIONS = new Set<string>([...SET_UP, ...BESIDE]);
