// Nothing is lost: reloads, files, several projects, undo, units, bad files, a full device, a second window.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { test } from "node:test";
import { ROOT, sizes, started, visit } from "./harness.mjs";
import { BEGIN, begin, drawer, fileIn, fileOut, go, input, project, report, saved, step, strip, type, unfoldAll } from "./hands.mjs";

const barn = async (page) => begin(page, BEGIN.barn);

/** Every record of the app on this device. */
const records = (page) => page.evaluate(() => JSON.stringify(Object.entries(localStorage).filter(([key]) => key.startsWith("outshot")).sort()));

test("a reload keeps the work and the place", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await barn(page);
    await go(page, "Frame");
    await type(page, "frame.reach", "11' 1 5/16");
    const before = await project(page);
    await go(page, "Bench");
    await page.getByRole("link", { name: /^B1 / }).click();
    await page.getByRole("button", { name: "Yes, it lies so" }).click();
    await page.locator(".mark__box").nth(1).check();
    await saved(page);
    const figures = await strip(page);
    await page.reload();
    await started(page);
    assert.match(page.url(), /#\/bench\/B1$/);
    await page.locator("h1", { hasText: /^B1$/ }).waitFor();
    assert.ok(await page.locator(".mark__box").nth(1).isChecked());
    assert.deepEqual(await strip(page), figures);
    const after = await project(page);
    assert.deepEqual(Object.keys(after.file.project.progress.marked), ["B1"]);
    assert.equal(after.file.project.progress.marked.B1.length, 1);
    assert.deepEqual({ ...after.file.project, progress: null }, { ...before.file.project, progress: null });
    assert.equal(after.file.project.frame.reach_in, 133.3125);
  });
});

test("file out, project deleted, file in: the same file", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await barn(page);
    await go(page, "Frame");
    await type(page, "frame.reach", "3,2773 m");
    const { text } = await project(page);
    await saved(page);
    await drawer(page);
    await page.getByRole("button", { name: "Delete Wool barn lean-to" }).click();
    await page.locator(".start").waitFor();
    await page.getByRole("button", { name: "Bring it back" }).waitFor();
    await fileIn(page, text);
    await page.locator(".strip").waitFor();
    assert.equal((await project(page)).text, text);
  });
});

test("two projects stay apart, and a deleted one comes back", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await barn(page);
    await go(page, "Frame");
    await type(page, "frame.reach", "11'");
    const first = await project(page);
    await drawer(page);
    await begin(page, BEGIN.store);
    await go(page, "Frame");
    await type(page, "frame.reach", "3333");
    const second = await project(page);
    await saved(page);
    await drawer(page);
    await page.locator(".drawer .list__open", { hasText: "Wool barn" }).click();
    await page.locator(".head__project", { hasText: "Wool barn" }).waitFor();
    assert.equal((await project(page)).text, first.text);
    await drawer(page);
    await page.getByRole("button", { name: /^Delete Larch log store/ }).first().click();
    await page.locator(".drawer").getByRole("button", { name: "Bring it back" }).click();
    await page.locator(".drawer .list__open", { hasText: "Larch log store" }).click();
    await page.locator(".head__project", { hasText: "Larch" }).waitFor();
    assert.equal((await project(page)).text, second.text);
  });
});

test("undo and redo walk through every step", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await barn(page);
    const states = [(await project(page)).text];
    await go(page, "Frame");
    await type(page, "frame.reach", "11'");
    states.push((await project(page)).text);
    await go(page, "Frame");
    await step(page, "frame.rafters.spacing", "less");
    states.push((await project(page)).text);
    assert.equal(new Set(states).size, 3);
    const [undo, redo] = ["Undo", "Redo"].map((name) => page.getByRole("button", { name, exact: true }));
    for (const state of [states[1], states[0]]) {
      await undo.click();
      assert.equal((await project(page)).text, state);
    }
    assert.ok(await undo.isDisabled());
    for (const state of [states[1], states[2]]) {
      await redo.click();
      assert.equal((await project(page)).text, state);
    }
    assert.ok(await redo.isDisabled());
  });
});

test("units change what is shown and nothing else", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await barn(page);
    await go(page, "Frame");
    await type(page, "frame.reach", "2.243 m");
    const before = await project(page);
    const units = async (word) => {
      await drawer(page);
      await page.locator(".segment", { has: page.locator('input[name="units"]'), hasText: word }).click();
      await drawer(page);
    };
    await units("millimetres");
    const after = await project(page);
    assert.equal(after.file.project.units, "metric");
    assert.deepEqual({ ...after.file.project, units: null }, { ...before.file.project, units: null });
    await go(page, "Frame");
    assert.equal(await input(page, "frame.reach").inputValue(), "2243 mm");
    await units("feet, inches");
    assert.equal((await project(page)).text, before.text);
  });
});

test("Escape after nonsense leaves the value as it was, to the last digit", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await barn(page);
    await go(page, "Frame");
    await type(page, "frame.reach", "3243 mm");
    const before = await project(page);
    await go(page, "Frame");
    await input(page, "frame.reach").click();
    await page.keyboard.type("abc");
    await page.keyboard.press("Escape");
    assert.equal((await project(page)).file.project.frame.reach_in, before.file.project.frame.reach_in);
  });
});

