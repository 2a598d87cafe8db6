// How the order is made: aim, spares, hearts, deliveries, prices and limits; every number held against the native report.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, choose, fact, fieldOf, go, input, project, report, turn, type, unfold } from "./hands.mjs";

const pieces = async (page) => Number(await fact(page, "Pieces of stock"));
const lineOf = (page, size) => page.locator(".order__line", { has: page.locator(".order__size", { hasText: size }) });

/** What the page says of the order is what the report says of the same file. */
async function compare(page) {
  await go(page, "Mill");
  const shown = await page.locator(".order__line").evaluateAll((cards) =>
    cards.map((card) => ({
      count: Number(card.querySelector(".order__count").textContent),
      words: card.querySelector(".order__grade").textContent,
      spares: Number.parseInt(card.querySelector(".order__spare")?.textContent ?? "0", 10),
    })),
  );
  const [says, n_shown] = [await fact(page, "That is"), await pieces(page)];
  const { text } = await project(page);
  const said = await report(text);
  assert.deepEqual(
    shown,
    said.order.map((line) => ({ count: line.count, words: line.words.join(", "), spares: line.spares })),
  );
  assert.equal(says, said.buying.says);
  assert.equal(n_shown, said.order.reduce((sum, line) => sum + line.count, 0));
  await go(page, "Mill");
  return said;
}

for (const [name, size] of Object.entries({ phone: sizes.phone, desk: sizes.desk })) {
  test(`aims, spares, hearts and deliveries change the order, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await go(page, "Mill");
      assert.match(await lineOf(page, "4x6 × 20′").locator(".order__grade").textContent(), /^free of heart, /);
      const usual = await compare(page);
      const fold = await unfold(page, "How it is ordered");
      await choose(page, "buying.aim", "fewest sticks");
      assert.match(await fact(page, "That is"), /fewest sticks|no fewer than/);
      assert.ok((await pieces(page)) <= usual.order.reduce((sum, line) => sum + line.count, 0));
      await choose(page, "buying.aim", "lightest sticks");
      assert.match(await fact(page, "That is"), /^proven lightest/);
      await page.getByRole("button", { name: "Undo" }).first().click();
      await page.getByRole("button", { name: "Undo" }).first().click();
      assert.match(await fact(page, "That is"), /^proven cheapest/);
      await type(page, "buying.spares.each_section", "1");
      await choose(page, "buying.hearts.rafter", "boxed");
      await turn(page, "buying.second_delivery.rafter");
      assert.match(await lineOf(page, "4x8 × 14′").locator(".order__grade").textContent(), /^boxed heart, straight, crown marked/);
      assert.equal(await page.locator(".order__delivery").count(), 2);
      assert.match(await fold.locator(".fold__summary").textContent(), /^least price, \d+ spare, two deliveries$/);
      await fold.scrollIntoViewIfNeeded();
      await picture(page, `how-ordered-${name}`);
      await page.locator(".order__delivery").nth(1).scrollIntoViewIfNeeded();
      await picture(page, `delivery-${name}`);
      assert.deepEqual((await axe(page)) ?? [], []);
      const said = await compare(page);
      assert.equal(said.buying.deliveries.length, 2);
      assert.equal(said.buying.spares, 7);
      const rafters = said.order.find((line) => line.section === "4x8");
      assert.deepEqual([rafters.delivery, rafters.spares, rafters.heart, rafters.count], [2, 1, "boxed heart", 19]);
    });
  });

  test(`long sticks, free of heart, and a length that runs out, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await go(page, "Mill");
      const before = await compare(page);
      await unfold(page, "Prices");
      await page.getByRole("button", { name: "Long sticks cost more" }).click();
      await type(page, "mill.long_prices.0.more", "0.30");
      await type(page, "mill.free_of_heart_more", "50");
      await input(page, "mill.long_prices.0.over").scrollIntoViewIfNeeded();
      await picture(page, `long-prices-${name}`);
      const dear = await compare(page);
      // 8x10 x 18 ft: 120 board feet at 1.40 + 0.30.
      const long = dear.order.find((line) => line.section === "8x10" && line.length_in === 216);
      assert.equal(long.price, 204);
      assert.ok(dear.buying.cost > before.buying.cost);
      const short = dear.order.filter((line) => line.section === "4x6" && line.length_in <= 192);
      short.forEach((line) => assert.ok(Math.abs(line.price - line.board_feet * 1.4 * 1.5) < 0.011));
      await input(page, "another-limit").selectOption({ label: "8x8 × 8′" });
      assert.equal(await input(page, "mill.limits.0.count").inputValue(), "4");
      await type(page, "mill.limits.0.count", "3");
      // Two posts out of a 16 are as cheap as two 8s, and cheaper than an 8 and a 10.
      assert.equal(await lineOf(page, "8x8 × 16′").locator(".order__count").textContent(), "1");
      assert.equal(await lineOf(page, "8x8 × 8′").locator(".order__count").textContent(), "2");
      await input(page, "another-limit").selectOption({ label: "4x8 × 14′" });
      await type(page, "mill.limits.1.count", "0");
      for (const length of ["16′", "18′", "20′"]) {
        await input(page, "another-limit").selectOption({ label: `4x8 × ${length}` });
        await type(page, `mill.limits.${await page.locator('[id^="mill.limits."]:not([id$="-below"])').count() - 1}.count`, "4");
      }
      const trouble = page.locator('[id="mill.limits"] .problem').first();
      assert.match(await trouble.textContent(), /R\d+ and 5 more find no stick that is long enough/);
      await input(page, "mill.limits.0.count").scrollIntoViewIfNeeded();
      await picture(page, `limits-${name}`);
      const said = await compare(page);
      assert.equal(said.buying.lacking.length, 6);
      assert.match(said.buying.says, /with 6 sticks left out$/);
      await unfold(page, "Prices");
      await type(page, "mill.per_board_foot", "0");
      assert.match(await fieldOf(page, "mill.per_board_foot").textContent(), /Timber costs nothing here/);
    });
  });

  test(`the sheet and the message say grade, spares and deliveries, on a ${name}`, async () => {
    await visit(size, { permissions: ["clipboard-read", "clipboard-write"] }, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await go(page, "Mill");
      await unfold(page, "How it is ordered");
      await type(page, "buying.spares.each_section", "1");
      await turn(page, "buying.second_delivery.brace");
      await page.getByRole("button", { name: "Copy as text" }).click();
      await page.locator(".hand-out__said", { hasText: "clipboard" }).waitFor();
      const message = await page.evaluate(() => navigator.clipboard.readText());
      assert.match(message, /\nSecond delivery: 3 sticks, about /);
      assert.match(message, /\n4x6: free of heart, little wane/);
      assert.match(message, /\n2 of 4x6 x 20′, 1 of them spare\n/);
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: "Spreadsheet, 12.5" }).click(),
      ]);
      assert.ok(download.suggestedFilename().endsWith(".csv"));
      await go(page, "Papers");
      await page.emulateMedia({ media: "print" });
      const sheet = page.locator(".pack .paper", { hasText: "boxed heart" }).first();
      const words = await sheet.innerText();
      assert.match(words, /Second delivery: 3 pieces/);
      assert.match(words, /Full means: measured at both ends/);
      assert.match(words, /1 of them spare/);
    });
  });
}
