// The Mill with input that cannot work: each is answered with a sentence that says what is wrong, by how much, and what to do.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, fieldOf, fileIn, go, project, type, unfold } from "./hands.mjs";

/** Opens the barn's file with that changed in it. */
async function changed(page, begins, change) {
  await begin(page, begins);
  const { file } = await project(page);
  change(file.project);
  await fileIn(page, JSON.stringify(file));
  await go(page, "Mill");
}

const said = async (part) => (await part.textContent()).replace(/\s+/g, " ");

for (const [name, size, begins] of [["phone", sizes.phone, BEGIN.barn], ["desk", sizes.desk, BEGIN.store]]) {
  test(`no length is long enough: which sticks, by how much, three ways out (${name})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await changed(page, BEGIN.barn, (one) => { one.frame.reach_in = 222; });
      const stop = page.locator(".problem--stop", { hasText: "No length is long enough" });
      await stop.waitFor();
      const says = await said(stop);
      assert.match(says, /R1 needs 20′ .* with both ends docked, 4 .*″ more than the mill’s longest\. Shorten the tail, bring the beam nearer, or ask the mill for a special length\./);
      await picture(stop, `bad-length-${name}`);
      assert.deepEqual(await axe(page, ".page"), []);
    });
  });

  test(`lengths too short to part the beam say so where they are tapped off (${name})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await changed(page, begins, (one) => { one.mill.lengths_in = [96, 120]; });
      const lengths = page.locator('[id="mill.lengths"]');
      await lengths.getByText(/The beam cannot be divided so that every piece comes from the mill's lengths .* or longer stock/).waitFor();
      await picture(lengths, `bad-lengths-${name}`);
    });
  });

  test(`a stick of 30 ft does not go on a bed of 16 ft (${name})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await changed(page, begins, (one) => {
        one.mill.lengths_in = [360];
        one.truck.bed_in = 192;
      });
      const fold = await unfold(page, "Bringing it home");
      const stays = fold.locator(".problem__says", { hasText: /cannot go/ });
      await stays.first().waitFor();
      assert.match(await said(stays.first()), /cannot go: the bed is .* may stand out, so it is .* too long\. Three ways out: a longer trailer, the mill delivers it, or /);
      await fold.getByText("nothing to haul").waitFor();
      await picture(fold, `bad-trailer-${name}`);
    });
  });

  test(`an empty pile and a price of nothing say so (${name})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await changed(page, begins, (one) => {
        one.yard = [];
        one.mill.section_prices = [];
      });
      const pile = await unfold(page, "This is what he has");
      await pile.getByText("The pile is empty").waitFor();
      await unfold(page, "Prices");
      await type(page, "mill.per_board_foot", "0");
      const field = fieldOf(page, "mill.per_board_foot");
      await field.getByText(/Timber costs nothing here: no price is said for .*The least wood is ordered instead/).waitFor();
      await type(page, "mill.per_board_foot", "-1");
      await field.getByText("A price cannot be below nothing.").waitFor();
      await type(page, "mill.per_board_foot", "a lot");
      await field.getByText(/Not taken/).waitFor();
    });
  });
}

test("words of his own are asked for on the list, in the text and on paper", async () => {
  await visit(sizes.phone, {}, async ({ page, context }) => {
    await context.grantPermissions(["clipboard-read", "clipboard-write"]).catch(() => null);
    await begin(page, BEGIN.barn);
    await go(page, "Mill");
    const fold = await unfold(page, "How it is ordered");
    await fold.getByRole("heading", { name: "What else to ask of the wood" }).waitFor();
    await type(page, "buying.words.rafter", "felled in winter, =8 rings an inch");
    const grades = page.locator(".order__grade", { hasText: /felled in winter/ });
    await grades.first().waitFor();
    assert.match(await grades.first().textContent(), /no wane .*, felled in winter, =8 rings an inch$/);
    await picture(fold, "own-words");
    assert.deepEqual(await axe(page, ".page"), []);
    const { file } = await project(page);
    assert.deepEqual(file.project.buying.words, [{ role: "rafter", words: "felled in winter, =8 rings an inch" }]);
    const sheet = page.locator(".paper", { has: page.locator(".paper__title", { hasText: "Order list" }) });
    assert.match(await said(sheet), /felled in winter/);
  });
});
