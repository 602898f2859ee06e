// Keeps the site on this device. Every version has its own store; the one named
// `current` is served until a person takes the newer one, even when the page has
// been closed and opened in between, so a job begun with one version ends with it.
// The build puts VERSION (a hash of the files) and FILES above this line.
/* global VERSION, FILES */

const PREFIX = 'handturn-';
const NEWEST = PREFIX + VERSION;
const POINTER = 'handturn:current';

const current = async () => (await (await (await caches.open(POINTER)).match('current'))?.text()) ?? null;
const point = async (name) => (await caches.open(POINTER)).put('current', new Response(name));
const tell = async (text) => {
  for (const page of await self.clients.matchAll()) page.postMessage(text);
};

self.addEventListener('install', (event) => event.waitUntil((async () => {
  const store = await caches.open(NEWEST);
  await store.addAll(FILES.map((file) => new Request(file, { cache: 'reload' })));
  await self.skipWaiting(); // changes who serves, never what is served
})()));

self.addEventListener('activate', (event) => event.waitUntil((async () => {
  let used = await current();
  if (!used || !(await caches.has(used))) await point(used = NEWEST);
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX) && name !== used && name !== NEWEST) await caches.delete(name);
  }
  await self.clients.claim();
  if (used !== NEWEST) await tell('newer');
})()));

self.addEventListener('message', (event) => event.waitUntil((async () => {
  const used = await current();
  if (event.data === 'any newer?' && used !== NEWEST) event.source.postMessage('newer');
  if (event.data === 'take') {
    await point(NEWEST);
    if (used !== NEWEST) await caches.delete(used);
    event.source.postMessage('taken'); // other pages stay as they are until they are opened again
  }
})()));

self.addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  event.respondWith((async () => {
    const store = await caches.open((await current()) ?? NEWEST);
    const page = event.request.mode === 'navigate' ? './' : event.request;
    return (await store.match(page, { ignoreSearch: true })) ?? fetch(event.request);
  })());
});
