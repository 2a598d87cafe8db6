// Keeps a whole copy of one version on the device. The build fills in the two constants below.
const VERSION = "{{version}}";
const FILES = {{files}};

const HOME = new URL("./", self.location).href;
// Cache storage is shared by the whole origin, so other folders' copies must be told apart.
const PREFIX = `outshot ${new URL(HOME).pathname} `;
const CACHE = PREFIX + VERSION;

// Some hosts redirect index.html to its folder, and a redirected answer can't serve a navigation.
const address = (path) => new URL(path === "index.html" ? "./" : path, HOME).href;
const KNOWN = new Set(FILES.map(([path]) => address(path)));

const HASHED = /-[0-9a-f]{12,16}[./]/;

async function store() {
  const cache = await caches.open(CACHE);
  await Promise.all(
    FILES.map(async ([path]) => {
      const url = address(path);
      // A name with a hash of the content may come from the browser's cache, where the page has it already.
      const from = HASHED.test(path) ? "default" : "no-store";
      // The page's own requests go first.
      const response = await fetch(new Request(url, { cache: from, priority: "low" }));
      if (!response.ok || response.redirected) {
        throw new Error(`${path}: ${response.status}`);
      }
      await cache.put(url, response);
    }),
  );
}

/** The newest copy and the one before stay: a page of the older version may still be open. */
async function tidy() {
  const others = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(others.slice(0, -1).map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function answer(request) {
  const url = request.url.split(/[?#]/)[0];
  const page = request.mode === "navigate" && !KNOWN.has(url);
  const wanted = page || url === `${HOME}index.html` ? HOME : url;
  const own = await (await caches.open(CACHE)).match(wanted);
  return own ?? (await caches.match(wanted)) ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(store()));
self.addEventListener("activate", (event) => event.waitUntil(tidy()));
self.addEventListener("message", (event) => {
  if (event.data === "SKIP_WAITING") {
    self.skipWaiting();
  }
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.url.startsWith(HOME)) {
    event.respondWith(answer(request));
  }
});
