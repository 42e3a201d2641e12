import { style } from './style.ts';
import { BOTH, type BothKey, PAIRS } from './tables.ts';

/** Words on the screen by key. A page has its own table beside the common one. */
export type Words<K extends string> = Readonly<Record<K, string>>;
export type Fill = Readonly<Record<string, string | number>>;

/** Makes the function that says a key of `table`, filling `{name}` from `fill`. */
export function speaker<K extends string>(table: Words<K>): (key: K, fill?: Fill) => string {
  return (key, fill = {}) => filled(table[key], fill);
}

/** Says a text that differs between the two. */
export function both(key: BothKey): string {
  return BOTH[key][style().english];
}

/** As a heading or on a button. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

export function filled(text: string, fill: Fill): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => String(fill[name] ?? whole));
}

const AMERICAN = new Map(PAIRS);
// A key of an item (`machine.vaporisers`) is a name that has to be found again: it stays.
const BRITISH = new RegExp(`(?<!\\w\\.)\\b(?:${[...AMERICAN.keys()].join('|')})\\b`, 'gi');

/** A text of the server in the site's words, with capitals where it had them. */
export function worded(text: string): string {
  if (style().english === 'british') return text;
  return text.replace(BRITISH, (word) => {
    const american = AMERICAN.get(word.toLowerCase())!;
    if (word === word.toUpperCase()) return american.toUpperCase();
    const first = word.charAt(0);
    return first === first.toUpperCase() ? capital(american) : american;
  });
}
