// Whether it carries, as a person asks it: the worst check, its working, what would help, what is missing.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, PLACES, begin, go, project, report, strip, type, unfold } from "./hands.mjs";

const summary = (page) => page.locator(".strength-summary");

for (const [kind, size, begins] of [
  ["phone, inches", sizes.phone, BEGIN.barn],
  ["desk, millimetres", sizes.desk, BEGIN.store],
]) {
  test(`the checks are those of the native report (${kind})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, begins);
      const said = await report((await project(page)).text);
      await go(page, "Strength");
      await page.getByRole("button", { name: /^Show \d+ more$/ }).click();
      const shown = await page.locator(".check__says").allTextContents();
      assert.equal(shown.length, said.checks.length);
      const worst = said.checks[0];
      assert.ok(shown[0].startsWith(`${worst.member} ${worst.name}`), `${shown[0]} is not ${worst.says}`);
      if (worst.ratio) {
        assert.match(shown[0], new RegExp(`\\b${Math.round(worst.ratio * 100)} %`));
        assert.match((await strip(page))["worst check"], new RegExp(`${worst.member}.* ${Math.round(worst.ratio * 100)} %`));
      }
      const failing = said.checks.filter((check) => check.ratio !== null && !check.passes).length;
      if (failing > 0) {
        // The wall is for others to judge: it stands last, and counts as none of ours.
        assert.ok(said.checks.at(-1).for_others);
        assert.match(await summary(page).textContent(), new RegExp(`^${failing} of ${said.checks.filter((check) => !check.for_others).length} checks do not hold`));
      }
      assert.deepEqual(await axe(page, ".page"), []);
    });
  });
}

for (const [name, size] of [[BEGIN.barnExample, sizes.phone], [BEGIN.storeExample, sizes.desk]]) {
  test(`an example of the app holds: ${name}`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, name);
      const said = await report((await project(page)).text);
      assert.ok(said.checks.length > 140 && said.checks.every((check) => check.passes || check.ratio === null));
      await go(page, "Strength");
      await page.waitForFunction(() => /could not be made/.test(document.querySelector(".strength-summary").textContent));
      assert.doesNotMatch(await summary(page).textContent(), /not hold/);
      assert.equal(await page.locator(".check--over").count(), 0);
    });
  });
}

test("a check opens to its working, and a change that helps is one tap and one undo", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    const said = await report((await project(page)).text);
    await go(page, "Strength");
    const place = said.checks.findIndex((check) => check.ratio > 1 && check.member.startsWith("scarf"));
    assert.ok(place >= 0, "the barn has no failing scarf to help");
    const check = page.locator(`[data-check="${place}"]`);
    // A slow phone, so that there is time to stop.
    const machine = await page.context().newCDPSession(page);
    await machine.send("Emulation.setCPUThrottlingRate", { rate: 6 });
    await check.locator("summary").click();
    // The working is there at once; what would help is still looked for, and can be stopped and begun anew.
    await check.locator(".working__step").first().waitFor();
    await check.getByText("Looking for what would help").waitFor();
    await check.getByRole("button", { name: "Stop" }).click();
    assert.match(await check.getByRole("status").textContent(), /^Stopped after \d+ of \d+\.$/);
    const found = await check.locator(".help__way").count();
    await page.waitForTimeout(500);
    assert.equal(await check.locator(".help__way").count(), found, "nothing is found after the stop");
    await check.getByRole("button", { name: "Look for what would help" }).click();
    // A sheet that is closed meanwhile is left; opened again, it begins again.
    await check.locator("summary").first().click();
    assert.equal(await check.locator(".check__body").textContent(), "");
    await machine.send("Emulation.setCPUThrottlingRate", { rate: 1 });
    await check.locator("summary").first().click();
    const sources = await check.locator(".working__source").allTextContents();
    assert.ok(sources.length > 2 && sources.every((source) => source.length > 4), sources.join("\n"));
    // That check alone on paper, nothing of the app beside it.
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute("data-asked", "");
    });
    await check.getByRole("button", { name: "Print this check" }).click();
    await page.waitForSelector("body[data-asked]");
    await page.emulateMedia({ media: "print" });
    assert.equal(await page.locator(".app").isVisible(), false);
    assert.equal(await page.locator(".calculation .working__step").count(), sources.length);
    assert.match(await page.locator(".calculation").innerText(), /licensed engineer/);
    await page.emulateMedia({ media: "screen" });
    await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
    await check.getByText("Looked through.").waitFor();
    const way = check.locator(".help__way").first();
    // A button lays its parts out side by side: a sentence is one of them, whatever fractions are in it.
    const nodes = await check.locator(".help__way").evaluateAll((all) => all.map((button) => button.childNodes.length));
    assert.ok(nodes.length > 0 && nodes.every((count) => count === 1), `${nodes}`);
    assert.deepEqual(await axe(page, ".page"), []);
    const words = await way.textContent();
    const before = await summary(page).textContent();
    await way.click();
    await page.waitForFunction((before) => document.querySelector(".strength-summary").textContent !== before, before);
    const after = await report((await project(page)).text);
    const alike = after.checks.filter((found) => found.name === said.checks[place].name && found.member.startsWith("scarf"));
    assert.ok(alike.every((found) => found.ratio <= 1), `${words}: ${JSON.stringify(alike.map((found) => found.ratio))}`);
    await page.getByRole("button", { name: "Undo" }).click();
    const back = await report((await project(page)).text);
    assert.deepEqual(back.checks.map((found) => found.ratio), said.checks.map((found) => found.ratio));
  });
});

test("a tapped stick shows its own checks, and the address keeps it", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Strength");
    // What could not be judged hides nothing of what was.
    const first = page.locator(".strip__cell").first();
    assert.match(await first.locator(".strip__value").innerText(), / \d+ %$/);
    assert.equal(await first.locator(".strip__open").innerText(), "1 not judged");
    await page.locator('.drawing [data-stick="P2"]').first().click();
    await page.getByRole("heading", { name: "Checks of P2" }).waitFor();
    const shown = await page.locator(".check__says").allTextContents();
    assert.ok(shown.length > 1 && shown.every((text) => text.startsWith("P2 ")), shown.join("\n"));
    assert.match(page.url(), /#\/strength\/P2$/);
    await page.getByRole("link", { name: "All checks" }).click();
    await page.getByRole("heading", { name: "Checks, worst first" }).waitFor();
  });
});

test("what nobody has said is not judged, and counts when it is said", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.inches);
    await go(page, "Strength");
    await page.locator(".check__says").first().waitFor();
    const all = () => page.locator(".check__says").allTextContents();
    assert.ok((await all()).some((text) => /not judged: ground snow by ASCE 7-16 is missing/.test(text)), (await all()).join("\n"));
    assert.ok((await all()).some((text) => /not judged: wind speed is missing/.test(text)));
    await go(page, "Site");
    await unfold(page, "Snow");
    await type(page, "place.ground_snow", "30");
    await go(page, "Strength");
    assert.ok(!(await all()).some((text) => /ground snow .*is missing/.test(text)), (await all()).join("\n"));
  });
});

test("curves along the beam, loads and ways are drawn, with figures beside them", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Strength");
    const along = await unfold(page, "Along the beam");
    await along.locator(".chart__svg").first().waitFor();
    assert.equal(await along.locator(".chart__svg").count(), 4);
    assert.equal(await along.locator("tbody tr").count(), 6, "four posts and two scarfs");
    const envelope = await along.locator("tbody").textContent();
    await page.locator("#along-case").selectOption({ index: 2 });
    await page.waitForFunction((before) => document.querySelector("#along-case").closest("details").querySelector("tbody").textContent !== before, envelope);
    await along.locator(".drawing").waitFor();
    assert.match(await along.locator(".drawing").textContent(), /\d+ × [\d,.]+ (lb|kN)/, "what acts in that case is drawn");
    const loads = await unfold(page, "Loads, drawn where they act");
    await loads.locator(".drawing").waitFor();
    const names = await loads.locator("option").allTextContents();
    for (const wanted of ["D: dead load", "P: a person between wall and beam", "W: wind on components, lifting"]) {
      assert.ok(names.includes(wanted), names.join("\n"));
    }
    assert.ok((await loads.locator(".working__step").count()) > 0);
    const onParts = names.findIndex((name) => name.includes("on edge, rafters, beam"));
    assert.ok(onParts > 0, names.join("\n"));
    await page.locator("#load-case").selectOption({ index: onParts });
    await loads.locator(".drawing", { hasText: /roof edge [\d,]+ lb/ }).waitFor();
    const ways = await unfold(page, "The way down, and what holds it when the wind lifts");
    await ways.locator(".path").first().waitFor();
    assert.equal(await ways.locator(".path").count(), 4);
    assert.ok((await ways.locator(".link--weakest").count()) >= 2);
  });
});

for (const [kind, size, begins] of [
  ["phone", sizes.phone, BEGIN.barn],
  ["desk", sizes.desk, BEGIN.store],
]) {
  test(`the ways are drawn as chains, a number opens its check; the curve says where it hardly bends (${kind})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, begins);
      await go(page, "Strength");
      const ways = await unfold(page, "The way down, and what holds it when the wind lifts");
      await ways.locator(".way__disc").first().waitFor();
      assert.equal(await ways.locator(".way__disc").count(), await ways.locator(".link").count());
      assert.equal(await ways.locator(".way__link--weakest").count(), await ways.locator(".link--weakest").count());
      let drawn = 0;
      // Words for all of it, and every one of them on the sheet.
      for (const drawing of await ways.locator(".path__drawing").all()) {
        assert.match(await drawing.textContent(), /weakest: /);
        const off = await drawing.evaluate((figure) => {
          const sheet = figure.querySelector("svg").getBoundingClientRect();
          const words = [...figure.querySelectorAll("text")].map((text) => [text.textContent, text.getBoundingClientRect()]);
          return words.filter(([, box]) => box.left < sheet.left - 1 || box.right > sheet.right + 1).map(([said]) => said);
        });
        assert.deepEqual(off, []);
        await picture(drawing, `strength-way-${(drawn += 1)}-${kind}`);
      }
      const row = ways.locator('[data-row="0.2"]');
      await ways.locator('[data-link="0.2"] .way__number').click();
      await row.locator(".check__body > *").first().waitFor();
      assert.ok(await row.locator("details").evaluate((details) => details.open));
      assert.equal(await row.locator(".link__name").textContent(), "purlin");
      await picture(page, `strength-way-open-${kind}`);
      const along = await unfold(page, "Along the beam");
      await along.locator("circle.chart__note").first().waitFor();
      assert.match(await along.locator(".chart__svg").first().textContent(), /hardly bends/);
      await picture(along, `strength-along-${kind}`);
      await page.locator("#along-case").selectOption({ index: 1 });
      await along.locator(".drawing").waitFor();
      await picture(along, `strength-along-one-${kind}`);
      assert.deepEqual(await axe(page, ".page"), []);
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth));
    });
  });
}

test("the calculation is kept as a page", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.store);
    await go(page, "Papers");
    const fold = await unfold(page, "The calculation of the strength");
    const [download] = await Promise.all([page.waitForEvent("download"), fold.getByRole("button", { name: "Keep it as a page" }).click()]);
    assert.match(download.suggestedFilename(), /\.html$/);
  });
});

test("every page but the papers prints as it stands", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    for (const place of PLACES.filter((place) => place !== "Papers")) {
      await page.emulateMedia({ media: "screen" });
      await go(page, place);
      await page.emulateMedia({ media: "print" });
      await page.locator(".page h1").first().waitFor();
    }
  });
});
