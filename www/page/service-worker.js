/**
 * Keeps the site for when there is no network: all files of one version, each checked by its digest. A newer version waits
 * until a window says that it may take over. Packing hands it the list (`SLOPE_SITE`).
 * Sources: W3C Service Workers; FIPS 180-4 (SHA-256).
 */

const { version, files } = globalThis.SLOPE_SITE ?? { version: '', files: {} };
const { scope } = registration;
/** Other sites of the same host keep theirs under other scopes. */
const name = `${scope} ${version}`;

addEventListener('install', (event) => event.waitUntil(keep()));
addEventListener('activate', (event) => event.waitUntil(forget()));
addEventListener('message', ({ data }) => { if (data === 'take over') void skipWaiting(); });
addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  if (method === 'GET' && url.startsWith(scope)) event.respondWith(answer(event.request));
});

/** Keeps all files; fails where one is of another version, as while a host is being brought up to date. */
async function keep() {
  const cache = await caches.open(name);
  await Promise.all(Object.entries(files).map(async ([path, digest]) => {
    const from = await fetch(new URL(path, scope), { cache: 'no-cache' });
    const bytes = await from.arrayBuffer();
    if (!from.ok || await sha256(bytes) !== digest) throw new Error(`${path} is not of version ${version}`);
    // Made anew, so that a host's redirect does not stick to it.
    const type = from.headers.get('Content-Type') ?? '';
    await cache.put(new URL(path, scope), new Response(bytes, { headers: { 'Content-Type': type } }));
  }));
}

/** Drops what earlier versions kept. */
async function forget() {
  const old = (await caches.keys()).filter((each) => each.startsWith(`${scope} `) && each !== name);
  await Promise.all(old.map((each) => caches.delete(each)));
}

/** @param {Request} request */
async function answer(request) {
  const path = new URL(request.url).pathname;
  const file = new URL(path.endsWith('/') ? `${path}index.html` : path, scope);
  const cache = await caches.open(name);
  return await cache.match(file) ?? fetch(request);
}

/** @param {ArrayBuffer} bytes @returns {Promise<string>} in base64 */
async function sha256(bytes) {
  return btoa(String.fromCharCode(...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))));
}

export {};
