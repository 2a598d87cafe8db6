// At every place, size and light: nothing axe finds, nothing too small to tap or read, nothing sideways; and what is printed.
import { spawnSync } from "node:child_process";
import assert from "node:assert/strict";
import { writeFile, mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { axe, sizes, visit } from "./harness.mjs";
import { BEGIN, PLACES, begin, drawer, go, project, report, strip, type, unfoldAll } from "./hands.mjs";

const LIGHTS = ["day", "evening", "sun"];

/** Runs in the page: targets under 44 px, texts under 12 px on the screen, and how far the page goes sideways. */
function measure() {
  const isShown = (element) => element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && element.getClientRects().length > 0;
  const name = (element) => `${element.tagName.toLowerCase()}.${element.getAttribute("class") ?? ""} “${(element.getAttribute("aria-label") ?? element.textContent).trim().slice(0, 40)}”`;
  const small = [];
  for (const element of document.querySelectorAll("a[href], button, input, select, summary")) {
    const target = element.matches("input") ? (element.closest("label") ?? element) : element;
    const box = target.getBoundingClientRect();
    const isAside = box.right <= 0 || box.bottom + scrollY <= 0;
    if (isShown(target) && !isAside && (box.width < 43.95 || box.height < 43.95)) {
      small.push(`${name(target)}: ${box.width.toFixed(1)} × ${box.height.toFixed(1)}`);
    }
  }
  const tiny = [];
  const texts = document.createTreeWalker(document.querySelector(".app"), NodeFilter.SHOW_TEXT);
  for (let node = texts.nextNode(); node; node = texts.nextNode()) {
    const parent = node.parentElement;
    if (node.textContent.trim() === "" || !isShown(parent)) {
      continue;
    }
    const scale = parent instanceof SVGGraphicsElement ? Math.abs(parent.getScreenCTM().a) || Math.abs(parent.getScreenCTM().b) : 1;
    const height = Number.parseFloat(getComputedStyle(parent).fontSize) * scale;
    const box = parent.getBoundingClientRect();
    // A word for screen readers only is clipped to a pixel.
    if (height < 11.95 && box.width > 2) {
      tiny.push(`${name(parent)}: ${height.toFixed(1)} px`);
    }
  }
  return { small: [...new Set(small)], tiny: [...new Set(tiny)], width: document.documentElement.scrollWidth };
}

/** Every view of the app: its name and the way to it. */
function views(page) {
  const places = PLACES.map((place) => [place, () => go(page, place)]);
  const stick = async () => {
    await go(page, "Bench");
    await page.getByRole("link", { name: /^B2 / }).click();
    await page.getByRole("button", { name: "Yes, it lies so" }).click();
  };
  const walk = async () => {
    await stick();
    await page.getByRole("button", { name: "Walk the marks" }).click();
    await page.locator(".walk__figure").first().waitFor();
  };
  return [...places, ["a stick", stick], ["the walk", walk]];
}

async function light(page, word) {
  await drawer(page);
  await page.locator(".segment", { has: page.locator('input[name="theme"]'), hasText: new RegExp(`^${word}`, "i") }).click();
  assert.equal(await page.evaluate(() => document.documentElement.dataset.theme), word);
  await drawer(page);
}

/** The view, all its folds open and its drawings drawn. */
async function settled(page, walkTo) {
  await walkTo();
  await unfoldAll(page);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

for (const [size, of] of Object.entries(sizes)) {
  for (const theme of LIGHTS) {
    test(`every place is in order (${size}, ${theme})`, async () => {
      await visit(of, {}, async ({ page }) => {
        await begin(page, BEGIN.barn);
        await light(page, theme);
        const faults = [];
        for (const [name, walkTo] of views(page)) {
          await settled(page, walkTo);
          const { small, tiny, width } = await page.evaluate(measure);
          const found = [...(await axe(page)), ...small.map((one) => `under 44 px: ${one}`), ...tiny.map((one) => `under 12 px: ${one}`)];
          faults.push(...found.map((one) => `${name}: ${one}`));
          if (width > of.viewport.width) {
            faults.push(`${name}: ${width} px wide`);
          }
        }
        assert.deepEqual(faults, []);
      });
    });
  }
}

test("the start page, the drawer and trouble are in order", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    const faults = [];
    const look = async (name) => {
      const { small, tiny, width } = await page.evaluate(measure);
      faults.push(...[...(await axe(page)), ...small, ...tiny].map((one) => `${name}: ${one}`));
      assert.ok(width <= 360, name);
    };
    await look("start");
    await begin(page, BEGIN.barn);
    await go(page, "Papers");
    await unfoldAll(page);
    await drawer(page);
    await look("drawer over Papers");
    const ids = await page.evaluate(() => [...document.querySelectorAll("[id]")].map((one) => one.id));
    const twice = [...new Set(ids.filter((id, index) => ids.indexOf(id) !== index))];
    faults.push(...twice.map((id) => `drawer over Papers: two elements with the id ${id}`));
    await drawer(page);
    await go(page, "Frame");
    await type(page, "frame.reach", "5");
    await look("trouble");
    assert.deepEqual(faults, []);
  });
});