/** Files that are none: name, content from a good file, what the sentence must speak of. */
const BAD = [
  ["cut short", (good) => good.slice(0, good.length / 2), /damaged or cut short/],
  ["empty", () => "", /damaged or cut short/],
  ["a picture", () => Buffer.from([0x89, 0x50, 0x4e, 0x47, 0xd, 0xa, 0x1a, 0xa, 0, 255]), /damaged or cut short/],
  ["a later version", (good) => good.replace(/"version": \d+/, '"version": 99'), /newer Outshot.*99/],
  ["another program's", () => '{"format":"shopping list","version":1}', /not an Outshot project file/],
  ["a list", () => "[1, 2, 3]", /not an Outshot project file/],
  ["a field missing", (good) => good.replace(/"reach_in": [\d.]+,/, ""), /cannot be used: .*reach_in/],
  ["a field too many", (good) => good.replace('"reach_in"', '"surprise": 1, "reach_in"'), /cannot be used: .*surprise/],
  ["a number past all numbers", (good) => good.replace(/"reach_in": [\d.]+/, '"reach_in": 1e999'), /Nothing was changed/],
  ["nested deep", () => "[".repeat(5000) + "]".repeat(5000), /nests or lists more/],
  ["too large", (good) => good + " ".repeat(2_000_001), /larger than 2 MB/],
];

test("bad files are refused with a sentence, and nothing changes", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await barn(page);
    const { text } = await project(page);
    await saved(page);
    const kept = await records(page);
    for (const [name, make, says] of BAD) {
      const bad = make(text);
      assert.notEqual(bad, text, name);
      await fileIn(page, bad);
      const refused = page.locator(".page .file-in__refused").first();
      await refused.filter({ hasText: says }).waitFor({ timeout: 5000 }).catch(async () => assert.fail(`${name}: “${await refused.textContent()}”`));
      assert.match(await refused.textContent(), /Nothing was changed\.$/, name);
      assert.equal(await records(page), kept, name);
    }
    assert.equal((await fileOut(page)).text, text);
  });
});

test("hostile words in a file are only words", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await barn(page);
    const { file } = await project(page);
    const name = `<img src=x onerror="window.hit=1"><script>window.hit=1</script>'); alert(1); =1+1`;
    file.project.name = name;
    file.project.note = "</text><script>window.hit=1</script>&amp;";
    file.project.progress = { ...file.project.progress, marked: { "<b>": ["<u>"] }, cut: { "<script>x</script>": "<i>" }, pieces: { "<u>": { section: { breadth_in: 8, depth_in: 8 }, length_in: 96, state: "kept", heart: "either", defects: [], place: "<s>", remark: "<i>" } }, dry_fits_in: { "<i>": 0.125 } };
    await fileIn(page, JSON.stringify(file));
    await page.locator(".head__project", { hasText: "onerror" }).waitFor();
    for (const place of ["Site", "Frame", "Mill", "Bench", "Roof", "Papers"]) {
      await go(page, place);
      assert.equal(await page.evaluate(() => window.hit), undefined, place);
    }
    assert.equal(await page.locator(".head__project").textContent(), name);
    const out = await fileOut(page);
    assert.equal(JSON.parse(out.text).project.name, name);
    assert.match(out.name, /^[\p{L}\p{N}-]+\.outshot\.json$/u);
  });
});

test("a full device is said, and the file still goes out", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await barn(page);
    await go(page, "Frame");
    await saved(page);
    await page.evaluate(() => {
      window.realSetItem = Storage.prototype.setItem;
      Storage.prototype.setItem = () => {
        throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
      };
    });
    await type(page, "frame.reach", "11' 2");
    const notice = page.getByRole("alert").filter({ hasText: "Not saved" });
    await notice.waitFor();
    assert.match(await notice.innerText(), /room .* is full/);
    assert.equal(await page.locator(".head__saved").textContent(), "not saved");
    const { text } = await fileOut(page, notice);
    assert.equal(JSON.parse(text).project.frame.reach_in, 134);
    await page.evaluate(() => {
      Storage.prototype.setItem = window.realSetItem;
    });
    await notice.getByRole("button", { name: "Try again" }).click();
    await saved(page);
    assert.equal(await notice.count(), 0);
  });
});

test("a second window never writes over the first", async () => {
  await visit(sizes.desk, {}, async ({ page, context, url }) => {
    await barn(page);
    await go(page, "Frame");
    await saved(page);
    const second = await context.newPage();
    await second.goto(`${url}#/frame`);
    await started(second);
    await type(second, "frame.reach", "11' 1");
    await saved(second);
    const notice = page.getByRole("alert").filter({ hasText: "Open in two windows" });
    await notice.waitFor();
    await notice.getByRole("button", { name: "Keep this one as a copy" }).click();
    await page.locator(".head__project", { hasText: "copy" }).waitFor();
    assert.equal((await project(page)).file.project.frame.reach_in, 130);
    assert.equal((await project(second)).file.project.frame.reach_in, 133);
  });
});

test("a file of the first version opens", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    const old = await readFile(join(ROOT, "tests/data/version-1.json"), "utf8");
    assert.equal(JSON.parse(old).version, 1);
    await fileIn(page, old);
    await page.locator(".strip").waitFor();
    const { text, file } = await project(page);
    assert.equal(file.version, 7);
    assert.equal(file.project.frame.reach_in, JSON.parse(old).project.frame.reach_in);
    const said = await report(text);
    assert.equal((await strip(page)).sticks, String(said.sticks.length));
  });
});
