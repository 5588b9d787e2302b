// Keeps the pages that are needed in the yard, for when there is no signal. While the server answers, nothing that is kept is
// shown. VERSION and ASSETS stand before this: the server writes them (src/http/assets.ts).

/** Where the program is: "" at the root of its address, or "/rota". Below, paths are written as if it stood at the root. */
const BASE = new URL(self.registration.scope).pathname.slice(0, -1);
const ownPath = (address) => new URL(address).pathname.slice(BASE.length);

const KEPT = `kept${BASE}-`;
const CACHE = `${KEPT}${VERSION}`;
/** Pages of the version before may still be there, and need its assets. */
const VERSIONS = 2;
const NO_SIGNAL = '/no-signal';
const KEPT_AT = 'X-Kept-At';
/** Kept without being looked at, at most so often. */
const IN_THE_YARD = ['/today', '/today/evening', '/today/sheet', '/moulds'];
const AGAIN_MS = 10 * 60_000;
/** So answers whatever stands before a server that is down. */
const NO_SERVER = [502, 503, 504];

const isNeeded = (path) => IN_THE_YARD.includes(path) || /^\/(mould|piece\/\d+)\/[^/]+$/.test(path);

// What was searched for, or was just done, is not what the page shows the next time.
const isKept = (url) => url.search === '' && isNeeded(ownPath(url));

const keep = async (path, response) => {
  const headers = new Headers(response.headers);
  headers.set(KEPT_AT, new Date().toISOString());
  const cache = await caches.open(CACHE);
  await cache.put(BASE + path, new Response(await response.text(), { headers }));
};

const versions = async () => (await caches.keys()).filter((name) => name.startsWith(KEPT)).reverse();

const found = async (address) => {
  for (const name of await versions()) {
    const response = await (await caches.open(name)).match(address);
    if (response) return response;
  }
};

const fetchAndKeep = async (path) => {
  const response = await fetch(BASE + path, { cache: 'no-store' });
  if (response.ok && !response.redirected) await keep(path, response);
};

const keepForTheYard = async () => {
  for (const path of IN_THE_YARD) {
    const before = await found(BASE + path);
    const age = Date.now() - Date.parse(before?.headers.get(KEPT_AT) ?? '1970-01-01');
    if (age > AGAIN_MS) await fetchAndKeep(path);
  }
};

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
/** When a page was kept, in the English that it is written in. */
const whenText = (response, html) => {
  const isUs = html.includes('<html lang="en-US"');
  const at = new Date(response.headers.get(KEPT_AT));
  const [hour, minute] = [at.getHours(), String(at.getMinutes()).padStart(2, '0')];
  const clock = isUs ? `${hour % 12 || 12}:${minute} ${hour < 12 ? 'am' : 'pm'}` : `${hour}:${minute}`;
  if (at.toDateString() === new Date().toDateString()) return `at ${clock}`;
  const [weekday, day, month] = [DAYS[at.getDay()], at.getDate(), MONTHS[at.getMonth()]];
  return `on ${isUs ? `${weekday}, ${month} ${day}` : `${weekday} ${day} ${month}`} at ${clock}`;
};

const MAIN = '<main id="page"';
const asKept = async (response) => {
  const kept = await response.text();
  const words = `No signal. This page is as it was ${whenText(response, kept)}.`;
  const html = kept.replace(MAIN, `<p class="warning as-kept" role="status">${words}</p>${MAIN}`);
  return new Response(html, { headers: response.headers });
};

const keptPages = async () => {
  const pages = new Map();
  for (const name of await versions()) {
    const cache = await caches.open(name);
    for (const { url } of await cache.keys()) {
      const path = ownPath(url);
      if (isNeeded(path) && !pages.has(path)) pages.set(path, await cache.match(url));
    }
  }
  return [...pages];
};

const LIST = '<ul class="kept-pages"></ul>';
const noSignal = async () => {
  const blank = await found(BASE + NO_SIGNAL);
  if (!blank) return Response.error();
  const lines = [];
  for (const [path, response] of await keptPages()) {
    const html = await response.clone().text();
    const title = /<title>([^<]*?)( · [^<]*)?<\/title>/.exec(html)?.[1] ?? path;
    lines.push(`<li><a href="${BASE}${path}">${title}</a>, as it was ${whenText(response, html)}</li>`);
  }
  const list = lines.length > 0 ? `<ul class="kept-pages">${lines.join('')}</ul>` : '<p>Nothing yet.</p>';
  const html = (await blank.text()).replace(LIST, list);
  return new Response(html, { status: 503, headers: blank.headers });
};

const fromServer = async (event, url) => {
  const response = await fetch(event.request);
  if (NO_SERVER.includes(response.status)) throw new Error('There is no server.');
  if (response.ok && isKept(url)) {
    const copy = response.clone();
    event.waitUntil(keep(ownPath(url), copy).then(keepForTheYard));
  }
  return response;
};

const page = async (event, url) => {
  try {
    return await fromServer(event, url);
  } catch {
    const kept = isNeeded(ownPath(url)) ? await found(url.pathname) : undefined;
    return kept ? asKept(kept) : noSignal();
  }
};

// One with its version never changes; of the others the server's is asked for first.
const asset = async (request, url) => {
  const kept = await found(request.url);
  if (kept && url.searchParams.has('v')) return kept;
  try {
    const response = await fetch(request);
    if (response.ok) await (await caches.open(CACHE)).put(request, response.clone());
    return response;
  } catch (gone) {
    if (kept) return kept;
    throw gone;
  }
};

self.addEventListener('install', (event) => {
  self.skipWaiting();
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll([...ASSETS, NO_SIGNAL].map((path) => BASE + path))));
});

const takeOver = async () => {
  for (const name of (await versions()).slice(VERSIONS)) await caches.delete(name);
  await self.clients.claim();
};
self.addEventListener('activate', (event) => event.waitUntil(takeOver()));

// What is sent is none of its business: only asking for pages and assets is.
self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (ownPath(url).startsWith('/assets/')) event.respondWith(asset(event.request, url));
  else if (event.request.mode === 'navigate') event.respondWith(page(event, url));
});

// A page that was changed in its place, or was there before this was.
self.addEventListener('message', (event) => {
  const path = ownPath(new URL(event.data?.keep ?? '/', self.location.href));
  if (isNeeded(path)) event.waitUntil(fetchAndKeep(path).then(keepForTheYard, () => undefined));
});