test("nothing goes sideways at 320 px", async () => {
  await visit({ ...sizes.phone, viewport: { width: 320, height: 640 } }, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    for (const theme of ["day", "sun"]) {
      await light(page, theme);
      for (const [name, walkTo] of views(page)) {
        await settled(page, walkTo);
        const { width } = await page.evaluate(measure);
        assert.ok(width <= 320, `${name}, ${theme}: ${width} px wide`);
      }
    }
  });
});

/** What a PDF says, page by page. */
async function pages(pdf) {
  const folder = await mkdtemp(join(tmpdir(), "outshot-print-"));
  try {
    await writeFile(join(folder, "papers.pdf"), pdf);
    const read = spawnSync("pdftotext", ["-layout", join(folder, "papers.pdf"), "-"], { encoding: "utf8" });
    assert.equal(read.status, 0, "pdftotext is needed to read what was printed");
    return read.stdout.split("\f").slice(0, -1);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

for (const [begins, digits] of [[BEGIN.barn, "imperial"], [BEGIN.store, "metric"]]) {
  test(`the papers print (${digits})`, async () => {
    await visit(sizes.phone, {}, async ({ page }) => {
      await begin(page, begins);
      const said = await report((await project(page)).text);
      const n_sheets = Number(/\d+/.exec(await page.getByRole("button", { name: /^Print \d/ }).innerText())[0]);
      const pdf = await page.pdf({ preferCSSPageSize: true });
      assert.equal(pdf.subarray(0, 5).toString(), "%PDF-");
      const printed = await pages(pdf);
      assert.equal(printed.length, n_sheets, printed.map((text) => text.trim().slice(0, 60)).join("\n---\n"));
      printed.forEach((text, index) => {
        assert.match(text, new RegExp(`sheet ${index + 1} of ${n_sheets}`));
        assert.match(text, /Caution:/);
        assert.match(text, /Rules of every joint/);
      });
      checkOrder(printed[0], said);
    });
  });
}

/** Each line of the order: its count, its sticks, and the sum of pieces. */
function checkOrder(text, { order }) {
  const words = text.replace(/\s+/g, " ");
  const n_pieces = order.reduce((sum, line) => sum + line.count, 0);
  assert.ok(words.includes(`In all ${n_pieces} pieces`), words.slice(-400));
  for (const line of order) {
    assert.ok(text.split("\n").some((row) => new RegExp(`^\\s*${line.count}\\s`).test(row) && row.includes("☐")), `no row of ${line.count} × ${line.section}`);
    for (const mark of line.holds.flat()) {
      assert.match(words, new RegExp(`\\b${mark}\\b`), `${mark} is not on the order`);
    }
  }
}

test("a sheet for every stick prints, and unprinted places stay off the paper", async () => {
  await visit(sizes.desk, {}, async ({ page }) => {
    await begin(page, BEGIN.inches);
    const said = await report((await project(page)).text);
    await page.locator(".segment", { hasText: "every stick" }).click();
    // Five of the frame, the index of the shop book, one for each stick.
    await page.getByRole("button", { name: `Print ${5 + 1 + said.sticks.length} sheets` }).waitFor();
    const printed = (await pages(await page.pdf({ preferCSSPageSize: true }))).join("\f");
    for (const stick of said.sticks) {
      assert.ok(new RegExp(`Stick ${stick.mark}\\b`).test(printed), stick.mark);
    }
    assert.doesNotMatch(printed, /Save as a file/);
    assert.ok(Number((await strip(page)).sticks) === said.sticks.length);
  });
});
