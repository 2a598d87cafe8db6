// States of the job kept under names: kept over a reload, compared in words, gone back to, renamed, taken away and brought back.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, sizes, started, visit } from "./harness.mjs";
import { BEGIN, begin, drawer, go, project, saved, step, strip, type, unfold } from "./hands.mjs";

const states = (page) => page.locator(".state");
const of = (page, name) => states(page).filter({ has: page.getByRole("button", { name: `Go back to it: ${name}` }) });

async function keep(page, name) {
  await go(page, "Papers");
  await unfold(page, "Named states");
  await page.locator("#state-name").fill(name);
  await page.getByRole("button", { name: "Keep it" }).click();
}

const press = (page, name, word) => of(page, name).getByRole("button", { name: word }).click();

async function job(size, begun) {
  await visit(size, {}, async ({ page }) => {
    await begin(page, begun);
    const before = await project(page);
    const [was, now] = [await strip(page), {}];
    await keep(page, "as ordered");
    assert.equal(await states(page).count(), 1);
    assert.match(await of(page, "as ordered").innerText(), /This is the job as it is now/);
    assert.ok(await of(page, "as ordered").getByRole("button", { name: "Go back to" }).isDisabled());
    await go(page, "Frame");
    await step(page, "frame.rafters.spacing", "less", 3);
    await saved(page);
    Object.assign(now, await strip(page));
    assert.notEqual(now.sticks, was.sticks);
    await keep(page, "closer rafters");
    await page.reload();
    await started(page);
    await unfold(page, "Named states");
    assert.equal(await states(page).count(), 2);
    const says = await of(page, "as ordered").locator(".state__says").innerText();
    const fewer = Number(now.sticks) - Number(was.sticks);
    assert.ok(says.startsWith(`${was.sticks} sticks, ${Math.abs(fewer)} ${fewer > 0 ? "fewer" : "more"} than now; `), says);
    assert.match(says, / (lb|kg), [\d,]+ (lb|kg) (less|more) than now; .*[\d.]+ (less|more) than now\. Worst check: .*, (now |as now)/s);
    assert.match(await of(page, "as ordered").innerText(), /kept .*\d/);
    await press(page, "as ordered", "Go back to");
    assert.deepEqual((await strip(page)).sticks, was.sticks);
    assert.equal((await project(page)).text, before.text);
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    assert.equal((await strip(page)).sticks, now.sticks, "going back is one step");
  });
}

test("a named state is kept, and gone back to: phone, inches", () => job(sizes.phone, BEGIN.barn));
test("a named state is kept, and gone back to: desk, millimetres", () => job(sizes.desk, BEGIN.store));

test("going back keeps the units that are shown", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await keep(page, "first");
    await go(page, "Frame");
    await type(page, "frame.reach", "11'");
    await drawer(page);
    await page.locator(".segment", { has: page.locator('input[name="units"]'), hasText: "millimetres" }).click();
    await drawer(page);
    await go(page, "Papers");
    await unfold(page, "Named states");
    await press(page, "first", "Go back to");
    assert.equal((await project(page)).file.project.units, "metric");
  });
});

test("a state is renamed, taken away and brought back; the project's file knows nothing of it", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    const before = await project(page);
    for (const [name, refusal] of [["", /Type a name/], ["x".repeat(61), /At most 60 characters/]]) {
      await keep(page, name);
      await page.locator("#state-refused", { hasText: refusal }).waitFor();
    }
    await keep(page, "one");
    await keep(page, "two");
    await keep(page, "two");
    await page.locator("#state-refused", { hasText: "There is a state of that name." }).waitFor();
    assert.equal(await states(page).count(), 2);
    const name = of(page, "one").getByRole("textbox", { name: "Name of this state" });
    await name.fill("after the pier was measured");
    await name.press("Tab");
    await of(page, "after the pier was measured").waitFor();
    const other = of(page, "two").getByRole("textbox", { name: "Name of this state" });
    await other.fill("after the pier was measured");
    await other.press("Tab");
    await page.locator(".notice", { hasText: "Not renamed. There is a state of that name." }).waitFor();
    assert.equal(await other.inputValue(), "two");
    await press(page, "after the pier was measured", "Take it away");
    assert.equal(await states(page).count(), 1);
    await page.reload();
    await started(page);
    await unfold(page, "Named states");
    assert.equal(await states(page).count(), 1);
    await page.getByRole("button", { name: "Bring it back" }).click();
    assert.equal(await states(page).count(), 2);
    assert.deepEqual(
      await states(page).getByRole("textbox").evaluateAll((fields) => fields.map((field) => field.value)),
      ["two", "after the pier was measured"],
    );
    assert.equal((await project(page)).text, before.text);
    // Another project has none; this one's come back with it.
    await drawer(page);
    await begin(page, BEGIN.store);
    await go(page, "Papers");
    assert.equal(await states(page).count(), 0);
    await drawer(page);
    await page.getByRole("button", { name: "Delete Wool barn lean-to" }).click();
    await page.locator(".drawer").getByRole("button", { name: "Bring it back" }).click();
    await page.locator(".drawer .list__open", { hasText: "Wool barn" }).click();
    await page.locator(".head__project", { hasText: "Wool barn" }).waitFor();
    assert.equal(await states(page).count(), 2);
  });
});

test("twenty states at most, and a full device says so and loses nothing", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    for (let number = 1; number <= 20; number += 1) {
      await keep(page, `state ${number}`);
    }
    assert.equal(await states(page).count(), 20);
    assert.ok(await page.getByRole("button", { name: "Keep it" }).isDisabled());
    await page.locator("#state-refused", { hasText: "20 are kept" }).waitFor();
    await press(page, "state 20", "Take it away");
    assert.ok(await page.getByRole("button", { name: "Keep it" }).isEnabled());
    const kept = () => page.evaluate(() => Object.entries(localStorage).filter(([key]) => /^outshot-named-(?!gone)/.test(key)));
    const before = await kept();
    await page.evaluate(() => {
      let size = 4_000_000;
      while (size > 10) {
        try {
          localStorage.setItem(`filler-${size}-${Math.random()}`, "x".repeat(size));
        } catch {
          size = Math.floor(size / 2);
        }
      }
    });
    await keep(page, "no room for this");
    await page.locator(".notice", { hasText: /Not kept: .*full/ }).waitFor();
    assert.equal(await page.locator("#state-name").inputValue(), "no room for this", "the name can be tried again");
    assert.deepEqual(await kept(), before);
    assert.equal(await states(page).count(), 19);
  });
});

for (const width of [320, 1280]) {
  test(`named states fit ${width} px, are large enough for a thumb, and axe finds nothing`, async () => {
    await visit({ ...sizes.phone, viewport: { width, height: 740 } }, {}, async ({ page }) => {
      await begin(page, BEGIN.store);
      await keep(page, "as ordered");
      await go(page, "Frame");
      await step(page, "frame.rafters.spacing", "less", 2);
      await keep(page, "after the pier was measured");
      await press(page, "after the pier was measured", "Take it away");
      await page.getByRole("button", { name: "Bring it back" }).waitFor();
      assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= width);
      const boxes = await page.locator(".state button, .state input, .another button, .another input, .projects__gone button").evaluateAll((all) =>
        all.filter((one) => one.checkVisibility()).map((one) => [one.getBoundingClientRect().width, one.getBoundingClientRect().height]),
      );
      assert.ok(boxes.length >= 5 && boxes.every(([wide, high]) => wide >= 44 && high >= 44), JSON.stringify(boxes));
      assert.deepEqual(await axe(page), []);
    });
  });
}
