// The frame and its sticks in the round: turned, tapped, drawn apart, and handed out as solids; with and without WebGL.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";
import validator from "gltf-validator";
import { axe, picture, sizes, visit } from "./harness.mjs";
import { BEGIN, begin, go, strip, type, unfold } from "./hands.mjs";

/** Runs in the page before anything else: a browser that draws no solids. */
function withoutSolids() {
  const known = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {
    return kind.startsWith("webgl") ? null : known.call(this, kind, ...rest);
  };
}

const WAYS = {
  "by WebGL": { options: { solids: true }, picture: "canvas.round__picture" },
  "as a drawing": { options: { before: (context) => context.addInitScript(withoutSolids) }, picture: ".round__picture svg.drawing" },
};

async function inTheRound(page) {
  await begin(page, BEGIN.barn);
  await go(page, "Frame");
  await page.locator(".shown-as .segment", { hasText: "In the round" }).click();
  await page.locator(".round__frame").waitFor();
}

const says = (page) => page.locator(".round__frame [role=img]").getAttribute("aria-label");
const settled = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(done)))));

/** Waits until it says from where it is seen, and the picture of that is painted. */
async function seen(page, words) {
  await page.locator(".round__frame [role=img]").and(page.locator(`[aria-label*="${words}"]`)).waitFor();
  await settled(page);
}

for (const [way, { options, picture }] of Object.entries(WAYS)) {
  for (const [size, of] of Object.entries(sizes)) {
    test(`the frame is turned and tapped ${way} (${size})`, async () => {
      await visit(of, options, async ({ page }) => {
        await inTheRound(page);
        await page.locator(picture).waitFor();
        await seen(page, "35° to the right of straight from outside, 22° above the level");
        const frame = page.locator(".round__frame");
        const corner = await frame.screenshot();
        await frame.focus();
        await page.keyboard.press("ArrowRight");
        await seen(page, "50° to the right");
        await page.keyboard.press("ArrowDown");
        await seen(page, "7° above the level");
        const turned = await frame.screenshot();
        assert.ok(!corner.equals(turned), "turning changed nothing");
        await page.keyboard.press("+");
        await settled(page);
        assert.ok(!turned.equals(await frame.screenshot()), "coming closer changed nothing");
        assert.deepEqual(await axe(page), []);
        await page.locator(".round").getByRole("button", { name: "Front" }).click();
        await seen(page, "from outside");
        assert.match(await says(page), /^The frame in the round, seen from outside$/);
        // Low in the picture there is nothing but posts: the first from the left is P1.
        await frame.scrollIntoViewIfNeeded();
        const box = await frame.boundingBox();
        const low = await lowest(page, frame, box);
        for (let x = 4; x < box.width && !(await page.evaluate(() => location.hash)).includes("bench"); x += 9) {
          await page.mouse.click(box.x + x, box.y + low);
        }
        assert.equal(await page.evaluate(() => location.hash), "#/bench/P1");
        await page.locator('[data-place="bench"]').waitFor();
      });
    });
  }
}

/** The lowest row of the picture, from the top of its frame, that holds wood: a little above the feet of the posts. */
async function lowest(page, frame, box) {
  const data = (await frame.screenshot()).toString("base64");
  const share = await page.evaluate(async (png) => {
    const image = new Image();
    image.src = `data:image/png;base64,${png}`;
    await image.decode();
    const sheet = document.createElement("canvas");
    [sheet.width, sheet.height] = [image.width, image.height];
    const pen = sheet.getContext("2d");
    pen.drawImage(image, 0, 0);
    const paper = pen.getImageData(4, 4, 1, 1).data;
    for (let y = image.height - 8; y > 0; y -= 1) {
      const row = pen.getImageData(8, y, image.width - 16, 1).data;
      for (let at = 0; at < row.length; at += 4) {
        if (Math.abs(row[at] - paper[0]) + Math.abs(row[at + 2] - paper[2]) > 30) {
          return y / image.height;
        }
      }
    }
    return 0;
  }, data);
  assert.ok(share > 0.2, "nothing is painted");
  return share * box.height - 12;
}

test("fingers and mouse turn it, come closer, and let the page scroll by the wheel until it is in use", async () => {
  await visit(sizes.desk, { solids: true }, async ({ page }) => {
    await inTheRound(page);
    await seen(page, "35° to the right");
    const frame = page.locator(".round__frame");
    const box = await frame.boundingBox();
    const middle = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(...middle);
    await page.mouse.down();
    await page.mouse.move(middle[0] - 25, middle[1], { steps: 2 });
    await page.mouse.move(middle[0] - 50, middle[1] + 20, { steps: 2 });
    await page.mouse.up();
    await page.waitForFunction(() => !document.querySelector(".round__frame [role=img]").getAttribute("aria-label").includes("35°"));
    const [, turn, tip] = /(\d+)° to the right.* (\d+)° above/.exec(await says(page));
    assert.ok(Number(turn) > 45 && Number(turn) < 60 && Number(tip) > 25 && Number(tip) < 35, `${turn}° and ${tip}°`);
    assert.equal(await page.evaluate(() => location.hash), "#/frame");
    await settled(page);
    const before = await frame.screenshot();
    await page.mouse.wheel(0, -240);
    await settled(page);
    assert.ok(!before.equals(await frame.screenshot()), "the wheel changed nothing while the view was in use");
  });
});

