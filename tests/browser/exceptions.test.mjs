// Joints of their own: given on the frame's page, told on both sticks, on paper, on the drawing, and taken back.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, choose, fieldOf, go, input, project, report, saved, type, unfold } from "./hands.mjs";

async function give(page, joint) {
  await go(page, "Frame");
  await unfold(page, "Rules of the joints");
  await page.locator("#own-joint").selectOption({ label: joint });
  await page.getByRole("button", { name: "Give it rules of its own" }).click();
}

async function take(page, mark) {
  await go(page, "Bench");
  const back = page.getByRole("link", { name: "All sticks" });
  if (await back.count()) await back.click();
  await page.getByRole("link", { name: new RegExp(`^${mark} `) }).first().click();
  await page.locator("h1", { hasText: new RegExp(`^${mark}$`) }).waitFor();
}

const rings = (page) => page.locator('.lead, .page').locator("circle.own").count();

async function walked(name, size) {
  await visit(size, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    const before = await report((await project(page)).text);
    await give(page, "P2’s head");
    const says = page.locator('[id="exceptions.P2"] .own-joint');
    assert.match(await says.textContent(), /follows the rules in everything so far/);
    assert.equal(await input(page, "exceptions.P2.housing").count(), 0, "a head has no housing of its own");
    assert.equal(await rings(page), 0);
    await type(page, "exceptions.P2.tenon_length", "5");
    await type(page, "exceptions.P2.reason", "a shake above the shoulder");
    assert.match(await says.textContent(), /tenon length 5″ \(rules 4″\), because a shake above the shoulder/);
    assert.match(await fieldOf(page, "exceptions.P2.tenon_length").textContent(), /its own; the rules say 4″/);
    await saved(page);
    await says.scrollIntoViewIfNeeded();
    await picture(page, `own-joint-${name}`);
    await page.locator("h1").scrollIntoViewIfNeeded();
    await page.locator("circle.own").waitFor();
    assert.equal(await page.locator("text.own").textContent(), "own");
    await picture(page, `own-ring-${name}`);
    await give(page, "K1R’s foot");
    await type(page, "exceptions.K1R foot.housing", "3/4");
    await give(page, "Scarf 1");
    assert.equal(await page.locator('[id="exceptions.S1"] .field__input').count(), 1, "a scarf has a kind and a reason");
    await choose(page, "exceptions.S1.scarf_kind", "halved, square ends");
    await picture(page, `own-scarf-${name}`);
    assert.deepEqual(await axe(page), []);
    await page.locator("h1").scrollIntoViewIfNeeded();
    await page.locator("circle.own").nth(2).waitFor();

    // The report names what the app names, and what changed is what the joints are of.
    const { text, file } = await project(page);
    assert.equal(file.project.exceptions.P2.tenon_length_in, 5);
    const after = await report(text);
    assert.deepEqual(after.exceptions.map((one) => one.joint).sort(), ["K1R foot", "P2", "S1"]);
    assert.deepEqual(before.exceptions, []);
    const of = (answer, mark) => JSON.stringify(answer.sticks.find((stick) => stick.mark === mark).marks);
    const changed = after.sticks.filter((stick) => of(before, stick.mark) !== of(after, stick.mark)).map((stick) => stick.mark);
    assert.ok(changed.includes("P2") && changed.includes("P1") && changed.includes("K1R"), changed.join());
    assert.ok(!changed.includes("P3") && !changed.includes("K2R"), changed.join());
    const on = after.exceptions.find((one) => one.joint === "P2").on;
    assert.equal(on.length, 2);

    // On both sticks' sheets, on screen and on paper.
    for (const mark of on) {
      await take(page, mark);
      await page.locator(".own-joint", { hasText: "P2’s head is not by the rules" }).first().waitFor();
    }
    await picture(page, `own-sheet-${name}`);
    await unfold(page, "Joints, drawn apart");
    await page.locator("#joint").waitFor();
    const option = await page.locator("#joint option", { hasText: "Post P2" }).textContent();
    assert.match(option, /not by the rules/);
    await go(page, "Papers");
    await unfold(page, "Rules of the joints");
    assert.equal(await page.locator(".page .own-joint").count(), 3);
    await picture(page, `own-rules-${name}`);
    const paper = page.locator(".pack .paper", { has: page.locator("h2", { hasText: /^Stick P2$/ }) });
    if (await paper.count()) {
      assert.match(await paper.first().textContent(), /P2’s head is not by the rules/);
    }
    assert.match(await page.locator(".pack .paper__rules").first().textContent(), /Not by them: P2’s head, K1R’s foot, scarf 1/);

    // The way back: the same value as the rules', and taking it away.
    await go(page, "Frame");
    await unfold(page, "Rules of the joints");
    await type(page, "exceptions.P2.tenon_length", "4");
    assert.match(await page.locator('[id="exceptions.P2"] .own-joint').textContent(), /follows the rules/);
    for (const joint of ["P2’s head", "K1R’s foot", "Scarf 1"]) {
      await page.getByRole("button", { name: `${joint} by the rules again` }).click();
    }
    const back = await report((await project(page)).text);
    assert.deepEqual(back.sticks, before.sticks);
  });
}

test("joints of their own, on a phone", () => walked("phone", sizes.phone));
test("joints of their own, on a desk", () => walked("desk", sizes.desk));

test("a joint that is gone is named and taken away; a tenon too long is refused with the longest", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await give(page, "K4L’s head");
    await type(page, "exceptions.K4L head.tenon_length", "3");
    const braces = page.locator("label.toggle", { has: input(page, "frame.posts.3.brace_left") });
    await unfold(page, "Posts");
    await braces.click();
    const card = page.locator('[id="exceptions.K4L head"]');
    await card.locator(".problem", { hasText: "The frame has no joint K4L head" }).waitFor();
    await card.scrollIntoViewIfNeeded();
    await picture(page, "own-gone-phone");
    await card.getByRole("button", { name: "by the rules again" }).click();
    assert.equal(await card.count(), 0);
    await give(page, "P2’s head");
    await type(page, "exceptions.P2.tenon_length", "9");
    const field = fieldOf(page, "exceptions.P2.tenon_length");
    await field.locator(".problem", { hasText: "would come out at the top of the beam" }).waitFor();
    await field.getByRole("button", { name: "Use 8 1⁄4″" }).click();
    assert.equal(await field.locator(".problem").count(), 0);
  });
});
