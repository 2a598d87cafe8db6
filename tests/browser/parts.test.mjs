// The program comes in parts: what is fetched first, what is said when a part is missing, and that all of it is kept.
import { test } from "node:test";
import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import assert from "node:assert/strict";
import { SITE, open, sizes } from "./harness.mjs";
import { BEGIN, PLACES, begin, go } from "./hands.mjs";

const MAIN = "outshot_bg.wasm";

/** Where the parts lie; a site built in one piece has none. */
const folder = (await readdir(SITE)).find((name) => name.startsWith("app-"));

/** Their names, the main one's aside. */
async function parts() {
  const files = folder === undefined ? [] : await readdir(join(SITE, folder));
  return files.filter((name) => name.endsWith(".wasm") && name !== MAIN);
}

const none = (await parts()).length === 0 && "this site was built in one piece";
const link = (page, place) => page.locator(".rule").getByRole("link", { name: place });

/** A visit without the worker: every part comes by its own request. Parts that `isLost` names do not come until it is emptied. */
async function alone(test, isLost = () => false) {
  const lost = { is: isLost };
  const before = (context) =>
    context.route("**/*.wasm", (route) => {
      const name = route.request().url().split("/").pop();
      return lost.is(name) ? route.abort() : route.continue();
    });
  const visit = await open(sizes.phone, { serviceWorkers: "block", before });
  try {
    await test(visit, lost);
  } finally {
    await visit.close();
  }
}

test("all parts come without being asked for, and then no signal is needed", { skip: none }, async () => {
  const all = await parts();
  await alone(async ({ page, server }) => {
    await page.waitForFunction(
      (names) => {
        const there = performance.getEntriesByType("resource").filter((entry) => entry.responseEnd > 0);
        return names.every((name) => there.some((entry) => entry.name.endsWith(name)));
      },
      all,
      { timeout: 60_000 },
    );
    await server.stop();
    await begin(page, BEGIN.barn);
    await page.locator(".strip__value", { hasText: "%" }).waitFor();
    for (const place of PLACES) {
      await go(page, place);
    }
    assert.equal(await page.locator(".notice--bad, .stopped").count(), 0);
  });
});

test("a page whose part is missing says so, and tries again", { skip: none }, async () => {
  const isLost = (name) => name === "split_mill.wasm";
  await alone(async ({ page }, lost) => {
    await begin(page, BEGIN.barn);
    await link(page, "Mill").click();
    const notice = page.locator("main").getByRole("alert");
    await notice.waitFor();
    assert.match(await notice.innerText(), /could not be fetched/);
    assert.equal(await page.locator("main h1").innerText(), "Mill");
    await notice.getByRole("button", { name: "Try again" }).click();
    await notice.waitFor();
    lost.is = () => false;
    await notice.getByRole("button", { name: "Try again" }).click();
    await page.locator('[data-place="mill"]').waitFor();
    await go(page, "Frame");
    await go(page, "Mill");
    assert.equal(await page.locator(".stopped").count(), 0);
  }, isLost);
});

test("the start needs the main part alone, and a project opens once the rest is there", { skip: none }, async () => {
  await alone(async ({ page }, lost) => {
    await begin(page, BEGIN.barn);
    await go(page, "Frame", "main h1");
    const notice = page.locator("main").getByRole("alert");
    await notice.waitFor();
    assert.match(await notice.innerText(), /could not be fetched/);
    assert.equal(await page.locator("main h1").innerText(), "Frame");
    assert.equal(await page.locator(".strip__value", { hasText: /[0-9]/ }).count(), 0);
    lost.is = () => false;
    await notice.getByRole("button", { name: "Try again" }).click();
    await page.locator('main .drawing [data-stick="P2"]').first().waitFor();
    assert.equal(await page.locator(".strip__value", { hasText: /lb/ }).count(), 1);
    assert.equal(await page.locator(".stopped").count(), 0);
  }, (name) => name !== MAIN);
});

/** What judges is by far the largest of what is fetched later. */
async function judge() {
  const weighed = (await parts()).map(async (name) => ({ name, bytes: (await stat(join(SITE, folder, name))).size }));
  return (await Promise.all(weighed)).toSorted((a, b) => b.bytes - a.bytes)[0].name;
}

test("a frame that is not judged yet is drawn, and not called sound", { skip: none }, async () => {
  const checks = await judge();
  await alone(async ({ page }, lost) => {
    await begin(page, BEGIN.barn);
    await go(page, "Frame");
    await page.locator('main .drawing [data-stick="P2"]').first().waitFor();
    const notice = page.locator(".notices").getByRole("alert");
    await notice.waitFor();
    assert.match(await notice.innerText(), /not judged yet/);
    assert.equal(await page.locator(".strip__value").first().innerText(), "–");
    lost.is = () => false;
    await notice.getByRole("button", { name: "Try again" }).click();
    await page.locator(".strip__value", { hasText: "%" }).waitFor();
    assert.equal(await notice.count(), 0);
  }, (name) => name === checks);
});

test("the heading has the focus when its page comes late", { skip: none }, async () => {
  const held = {};
  held.let = new Promise((done) => (held.go = done));
  const before = (context) =>
    context.route("**/split_bench.wasm", async (route) => {
      await held.let;
      await route.continue();
    });
  const { page, close } = await open(sizes.phone, { serviceWorkers: "block", before });
  try {
    await begin(page, BEGIN.barn);
    await link(page, "Bench").click();
    await page.getByText("One moment…").waitFor();
    await page.waitForFunction(() => document.activeElement?.matches("main h1"));
    held.go();
    await page.locator('[data-place="bench"]').waitFor();
    await page.waitForFunction(() => document.activeElement?.matches('[data-place="bench"] h1'));
  } finally {
    await close();
  }
});
