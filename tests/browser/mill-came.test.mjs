// As it comes: pieces ticked, measured and judged off the truck, given their places, and asked for again.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, choose, go, input, project, report, type, unfold } from "./hands.mjs";

const open = async (page) => {
  await go(page, "Mill");
  return unfold(page, "As it comes");
};
const cardOf = (fold, name) => fold.locator("section.truck", { has: fold.page().getByRole("heading", { name }) });
const lookAt = (fold, name) => fold.getByRole("button", { name: `Look at piece ${name}`, exact: true }).click();
const verdict = (page) => page.locator(".came__verdict");
const more = (page) => page.locator(".came__more");
const received = (said, name) => said.buying.received.find((piece) => piece.piece === name);

/** Ticks every piece of every card. */
async function tickAll(fold) {
  const all = fold.getByRole("button", { name: "All of these" });
  while ((await all.count()) > 0) {
    await all.first().click();
  }
  const open = fold.locator(".tick__input:not(:checked)");
  while ((await open.count()) > 0) {
    await open.first().check({ force: true });
  }
}

for (const [kind, size] of [
  ["phone", sizes.phone],
  ["desk", sizes.desk],
]) {
  test(`a piece is judged as it is measured, by the native report's words (${kind})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      let fold = await open(page);
      await cardOf(fold, "8x8 × 8′").getByRole("button", { name: "All of these" }).click();
      assert.match(await fold.locator(".fold__summary").first().textContent(), /^4 of \d+ on the truck$/);
      await lookAt(fold, "1 of 8x8 × 8′");
      const path = (field) => `progress.pieces.8x8/96/1.${field}`;
      await verdict(page).getByText(/^✓ Does for P\d\.$/).waitFor();
      await type(page, path("near.depth"), "7 3/8");
      await type(page, path("far.depth"), "7 3/8");
      await verdict(page).getByText(/1⁄8″ under the inner size of 7\.5x7\.5 at the/).waitFor();
      assert.match(await verdict(page).textContent(), /^Send it back, or elsewhere: Does not do for P\d: 1⁄8″ under/);
      await picture(page, `came-${kind}-small`);
      await type(page, path("near.depth"), "7 3/4");
      await type(page, path("far.depth"), "7 3/4");
      await verdict(page).getByText(/✓ Does for P\d.*; with all posts that small P\d .* 200 % as drawn: see Strength/).waitFor();
      await choose(page, path("heart"), "free of heart");
      await verdict(page).getByText(/free of heart, and boxed heart was asked/).waitFor();
      await choose(page, path("heart"), "boxed heart");
      await verdict(page).getByText(/boxed heart was asked/).waitFor({ state: "detached" });
      await page.getByRole("button", { name: "spiral grain" }).click();
      await more(page).getByText(/Better: does for P[14]/).waitFor();
      await type(page, path("moisture_percent"), "60");
      await more(page).getByText(/At 60 % it weighs about \d+ lb/).waitFor();
      const said = await more(page).textContent();
      await picture(page, `came-${kind}-spiral`);
      assert.deepEqual(await axe(page, ".page"), []);
      const small = await page.locator(".came__look, .came__chip, .came .tick").evaluateAll((all) =>
        all.map((one) => one.getBoundingClientRect()).filter((box) => box.width > 0 && (box.height < 48 || box.width < 48)).length);
      assert.equal(small, 0, "a target is under 48 px");
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      assert.ok(wide <= 0, `the page is ${wide} px too wide`);
      await page.getByRole("button", { name: "Give it that place" }).click();
      await verdict(page).getByText(/^✓ Does for P[14]; with all posts that small P\d .* 200 % as drawn: see Strength/).waitFor();
      const native = received(await report((await project(page)).text), "8x8/96/1");
      assert.equal(native.fits, true);
      assert.equal(native.pinned, true);
      assert.match(native.place, /^P[14]$/);
      assert.ok(said.includes(`${Math.round(native.ratio * 100)} %`) || native.ratio === null, `${said} does not say ${native.ratio}`);
      fold = await open(page);
      // A tap beside what was measured throws nothing away: it opens it.
      await cardOf(fold, "8x8 × 8′").locator("label.tick").first().click();
      assert.equal(await input(page, path("near.depth")).inputValue(), "7 3⁄4″");
    });
  });
}

test("every stick is given its place in one step, and the sheets follow", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await begin(page, BEGIN.store);
    const fold = await open(page);
    await tickAll(fold);
    const before = (await project(page)).file;
    const names = Object.keys(before.project.progress.pieces);
    const rafters = JSON.parse(JSON.stringify(await report(JSON.stringify(before)))).sticks.filter((stick) => stick.role === "rafter");
    const pieces = before.project.progress.pieces;
    const alone = names.find((name) => received_section(pieces[name]) === rafters[0].section);
    await open(page);
    const label = await fold.locator(".came__look").evaluateAll((all) => all.map((one) => one.getAttribute("aria-label")));
    assert.equal(label.length, names.length);
    const number = names.filter((name) => name.split("/")[0] === alone.split("/")[0]);
    assert.ok(number.length > 0);
    // The first rafter's piece crowns, 10 mm, and came 4 mm over size.
    const index = await fold.locator(".came .tick__stick").evaluateAll((all, mark) => all.findIndex((one) => one.textContent === mark), rafters[2].mark);
    assert.ok(index >= 0, "no piece for the third rafter");
    await fold.locator(".came__look").nth(index).click();
    const id = await page.locator('.came__fields input[id$=".crown"]').getAttribute("id");
    const name = id.slice("progress.pieces.".length, -".crown".length);
    await type(page, id, "10");
    const section = pieces[name].section;
    await type(page, id.replace(/crown$/, "near.breadth"), String(Math.round(section.breadth_in * 25.4) + 4));
    await page.getByRole("button", { name: "Give every stick its place" }).click();
    const table = page.locator(".fold", { has: page.getByRole("heading", { name: "As it comes" }) }).locator(".table--figures tbody tr");
    await table.first().waitFor();
    const plain = Number(/^(\d+) are as ordered/.exec(await page.getByText(/are as ordered and go where/).textContent())[1]);
    assert.equal((await table.count()) + plain, names.length);
    await picture(page, "came-desk-places");
    const said = await report((await project(page)).text);
    await open(page);
    await page.getByRole("button", { name: "Give every stick its place" }).click();
    await table.first().waitFor();
    await page.getByRole("button", { name: "Write these places" }).click();
    await page.getByText("These places are written").waitFor();
    const after = (await project(page)).file.project.progress;
    for (const piece of said.buying.received) {
      assert.equal(after.pieces[piece.piece].place, piece.place, piece.piece);
    }
    const mark = after.pieces[name].place;
    assert.equal(after.sizes[mark].length, 2);
    await page.goto(`${page.url().split("#")[0]}#/bench/${mark}`);
    await page.getByText(/Its piece: Crown up: this piece crowns \d+ mm/).waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    const back = (await project(page)).file.project.progress;
    assert.ok(Object.values(back.pieces).every((piece) => piece.place === ""), "one step back opens all places");
    assert.equal(back.sizes[mark], undefined);
  });
});

