// SPDX-License-Identifier: MIT
// Keeps the whole page on this computer: every built file is stored at the first visit, and from then on the page
// opens without a network. A newer version is stored beside the old one and waits until the page tells it to take
// over. It knows files only; `precache.ts` writes which.

/** Filled in at the build: every file of the page, and a version that changes with any of them. */
declare const builtFiles: { readonly version: string; readonly files: readonly string[] };
export {};
const scope = self as unknown as ServiceWorkerGlobalScope;
const name = `bench-marshal-${builtFiles.version}`;

async function store(): Promise<void> {
  const cache = await caches.open(name);
  await cache.addAll(builtFiles.files.map((file) => new Request(file, { cache: 'no-cache' })));
}
/** Another page that still runs on older files keeps them. */
async function clearOlder(): Promise<void> {
  const pages = await scope.clients.matchAll({ includeUncontrolled: true });
  if (pages.length > 1) return;
  const older = (await caches.keys()).filter((key) => key.startsWith('bench-marshal-') && key !== name);
  await Promise.all(older.map((key) => caches.delete(key)));
}
/** A script is asked for with its origin, and was stored without: a server that varies by it means the same file. */
const however = { ignoreSearch: true, ignoreVary: true };

async function answer(request: Request): Promise<Response> {
  const wanted = request.mode === 'navigate' ? './' : request;
  const own = await (await caches.open(name)).match(wanted, however);
  return own ?? (await caches.match(wanted, however)) ?? fetch(request);
}
scope.addEventListener('install', (event) => event.waitUntil(store()));
scope.addEventListener('activate', (event) =>
  event.waitUntil(clearOlder().then(() => scope.clients.claim())),
);
scope.addEventListener('message', ({ data }) => {
  if (data === 'take over') void scope.skipWaiting();
});
scope.addEventListener('fetch', (event) => {
  const here = new URL(event.request.url).origin === scope.location.origin;
  if (here && event.request.method === 'GET') event.respondWith(answer(event.request));
});
