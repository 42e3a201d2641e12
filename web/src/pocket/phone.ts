import { inSuite, suiteIn } from '../live/index.ts';

/** What a phone keeps: a name for its own unsent touches, and the page's own files. Nothing else. */

const NAME = 'sunup.pocket/name';

/** This phone's name as a screen: what was touched here and not yet sent belongs to it. */
export function screenName(): string {
  try {
    const known = localStorage.getItem(NAME);
    if (known !== null && /^pocket-[0-9a-f]{12}$/.test(known)) return known;
    const made = `pocket-${hex()}`;
    localStorage.setItem(NAME, made);
    return made;
  } catch {
    return `pocket-${hex()}`;
  }
}

function hex(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(6));
  return [...bytes].map((b) => b.toString(16).padStart(2, '0')).join('');
}

const SUITE = 'sunup.pocket/suite';

/** An installed page begins at its own address: it goes to the suite that it was last opened for. */
export function suiteOfThisPhone(): void {
  try {
    const named = suiteIn(location.search);
    if (named !== undefined) {
      localStorage.setItem(SUITE, named);
    } else if (matchMedia('(display-mode: standalone)').matches) {
      const last = localStorage.getItem(SUITE);
      if (last !== null) location.replace(inSuite('/pocket', last));
    }
  } catch {
    // Nothing is kept here: the first suite, or the one in the address.
  }
}
