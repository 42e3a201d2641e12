import type { Found, Kept, Picture, Shelf } from './shelf.ts';

const NAME = 'sunup.shelf';
const VERSION = 1;
const TOUCHES = 'touches';
const PICTURES = 'pictures';

/** A touch that is not on the disk by then is told as not kept; it is sent all the same. */
const PUT_MS = 2_000;

/**
 * The browser's own database, under the screen's name. A touch is written with strict durability:
 * it is on the disk before it counts as kept. One record a touch, so that two windows on one screen
 * do not overwrite each other.
 */
export class DbShelf implements Shelf {
  private readonly screen: string;
  private readonly database: Promise<IDBDatabase>;

  constructor(screen: string) {
    this.screen = screen;
    this.database = opened();
    // Told by each call that needs it; nobody may be listening yet.
    this.database.catch(() => undefined);
  }

  async open(): Promise<Found> {
    const database = await this.database;
    const reading = database.transaction([TOUCHES, PICTURES]);
    const [touches, picture] = await Promise.all([
      answer<Kept[]>(reading.objectStore(TOUCHES).getAll(this.mine())),
      answer<Picture | undefined>(reading.objectStore(PICTURES).get(this.screen)),
    ]);
    return { touches: touches.sort((a, b) => (a.id < b.id ? -1 : 1)), picture };
  }

  async put(kept: Kept): Promise<void> {
    const writing = this.write(TOUCHES, 'strict', (store) =>
      store.put(kept, [this.screen, kept.id]),
    );
    await Promise.race([writing, tooLong()]);
  }

  remove(id: string): void {
    // If it stays, it is sent once more under the same id after a reload: the answer is the same.
    this.write(TOUCHES, 'relaxed', (store) => store.delete([this.screen, id])).catch(
      () => undefined,
    );
  }

  show(picture: Picture): void {
    // Without it a page that is opened while the board is away shows nothing, and says so.
    this.write(PICTURES, 'relaxed', (store) => store.put(picture, this.screen)).catch(
      () => undefined,
    );
  }

  private mine(): IDBKeyRange {
    return IDBKeyRange.bound([this.screen], [this.screen, []]);
  }

  private async write(
    name: string,
    durability: IDBTransactionDurability,
    what: (store: IDBObjectStore) => void,
  ): Promise<void> {
    const database = await this.database;
    return new Promise((resolve, reject) => {
      const writing = database.transaction(name, 'readwrite', { durability });
      writing.oncomplete = () => resolve();
      writing.onabort = () => reject(writing.error ?? new Error('not kept'));
      what(writing.objectStore(name));
    });
  }
}

function opened(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(NAME, VERSION);
    opening.onupgradeneeded = () => {
      opening.result.createObjectStore(TOUCHES);
      opening.result.createObjectStore(PICTURES);
    };
    opening.onsuccess = () => {
      // A later build in another window may change the stores: it must not wait for this one.
      opening.result.onversionchange = () => opening.result.close();
      resolve(opening.result);
    };
    opening.onerror = () => reject(opening.error ?? new Error('not opened'));
    opening.onblocked = () => reject(new Error('held by an older window'));
  });
}

function answer<T>(request: IDBRequest): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result as T);
    request.onerror = () => reject(request.error ?? new Error('not read'));
  });
}

function tooLong(): Promise<never> {
  return new Promise((_, reject) => {
    setTimeout(() => reject(new Error('not kept in time')), PUT_MS);
  });
}
