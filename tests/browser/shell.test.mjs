// The page around the app: it loads anywhere, lives without a network, and keeps the data when the app stops.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { test } from "node:test";
import { axe, keptOffline, open, SITE, sizes, started, visit } from "./harness.mjs";

for (const [name, size] of Object.entries(sizes)) {
  test(`opens in a subfolder without an error (${name})`, async () => {
    await visit(size, {}, async ({ page, url }) => {
      assert.match(await page.title(), /Outshot/);
      assert.ok(page.url().startsWith(url));
      assert.equal(await page.locator(".stopped").count(), 0);
      assert.ok((await page.locator("body").innerText()).trim().length > 0);
      const width = await page.evaluate(() => document.documentElement.scrollWidth);
      assert.ok(width <= size.viewport.width, `scrolls sideways: ${width}`);
    });
  });
}

test("the manifest and its icons are what they say", async () => {
  await visit(sizes.phone, {}, async ({ page, url }) => {
    const manifest = await page.evaluate(async () => (await fetch(document.querySelector('link[rel="manifest"]').href)).json());
    assert.equal(manifest.name, "Outshot");
    assert.equal(manifest.start_url, "./");
    for (const icon of manifest.icons) {
      const shape = await page.evaluate(async (source) => {
        const image = await createImageBitmap(await (await fetch(source)).blob());
        return `${image.width}x${image.height}`;
      }, new URL(icon.src, url).href);
      assert.equal(shape, icon.sizes, icon.src);
    }
  });
});

test("reloads with the server gone", async () => {
  await visit(sizes.phone, {}, async ({ page, server }) => {
    await keptOffline(page);
    const before = await page.locator("body").innerText();
    await server.stop();
    const response = await page.reload();
    assert.ok(response.fromServiceWorker());
    await started(page);
    assert.equal(await page.locator(".stopped").count(), 0);
    assert.equal(await page.locator("body").innerText(), before);
    const font = await page.evaluate(async () => (await fetch("fonts/barlow-semi-condensed-500.woff2")).status);
    assert.equal(font, 200);
  });
});

test("a new version waits until it is asked for", async () => {
  await visit(sizes.phone, {}, async ({ page, server }) => {
    await keptOffline(page);
    const worker = await readFile(join(SITE, "sw.js"), "utf8");
    const later = worker.replace(/VERSION = "[0-9a-f]{16}"/, 'VERSION = "0123456789abcdef"');
    assert.notEqual(later, worker);
    server.replaced.set("sw.js", later);
    const message = await page.evaluate(
      () =>
        new Promise((done) => {
          window.addEventListener("outshot-update", (event) => done(event.detail.message), { once: true });
          navigator.serviceWorker.ready.then((registration) => registration.update());
        }),
    );
    assert.equal(message, "A new version is ready");
    const names = () => page.evaluate(async () => (await caches.keys()).length);
    assert.equal(await names(), 2);
    assert.ok(await page.evaluate(() => navigator.serviceWorker.getRegistration().then((found) => found.waiting !== null)));
    await Promise.all([page.waitForEvent("load"), page.evaluate(() => window.outshotUpdate.apply())]);
    await started(page);
    const state = await page.evaluate(() => navigator.serviceWorker.getRegistration().then((found) => found.waiting));
    assert.equal(state, null);
  });
});

test("when the app stops, a notice offers a copy of the data", async () => {
  const saved = '{"note":"14′ 6 5⁄16″"}';
  await visit(sizes.phone, {}, async ({ page }) => {
    await page.evaluate((text) => {
      localStorage.setItem("outshot-try", text);
      localStorage.setItem("another-program", "x");
      window.outshotCrash("the first cause");
      window.outshotCrash("a later one");
    }, saved);
    // The app's own lines that wait for something to say are empty.
    const notice = page.getByRole("alert").filter({ hasText: /\S/ });
    assert.equal(await notice.count(), 1);
    const words = await notice.innerText();
    assert.match(words, /The app stopped/);
    assert.match(words, /the first cause/);
    assert.ok(await page.evaluate(() => Number(sessionStorage.getItem("outshot-stopped")) > 0));
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save a copy of my data" }).click(),
    ]);
    assert.match(download.suggestedFilename(), /^outshot-copy-\d{4}-\d\d-\d\d\.json$/);
    const copy = JSON.parse(await readFile(await download.path(), "utf8"));
    assert.equal(copy.records["outshot-try"], saved);
    assert.equal(copy.records["another-program"], undefined);
    for (const button of await notice.getByRole("button").all()) {
      const box = await button.boundingBox();
      assert.ok(box.width >= 48 && box.height >= 48, `target of ${box.width} x ${box.height}`);
    }
    const faults = await axe(page, ".stopped");
    assert.deepEqual(faults, []);
  });
});

test("when the app cannot be loaded, the page says so", async () => {
  const blocked = { serviceWorkers: "block", before: (context) => context.route("**/*.wasm", (route) => route.abort()) };
  const { page, close } = await open(sizes.phone, blocked);
  try {
    const notice = page.getByRole("alert");
    await notice.waitFor();
    assert.match(await notice.innerText(), /did not start/);
    assert.equal(await notice.getByRole("button").count(), 2);
  } finally {
    await close();
  }
});