test("a stick in hand in the round, and its joints apart", async () => {
  await visit(sizes.phone, { path: "#/bench/K2L", solids: true }, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await page.evaluate(() => {
      location.hash = "#/bench/K2L";
    });
    const round = await unfold(page, "In the round");
    await round.locator("canvas.round__picture").waitFor();
    await seen(page, "K2L in the round, seen 35°");
    const joints = await unfold(page, "Joints, drawn apart");
    await joints.locator("svg.drawing").waitFor();
    assert.deepEqual(await joints.locator("option").allTextContents(), ["Brace K2L in post P2", "Brace K2L in beam B1"]);
    const words = () => joints.locator(".page__word").first().textContent();
    assert.equal(await words(), "K2L goes into P2 from the left; one peg, driven from outside.");
    await joints.locator("select").selectOption("Brace K2L in beam B1");
    await joints.getByText("K2L goes into B1 from below").waitFor();
    assert.ok((await joints.locator("svg .travel").count()) >= 4, "no lines of travel");
    assert.deepEqual(await axe(page), []);
    const [download] = await Promise.all([page.waitForEvent("download"), joints.getByRole("button", { name: "Save this drawing" }).click()]);
    assert.match(await readFile(await download.path(), "utf8"), /^<svg [^>]*><style>[^]*travel[^]*<\/svg>$/);
    assert.match(download.suggestedFilename(), /brace-k2l-in-beam-b1\.svg$/);
  });
});

for (const [size, of] of Object.entries(sizes)) {
  test(`each different joint is drawn apart once on its sheet, with where else it is (${size})`, async () => {
    await visit(of, {}, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await go(page, "Papers");
      const tick = page.locator(".choose .tick", { hasText: "Joints, drawn apart" });
      assert.equal(await page.locator(".pack .paper__joint").count(), 0);
      await tick.click();
      const joints = page.locator(".pack .paper__joint");
      await joints.first().waitFor({ state: "attached" });
      const words = await joints.locator("figcaption").allTextContents();
      assert.equal(await joints.locator("svg.drawing").count(), words.length);
      assert.ok(words.includes("Post P2 in beam B1: P2 goes into B1 from below; 2 pegs, driven from outside. Also at P3."), words.join("\n"));
      assert.ok(words.some((one) => /^Brace K1R in post P1: .*Also at K2R, K3R\. Its mirror image at K2L, K3L, K4L\.$/.test(one)), words.join("\n"));
      assert.equal(words.filter((one) => one.startsWith("Rafter")).length, 2, words.join("\n"));
      // The shop book's index leads to it.
      await page.locator(".segment", { hasText: /^one for those alike/ }).click();
      const index = page.locator(".pack .paper", { hasText: "Shop book: order of work" });
      const [, sheet] = /is drawn apart on sheet (\d+)\./.exec(await index.textContent());
      const titles = await page.locator(".pack .paper .paper__title").allTextContents();
      assert.equal(titles[Number(sheet) - 1], "Joints, drawn apart");
      // Ink on white: faces have no tone, and end grain differs from long grain by its lines.
      await page.emulateMedia({ media: "print" });
      const fills = await joints.locator("path.across, path.planed, path.chiselled").evaluateAll((faces) => [...new Set(faces.map((face) => getComputedStyle(face).fill))]);
      assert.deepEqual(fills, ["rgb(255, 255, 255)"]);
      assert.ok((await joints.locator("path.grain").count()) > 20);
      // It takes one sheet, and nothing hangs over its edge.
      const paper = page.locator(".pack .paper", { has: page.locator(".paper__joints") });
      const { width, height } = await paper.evaluate((sheet) => {
        sheet.style.width = "180mm";
        return sheet.getBoundingClientRect();
      });
      // 255 mm are left of Letter, at 96 px to the inch.
      assert.ok(height < (255 / 25.4) * 96, `${height} px high`);
      assert.ok(await joints.evaluateAll((all, wide) => all.every((one) => one.scrollWidth <= wide), width));
      await picture(paper, `joints-${size}`);
    });
  });
}

test("a size typed at the bench is that of the solid", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await page.evaluate(() => {
      location.hash = "#/bench/B1";
    });
    await page.getByRole("button", { name: "Add a measured place" }).click();
    await type(page, "progress.sizes.B1.0.breadth", "5 1/4");
    const thin = page.locator(".problem__says", { hasText: /only .* of wood between mortise of P1 and the wall face/ });
    await thin.first().waitFor();
    await type(page, "progress.sizes.B1.0.breadth", "8 1/4");
    await thin.first().waitFor({ state: "detached" });
  });
});

test("the frame as solids is a valid glTF file with every stick", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    const { sticks } = await strip(page);
    await go(page, "Papers");
    const fold = await unfold(page, "Drawings as files");
    const [download] = await Promise.all([page.waitForEvent("download"), fold.getByRole("button", { name: "Frame as solids" }).click()]);
    assert.match(download.suggestedFilename(), /\.glb$/);
    const bytes = await readFile(await download.path());
    assert.equal(bytes.subarray(0, 4).toString(), "glTF");
    const report = await validator.validateBytes(new Uint8Array(bytes), { maxIssues: 20 });
    assert.deepEqual(report.issues.messages, []);
    assert.equal(report.info.version, "2.0");
    assert.equal(report.info.drawCallCount >= Number(sticks), true);
    const text = bytes.subarray(20, 20 + bytes.readUInt32LE(12)).toString();
    assert.equal(JSON.parse(text).nodes.length, Number(sticks));
  });
});
