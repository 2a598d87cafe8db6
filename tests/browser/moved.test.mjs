// Posts and scarfs moved on the drawing itself: with a finger, a mouse and the keys, in both systems of units.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, fieldOf, go, input, millimetres, project, strip, unfold } from "./hands.mjs";

const grip = (page, path) => page.locator(`[data-grip="${path}"]`);
const P2 = "frame.posts.1.x";

/** The middle of an element in the window. */
async function middle(locator) {
  await locator.scrollIntoViewIfNeeded();
  const box = await locator.boundingBox();
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Draws a finger along: down, moves, and a function that lifts it. */
async function finger(page, context, at, dx) {
  const session = await context.newCDPSession(page);
  const touch = (type, x) => session.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : [{ x, y: at.y }] });
  await touch("touchStart", at.x);
  for (let step = 1; step <= 8; step += 1) {
    await touch("touchMove", at.x + (dx * step) / 8);
  }
  return { more: (x) => touch("touchMove", at.x + x), lift: () => touch("touchEnd") };
}

async function mouse(page, _context, at, dx) {
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x + dx, at.y, { steps: 8 });
  return { more: (x) => page.mouse.move(at.x + x, at.y), lift: () => page.mouse.up() };
}

const painted = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(() => requestAnimationFrame(done), 50))));

const place = async (page, path) => Number(await grip(page, path).getAttribute("aria-valuenow"));

async function dragged(size, begun, hand, unit) {
  await visit(size, {}, async ({ page, context }) => {
    await begin(page, begun);
    const before = await project(page);
    await go(page, "Frame");
    const post = grip(page, P2);
    const box = await post.boundingBox();
    assert.ok(box.width >= 44 && box.height >= 44, `the grip is ${box.width} by ${box.height} px`);
    const [was, sticks] = [await place(page, P2), await strip(page)];
    const drawing = () => page.locator(".drawing-view svg").first().innerHTML();
    const [picture, scrolled] = [await drawing(), await page.evaluate(() => scrollY)];
    const at = await middle(post);
    const held = await hand(page, context, at, 30);
    await painted(page);
    const there = await place(page, P2);
    assert.ok(there > was, `it went from ${was} to ${there}`);
    assert.ok(Math.abs(there / unit - Math.round(there / unit)) < 1e-6, `${there} is no whole step of ${unit}`);
    assert.notEqual(await drawing(), picture, "the drawing follows while it is held");
    await page.waitForFunction(() => {
      const spans = [...document.querySelectorAll(".drawing .span__text")].map((span) => span.textContent);
      const caption = document.querySelector(".drawing-view__caption").textContent;
      return spans.length === 2 && caption.startsWith("P2: ") && caption.endsWith(`bays ${spans.join(", ")}`);
    });
    const now = await post.boundingBox();
    assert.ok(Math.abs(now.x - box.x - 30) < 8, `the grip is ${now.x - box.x} px on, the hand 30`);
    // Past everything: it stops before its neighbour.
    await held.more(2000);
    await painted(page);
    const last = await place(page, P2);
    assert.equal(last, Number(await post.getAttribute("aria-valuemax")));
    assert.equal(await page.locator(".strip__trouble--stop").count(), 0, "nothing stops the frame");
    await page.waitForTimeout(1000);
    await held.more(30);
    await painted(page);
    assert.equal(await place(page, P2), there, "back under the hand");
    await held.lift();
    assert.equal(await page.evaluate(() => scrollY), scrolled, "the page stayed");
    const after = await project(page);
    const shown = unit === 1 ? after.file.project.frame.posts[1].x_in : after.file.project.frame.posts[1].x_in * 25.4;
    assert.ok(Math.abs(shown - there) < 0.006, `kept ${shown}, shown ${there}`);
    const undo = page.getByRole("button", { name: "Undo", exact: true });
    await undo.click();
    assert.equal((await project(page)).text, before.text, "one drag is one step");
    assert.ok(await undo.isDisabled());
    assert.equal((await strip(page)).sticks, sticks.sticks);
  });
}

test("a post is dragged with a finger, inches", () => dragged(sizes.phone, BEGIN.barn, finger, 1));
test("a post is dragged with a finger, millimetres", () => dragged(sizes.phone, BEGIN.store, finger, 20));
test("a post is dragged with the mouse, inches", () => dragged(sizes.desk, BEGIN.barn, mouse, 1));
test("a post is dragged with the mouse, millimetres", () => dragged(sizes.desk, BEGIN.store, mouse, 20));

test("a drag that ends where it began is no step, and Escape puts it back", async () => {
  await visit(sizes.desk, {}, async ({ page, context }) => {
    await begin(page, BEGIN.store);
    const before = await project(page);
    await go(page, "Frame");
    const undo = page.getByRole("button", { name: "Undo", exact: true });
    const at = await middle(grip(page, P2));
    const there = await mouse(page, context, at, 40);
    await there.more(0);
    await there.lift();
    assert.ok(await undo.isDisabled());
    await mouse(page, context, at, 40);
    await page.keyboard.press("Escape");
    await page.mouse.up();
    assert.ok(await undo.isDisabled());
    assert.equal((await project(page)).text, before.text);
  });
});

