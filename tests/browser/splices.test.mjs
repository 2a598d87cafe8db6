// The ledger's splices: the program's own, moved by hand, said where they will not do, and given back to the program.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, drawer, fieldOf, go, input, project, step, type, unfold } from "./hands.mjs";

const PATH = "frame.ledger_splices.0";
/** The middles as the file has them; the file is fetched from another page. */
async function pieces(page) {
  const { file } = await project(page);
  await go(page, "Frame");
  await unfold(page, "Beam and scarfs");
  return file.project.frame.ledger_splices_in;
}

async function job(size, unit, name) {
  await visit(size, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    if (unit !== 1) {
      await drawer(page);
      await page.locator(".segment", { has: page.locator('input[name="units"]'), hasText: "millimetres" }).click();
      await drawer(page);
    }
    await go(page, "Frame");
    await unfold(page, "Beam and scarfs");
    assert.equal(await input(page, PATH).count(), 0, "the program places it");
    assert.deepEqual(await pieces(page), []);
    await page.getByRole("button", { name: "Keep these splices and move them by hand" }).click();
    assert.deepEqual(await pieces(page), [204]);
    assert.match(await fieldOf(page, PATH).innerText(), unit === 1 ? /8″ from the wall’s post 1[34]/ : /203 mm from the wall’s post 1[34]/);
    // An inch, or a centimetre, past where a stud's fixings let it be.
    await step(page, PATH, "more", unit === 1 ? 2 : 4);
    const [there] = await pieces(page);
    assert.ok(there > 205 && there < 206.5, `${there}`);
    const trouble = (await fieldOf(page, PATH).locator(".problem").allTextContents()).join(" ");
    assert.match(trouble, /Splice 1: it is .* from the wall's post 14, whose fixings would hold neither half/);
    assert.deepEqual(await axe(page), []);
    await picture(page, `splices-${name}`);
    await fieldOf(page, PATH).locator(".problem").first().getByRole("button").click();
    const [works] = await pieces(page);
    assert.ok(works <= 205.01 && works > 203, `${works}`);
    assert.doesNotMatch((await fieldOf(page, PATH).locator(".problem").allTextContents()).join(" "), /hold neither half/);
    await type(page, PATH, unit === 1 ? "50'" : "15000");
    assert.match((await fieldOf(page, PATH).locator(".problem").allTextContents()).join(" "), /too near the ledger's right end/);
    await page.getByRole("button", { name: "Let the program place the splices" }).click();
    assert.deepEqual(await pieces(page), []);
    assert.equal(await input(page, PATH).count(), 0);
  });
}

test("the ledger's splice by hand: phone, inches", () => job(sizes.phone, 1, "phone"));
test("the ledger's splice by hand: desk, millimetres", () => job(sizes.desk, 25.4, "desk"));
