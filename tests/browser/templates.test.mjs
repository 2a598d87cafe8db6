// Templates at true size, as the browser prints them: the PDF's own lines are measured in points, 72 to the inch.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";
import { sizes, visit } from "./harness.mjs";
import { BEGIN, begin, go, unfold } from "./hands.mjs";
import { readPdf } from "./pdf.mjs";

const FOLD = "Templates and jigs";
const PAPERS = {
  Letter: { width: 612, height: 792, margin: 36 },
  A4: { width: (210 / 25.4) * 72, height: (297 / 25.4) * 72, margin: (12 / 25.4) * 72 },
};
const length = ({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]);
const isLevel = ({ from, to }) => Math.abs(from[1] - to[1]) < 0.01;

/** Headless, there is no printer to open. */
const noPrinter = (context) => context.addInitScript(() => { window.print = () => {}; });

const card = (page, key) => page.locator(`[data-template="${key}"]`);

async function opened(page, place, paper) {
  await go(page, place);
  const fold = await unfold(page, FOLD);
  await fold.locator(".segment", { hasText: new RegExp(`^${paper}$`) }).click();
  return fold;
}

/** Presses a button of the fold and prints what it puts on paper. */
async function printed(page, button) {
  await button.click();
  await page.locator(".template-pack > *").first().waitFor({ state: "attached" });
  return readPdf(await page.pdf({ preferCSSPageSize: true }));
}

/** Both bars, and nothing that leaves the margins. */
function checkPages(pages, paper) {
  const { width, height, margin } = PAPERS[paper];
  pages.forEach((page, index) => {
    const where = `${paper}, page ${index + 1}`;
    assert.ok(Math.abs(page.width - width) < 0.5 && Math.abs(page.height - height) < 0.5, `${where}: ${page.width} by ${page.height}`);
    const level = page.lines.filter(isLevel).map((line) => ({ y: line.from[1], length: length(line) }));
    // The bars stand in the foot, under everything else.
    const foot = level.filter(({ y }) => y > height - margin - 54);
    const bar = (points, off) => foot.filter((line) => Math.abs(line.length - points) <= off).length;
    assert.equal(bar((100 / 25.4) * 72, 0.5), 1, `${where}: no bar of 100 mm: ${JSON.stringify(foot)}`);
    assert.equal(bar(4 * 72, 0.5), 1, `${where}: no bar of 4 in: ${JSON.stringify(foot)}`);
  });
}

for (const paper of Object.keys(PAPERS)) {
  test(`a template prints at its true size on ${paper}`, async () => {
    await visit(sizes.desk, { before: noPrinter }, async ({ page }) => {
      await begin(page, BEGIN.barn);
      await opened(page, "Bench", paper);
      const seat = card(page, "rafter-beam-end");
      const n_sheets = Number(/(\d+) sheets?$/.exec(await seat.locator(".templates__facts").textContent())[1]);
      const pages = await printed(page, seat.getByRole("button", { name: /^Print this template/ }));
      assert.equal(pages.length, n_sheets);
      checkPages(pages, paper);
      // The seat: 4 in level at 3:12, so 288 pt long and 288·0.970143 by 288·0.242536 on the stick. By hand.
      const is = (line, long, across) =>
        Math.abs(length(line) - long) < 0.1 &&
        (Math.abs(Math.abs(line.to[1] - line.from[1]) - across) < 0.1 || Math.abs(Math.abs(line.to[0] - line.from[0]) - across) < 0.1);
      const lines = pages.flatMap((one) => one.lines);
      assert.ok(lines.some((line) => is(line, 288, 69.85)), "no seat of 4 in at 3:12");
      // The tail, plumb: 8 in of rafter over cos of the pitch, 8.2462 in; it leans 2 in along the stick.
      assert.ok(lines.some((line) => is(line, 593.73, 144)), "no tail of 8.246 in");
      await page.waitForFunction(() => !document.body.hasAttribute("data-prints") && !document.querySelector(".template-pack > *"));
    });
  });
}

test("all templates print from the papers, each sheet with its bars, and nothing else does", async () => {
  await visit(sizes.phone, { before: noPrinter }, async ({ page }) => {
    await begin(page, BEGIN.store);
    await go(page, "Papers");
    const fold = await unfold(page, FOLD);
    // Millimetres have A4.
    assert.ok(await fold.locator(".segment", { hasText: /^A4$/ }).locator("input").isChecked());
    const all = fold.getByRole("button", { name: /^Print all / });
    const n_sheets = Number(/, (\d+) sheets$/.exec(await all.textContent())[1]);
    const pages = await printed(page, all);
    assert.equal(pages.length, n_sheets);
    checkPages(pages, "A4");
  });
});

test("the jigs print by themselves", async () => {
  await visit(sizes.desk, { before: noPrinter }, async ({ page }) => {
    await begin(page, BEGIN.barn);
    const fold = await opened(page, "Bench", "Letter");
    assert.equal(await fold.locator(".jig").count(), 3);
    const pages = await printed(page, fold.getByRole("button", { name: "Print the jigs’ boards and stops" }));
    assert.ok(pages.length === 1 || pages.length === 2, `${pages.length} pages`);
  });
});

for (const [begun, unit, inch] of [[BEGIN.barn, "in", 1], [BEGIN.store, "mm", 25.4]]) {
  test(`a template is kept as a drawing in true ${unit}`, async () => {
    await visit(sizes.desk, { before: noPrinter }, async ({ page }) => {
      await begin(page, begun);
      await go(page, "Bench");
      await unfold(page, FOLD);
      const save = card(page, "post-head").getByRole("button", { name: /^SVG in true size/ });
      const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
      assert.match(download.suggestedFilename(), /post-head\.svg$/);
      const text = await readFile(await download.path(), "utf8");
      const [, width, height] = new RegExp(`width="([\\d.]+)${unit}" height="([\\d.]+)${unit}"`).exec(text);
      assert.ok(text.includes(`viewBox="0 0 ${width} ${height}"`), "one unit is not one unit");
      assert.match(text, /<style>/);
      // Drawn by itself it is as large as it says: 96 px to the inch.
      const shown = await page.evaluate((svg) => {
        const box = document.createElement("div");
        box.innerHTML = svg.replace(/<style>.*?<\/style>/s, "");
        document.body.append(box);
        const { width } = box.firstElementChild.getBoundingClientRect();
        box.remove();
        return width;
      }, text);
      assert.ok(Math.abs(shown - (Number(width) / inch) * 96) < 0.5, `${shown} px for ${width} ${unit}`);
    });
  });
}
