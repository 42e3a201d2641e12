import { html, type TemplateResult } from 'lit';
import type { Choices } from './api.ts';
import { type Asked, yearBefore } from './model.ts';

const DAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

export type Choose = (change: Partial<Asked>) => void;

export const SPLITS: readonly [string, string][] = [
  ['room', 'each room with the others'],
  ['service', 'each service with the others'],
  ['weekday', 'each weekday with the others'],
  ['technique', 'each technique with the others'],
  ['change', 'after the marked change with before'],
  ['periods', 'one period with another'],
];

export const GROUPINGS: readonly [string, string][] = [
  ['section', 'by section of the sheet'],
  ['kind', 'by kind of waiting'],
  ['item', 'by item'],
  ['reported', 'as reported'],
];

export const EACH: readonly [string, string][] = [
  ['room', 'each room'],
  ['service', 'each service'],
];

export const BEFORE: readonly [string, string][] = ['60', '40', '20', '10'].map((m) => [
  m,
  `${m} minutes before`,
]);

export function choice(
  label: string,
  key: keyof Asked,
  asked: Asked,
  options: readonly (readonly [string, string])[],
  choose: Choose,
): TemplateResult {
  return html`<label>
    ${label}
    <select
      name=${key}
      aria-label=${label}
      @change=${(event: Event): void =>
        choose({ [key]: (event.currentTarget as HTMLSelectElement).value })}
    >
      ${options.map(
        ([value, words]) =>
          html`<option value=${value} ?selected=${value === asked[key]}>${words}</option>`,
      )}
    </select>
  </label>`;
}

function date(label: string, key: keyof Asked, asked: Asked, choose: Choose): TemplateResult {
  return html`<label>
    ${label}
    <input
      type="date"
      name=${key}
      .value=${asked[key]}
      @change=${(event: Event): void =>
        choose({ [key]: (event.currentTarget as HTMLInputElement).value })}
    />
  </label>`;
}

const all = (what: string, values: readonly string[]): (readonly [string, string])[] => [
  ['', `all ${what}`],
  ...values.map((v) => [v, v === 'none' ? 'none named' : v] as const),
];

/** What is looked at; every choice is taken at once and stands in the page's address. */
export function filterBar(
  asked: Asked,
  choices: Choices,
  choose: Choose,
  printed: (appendix: boolean) => void,
): TemplateResult {
  return html`<form class="filters" aria-label="What is looked at" @submit=${stay}>
    ${date('from', 'from', asked, choose)} ${date('to', 'to', asked, choose)}
    ${choice('room', 'room', asked, all('rooms', choices.rooms), choose)}
    ${choice('service', 'service', asked, all('services', choices.services), choose)}
    ${choice('technique', 'technique', asked, all('techniques', choices.techniques), choose)}
    ${choice('weekday', 'weekday', asked, all('days', DAYS), choose)}
    ${choice(
      'a point is',
      'period',
      asked,
      [
        ['morning', 'a morning'],
        ['week', 'a week'],
        ['four-weeks', 'four weeks'],
        ['month', 'a month'],
      ],
      choose,
    )}
    ${choice(
      'on time is',
      'grace',
      asked,
      [
        ['', 'as set that morning'],
        ['0', 'to the minute'],
        ['5', 'within 5 minutes'],
        ['10', 'within 10 minutes'],
        ['15', 'within 15 minutes'],
      ],
      choose,
    )}
    ${date('marked change', 'change', asked, choose)}
    <button type="button" @click=${(): void => printed(false)}>Print two pages</button>
    <button type="button" @click=${(): void => printed(true)}>Print with appendix</button>
  </form>`;
}

/** Two periods with dates of their own. */
export function periodsForm(asked: Asked, choose: Choose): TemplateResult {
  const back = (): void =>
    choose({
      'second-from': yearBefore(asked['first-from']),
      'second-to': yearBefore(asked['first-to']),
    });
  return html`<form class="filters" aria-label="Two periods" @submit=${stay}>
      ${date('one period, from', 'first-from', asked, choose)}
      ${date('one period, to', 'first-to', asked, choose)}
      ${date('less the other, from', 'second-from', asked, choose)}
      ${date('less the other, to', 'second-to', asked, choose)}
      <button
        type="button"
        ?disabled=${asked['first-from'] === '' || asked['first-to'] === ''}
        @click=${back}
      >
        The other: a year before
      </button>
    </form>
    <p class="key">
      These dates stand in the place of <i>from</i> and <i>to</i> at the top; room, service,
      technique and weekday hold for both periods.
    </p>`;
}

/** The site's own price of a late minute; kept on this screen only. */
export interface Price {
  price: string;
  currency: string;
  source: string;
}

const KEPT = 'sunup-review-price';

export function keptPrice(): Price {
  const none = { price: '', currency: '', source: '' };
  try {
    return { ...none, ...(JSON.parse(localStorage.getItem(KEPT) ?? '{}') as Partial<Price>) };
  } catch {
    return none;
  }
}

/** Whole, so that it may be asked with. */
export const isPrice = (p: Price): boolean =>
  /^\d+(\.\d+)?$/.test(p.price) && p.currency.trim() !== '' && p.source.trim() !== '';

export function priceForm(price: Price, then: (price: Price) => void): TemplateResult {
  const field = (label: string, key: keyof Price): TemplateResult =>
    html`<label>
      ${label}
      <input
        name=${key}
        .value=${price[key]}
        @change=${(event: Event): void => {
          const next = { ...price, [key]: (event.currentTarget as HTMLInputElement).value.trim() };
          localStorage.setItem(KEPT, JSON.stringify(next));
          then(next);
        }}
      />
    </label>`;
  return html`<details class="noprint">
    <summary>What the minutes cost, at the site's own price</summary>
    <form class="filters" aria-label="The site's own price" @submit=${stay}>
      ${field('price of a minute, as 12.50', 'price')} ${field('currency, as EUR', 'currency')}
      ${field('who found it, when, what it holds', 'source')}
    </form>
  </details>`;
}

/** A form whose choices are taken at once has nothing to send. */
export const stay = (event: Event): void => event.preventDefault();
