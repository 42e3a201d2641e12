import { html, type TemplateResult } from 'lit';

/** Keys of a number, for gloved fingers; `back` takes the last one away. */
export const PAD_KEYS: readonly string[] = [
  '7',
  '8',
  '9',
  '4',
  '5',
  '6',
  '1',
  '2',
  '3',
  '.',
  '0',
  'back',
];

/**
 * Keys to touch.
 *
 * @param options `keys` other than those of a number; `off` cannot be touched now; `first` is where
 *   a sheet that opens puts the focus
 */
export function padKeys(
  press: (key: string) => void,
  options: { keys?: readonly string[]; off?: string; first?: string } = {},
): TemplateResult {
  return html`<div class="keys">
    ${(options.keys ?? PAD_KEYS).map(
      (key) =>
        html`<button
          ?data-first=${key === options.first}
          ?disabled=${key === options.off}
          aria-label=${key === 'back' ? 'delete' : key === '.' ? 'point' : key}
          @click=${() => press(key)}
        >
          ${key === 'back' ? '⌫' : key}
        </button>`,
    )}
  </div>`;
}

/** The key of a pad that was pressed on a keyboard, if it is one. */
export function typedKey(e: KeyboardEvent): string | undefined {
  const key = e.key === 'Backspace' ? 'back' : e.key === ',' ? '.' : e.key;
  return PAD_KEYS.includes(key) ? key : undefined;
}
