// An edit writes only those parts of a drawing anew that differ.
import { test } from "node:test";
import assert from "node:assert/strict";
import { sizes, visit } from "./harness.mjs";
import { BEGIN, begin, go, type, unfoldAll } from "./hands.mjs";

const drawings = (page) => page.locator(".page__lead .drawing-view svg").evaluateAll((all) => all.map((svg) => svg.outerHTML));

for (const [from, spacings, post] of [
  [BEGIN.barn, ['22"', '26"', '18 1/2"'], ["frame.posts.1.x", "10'"]],
  [BEGIN.store, ["500", "650", "480"], ["frame.posts.1.x", "2000"]],
]) {
  test(`a drawing changed part by part is the one drawn at once: ${from}`, async () => {
    await visit(sizes.phone, {}, async ({ page }) => {
      await begin(page, from);
      await go(page, "Frame");
      await unfoldAll(page);
      const ground = page.locator(".drawing-view svg .ground").first();
      await ground.evaluate((path) => (path.hasStayed = true));
      const before = await drawings(page);
      for (const spacing of spacings) {
        await type(page, "frame.rafters.spacing", spacing);
      }
      await page.waitForFunction((before) => document.querySelector(".drawing-view svg").outerHTML !== before, before[0]);
      assert.equal(await ground.evaluate((path) => path.hasStayed), true, "the ground was drawn anew");
      await type(page, ...post);
      await page.waitForTimeout(1500);
      const after = await drawings(page);
      assert.equal(after.length, 2);
      await page.reload();
      await page.locator(".page__lead .drawing-view svg").nth(1).waitFor();
      assert.deepEqual(await drawings(page), after);
    });
  });
}
