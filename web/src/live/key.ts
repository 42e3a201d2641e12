/**
 * The key of this browser as a screen: made here, kept in IndexedDB, and such that no script can
 * read its private half. A browser's profile is one screen, however many windows it has.
 */

/** What is signed to show who the screen is, and with a new key; as `KeyProof` on the server says. */
export type Purpose = 'sunup prove' | 'sunup new-key';

export interface Signed {
  readonly key: string;
  readonly signature: string;
}

export interface ScreenKey {
  /** Signs with the key in use. */
  prove(nonce: string): Promise<Signed>;
  /** Signs with a key made now, if it is time for one; else nothing. */
  next(nonce: string): Promise<Signed | undefined>;
  /** The board knows the next key: it is used from the next connect on. */
  turn(): Promise<void>;
  /** The board knew this screen: a key from before is not needed any more. */
  known(): Promise<void>;
  /**
   * The board did not know this screen.
   *
   * @returns true if there is a key from before to try again with
   */
  unknown(): Promise<boolean>;
}

/** This page can't keep a key: it did not come over https, nor from this machine. */
export class NoKeys extends Error {}

/** How long a key is used before the screen makes another. */
export const KEY_MS = 30 * 24 * 3_600_000;

const ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256' } as const;
const STORE = 'keys';
const KEPT = 'screen';

interface Kept {
  readonly pair: CryptoKeyPair;
  readonly madeAt: number;
  /** The one before, until the board has known this one. */
  readonly before?: CryptoKeyPair;
}

/** The key in this browser's IndexedDB. */
export class BrowserKey implements ScreenKey {
  private upcoming: CryptoKeyPair | undefined;

  async prove(nonce: string): Promise<Signed> {
    return sign((await this.kept()).pair, 'sunup prove', nonce);
  }

  async next(nonce: string): Promise<Signed | undefined> {
    if (Date.now() - (await this.kept()).madeAt < KEY_MS) return undefined;
    this.upcoming = await make();
    return sign(this.upcoming, 'sunup new-key', nonce);
  }

  async turn(): Promise<void> {
    if (!this.upcoming) return;
    const { pair } = await this.kept();
    await put({ pair: this.upcoming, madeAt: Date.now(), before: pair });
    this.upcoming = undefined;
  }

  async known(): Promise<void> {
    const { pair, madeAt, before } = await this.kept();
    if (before) await put({ pair, madeAt });
  }

  async unknown(): Promise<boolean> {
    const { before } = await this.kept();
    // Due at once: the board is to know a newer one soon.
    if (before) await put({ pair: before, madeAt: 0 });
    return before !== undefined;
  }

  private async kept(): Promise<Kept> {
    // Without a secure context a browser has neither.
    if (!globalThis.crypto?.subtle || !globalThis.indexedDB) throw new NoKeys();
    const found = await get();
    if (found) return found;
    const made = { pair: await make(), madeAt: Date.now() };
    return add(made);
  }
}

async function make(): Promise<CryptoKeyPair> {
  return crypto.subtle.generateKey(ALGORITHM, false, ['sign', 'verify']);
}

async function sign(pair: CryptoKeyPair, purpose: Purpose, nonce: string): Promise<Signed> {
  const words = new TextEncoder().encode(`${purpose}\n${location.origin}\n${nonce}`);
  const [key, signature] = await Promise.all([
    crypto.subtle.exportKey('spki', pair.publicKey),
    crypto.subtle.sign({ name: 'ECDSA', hash: 'SHA-256' }, pair.privateKey, words),
  ]);
  return { key: text(key), signature: text(signature) };
}

/** Base64url without padding. */
function text(bytes: ArrayBuffer): string {
  return btoa(String.fromCharCode(...new Uint8Array(bytes)))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replace(/=+$/, '');
}

async function open(): Promise<IDBDatabase> {
  const asked = indexedDB.open('sunup', 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore(STORE);
  return done(asked);
}

async function within<T>(
  mode: IDBTransactionMode,
  ask: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const db = await open();
  try {
    return await done(ask(db.transaction(STORE, mode).objectStore(STORE)));
  } finally {
    db.close();
  }
}

async function get(): Promise<Kept | undefined> {
  return within('readonly', (store) => store.get(KEPT) as IDBRequest<Kept | undefined>);
}

async function put(kept: Kept): Promise<void> {
  await within('readwrite', (store) => store.put(kept, KEPT));
}

/** Keeps it unless another window was first; then that one's is it. */
async function add(kept: Kept): Promise<Kept> {
  try {
    await within('readwrite', (store) => store.add(kept, KEPT));
    return kept;
  } catch {
    return (await get()) ?? kept;
  }
}

async function done<T>(asked: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error ?? new Error('the browser keeps nothing'));
  });
}
