/**
 * Keeps the own files of one page (its scope: /pocket, /station, /holding), so that it opens with the
 * network gone; on a locked phone it tells that something is asked. It keeps nothing of the board: the
 * socket does not pass here, and no other request is answered from what is kept.
 */
const PAGE = new URL(registration.scope).pathname;
const FILES = `sunup-files${PAGE}`;

addEventListener('install', (event) => event.waitUntil(begin().then(() => skipWaiting())));
addEventListener('activate', (event) => event.waitUntil(clients.claim()));

addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin) return;
  if (request.mode === 'navigate' && mine(url.pathname)) {
    event.respondWith(page(request));
  } else if (url.pathname.startsWith('/assets/')) {
    event.respondWith(asset(request));
  }
});

/**
 * Something is asked of whoever is signed on here, says the board by way of the browser's maker; of
 * whom and where stands on the page only. Who looks at the page already sees it there.
 */
addEventListener('push', (event) => event.waitUntil(tell(event.data?.text() ?? '')));

addEventListener('notificationclick', (event) => {
  event.notification.close();
  event.waitUntil(look());
});

async function tell(words) {
  if ((await pages()).some((page) => page.visibilityState === 'visible')) return;
  await registration.showNotification('Sunup', { body: words, tag: 'asked', renotify: true });
}

/** The page that is open comes to the front, or else one is opened. */
async function look() {
  const [open] = await pages();
  await (open ? open.focus() : clients.openWindow(PAGE));
}

async function pages() {
  const all = await clients.matchAll({ type: 'window', includeUncontrolled: true });
  return all.filter((page) => mine(new URL(page.url).pathname));
}

/** A station's rooms share one page. */
function mine(path) {
  return path === PAGE || path.startsWith(`${PAGE}/`);
}

/** The first visit was loaded without this worker: its files are fetched for the next one. */
async function begin() {
  const answer = await fetch(PAGE);
  if (answer.ok) await keep(await caches.open(FILES), answer);
}

/** The server's page whenever it answers; a new build drops the files of the old one. */
async function page(request) {
  const files = await caches.open(FILES);
  try {
    const answer = await fetch(request);
    if (answer.ok) await keep(files, answer.clone());
    return answer;
  } catch (gone) {
    const kept = await files.match(PAGE);
    if (kept) return kept;
    throw gone;
  }
}

async function keep(files, answer) {
  const before = await (await files.match(PAGE))?.text();
  const text = await answer.clone().text();
  if (before === text) return;
  await Promise.all((await files.keys()).map((key) => files.delete(key)));
  await files.addAll(new Set(text.match(/\/assets\/[\w.-]+/g) ?? []));
  await files.put(PAGE, answer);
}

/** Their names are of their content: one that is kept can't be old. */
async function asset(request) {
  const files = await caches.open(FILES);
  const kept = await files.match(request);
  if (kept) return kept;
  const answer = await fetch(request);
  if (answer.ok) await files.put(request, answer.clone());
  return answer;
}