for (const [begun, unit] of [
  [BEGIN.barn, 1],
  [BEGIN.store, 20],
]) {
  test(`a post is moved with the keys in steps of ${unit}`, async () => {
    await visit(sizes.desk, {}, async ({ page }) => {
      await begin(page, begun);
      await go(page, "Frame");
      const post = grip(page, P2);
      await post.focus();
      assert.equal(await post.getAttribute("role"), "slider");
      await page.keyboard.press("ArrowRight");
      const first = await place(page, P2);
      await page.keyboard.press("ArrowRight");
      assert.equal(await place(page, P2), first + unit);
      await page.keyboard.press("ArrowLeft");
      assert.equal(await place(page, P2), first);
      const says = await post.getAttribute("aria-valuetext");
      const shown = millimetres(says.split(" from")[0]);
      assert.ok(Math.abs(shown - first * (unit === 1 ? 25.4 : 1)) < 1, `${says}, and ${first}`);
      await page.keyboard.press("End");
      assert.equal(await place(page, P2), Number(await post.getAttribute("aria-valuemax")));
      await page.keyboard.press("Home");
      assert.equal(await place(page, P2), Number(await post.getAttribute("aria-valuemin")));
      assert.equal(await page.locator(".strip__trouble--stop").count(), 0);
      assert.ok(await post.evaluate((element) => element === document.activeElement), "it keeps the focus");
      assert.deepEqual(await axe(page), []);
    });
  });
}

test("a proposed scarf that is dragged is placed by hand, and a bad place is said", async () => {
  await visit(sizes.phone, {}, async ({ page, context }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Frame");
    const path = "frame.scarfs.by_hand.0.centre";
    const scarf = grip(page, path);
    assert.equal(await input(page, path).count(), 0, "it is proposed");
    const was = await place(page, path);
    const held = await finger(page, context, await middle(scarf), 26);
    await held.lift();
    await painted(page);
    const there = await place(page, path);
    assert.ok(there > was && there === Math.round(there), `from ${was} to ${there}`);
    await unfold(page, "Beam and scarfs");
    const reading = await fieldOf(page, path).locator(".field__reading").textContent();
    assert.ok(Math.abs(millimetres(reading.replace("=", "").split("·")[0]) - there * 25.4) < 1, reading);
    const trouble = await fieldOf(page, path).locator(".problem").allTextContents();
    assert.equal(trouble.length, 1, "the place is forbidden, and the field says why");
    assert.match(trouble[0], /Scarf 1/);
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    assert.equal(await input(page, path).count(), 0, "one step back it is proposed again");
  });
});

test("the drawing is still pushed about and enlarged, and the page scrolls", async () => {
  await visit(sizes.phone, {}, async ({ page, context }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Frame");
    const actions = await page.locator(".drawing-view").first().evaluate((view) => {
      const of = (selector) => getComputedStyle(view.querySelector(selector)).touchAction;
      return [of(".grip"), of(".drawing-view__frame"), of(".drawing"), of(".grips")];
    });
    assert.deepEqual(actions, ["none", "auto", "auto", "auto"]);
    await page.locator(".drawing-view").first().getByRole("button", { name: "Draw larger" }).click();
    await painted(page);
    const frame = page.locator(".drawing-view__frame").first();
    const was = await frame.evaluate((element) => element.scrollLeft);
    const box = await frame.boundingBox();
    const swipe = await finger(page, context, { x: box.x + 250, y: box.y + 30 }, -150);
    await swipe.lift();
    await page.waitForFunction((was) => document.querySelector(".drawing-view__frame").scrollLeft > was + 50, was);
    // Pushed about, a grip still lies on its post.
    const off = await page.evaluate(() => {
      const middle = (element) => {
        const room = element.getBoundingClientRect();
        return room.left + room.width / 2;
      };
      return middle(document.querySelector('[data-grip="frame.posts.1.x"]')) - middle(document.querySelector('.drawing path[data-stick="P2"]'));
    });
    assert.ok(Math.abs(off) < 2, `off by ${off} px`);
    await page.locator(".drawing-view").first().getByRole("button", { name: "Whole" }).click();
    await painted(page);
    const page0 = await page.evaluate(() => scrollY);
    const session = await context.newCDPSession(page);
    const send = (type, y) => session.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : [{ x: 180, y }] });
    await send("touchStart", 500);
    for (let y = 480; y >= 300; y -= 20) {
      await send("touchMove", y);
    }
    await send("touchEnd");
    await page.waitForFunction((was) => scrollY > was + 50, page0);
  });
});

test("a tapped blue number of the section leads to its field", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Frame");
    const section = page.locator(".drawing-view").nth(1);
    const fields = await section.locator("text[data-field]").evaluateAll((all) => all.map((word) => word.getAttribute("data-field")));
    assert.ok(fields.includes("frame.reach") && fields.some((field) => field.startsWith("frame.heights.")), fields.join());
    for (const field of fields.filter((field) => field.startsWith("frame."))) {
      const words = section.locator(`text[data-field="${field}"]`).first();
      await words.scrollIntoViewIfNeeded();
      // Beside the words, as a finger does.
      const room = await words.boundingBox();
      await page.touchscreen.tap(room.x + room.width / 2, room.y + room.height + 3);
      const focused = await page.evaluate(() => document.activeElement?.id);
      assert.ok(field.startsWith(focused) && focused !== "", `${field} led to ${focused}`);
    }
  });
});

test("at 320 px the grips make nothing run over", async () => {
  await visit({ ...sizes.phone, viewport: { width: 320, height: 640 } }, {}, async ({ page }) => {
    await begin(page, BEGIN.store);
    await go(page, "Frame");
    await painted(page);
    assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= 320);
    assert.deepEqual(await axe(page), []);
  });
});
