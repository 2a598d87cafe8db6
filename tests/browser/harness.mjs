// Serves the built site below a folder of its own, opens it in Chromium, and collects everything that went wrong.
import { spawnSync } from "node:child_process";
import { createServer } from "node:http";
import { mkdir, mkdtemp, readFile, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, extname, join, normalize, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";
import assert from "node:assert/strict";
import axeCore from "axe-core";
import { chromium } from "playwright-core";

const HERE = dirname(fileURLToPath(import.meta.url));
export const ROOT = resolve(HERE, "../..");
/** Another build can be named in OUTSHOT_SITE. */
export const SITE = process.env.OUTSHOT_SITE ? resolve(process.env.OUTSHOT_SITE) : join(ROOT, "target/site");

/** The site must run in any folder of any host, so it never gets the root. */
const FOLDER = "/yard/lean to/";

export const sizes = {
  phone: { viewport: { width: 360, height: 740 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true },
  desk: { viewport: { width: 1280, height: 800 }, deviceScaleFactor: 1 },
};

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".txt": "text/plain; charset=utf-8",
};

const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--disable-dev-shm-usage",
];

/** Draws solids without a graphics chip: the same picture on every machine. */
const SOFTWARE_GL = ["--use-angle=swiftshader", "--enable-unsafe-swiftshader"];

/** The browser's program: CHROME_PATH, or the first known name on the search path. */
function browserProgram() {
  const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
  const onPath = (name) => spawnSync("which", [name], { encoding: "utf8" }).stdout?.trim();
  const found = process.env.CHROME_PATH || names.map(onPath).find(Boolean);
  assert.ok(found, "Install Chromium or Chrome, or name its program in CHROME_PATH.");
  return found;
}

/** Nothing is kept in memory: a rebuilt site must not be answered with the files of the one before. */
async function answer(site, replaced, request, response) {
  const path = decodeURIComponent(new URL(request.url, "http://localhost").pathname);
  const inside = path.startsWith(FOLDER) ? path.slice(FOLDER.length) || "index.html" : null;
  const file = inside === null ? null : normalize(join(site, inside));
  if (file?.startsWith(site + sep)) {
    const other = replaced.get(inside);
    const body = other ?? (await readFile(file).catch(() => null));
    if (body !== null) {
      response.writeHead(200, { "Content-Type": TYPES[extname(file)] ?? "application/octet-stream", "Cache-Control": "no-cache" });
      response.end(body);
      return;
    }
  }
  response.writeHead(404, { "Content-Type": "text/plain" });
  response.end("not found");
}

/** A static server on a free port; `replaced` (path to text) lets a test publish another version of a file. */
export async function serve(site = SITE) {
  await stat(join(site, "index.html")).catch(() => assert.fail(`${site} holds no site: cargo start --build-only`));
  const replaced = new Map();
  const server = createServer((request, response) => {
    answer(site, replaced, request, response).catch(() => response.destroy());
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  const { port } = server.address();
  return {
    url: `http://127.0.0.1:${port}${encodeURI(FOLDER)}`,
    replaced,
    stop: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

/** Every way in which a page can go wrong without a test noticing. */
function watch(page, origin, problems) {
  page.on("console", (message) => {
    if (message.type() === "error") {
      problems.push(`console: ${message.text()} (${message.location().url})`);
    }
  });
  page.on("pageerror", (error) => problems.push(`page error: ${error.message}`));
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(origin) && !url.startsWith("blob:") && !url.startsWith("data:")) {
      problems.push(`request off the origin: ${url}`);
    }
  });
}

/** Runs in the page before anything else. */
function reportViolations() {
  document.addEventListener("securitypolicyviolation", (event) => {
    console.error(`policy violation: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`);
  });
}

/**
 * Opens the site in a fresh browser of one of the `sizes`.
 * `options.path` is added to the address (such as "#/frame"); `options.before` gets the context before the first page load;
 * `options.solids` lets it draw by WebGL; other options go to Playwright (colorScheme, locale, …).
 */
export async function open(size = sizes.phone, { path = "", before, solids = false, ...options } = {}) {
  const server = await serve();
  const profile = await mkdtemp(join(tmpdir(), "outshot-browser-"));
  const problems = [];
  let context;
  const close = async () => {
    await context?.close();
    await server.stop();
    await rm(profile, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    context = await chromium.launchPersistentContext(profile, {
      executablePath: browserProgram(),
      headless: true,
      args: solids ? [...FLAGS.filter((flag) => flag !== "--disable-gpu"), ...SOFTWARE_GL] : FLAGS,
      acceptDownloads: true,
      serviceWorkers: "allow",
      ...size,
      ...options,
    });
    context.setDefaultTimeout(15_000);
    const origin = new URL(server.url).origin;
    context.on("page", (page) => watch(page, origin, problems));
    const page = context.pages()[0] ?? (await context.newPage());
    watch(page, origin, problems);
    await context.addInitScript(reportViolations);
    await before?.(context);
    await page.goto(server.url + path);
    await started(page);
    return { page, context, server, url: server.url, problems, close };
  } catch (error) {
    await close();
    throw error;
  }
}

/** Waits until the app stands in for the waiting line, or a stop notice does. */
export async function started(page) {
  await page.waitForFunction(() => !document.querySelector(".boot-wait") || document.querySelector(".stopped"), null, {
    timeout: 60_000,
  });
}

/** Waits until the offline copy is whole and this page is served by it. */
export async function keptOffline(page) {
  await page.waitForFunction(() => navigator.serviceWorker?.controller?.state === "activated", null, { timeout: 60_000 });
}

/** Opens the site, hands it to the test, and fails it for anything that went wrong meanwhile. */
export async function visit(size, options, test) {
  const visit = await open(size, options);
  try {
    await test(visit);
    assert.deepEqual(visit.problems, []);
  } finally {
    await visit.close();
  }
}

/** The accessibility faults that axe finds, one line each. Evaluated, because the page's policy bars foreign scripts. */
export async function axe(page, context = undefined) {
  await page.evaluate(axeCore.source);
  const violations = await page.evaluate(async (where) => {
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
    // The bars float over the page and cover some target wherever it is scrolled to; sizes are measured by the tests instead.
    const rules = { "target-size": { enabled: false } };
    const result = await window.axe.run(where ?? document, { runOnly: { type: "tag", values: tags }, rules });
    return result.violations;
  }, context);
  return violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes.map((node) => node.target.join(" ")).join(", ")}`);
}

/** A picture of the page, or of a part of it, where OUTSHOT_PICTURES names a folder for them. */
export async function picture(part, name, options = {}) {
  const folder = process.env.OUTSHOT_PICTURES;
  if (folder) {
    await mkdir(folder, { recursive: true });
    await part.screenshot({ path: join(folder, `${name}.png`), ...options });
  }
}
