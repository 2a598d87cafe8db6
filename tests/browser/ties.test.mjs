// Holes bored for ties: typed on the frame's page, marked on the sticks, told where they are in the way, and taken back.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, choose, fieldOf, go, input, project, report, saved, type, unfold } from "./hands.mjs";

const BASE = "fixings.post_base.bores";
const SCARF = "fixings.scarf.bores";

/** What is typed in each system, and what the fields, the sheet and the file then hold. */
const KINDS = {
  barn: { hole: "5/8", is: "5⁄8″", first: "4″", apart: "3″", inches: 0.625, thick: "3", use: /Use 1 1⁄2″/ },
  store: { hole: "14", is: "14 mm", first: "100 mm", apart: "75 mm", inches: 14 / 25.4, thick: "90", use: /Use 38 mm/ },
};

async function stick(page, mark) {
  await go(page, "Bench");
  const back = page.getByRole("link", { name: "All sticks" });
  if (await back.count()) await back.click();
  await page.getByRole("link", { name: new RegExp(`^${mark} `) }).first().click();
  await page.locator("h1", { hasText: new RegExp(`^${mark}$`) }).waitFor();
}

async function walked(example, name, size) {
  const kind = KINDS[example];
  await visit(size, {}, async ({ page }) => {
    await begin(page, BEGIN[example]);
    await go(page, "Frame");
    await unfold(page, "What fixes it");
    assert.equal(await input(page, `${SCARF}.diameter`).getAttribute("placeholder"), "none bored");
    assert.equal(await input(page, `${SCARF}.first`).count(), 0, "a hole that is not bored has no place");
    assert.equal(await input(page, `${SCARF}.way`).count(), 0, "a scarf's holes run one way only");
    await type(page, "fixings.scarf.count", "2");
    await type(page, `${SCARF}.diameter`, kind.hole);
    const shown = async (part) => (await input(page, `${SCARF}.${part}`).inputValue()).replace(/\s+/g, " ");
    const plain = (text) => text.replace("⁄", "/").replace("″", "").replace(" mm", "");
    assert.equal(plain(await shown("first")), plain(kind.first), "clear of the tip");
    assert.equal(plain(await shown("apart")), plain(kind.apart), "clear of each other");
    await fieldOf(page, `${SCARF}.diameter`).scrollIntoViewIfNeeded();
    await picture(page, `ties-scarf-${name}`);
    assert.deepEqual(await axe(page), []);

    // Too thick a hole names the widest there may be, and one press takes it.
    await type(page, `${SCARF}.diameter`, kind.thick);
    await fieldOf(page, `${SCARF}.diameter`).getByRole("button", { name: kind.use }).click();
    await type(page, `${SCARF}.diameter`, kind.hole);

    if (example === "store") {
      await type(page, "fixings.post_base.count", "2");
      await type(page, `${BASE}.diameter`, kind.hole);
    }
    await choose(page, `${BASE}.way`, "out from the wall");
    await saved(page);
    await fieldOf(page, `${BASE}.diameter`).scrollIntoViewIfNeeded();
    await picture(page, `ties-base-${name}`);

    const { text, file } = await project(page);
    const { scarf, post_base } = file.project.fixings;
    assert.ok(Math.abs(scarf.bores.diameter_in - kind.inches) < 1e-6 && post_base.bores.way === "outward");
    const marks = (await report(text)).sticks.find((one) => one.mark === "P1").marks;
    const holes = marks.filter((mark) => mark.what.endsWith("for its base"));
    assert.ok(holes.length === 2 && holes.every((hole) => hole.face === "outer face"), JSON.stringify(holes));

    await stick(page, "P1");
    const hole = page.locator(".mark", { hasText: "hole 1 for its base" });
    await hole.waitFor();
    assert.match((await hole.textContent()).replace(/\s+/g, " "), /bore .* through, square to the face; .* up from the foot/);
    await hole.scrollIntoViewIfNeeded();
    await picture(page, `ties-mark-${name}`);
    await page.getByRole("button", { name: "Yes, it lies so" }).click();
    await hole.locator(".mark__box").check();
    await page.locator("h1").scrollIntoViewIfNeeded();
    await picture(page, `ties-sheet-${name}`);

    // Emptied, nothing is bored; one step back it is again.
    await go(page, "Frame");
    await unfold(page, "What fixes it");
    await input(page, `${SCARF}.diameter`).fill("");
    await input(page, `${SCARF}.diameter`).press("Tab");
    await input(page, `${SCARF}.first`).waitFor({ state: "detached" });
    await page.getByRole("button", { name: /^Undo/ }).first().click();
    await input(page, `${SCARF}.first`).waitFor();
    assert.equal(plain(await shown("first")), plain(kind.first));
  });
}

test("holes for ties on a phone, in inches", () => walked("barn", "barn-phone", sizes.phone));
test("holes for ties at a desk, in inches", () => walked("barn", "barn-desk", sizes.desk));
test("holes for ties on a phone, in millimetres", () => walked("store", "store-phone", sizes.phone));
test("holes for ties at a desk, in millimetres", () => walked("store", "store-desk", sizes.desk));

test("a hole too near a post's foot is told with the move that clears it", async () => {
  await visit(sizes.phone, { solids: true }, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Frame");
    await unfold(page, "What fixes it");
    await type(page, `${BASE}.first`, "2");
    await saved(page);
    const { text } = await project(page);
    const says = /holes, the first number 1 for its base: only 2″ from its centre to the end; 3 1⁄2″ is the least/;
    assert.match(JSON.stringify(await report(text)), says);
    await go(page, "Frame");
    await page.getByText(/the first number 1 for its base/).first().waitFor();
    await page.getByText(/the first number 1 for its base/).first().scrollIntoViewIfNeeded();
    await picture(page, "ties-told-phone");
  });
});
