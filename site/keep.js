// The service worker of an installed page: it keeps the page and what belongs
// to it, and answers from what it keeps, so that there need be no network. A
// new version is fetched beside the old one and waits until the person takes
// it. cmd/page/offline writes the two lines below.

const VERSION = '';
const FILES = [''];

const PREFIX = 'marinecalc-';
const NAME = PREFIX + VERSION;
const worker = /** @type {any} */ (self);

worker.addEventListener('install', (/** @type {any} */ event) => {
  const fresh = FILES.map((file) => new Request(file, { cache: 'reload' }));
  event.waitUntil(caches.open(NAME).then((kept) => kept.addAll(fresh)));
});

worker.addEventListener('activate', (/** @type {any} */ event) => {
  const old = caches.keys().then((names) => Promise.all(names.filter((n) => n.startsWith(PREFIX) && n !== NAME).map((n) => caches.delete(n))));
  event.waitUntil(old.then(() => worker.clients.claim()));
});

worker.addEventListener('fetch', (/** @type {any} */ event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const wanted = request.mode === 'navigate' ? './' : request;
  event.respondWith(caches.open(NAME).then((kept) => kept.match(wanted, { ignoreSearch: true })).then((found) => found ?? fetch(request)));
});

worker.addEventListener('message', (/** @type {any} */ { data }) => data === 'take over' && worker.skipWaiting());
