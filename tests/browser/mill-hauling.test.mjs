// The Mill: how the timber comes home, and what the wood does in five years; against the native report of the same file.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, fact, go, input, project, report, turn, type, unfold } from "./hands.mjs";

const HOME = "Bringing it home";
const WOOD = "What the wood does in five years";

/** The native answer to the open project; the page stands at the papers then. */
const native = async (page) => report((await project(page)).text);

/** Nothing on the page is wider than the screen; what is pushed sideways stands in a box of its own. */
async function fitsAcross(page) {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.ok(over <= 0, `${over} px wider than the screen`);
}

for (const [name, size] of Object.entries({ phone: sizes.phone, desk: sizes.desk })) {
  test(`the loads are those of the report, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await go(page, "Mill");
      const fold = await unfold(page, HOME);
      const loads = fold.getByRole("heading", { level: 3, name: /^Load \d/ });
      await loads.first().waitFor();
      const told = (await native(page)).buying;
      await go(page, "Mill");
      await unfold(page, HOME);
      await loads.first().waitFor();
      assert.equal(await loads.count(), told.loads.length);
      assert.match(await fold.textContent(), /proven fewest for this payload/);
      // The first load: its sticks are listed in the order they are loaded, with what is needed first last.
      const first = fold.locator(".group", { has: page.getByRole("heading", { name: /^Load 1 / }) });
      const marks = told.loads[0].pieces_in_loading_order.map((piece) => piece.stick.marks.join(" + "));
      const listed = (await first.locator("ol > li").allTextContents()).map((line) => line.split(": ")[1]).join(", ");
      assert.equal(listed.replace(/\s+/g, " "), marks.join(", "));
      assert.ok(told.loads[0].pieces_in_loading_order.at(-1).stick.marks[0].startsWith("L"));
      assert.equal(await first.locator("svg .wood:not(text)").count(), marks.length);
      // Who carries the heaviest.
      const rows = fold.locator("table tbody tr");
      assert.equal(await rows.count(), told.carries.length);
      assert.match(await rows.first().textContent(), /8x10.*machine/s);
      await picture(fold, `hauling-${name}`);
      await fitsAcross(page);
      assert.deepEqual(await axe(page), []);
    });
  });

  test(`a trailer’s own weight counts, and what lies how is printed, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await go(page, "Mill");
      const fold = await unfold(page, HOME);
      await fold.getByRole("heading", { level: 3, name: /^Load 1 / }).waitFor();
      assert.match(await fold.textContent(), /own weight is not known here/);
      await type(page, "truck.own_weight", "1200 lb");
      await fold.getByText(/1,?200 lb are counted/).waitFor();
      const told = await native(page);
      const { loads } = told.buying;
      assert.ok(loads.every((load) => load.coupling_share > 0.0999 && load.coupling_share < 0.1501), JSON.stringify(loads.map((load) => load.coupling_share)));
      // The sheets of the pile and the loads stand in the pack once they are asked for.
      for (const title of ["What he has", "Loads"]) {
        await page.locator("label.tick", { hasText: title }).click();
      }
      const sheet = (title) => page.locator(".paper", { has: page.locator(".paper__title", { hasText: new RegExp(`^${title}$`) }) });
      await sheet("Loads").waitFor({ state: "attached" });
      assert.equal(await sheet("Loads").locator(".paper__load").count(), loads.length);
      const boxes = (await sheet("Loads").locator(".paper__boxes").allTextContents()).join("");
      assert.equal(boxes.length, loads.reduce((sum, load) => sum + load.pieces_in_loading_order.length, 0));
      for (const load of loads) {
        for (const says of load.says) {
          assert.ok((await sheet("Loads").textContent()).replace(/\s/g, "").includes(says.replace(/\s/g, "").slice(-20)), says);
        }
      }
      const rows = await sheet("What he has").locator("tbody tr").count();
      assert.equal(rows, told.buying.yard.plan.length);
      if (process.env.OUTSHOT_PICTURES) {
        await page.pdf({ path: `${process.env.OUTSHOT_PICTURES}/sheets-${name}.pdf`, preferCSSPageSize: true });
      }
    });
  });

  test(`a shorter bed leaves sticks behind and says the ways out, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await go(page, "Mill");
      const fold = await unfold(page, HOME);
      await fold.getByRole("heading", { level: 3, name: /^Load 1 / }).waitFor();
      await type(page, "truck.bed", "12'");
      await fold.locator(".problem__says", { hasText: /cannot go/ }).first().waitFor();
      const says = await fold.textContent();
      assert.match(says, /longer trailer, the mill delivers it, or one more scarf/);
      const told = await native(page);
      assert.ok(told.buying.hauling.cannot_go.length > 0);
      assert.ok(told.problems.some((problem) => problem.field === "truck.bed" && problem.nearest?.length_in === 192));
      await go(page, "Mill");
      await unfold(page, HOME);
      // A truck has no coupling.
      await fold.getByRole("heading", { level: 3, name: /^Load 1 / }).waitFor();
      assert.match(await fold.textContent(), /on the coupling/);
      await turn(page, "truck.is_trailer");
      await page.waitForFunction(() => !document.getElementById("truck.coupling_to_bed"));
      await page.waitForFunction(() => ![...document.querySelectorAll(".says")].some((list) => /on the coupling/.test(list.textContent)));
      await page.getByRole("button", { name: "Undo" }).first().click();
      await input(page, "truck.coupling_to_bed").waitFor();
    });
  });

  test(`five years of drying are those of the report, on a ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await go(page, "Mill");
      const fold = await unfold(page, WOOD);
      await fold.getByRole("heading", { level: 3, name: "What moves, year by year" }).waitFor();
      const told = await native(page);
      await go(page, "Mill");
      await unfold(page, WOOD);
      await fold.getByRole("heading", { level: 3, name: "What moves, year by year" }).waitFor();
      const wood = told.buying.wood;
      // Three that matter most, in sight; every movement in the folds of its joint, and the pitch.
      const three = fold.locator(".group", { has: page.getByRole("heading", { name: "The three that matter most" }) }).locator("li");
      assert.equal(await three.count(), 3);
      const told3 = wood.foremost.map((key) => wood.movements.find((movement) => movement.key === key));
      for (const [index, movement] of told3.entries()) {
        assert.ok((await three.nth(index).textContent()).startsWith(`${movement.joint}: `), movement.key);
      }
      const tall = await fold.evaluate((whole) => whole.getBoundingClientRect().height);
      assert.ok(tall < (name === "phone" ? 3000 : 2000), `${tall} px`);
      assert.equal(await fold.locator(".moves tbody tr").count(), wood.movements.length + 1);
      for (const movement of wood.movements) {
        assert.ok((await fold.textContent()).includes(movement.to_do), movement.key);
      }
      assert.match(await fold.textContent(), /shrinking drawn 10 times larger/);
      // The drawing of year one moves less than the dry one.
      const top = () => fold.locator("svg").first().innerHTML();
      const dry = await top();
      await fold.locator(".segment", { hasText: "Year one" }).click();
      await page.waitForFunction((before) => document.querySelector(".drawing-view svg") && before !== undefined, dry);
      assert.notEqual(await top(), dry);
      await picture(fold, `wood-${name}`);
      for (const summary of await fold.locator("details > summary").all()) {
        await summary.click();
      }
      await fold.getByRole("columnheader", { name: "By its rings" }).waitFor();
      await picture(fold, `wood-open-${name}`);
      // Weight at a moisture: 28.2 lb/ft³ at 12 %, and the slide goes by keys.
      const slide = page.locator("#wood-moisture");
      await slide.fill("12");
      assert.match(await fact(page, "A cubic foot, as large as it is then"), /^28 lb/);
      await slide.press("ArrowRight");
      assert.match(await fold.locator("output").textContent(), /13 %/);
      await fold.getByRole("button", { name: "Drier by 1 %" }).click();
      assert.match(await fold.locator("output").textContent(), /12 %/);
      await fitsAcross(page);
      assert.deepEqual(await axe(page), []);
    });
  });
}

test("in millimetres both folds speak millimetres, and print without their buttons", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await begin(page, BEGIN.store);
    await go(page, "Mill");
    const home = await unfold(page, HOME);
    await home.getByRole("heading", { level: 3, name: /^Load 1 / }).waitFor();
    const wood = await unfold(page, WOOD);
    await wood.getByRole("heading", { level: 3, name: "What each stick loses" }).waitFor();
    for (const fold of [home, wood]) {
      const says = await fold.locator("table, .says, .meanings").allTextContents();
      assert.doesNotMatch(says.join(" "), /\d″|\d lb/);
    }
    await page.emulateMedia({ media: "print" });
    assert.equal(await page.locator(".button:visible").count(), 0);
    assert.ok(await home.locator("svg").first().isVisible());
    await picture(home, "hauling-print");
    await picture(wood, "wood-print");
  });
});
