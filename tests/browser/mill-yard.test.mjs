// What he has, and which pieces make it cheaper: the pile entered and answered, long work with its progress and its stop.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, choose, drawer, go, project, report, type, unfold } from "./hands.mjs";

const YARD = "This is what he has";
const PIECES = "Pieces of the beam";

async function pictures(page, part, name) {
  await part.scrollIntoViewIfNeeded();
  await picture(page, name);
  await picture(part, `${name}-whole`);
}

/** Nothing stands out past the page's edge, and what is tapped is large enough. */
async function roomy(page, fold) {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.ok(over <= 0, `the page is ${over} px too wide`);
  for (const button of await fold.locator("button:visible").all()) {
    const { height } = await button.boundingBox();
    assert.ok(height >= 44, `${await button.textContent()} is ${height} px high`);
  }
}

for (const [kind, size, begins] of [
  ["phone", sizes.phone, BEGIN.barn],
  ["desk", sizes.desk, BEGIN.barn],
]) {
  test(`the pile is answered as the native report answers it (${kind})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, begins);
      const { yard } = (await report((await project(page)).text)).buying;
      assert.equal(yard.comes_out, false);
      await go(page, "Mill");
      const fold = await unfold(page, YARD);
      const verdict = await fold.locator(".study__verdict").textContent();
      const n_sticks = yard.plan.flatMap((bar) => bar.sticks).length;
      assert.equal(verdict, `${yard.missing.length} of ${yard.missing.length + n_sticks} sticks are missing.`);
      assert.equal(await fold.locator(".table tbody tr").count(), yard.plan.length);
      await fold.locator(".drawing").waitFor();
      await roomy(page, fold);
      assert.deepEqual(await axe(page, ".page"), []);
      await pictures(page, fold, `yard-${kind}`);
    });
  });

  test(`hearts asked for are matched with what lies there (${kind})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, begins);
      if (kind === "desk") {
        await drawer(page);
        await page.locator(".segment", { has: page.locator('input[name="units"]'), hasText: "millimetres" }).click();
        await drawer(page);
      }
      await go(page, "Mill");
      const fold = await unfold(page, YARD);
      // The posts' lot: two 8x8s nobody looked at, and posts are asked boxed.
      await fold.getByText(/^Look at the heart of 2 of the .*: they are to be boxed heart\.$/).waitFor();
      assert.match(await fold.locator(".table tbody tr").first().textContent(), /boxed heart\? look/);
      await fold.locator(".lots > *").first().evaluate((lot) => {
        lot.open = true;
      });
      await choose(page, "yard.0.heart", "free of heart");
      await fold.getByText(/what lies there of that size is not boxed heart/).waitFor();
      await roomy(page, fold);
      assert.deepEqual(await axe(page, ".page"), []);
      await pictures(page, fold, `yard-heart-${kind}`);
      await choose(page, "yard.0.heart", "boxed heart");
      await fold.getByText(/what lies there of that size is not boxed heart/).waitFor({ state: "detached" });
      const { yard } = (await report((await project(page)).text)).buying;
      assert.ok(yard.plan.some((bar) => bar.lot === 0 && bar.look_at_the_heart === null));
    });
  });

  test(`divisions of the beam are worked out, and one is made in one tap and one undo (${kind})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.store);
      const before = await report((await project(page)).text);
      await go(page, "Mill");
      const fold = await unfold(page, PIECES);
      await fold.getByRole("button", { name: "Work out the ways to divide it" }).click();
      await fold.getByText(/^All \d+ looked at\.$/).waitFor({ timeout: 120_000 });
      const cards = fold.locator(".study");
      assert.ok((await cards.count()) > 2);
      assert.equal(await fold.locator(".study--own").count(), 1);
      await roomy(page, fold);
      assert.deepEqual(await axe(page, ".page"), []);
      await pictures(page, fold, `pieces-${kind}`);
      const offered = cards.filter({ has: page.getByRole("button", { name: "Divide the beam so" }) }).first();
      const head = await offered.locator(".study__head").textContent();
      const [money] = (await offered.locator(".order__figures").textContent()).split(" · ");
      const price = Number(money.replace(/[^\d.]/g, ""));
      await offered.getByRole("button", { name: "Divide the beam so" }).click();
      await cards.first().waitFor({ state: "detached" });
      const after = await report((await project(page)).text);
      // A price of a thousand and more is shown without its cents.
      assert.ok(Math.abs(after.buying.cost - price) <= 0.5, `${head}: ${price}, then ${after.buying.cost}`);
      assert.equal(after.sticks.filter((stick) => stick.role === "beam").length, head.split("+").length);
      await page.getByRole("button", { name: "Undo" }).click();
      assert.deepEqual((await report((await project(page)).text)).order, before.order);
    });
  });
}

test("a pile that holds the order comes out; an empty one says so; nonsense keeps the old value", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.store);
    await go(page, "Mill");
    const fold = await unfold(page, YARD);
    const lots = fold.locator(".lots > *");
    while ((await lots.count()) > 0) {
      await lots.first().evaluate((lot) => {
        lot.open = true;
      });
      await fold.getByRole("button", { name: /^Take size 1 away$/ }).click();
    }
    await fold.getByText("The pile is empty").waitFor();
    const { order } = await report((await project(page)).text);
    await go(page, "Mill");
    await unfold(page, YARD);
    for (const [index, line] of order.entries()) {
      await fold.getByRole("button", { name: "Add a size" }).click();
      const [small, large] = line.section.split("x").map(Number);
      await type(page, `yard.${index}.section.breadth`, `${small} in`);
      await type(page, `yard.${index}.section.depth`, `${large} in`);
      await type(page, `yard.${index}.length`, `${line.length_in} in`);
      await type(page, `yard.${index}.count`, String(line.count));
    }
    await fold.getByText(/^It all comes out of it/).waitFor();
    await type(page, "yard.0.count", "many");
    await fold.getByText("Not taken:").waitFor();
    await fold.getByText(/^It all comes out of it/).waitFor();
    await type(page, "yard.0.count", "0");
    await fold.getByText(/sticks are missing\.$/).waitFor();
  });
});

test("the page stays usable while changes are tried; it stops when told, and drops what is about another frame", async () => {
  await visit(sizes.phone, {}, async ({ page, context }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Mill");
    const slow = await context.newCDPSession(page);
    await slow.send("Emulation.setCPUThrottlingRate", { rate: 4 });
    const fold = await unfold(page, YARD);
    await fold.getByRole("button", { name: "Look for one" }).click();
    await fold.getByText(/^[1-9]\d* of \d+$/).waitFor();
    const waited = await page.evaluate(async () => {
      const start = performance.now();
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
      return performance.now() - start;
    });
    console.log(`a picture came after ${waited.toFixed(0)} ms of the work at a quarter of the speed`);
    assert.ok(waited < 2000, `${waited} ms`);
    await fold.getByRole("button", { name: "Stop" }).click();
    await fold.getByText(/^Stopped after \d+ of \d+\.$/).waitFor();
    await fold.getByRole("button", { name: "Look for one" }).click();
    await fold.getByText(/^[1-9]\d* of \d+$/).waitFor();
    await type(page, "mill.kerf", "3/8");
    await fold.getByRole("button", { name: "Look for one" }).waitFor();
    await fold.locator(".long-work__said", { hasText: /^$/ }).waitFor({ state: "attached" });
  });
});

test("the mill’s other lengths are worked out, each with what it moves", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Mill");
    const fold = await unfold(page, PIECES);
    await fold.getByRole("button", { name: "Work out the other lengths" }).click();
    await fold.getByText(/^All \d+ looked at\.$/).waitFor({ timeout: 120_000 });
    const heads = await fold.locator(".study__head").allTextContents();
    assert.ok(heads.includes("With 24′ too") && heads.includes("Without 16′"), heads.join("; "));
    assert.deepEqual(await axe(page, ".page"), []);
    await pictures(page, fold, "lengths-desk");
  });
});
