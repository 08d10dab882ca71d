import { build, files, version } from '$service-worker';
import { answererOf, cacheName, keptFiles, outdated, shell } from './shell.ts';

const worker = self as unknown as ServiceWorkerGlobalScope;
const current = cacheName(version);
const paths = keptFiles(build, files);
const kept = new Set(paths);

// All or nothing: a version is only installed whole.
worker.addEventListener('install', (event) => event.waitUntil(keep()));

worker.addEventListener('activate', (event) => event.waitUntil(settle()));

// A newer version waits until the reader asks for it: nothing is changed under a form half filled in.
worker.addEventListener('message', (event) => {
  if (event.data === 'take-over') event.waitUntil(worker.skipWaiting());
});

worker.addEventListener('fetch', (event) => {
  const answerer = answererOf(event.request, worker.location.origin, kept);
  if (answerer !== 'network') event.respondWith(answer(event.request, answerer === 'shell' ? shell : null));
});

async function keep(): Promise<void> {
  const cache = await caches.open(current);
  // what carries a hash in its name never changes; the rest is asked for anew, past the browser's own copies
  await cache.addAll(
    paths.map((path) => new Request(path, { cache: path.includes('/immutable/') ? 'default' : 'reload' })),
  );
}

async function settle(): Promise<void> {
  await Promise.all(outdated(await caches.keys(), current).map((name) => caches.delete(name)));
  // the very first page is at once one that opens without a network
  await worker.clients.claim();
}

async function answer(request: Request, page: string | null): Promise<Response> {
  const path = page ?? new URL(request.url).pathname;
  const own = await (await caches.open(current)).match(path);
  return own ?? (await caches.match(path)) ?? fetch(request);
}
