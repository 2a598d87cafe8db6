// What the whole job costs, held against the native report, and the spacing of the rafters at the same strength.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, fileIn, go, input, project, report, type, unfold } from "./hands.mjs";

const COST = "What the whole job costs";
const SPACING = "What the spacing costs";
const CASES = { phone: [sizes.phone, BEGIN.barn, "$", 1250], desk: [sizes.desk, BEGIN.store, "€", 381] };

const money = (text) => Number(text.replace(/[^\d.]/g, ""));
const rows = (part) =>
  part.locator("tbody tr").evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent.trim())));

for (const [name, [size, button, sign, hundred]] of Object.entries(CASES)) {
  test(`the whole job is priced part by part (${name})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, button);
      const said = (await report((await project(page)).text)).buying.whole_job;
      await go(page, "Mill");
      const fold = await unfold(page, COST);
      await fold.locator(".chart__place svg").waitFor();
      const shown = await rows(fold);
      assert.equal(shown.length, said.lines.length + 1);
      said.lines.forEach((line, index) => {
        const [what, , cost] = shown[index + 1];
        assert.equal(what, line.what);
        assert.ok(Math.abs(money(cost) - line.cost) <= 0.5, `${what}: ${cost} for ${line.cost}`);
      });
      const total = await fold.locator(".costs__total").textContent();
      assert.ok(total.includes(sign) && Math.abs(money(total.replace(/\.$/, "")) - said.total) <= 0.5, total);
      await picture(fold, `cost-${name}`);
      assert.deepEqual(await axe(page), []);

      // A price is typed by the foot or by the metre, and stands in the file by the hundred feet.
      await type(page, "buying.prices.sheet_100_feet", "12.5");
      const { file } = await project(page);
      assert.equal(file.project.buying.prices.sheet_per_100_feet, hundred);
    });
  });
}

test("a price not known is said, never taken for nothing", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Mill");
    const fold = await unfold(page, COST);
    await input(page, "buying.prices.peg").fill("");
    await page.keyboard.press("Tab");
    await fold.locator(".costs__total", { hasText: "without the one that has no price yet" }).waitFor();
    const pegs = (await rows(fold)).find(([what]) => what.startsWith("pegs"));
    assert.deepEqual(pegs.slice(2), ["—", "not known yet"]);
    await type(page, "buying.prices.peg", "a lot");
    await fold.locator(".field--wrong", { has: page.locator('[id="buying.prices.peg"]') }).waitFor();
  });
});

test("concrete past bags is told by its volume and priced by it; pegs of their own diameter have their own line", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    const { file } = await project(page);
    Object.assign(file.project.fixings.pier, { footing_width_in: 120, footing_thickness_in: 48, pier_width_in: 60, depth_in: 240, is_round: false });
    const own = ["tenon_thickness_in", "tenon_offset_in", "tenon_length_in", "housing_in", "peg_from_shoulder_in", "drawbore_in", "scarf_kind"];
    file.project.exceptions = { P2: { ...Object.fromEntries(own.map((field) => [field, null])), peg_in: 0.75, reason: "" } };
    await fileIn(page, JSON.stringify(file));
    await go(page, "Mill");
    const fold = await unfold(page, COST);
    await fold.locator(".chart__place svg").waitFor();
    const found = await rows(fold);
    const concrete = found.find(([what]) => what.includes("concrete"));
    assert.match(concrete[0], /ready-mixed concrete: too much for bags/);
    assert.match(concrete[1], /^\d+\.\d\d yd³$/);
    assert.deepEqual(concrete.slice(2), ["—", "not known yet"]);
    assert.deepEqual(found.filter(([what]) => what.startsWith("pegs of")).map(([what, count]) => [what.replace(/\s+/g, " "), count]), [
      ["pegs of 1″, with spares", "23"],
      ["pegs of 3⁄4″, with spares", "3"],
    ]);
    await type(page, "buying.prices.concrete_yard", "180");
    await page.waitForFunction(() => [...document.querySelectorAll("tbody tr")].some((row) => /ready-mixed/.test(row.textContent) && /180/.test(row.textContent)));
    await picture(fold, "cost-concrete");
  });
});

for (const [name, [size, button]] of Object.entries(CASES)) {
  test(`the spacings that carry are found one by one, and the work can be stopped (${name})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, button);
      await go(page, "Mill");
      const fold = await unfold(page, SPACING);
      await fold.getByRole("button", { name: "Work out what carries" }).click();
      await fold.getByRole("button", { name: "Stop" }).click();
      await fold.getByText(/^Stopped after \d+ of \d+\.$/).waitFor();
      await fold.getByRole("button", { name: "Work out what carries" }).click();
      await fold.getByText(/^All \d+ looked at\.$/).waitFor({ timeout: 120_000 });
      const table = page.getByRole("group", { name: "Rafter spacing at the same strength, the figures" });
      const found = await rows(table);
      assert.equal(found.filter(([spacing]) => spacing.endsWith("now")).length, 1);
      const asked = found.map((row) => Number.parseInt(row[4], 10));
      assert.ok(found.length > 4 && asked.every((share) => share > 0 && share <= 100), asked.join());
      await picture(fold, `held-${name}`);
      assert.deepEqual(await axe(page), []);
    });
  });
}
