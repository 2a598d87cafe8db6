// What is typed wrong, and frames that cannot be: one plain sentence, the last good drawing, a file that can be read.
import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, visit } from "./harness.mjs";
import { BEGIN, begin, choose, fieldOf, fileIn, go, input, project, report, step, turn, type, unfold, unfoldAll } from "./hands.mjs";

/** Never a value of any field. */
const REFUSED = ["abc", "", "NaN", "1e99", "7' 14", "🪵", "7 8 9 10", "--3"];
/** A value of some fields, or a value that is read and then found to be too much. */
const DOUBTFUL = ["0", "-5", "99999'"];

/** Puts each text into each field, one after another, and answers what is amiss. Runs in the page: hundreds of tries. */
async function tryFields({ texts, refused }) {
  const settled = () => new Promise((done) => setTimeout(done, 0));
  const amiss = [];
  const drawings = () => [...document.querySelectorAll(".drawing-view svg")].map((svg) => svg.outerHTML);
  const strip = () => document.querySelector(".strip__cells").textContent;
  // Words are words, whatever they are.
  const typed = [...document.querySelectorAll(".page input.field__input")].filter((field) => !field.id.endsWith(".source"));
  const fields = typed.map((field) => field.id);
  for (const id of fields) {
    const before = document.getElementById(id).value;
    for (const text of texts) {
      const field = document.getElementById(id);
      if (text === "" && field.placeholder !== "") {
        // An open value may be left empty.
        continue;
      }
      const drawn = drawings();
      field.focus();
      field.value = text;
      field.dispatchEvent(new InputEvent("input", { bubbles: true }));
      await settled();
      const box = field.closest(".field");
      const said = [...box.querySelectorAll(".field__refused, .problem__says")].map((line) => line.textContent.trim()).filter(Boolean);
      const name = `${id} ← “${text}”`;
      if (document.querySelector(".stopped")) {
        return { fields, amiss: [...amiss, `${name}: the app stopped`] };
      }
      const troubled = document.querySelector(".strip__trouble--stop") !== null;
      const isWrong = refused || troubled;
      if (refused && said.length === 0) {
        amiss.push(`${name}: no sentence at the field, the value is ${field.value}`);
      }
      if (said.some((line) => !/[.:]$|[.]”?$/.test(line) || /undefined|NaN\b(?!”)|\binf\b/.test(line.replaceAll(`“${text}”`, "")))) {
        amiss.push(`${name}: ${said.join(" | ")}`);
      }
      if (said.length > 0 && field.getAttribute("aria-invalid") !== "true") {
        amiss.push(`${name}: the field is not marked as wrong`);
      }
      const now = drawings();
      if (now.length === 0 || now.some((svg) => /NaN|\binf\b|Infinity/.test(svg)) || /NaN|inf\b/.test(strip())) {
        amiss.push(`${name}: the drawing or the strip is broken`);
      } else if (isWrong && now.join() !== drawn.join()) {
        amiss.push(`${name}: the drawing did not stay`);
      }
      field.dispatchEvent(new KeyboardEvent("keydown", { key: "Escape", bubbles: true }));
      await settled();
      field.blur();
      await settled();
      if (document.getElementById(id)?.value !== before) {
        amiss.push(`${name}: Escape left ${document.getElementById(id)?.value} for ${before}`);
      }
    }
  }
  return { fields, amiss };
}

