// Answers from the copy on this device, so that the page works with no network at all.
// The build puts in the version, a hash of all that is shipped, and the list of files.

const PREFIX = 'notchwright-';
const CACHE = PREFIX + '__VERSION__';
const FILES = ['__FILES__'];

// All or nothing: one file that fails leaves the former copy in use.
async function keep() {
  const cache = await caches.open(CACHE);
  try {
    await cache.addAll(FILES.map((file) => new Request(file, { cache: 'no-cache' })));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

// Other pages may share this origin: only caches with our prefix are ours to delete.
async function dropFormerCopies() {
  const names = await caches.keys();
  const former = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(former.map((name) => caches.delete(name)));
}

// Any name in this folder that is opened as a page is the page; its own files are found from there. Only the
// edition that is one file is a page of its own, which the network has.
function isPage({ mode, url }) {
  const path = url.slice(self.registration.scope.length).split(/[?#]/)[0];
  return mode === 'navigate' && !path.includes('/') && path !== 'notchwright.html';
}

async function answer(request) {
  const cache = await caches.open(CACHE);
  const options = { ignoreSearch: true, ignoreVary: true };
  const kept = await cache.match(request, options);
  if (kept) return kept;
  return (isPage(request) && (await cache.match('./', options))) || fetch(request);
}

self.addEventListener('install', (event) => event.waitUntil(keep()));

self.addEventListener('activate', (event) => {
  event.waitUntil(dropFormerCopies().then(() => self.clients.claim()));
});

self.addEventListener('message', (event) => {
  if (event.data?.kind === 'use-update') self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  if (method === 'GET' && url.startsWith(self.registration.scope)) {
    event.respondWith(answer(event.request));
  }
});
