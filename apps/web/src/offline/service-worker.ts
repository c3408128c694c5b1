import { isKept, keptHeader, READS, SHELL } from './kept-reads.ts';

/** What of a service worker is used here: the compiler's library for workers and that for pages exclude each other. */
interface Worker {
  readonly location: { readonly origin: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: Lasting) => void): void;
  addEventListener(type: 'fetch', listener: (event: Fetching) => void): void;
}
interface Lasting {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Lasting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
const worker = self as unknown as Worker;

// The build puts its files and its name here (build/service-worker-plugin.ts).
const FILES: readonly string[] = JSON.parse('__SHELL_FILES__');
const shell = `${SHELL}-__SHELL_NAME__`;
const PAGE = '/';
const SESSION = '/api/v1/session';
const mostReads = 400;
// A line that is neither up nor down: what is kept is shown after this long.
const patience_ms = 6_000;

worker.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(shell)
      .then((cache) => cache.addAll([PAGE, ...FILES]))
      .then(() => worker.skipWaiting()),
  );
});

worker.addEventListener('activate', (event) => {
  const old = async () => {
    const names = (await caches.keys()).filter((name) => name.startsWith(SHELL) && name !== shell);
    await Promise.all(names.map((name) => caches.delete(name)));
    await worker.clients.claim();
  };
  event.waitUntil(old());
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname, search } = new URL(request.url);
  if (origin !== worker.location.origin) return;
  if (pathname === SESSION && request.method !== 'GET') event.respondWith(changeOfSession(request));
  else if (request.method !== 'GET') return;
  else if (pathname.startsWith('/api/')) {
    if (isKept(pathname) && (search === '' || pathname.endsWith('.pdf'))) event.respondWith(read(request, event));
  } else if (request.mode === 'navigate') event.respondWith(page(request));
  else if (FILES.includes(pathname)) event.respondWith(file(request));
});

/** Signing in or out: nothing that one person read stays for the next. */
async function changeOfSession(request: Request): Promise<Response> {
  const answer = await fetch(request);
  if (!answer.ok) return answer;
  await caches.delete(READS);
  // A sign-in answers who is signed in: the next start may be without signal.
  if (request.method === 'POST') await keep(await caches.open(READS), request.url, answer.clone());
  return answer;
}

/** The server first; its last answer where it is not heard. */
async function read(request: Request, event: Lasting): Promise<Response> {
  const cache = await caches.open(READS);
  const kept = await cache.match(request.url);
  const asked = fetch(request);
  const keeping = asked.then((answer) => keep(cache, request.url, answer.clone()));
  event.waitUntil(keeping.catch(() => undefined));
  if (!kept) return asked;
  const late = new Promise<Response>((resolve) => {
    setTimeout(() => resolve(kept), patience_ms);
  });
  return Promise.race([asked.catch(() => kept), late]);
}

async function keep(cache: Cache, url: string, answer: Response): Promise<void> {
  // Who is no longer signed in, or may no longer see it, finds nothing on the device either.
  if (answer.status === 401) {
    await caches.delete(READS);
    return;
  }
  if (answer.status === 403 || answer.status === 404) await cache.delete(url);
  if (!answer.ok) return;
  const headers = new Headers(answer.headers);
  headers.set(keptHeader, new Date().toISOString());
  await cache.put(url, new Response(await answer.blob(), { status: answer.status, headers }));
  const urls = await cache.keys();
  await Promise.all(urls.slice(0, Math.max(0, urls.length - mostReads)).map((old) => cache.delete(old)));
}

/** Every address of a page is the app's one page. */
async function page(request: Request): Promise<Response> {
  try {
    return await fetch(request);
  } catch (error) {
    const kept = await (await caches.open(shell)).match(PAGE);
    if (kept) return kept;
    throw error;
  }
}

/** Files carry a hash of their content in their names: the one that is here is the right one. */
async function file(request: Request): Promise<Response> {
  const kept = await (await caches.open(shell)).match(request.url);
  return kept ?? fetch(request);
}
