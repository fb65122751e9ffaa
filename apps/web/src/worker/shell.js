// @ts-check
/// <reference lib="webworker" />
// The worker that opens the app without a network. The build writes SHELL = { version, files } in front of it.
// What the page asks the office for never passes through here: the page itself keeps the last answers.
const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const name = `yardfall-shell-${SHELL.version}`;

worker.addEventListener('install', (event) => {
  // All of it or none: a half shell would open a page that breaks in the yard.
  event.waitUntil(caches.open(name).then((cache) => cache.addAll(SHELL.files.map((file) => new Request(file, { cache: 'reload' })))));
});

worker.addEventListener('activate', (event) => {
  // The version before stays: a page of it may be open, and asks for its parts as they are needed. Names come in the order of their making.
  const old = caches.keys().then((names) => Promise.all(names.filter((one) => one.startsWith('yardfall-shell-') && one !== name).slice(0, -1).map((one) => caches.delete(one))));
  event.waitUntil(old.then(() => worker.clients.claim()));
});

// A new version waits until a page says that nothing is left to be sent by the old one.
worker.addEventListener('message', ({ data }) => {
  if (data === 'takeOver') void worker.skipWaiting();
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== worker.location.origin || /^\/(api|health|ready)(\/|$)/.test(url.pathname)) return;
  event.respondWith(request.mode === 'navigate' ? fromShell('/') : fromShell(url.pathname));

  /** @param {string} file */
  async function fromShell(file) {
    const cache = await caches.open(name);
    return (await cache.match(file)) ?? (await caches.match(file)) ?? fetch(request);
  }
});