for (const [place, least] of [["Site", 23], ["Frame", 85]]) {
  test(`nonsense in every field of ${place}`, async () => {
    await visit(sizes.desk, {}, async ({ page }) => {
      // The example has everything chosen, so that every field is there.
      await begin(page, BEGIN.barn);
      const before = await project(page);
      await go(page, place);
      await unfoldAll(page);
      if (place === "Site") {
        await choose(page, "site.soffit", "follows its roof");
        await choose(page, "place.edition", "ASCE 7-22");
        await type(page, "place.seismic.s_ds", "0.3");
        await input(page, "above.thermal").selectOption({ label: "as my own C_t says" });
        await input(page, "above.thermal_factor").waitFor();
      } else {
        await page.getByRole("button", { name: "Add a value" }).click();
        await type(page, "wood.own.0.value", "900");
      }
      await unfoldAll(page);
      for (const [texts, refused] of [[REFUSED, true], [DOUBTFUL, false]]) {
        const { fields, amiss } = await page.evaluate(tryFields, { texts, refused });
        assert.ok(fields.length >= least, `only ${fields.length} fields were found`);
        assert.deepEqual(amiss, []);
      }
      const after = await project(page);
      assert.deepEqual({ ...after.file.project.frame, site: null }, { ...before.file.project.frame, site: null });
      assert.deepEqual(after.file.project.fixings, before.file.project.fixings);
    });
  });
}

test("a page full of nonsense still gives a file that can be read", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.millimetres);
    const good = await project(page);
    for (const text of [...REFUSED, ...DOUBTFUL]) {
      for (const place of ["Site", "Frame"]) {
        await go(page, place);
        await unfoldAll(page);
        await page.evaluate((typed) => {
          for (const field of document.querySelectorAll(".page input.field__input")) {
            field.value = typed;
            field.dispatchEvent(new InputEvent("input", { bubbles: true }));
          }
        }, text);
        assert.ok((await page.locator(".drawing-view svg").count()) > 0, text);
      }
      const bad = await project(page);
      const said = await report(bad.text);
      if (REFUSED.includes(text)) {
        assert.equal(bad.text, good.text, `“${text}” was taken by a field`);
      }
      assert.ok(said.problems.length + (said.sticks?.length ?? 0) > 0, text);
      await fileIn(page, good.text);
      await page.locator(".strip__trouble--stop").waitFor({ state: "detached" });
    }
  });
});

/** A stop stands at the field, its way out is taken, and the frame can be built. */
async function wayOut(page, path, says) {
  const problem = fieldOf(page, path).locator(".problem--stop");
  await problem.first().waitFor({ timeout: 5000 }).catch(() => assert.fail(`no sentence at ${path}`));
  assert.match(await problem.first().innerText(), says);
  assert.ok((await page.locator(".drawing-view svg").count()) > 0, "the last good drawing is gone");
  assert.ok(await page.locator(".page__stale").isVisible(), "nothing says that the drawing is the last good one");
  const trouble = await page.locator(".strip__trouble--stop").innerText();
  assert.match(trouble, /Stops the frame/);
  await problem.first().getByRole("button", { name: /^Use / }).click();
  const left = page.locator(".strip__trouble--stop");
  await left.waitFor({ state: "detached", timeout: 3000 }).catch(async () => assert.fail(`“Use …” did not mend it: ${await left.innerText()}`));
}

/** One thing that cannot be: how it comes about, where the sentence stands, what it says. */
const IMPOSSIBLE = [
  ["a reach of 5 inches", async (page) => type(page, "frame.reach", '5"'), "frame.reach", /reach must be at least 2′/],
  ["the beam above the ledger", async (page) => {
    await choose(page, "frame.heights.fixed", "ledger and beam");
    await type(page, "frame.heights.beam_seat", "15'");
  }, "frame.heights.ledger_seat", /ledger/i],
  ["posts in each other", async (page) => {
    await unfold(page, "Posts");
    await type(page, "frame.posts.1.x", "8");
  }, "frame.posts.1.x", /P2|post/i],
  ["a seat wider than its timber", async (page) => {
    await unfold(page, "Seats, head and tail");
    await type(page, "frame.beam_seat_length", "11");
  }, "frame.beam_seat_length", /seat on the beam must be at most/],
  ["rafters without end", async (page) => type(page, "frame.rafters.spacing", "11'"), "frame.rafters.spacing", /spacing must be at most/],
  ["no tail", async (page) => {
    await unfold(page, "Seats, head and tail");
    await type(page, "frame.tail", "0");
  }, "frame.tail", /tail must be at least/],
];

