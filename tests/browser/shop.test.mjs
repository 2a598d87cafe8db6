// At the bench: ticks a joint, knots, a dry fit, a bad cut, the order of work, the shop book.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, go, input, project, type, unfold } from "./hands.mjs";

async function take(page, mark) {
  await go(page, "Bench");
  const back = page.getByRole("link", { name: "All sticks" });
  if (await back.count()) await back.click();
  await page.getByRole("link", { name: new RegExp(`^${mark} `) }).first().click();
  await page.locator("h1", { hasText: new RegExp(`^${mark}$`) }).waitFor();
}

const fill = (page, id, text) => page.locator(`#${id}`).fill(text);

for (const [name, size] of Object.entries({ phone: sizes.phone, desk: sizes.desk })) {
  test(`a tick on a joint ticks its marks, in one step back, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await take(page, "P2");
      const joint = page.locator(".joint", { hasText: /^K2R/ });
      assert.match(await joint.textContent(), /0 of 3/);
      assert.ok(await joint.locator("input").isDisabled());
      await page.getByRole("button", { name: "Yes, it lies so" }).click();
      await joint.locator("input").check();
      assert.match(await joint.textContent(), /3 of 3/);
      assert.equal(await page.locator(".mark--made").count(), 3);
      await page.getByRole("button", { name: "Undo" }).first().click();
      assert.equal(await page.locator(".mark--made").count(), 0);
      await page.locator(".mark", { hasText: "mortise of K2R" }).locator(".mark__box").check();
      assert.match(await joint.textContent(), /1 of 3/);
      await joint.scrollIntoViewIfNeeded();
      await picture(page, `joints-${name}`);
    });
  });

  test(`a knot is tapped and typed, and the stick is turned for it, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await take(page, "P2");
      const fold = await unfold(page, "Knots");
      const strip = fold.locator(".knots__face").first();
      await strip.scrollIntoViewIfNeeded();
      const box = await strip.boundingBox();
      await strip.click({ position: { x: box.width / 2, y: box.height / 2 } });
      assert.notEqual(await input(page, "knot-from-zero").inputValue(), "");
      // Over the mortise of K2R, on the right face.
      const mortise = (await page.locator(".mark", { hasText: "mortise of K2R" }).locator(".mark__measure").textContent()).trim();
      await page.locator("#knot-face").selectOption({ label: "right face" });
      const at = Number.parseInt(mortise, 10) + 3;
      await fill(page, "knot-from-zero", String(at));
      await fill(page, "knot-across", "5");
      await fill(page, "knot-size", "1 1/2");
      await fold.getByRole("button", { name: "Add the knot" }).click();
      assert.equal(await fold.locator(".knots__row").count(), 1);
      const says = await fold.locator(".knots__answer").textContent();
      assert.match(says, /what is now the right face becomes the|Swap its ends/);
      assert.match(says, /every knot is clear/);
      await fold.locator(".knots__answer").scrollIntoViewIfNeeded();
      await picture(page, `knots-${name}`);
      const { file } = await project(page);
      assert.equal(file.project.progress.knots.P2.length, 1);
      await take(page, "P2");
      const again = await unfold(page, "Knots");
      await again.getByRole("button", { name: "Remove knot 1" }).click();
      assert.equal(await again.locator(".knots__row").count(), 0);
      await fill(page, "knot-across", "99");
      await fill(page, "knot-from-zero", "20");
      await fill(page, "knot-size", "1");
      await again.getByRole("button", { name: "Add the knot" }).click();
      assert.match(await again.locator(".field__refused").textContent(), /Not taken/);
    });
  });

  test(`a dry fit moves the marks that are still to be made, and says so where they are cut, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await take(page, "B2");
      const places = () => page.locator(".mark", { hasText: /housing of P/ }).first().locator(".mark__measure").textContent();
      const before = await places();
      await unfold(page, "Dry fit");
      await type(page, "progress.dry_fits.1", "1/8");
      await page.locator(".about-stick__zero", { hasText: "by the dry fit of scarf 1" }).waitFor();
      assert.ok(await input(page, "progress.dry_fits.1").isVisible(), "the fold stays open");
      assert.notEqual(await places(), before);
      await input(page, "progress.dry_fits.1").scrollIntoViewIfNeeded();
      await picture(page, `dry-fit-${name}`);
      // Cut as drawn, then measured: the marks stay, and three places say so.
      await type(page, "progress.dry_fits.1", "0");
      assert.equal(await places(), before);
      await page.locator(".cut-tick input").check();
      await type(page, "progress.dry_fits.1", "1/8");
      const words = /B2 is cut, and by the dry fit of scarf 1/;
      await page.locator(".page .problem", { hasText: words }).first().waitFor();
      assert.equal(await places(), before);
      assert.match(await page.locator(".strip").textContent(), words);
      await go(page, "Frame");
      await page.locator(".page .problem", { hasText: words }).first().waitFor();
      await picture(page, `cut-off-${name}`);
    });
  });

  test(`a bad cut has ways out, the mildest first, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await take(page, "P2");
      const fold = await unfold(page, "A bad cut");
      const label = await page.locator("#bad-mark option", { hasText: "mortise of K2R" }).first().textContent();
      await page.locator("#bad-mark").selectOption({ label });
      await fill(page, "bad-by", "1/16");
      await fold.locator(".rescue__way", { hasText: "It does not matter" }).waitFor();
      assert.equal(await fold.locator(".rescue__way").count(), 1);
      await fill(page, "bad-by", "1/2");
      await page.locator("#bad-to").selectOption({ label: "its right end" });
      const ways = await fold.locator(".rescue__way").allTextContents();
      assert.ok(ways.some((way) => /K2R gets legs of its own/.test(way)), ways.join("\n"));
      assert.ok(ways.some((way) => /A new P2 to the same sheet/.test(way)), ways.join("\n"));
      await fold.locator(".rescue").scrollIntoViewIfNeeded();
      await picture(page, `bad-cut-${name}`);
      await page.locator("#bad-slip").selectOption({ label: "On the wrong side of its line" });
      assert.equal(await page.locator("#bad-by").count(), 0);
      assert.ok((await fold.locator(".rescue__way").count()) > 0);
      assert.deepEqual(await axe(page), []);
    });
  });

  test(`the bench has an order of work, and the shop book its index, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await go(page, "Bench");
      await page.locator(".segment", { hasText: /^Order of work$/ }).click();
      await page.locator(".turns__turn").first().waitFor();
      const turns = await page.locator(".turns__words").allTextContents();
      assert.match(turns[0], /purlin/);
      assert.match(turns.at(-2), /ledger.*goes up as no\. 1$/);
      assert.match(turns.at(-1), /^Last of all/);
      await picture(page, `order-${name}`);
      assert.deepEqual(await axe(page), []);
      await go(page, "Papers");
      await page.locator(".segment", { hasText: /^every stick/ }).click();
      const index = page.locator(".pack .paper", { hasText: "Shop book: order of work" });
      await index.locator("td").first().waitFor({ state: "attached" });
      const sheets = await page.locator(".pack .paper .paper__title").allTextContents();
      const numbered = (await index.textContent()).match(/☐ P1 \(sheet (\d+)\)/);
      assert.equal(sheets[Number(numbered[1]) - 1], "Stick P1");
      await page.emulateMedia({ media: "print" });
      await picture(index, `index-${name}`);
    });
  });
}

for (const [name, size] of Object.entries({ phone: sizes.phone, desk: sizes.desk })) {
  test(`a crown that is down turns the stick, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await take(page, "P1");
      assert.equal(await page.locator("#crown-title").count(), 0);
      await take(page, "R3");
      const crown = page.locator("section", { has: page.locator("#crown-title") });
      await crown.getByLabel("underside", { exact: true }).check();
      assert.match(await crown.textContent(), /toward the underside, not up\. Turn it half over/);
      assert.match(await page.locator(".problem", { hasText: "Crown: " }).textContent(), /Turn it half over/);
      await crown.scrollIntoViewIfNeeded();
      await picture(page, `crown-${name}`);
      await axe(page);
      await crown.getByLabel("top", { exact: true }).check();
      assert.match(await crown.textContent(), /Its crown is up, as its sheet has it/);
      assert.equal(await page.locator(".problem", { hasText: "Crown: " }).count(), 0);
      await take(page, "B1");
      await crown.getByLabel("wall face", { exact: true }).check();
      assert.match(await crown.textContent(), /no turn of its 8x10 section brings it up: take another stick for B1/);
    });
  });

  test(`a measured stick is weighed as measured, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await take(page, "B1");
      const facts = page.locator(".about-stick");
      assert.match(await facts.textContent(), /Weighs green, as sawn/);
      const before = await facts.locator("dd").first().textContent();
      await page.getByRole("button", { name: "Add a measured place" }).click();
      await type(page, "progress.sizes.B1.0.depth", "10 1/2");
      await page.locator(".about-stick", { hasText: "Weighs green, as measured" }).waitFor();
      assert.ok(Number.parseInt(await facts.locator("dd").first().textContent(), 10) > Number.parseInt(before, 10));
      await facts.scrollIntoViewIfNeeded();
      await picture(page, `weighed-${name}`);
    });
  });

  test(`a cut stick tells of a change that only a remark says, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await take(page, "B1");
      await page.getByLabel(/is cut/).first().check();
      await page.locator(".seal", { hasText: "It is cut to this layout" }).waitFor();
      await go(page, "Frame");
      await unfold(page, "Rules of the joints");
      await type(page, "joinery.scarf_squint", "3/8");
      await take(page, "B1");
      await page.locator(".seal", { hasText: "another layout than the one drawn here" }).waitFor();
      assert.match(await page.locator("main").textContent(), /B1 is cut, and the frame has changed: it no longer fits as cut/);
    });
  });
}