function received_section(piece) {
  const trimmed = (value) => String(Math.round(value * 1000) / 1000);
  const { breadth_in: breadth, depth_in: depth } = piece.section;
  return `${trimmed(Math.min(breadth, depth))}x${trimmed(Math.max(breadth, depth))}`;
}

test("what goes back is asked for again, and prints on the list to receive by", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    const fold = await open(page);
    await tickAll(fold);
    await lookAt(fold, "2 of 8x8 × 8′");
    await page.getByRole("button", { name: "rot or borers" }).click();
    await choose(page, "progress.pieces.8x8/96/2.state", "it goes back");
    await type(page, "progress.pieces.8x8/96/2.remark", "soft at the heart");
    await page.getByRole("button", { name: "Give every stick its place" }).click();
    await page.getByText("1 × 8x8 × 8′, for P").waitFor();
    await page.locator(".came__ask").scrollIntoViewIfNeeded();
    await picture(page, "came-phone-ask");
    assert.deepEqual(await axe(page, ".page"), []);
    const said = (await report((await project(page)).text)).buying;
    assert.equal(said.ask_instead.length, 1);
    assert.match(said.ask_text, /8x8 x 8′, number 2: rot or borers, soft at the heart/);
    await page.locator("label.tick", { hasText: "Receiving list" }).click();
    const sheet = page.locator(".paper", { has: page.locator(".paper__title", { hasText: "Receiving list" }) });
    await sheet.waitFor({ state: "attached" });
    const rows = await sheet.locator("tbody tr").allTextContents();
    assert.equal(rows.length, Object.keys((await project(page)).file.project.progress.pieces).length);
    assert.ok(rows.some((row) => /^back.*rot or borers, soft at the heart$/.test(row)), rows.slice(0, 4).join("\n"));
  });
});

test("bad sizes are answered with a sentence and nothing is lost", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    const fold = await open(page);
    await lookAt(fold, "1 of 4x8 × 14′");
    const path = (field) => `progress.pieces.4x8/168/1.${field}`;
    await type(page, path("real_length"), "0");
    await page.locator(".came__entry .problem, .came__entry .field__refused:not(:empty)").first().waitFor();
    await type(page, path("real_length"), "11'");
    await verdict(page).getByText(/^Send it back, or elsewhere: Does not do for R1: short by/).waitFor();
    await type(page, path("near.breadth"), "nonsense");
    await page.locator(".came__entry .field__refused:not(:empty)").first().waitFor();
    assert.equal((await project(page)).file.project.progress.pieces["4x8/168/1"].real_length_in, 132);
  });
});
