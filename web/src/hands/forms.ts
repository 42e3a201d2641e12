import { html, type TemplateResult } from 'lit';
import { style, timeExample } from '../words/index.ts';
import { timeOn } from './clock.ts';
import type { BoardPage } from './page.ts';

/** The values of a form's named fields, trimmed; absent fields are empty. */
export type Fields = Record<string, string>;

/** Reads a form on submit and hands its fields over; nothing leaves the page by itself. */
export function onSubmit(use: (fields: Fields, form: HTMLFormElement) => void) {
  return (e: SubmitEvent): void => {
    e.preventDefault();
    const form = e.target as HTMLFormElement;
    const fields: Fields = {};
    for (const [name, value] of new FormData(form)) {
      fields[name] = typeof value === 'string' ? value.trim() : '';
    }
    use(fields, form);
  };
}

/**
 * The time of day in a field on the morning's date. If it is none, the field says so and the answer
 * is undefined.
 */
export function timeIn(page: BoardPage, form: HTMLFormElement, name: string): number | undefined {
  const input = form.elements.namedItem(name) as HTMLInputElement;
  const time = timeOn(page.suite?.date ?? '', input.value, page.zone);
  if (time === undefined) {
    input.setCustomValidity(`a time of day, like ${timeExample()}`);
    input.reportValidity();
  }
  return time;
}

/** A field for a time of day. */
export function timeField(name: string, label: string, value = ''): TemplateResult {
  return html`<input
    class="time"
    name=${name}
    inputmode=${style().clock === 24 ? 'numeric' : 'text'}
    autocomplete="off"
    aria-label=${label}
    placeholder=${timeExample()}
    .defaultValue=${value}
    @input=${(e: InputEvent) => (e.target as HTMLInputElement).setCustomValidity('')}
  />`;
}

/** A field for a few words, never a name. */
export function textField(name: string, label: string): TemplateResult {
  return html`<input
    class="text"
    name=${name}
    maxlength="120"
    autocomplete="off"
    aria-label=${label}
    placeholder=${label}
  />`;
}

/** A field for a pseudonym or code, as the board takes them. */
export function codeField(name: string, label: string): TemplateResult {
  return html`<input
    class="text"
    name=${name}
    required
    maxlength="40"
    pattern="[A-Za-z0-9][A-Za-z0-9._\\-]*"
    title="letters, digits, dots or dashes, no spaces; a code, not a name"
    autocomplete="off"
    aria-label=${label}
    placeholder=${label}
  />`;
}
