import { html, nothing, type TemplateResult } from 'lit';
import { comparePanel } from './belief.ts';
import { causesComparedPanel } from './causes-compared.ts';
import { choice, type Choose, GROUPINGS, periodsForm, stay } from './filters.ts';
import type { Asked } from './model.ts';
import { causeWords } from './parts.ts';
import { type Answers, lacks } from './questions.ts';
import { leftOut } from './summary.ts';

/**
 * Groups or periods beside each other. The form of two periods stays whatever becomes of the
 * question.
 *
 * @param failed why it can't be compared, and what to do
 * @returns nothing while there is no form and no answer yet
 */
export function comparingPart(
  asked: Asked,
  { compared, causesCompared }: Answers,
  failed: string | undefined,
  choose: Choose,
): TemplateResult | undefined {
  const two = asked.split === 'periods';
  const form = two ? periodsForm(asked, choose) : nothing;
  const needed = lacks(asked);
  if (needed !== '')
    return html`${form}
      <p>${needed}</p>`;
  if (failed !== undefined)
    return html`${form}
      <p class="trouble" role="alert">${failed}</p>`;
  if (compared !== undefined) {
    return html`${form} ${comparePanel(compared.comparisons)} ${leftOut(compared.unjudged)}
    ${
      two && causesCompared !== undefined
        ? html`<form class="filters" aria-label="Causes" @submit=${stay}>
              ${choice('causes put together', 'by', asked, GROUPINGS, choose)}
            </form>
            ${causesComparedPanel(causesCompared, causeWords)}`
        : nothing
    }`;
  }
  return two
    ? html`${form}
        <p class="withheld">…</p>`
    : undefined;
}
