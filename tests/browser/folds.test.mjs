// What is folded away sleeps while things change; opened, it shows what holds then.
import { test } from "node:test";
import assert from "node:assert/strict";
import { sizes, started, visit } from "./harness.mjs";
import { BEGIN, begin, go, saved, step, strip, type, unfoldAll } from "./hands.mjs";

const folds = (page) => page.locator(".page details.fold");

/** The words and what stands in the fields of every fold that is open. */
const shown = (page) =>
  folds(page).evaluateAll((all) =>
    all
      .filter((fold) => fold.open)
      .map((fold) => ({
        words: fold.innerText,
        fields: [...fold.querySelectorAll("input, select")].map((field) => (field.matches("[type=checkbox], [type=radio]") ? field.checked : field.value)),
      })),
  );

async function tap(page) {
  for (const head of await folds(page).locator("> summary").all()) {
    await head.click();
  }
}

const EDITS = [
  ["frame.reach", "11' 2", "2950"],
  ["frame.rafters.spacing", "22", "560"],
  ["frame.beam_length", "35'", "9650"],
];

/** Ways of opening what is folded away, from a page on which some is. */
const WAYS = {
  "by hand": async (page) => {
    const closed = folds(page).locator(":scope:not([open]) > summary");
    while ((await closed.count()) > 0) {
      await closed.first().click();
    }
  },
  "with the keys": async (page) => {
    const closed = folds(page).locator(":scope:not([open]) > summary");
    while ((await closed.count()) > 0) {
      await closed.first().focus();
      await page.keyboard.press("Enter");
    }
  },
  "by the page itself": unfoldAll,
};

for (const [from, size, way, which] of [
  [BEGIN.barn, sizes.phone, "by hand", 1],
  [BEGIN.store, sizes.desk, "with the keys", 2],
  [BEGIN.barnExample, sizes.desk, "by the page itself", 1],
]) {
  test(`what is folded away shows what holds when it is opened ${way}: ${from}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, from);
      await go(page, "Frame");
      await strip(page);
      for (const edit of EDITS) {
        await type(page, edit[0], edit[which]);
      }
      assert.notEqual(await folds(page).locator(":scope:not([open])").count(), 0);
      await WAYS[way](page);
      await page.waitForTimeout(1500);
      const found = await shown(page);
      assert.ok(found.length > 8 && found.every((fold) => fold.words.trim() !== ""), `${found.length} folds`);
      await saved(page);
      await page.reload();
      await started(page);
      await page.locator('[data-place="frame"]').waitFor();
      await strip(page);
      await unfoldAll(page);
      await page.waitForTimeout(1500);
      assert.deepEqual(await shown(page), found);
    });
  });
}

test("a closed fold follows nothing, an open one everything", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Frame");
    await strip(page);
    const fold = folds(page).filter({ has: page.locator('[id="frame.tail"]') });
    const count = async (edit) => {
      await fold.evaluate((fold) => {
        fold.changes = 0;
        new MutationObserver((all) => (fold.changes += all.length)).observe(fold.querySelector(".fold__body"), { subtree: true, childList: true, characterData: true });
      });
      await edit();
      await page.waitForTimeout(1000);
      return fold.evaluate((fold) => fold.changes);
    };
    const wider = () => step(page, "frame.reach", "more", 3);
    assert.equal(await count(wider), 0);
    await fold.locator("> summary").click();
    assert.notEqual(await count(wider), 0);
    await fold.locator("> summary").click();
    await page.waitForTimeout(200);
    assert.equal(await count(wider), 0);
  });
});

test("what the browser tells of a fold of a page that was left is let be", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Frame");
    await strip(page);
    await page.evaluate(() => (window.left = [...document.querySelectorAll(".page details.fold")]));
    await go(page, "Site");
    await page.evaluate(() => {
      for (const fold of window.left) {
        fold.open = !fold.open;
        for (const kind of ["click", "toggle"]) {
          fold.dispatchEvent(new Event(kind));
        }
      }
    });
    await page.waitForTimeout(500);
    assert.equal(await page.locator(".stopped").count(), 0);
    await go(page, "Frame");
    await type(page, "frame.reach", "11'");
  });
});