for (const [name, make, path, says] of IMPOSSIBLE) {
  test(`impossible: ${name}`, async () => {
    await visit(sizes.phone, {}, async ({ page }) => {
      await begin(page, BEGIN.inches);
      await go(page, "Frame");
      await make(page);
      await wayOut(page, path, says);
      const said = await report((await project(page)).text);
      assert.ok(said.sticks.length > 0);
      assert.ok(said.problems.every((problem) => !problem.stops));
    });
  });
}

test("impossible: a scarf longer than a bay", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.inches);
    await go(page, "Frame");
    await unfold(page, "Beam and scarfs");
    await turn(page, "frame.scarfs.count_is_mine");
    await type(page, "frame.scarfs.lap", "96");
    const problem = page.locator(".page .problem--stop");
    await problem.first().waitFor({ timeout: 5000 });
    assert.match(await problem.first().innerText(), /shorter lap/);
    assert.ok(await page.locator(".page__stale").isVisible());
    await type(page, "frame.scarfs.lap", "30");
    await page.locator(".strip__trouble--stop").waitFor({ state: "detached", timeout: 3000 });
  });
});

test("impossible: a post placed in order by Use, after its neighbours", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await begin(page, BEGIN.inches);
    await go(page, "Frame");
    await unfold(page, "Posts");
    await type(page, "frame.posts.2.x", "60");
    await wayOut(page, "frame.posts.2.x", /P3|post/i);
  });
});

for (const n_posts of [0, 1]) {
  test(`impossible: a file with ${n_posts} posts can be mended`, async () => {
    await visit(sizes.phone, {}, async ({ page }) => {
      await begin(page, BEGIN.inches);
      const { file } = await project(page);
      file.project.frame.posts = file.project.frame.posts.slice(0, n_posts);
      await fileIn(page, JSON.stringify(file));
      await page.locator(".strip__trouble--stop", { hasText: "two posts at least" }).waitFor();
      await go(page, "Frame");
      const posts = await unfold(page, "Posts");
      assert.match(await posts.locator(".problem--stop").first().innerText(), /two posts at least/);
      await posts.getByRole("button", { name: "Add a post" }).click();
      if (n_posts === 0) {
        await posts.getByRole("button", { name: "Add a post" }).click();
      }
      assert.ok((await posts.locator(".group").count()) >= 2, "“Add a post” adds none");
      const none = page.locator(".strip__trouble--stop", { hasText: "two posts at least" });
      await none.waitFor({ state: "detached", timeout: 3000 });
    });
  });
}

test("steppers never walk out of what can be typed", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.inches);
    await go(page, "Frame");
    await type(page, "frame.rafters.spacing", "2");
    await step(page, "frame.rafters.spacing", "less", 4);
    assert.match(await input(page, "frame.rafters.spacing").inputValue(), /^0/);
    const problem = fieldOf(page, "frame.rafters.spacing").locator(".problem--stop", { hasText: "spacing must be at least" });
    await problem.getByRole("button", { name: /^Use / }).click();
    await problem.waitFor({ state: "detached" });
    assert.equal((await project(page)).file.project.frame.rafters.spacing_in, 8);
  });
});

test("a file with a reach past the moon opens with its sentence", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.inches);
    const { text } = await project(page);
    await fileIn(page, text.replace(/"reach_in": [\d.]+/, '"reach_in": 1e300'));
    await page.locator(".strip__trouble--stop").waitFor();
    await go(page, "Frame");
    await page.locator('.field', { has: input(page, "frame.reach") }).locator(".problem--stop").waitFor();
    await fieldOf(page, "frame.reach").getByRole("button", { name: /^Use / }).click();
    assert.equal((await project(page)).file.project.frame.reach_in, 480);
  });
});
