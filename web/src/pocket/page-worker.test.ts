import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const SOURCE = readFileSync(join(import.meta.dirname, '../../public/page-worker.js'), 'utf8');

interface Page {
  url: string;
  visibilityState: string;
  focus(): Promise<void>;
}

/** The worker of the phone page with the browser around it made up: what it heard, what it did. */
function worker(pages: readonly Omit<Page, 'focus'>[]) {
  const done: string[] = [];
  const handlers = new Map<string, (event: object) => void>();
  const make = new Function(
    ...['addEventListener', 'registration', 'clients', 'location', 'skipWaiting', 'caches'],
    SOURCE,
  ) as (...around: unknown[]) => void;
  make(
    (name: string, handler: (event: object) => void) => handlers.set(name, handler),
    {
      scope: 'https://board.example/pocket',
      showNotification: async (title: string, { body }: { body: string }) =>
        void done.push(`shown ${title}: ${body}`),
    },
    {
      matchAll: async () =>
        pages.map((page) => ({ ...page, focus: async () => done.push(`front ${page.url}`) })),
      openWindow: async (path: string) => done.push(`opened ${path}`),
    },
    { origin: 'https://board.example' },
    () => undefined,
    {},
  );
  const fire = async (name: string, event: object): Promise<void> => {
    let until: Promise<unknown> | undefined;
    handlers.get(name)!({ ...event, waitUntil: (what: Promise<unknown>) => (until = what) });
    await until;
  };
  return {
    done,
    touch: () =>
      fire('notificationclick', { notification: { close: () => done.push('notice closed') } }),
    push: (words: string) => fire('push', { data: { text: () => words } }),
  };
}

const WALL = { url: 'https://board.example/wall', visibilityState: 'visible' };
const PHONE = { url: 'https://board.example/pocket?suite=west', visibilityState: 'hidden' };

describe('a touched notice', () => {
  it('should go and bring the phone page that is open to the front, and no other page', async () => {
    const phone = worker([WALL, PHONE]);
    await phone.touch();
    expect(phone.done).toEqual(['notice closed', `front ${PHONE.url}`]);
  });

  it('should open the phone page where none is open', async () => {
    const phone = worker([WALL]);
    await phone.touch();
    expect(phone.done).toEqual(['notice closed', 'opened /pocket']);
  });
});

describe('what is pushed', () => {
  it('should be shown unless somebody looks at the phone page', async () => {
    const locked = worker([WALL, PHONE]);
    await locked.push('something is asked of you');
    expect(locked.done).toEqual(['shown Sunup: something is asked of you']);
    const looking = worker([{ ...PHONE, visibilityState: 'visible' }]);
    await looking.push('something is asked of you');
    expect(looking.done).toEqual([]);
  });
});
