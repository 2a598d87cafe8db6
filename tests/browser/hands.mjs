// What a person does with the app, and what the native report says about the same file.
import { spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import assert from "node:assert/strict";
import { ROOT } from "./harness.mjs";

export const PLACES = ["Site", "Frame", "Strength", "Mill", "Bench", "Roof", "Papers"];
export const BEGIN = {
  inches: "New, in feet and inches",
  millimetres: "New, in millimetres",
  barnExample: "Wool barn lean-to, feet and inches",
  storeExample: "Larch log store, millimetres",
  barn: "the barn's first draft",
  store: "the log store's first draft",
};
const DRAFTS = { [BEGIN.barn]: "version-7.json", [BEGIN.store]: "log-store.json" };

/** Begins a project on the start page, or in the open drawer; the first drafts of the examples come from files. */
export async function begin(page, from) {
  if (from in DRAFTS) {
    await fileIn(page, await readFile(join(ROOT, "tests", "data", DRAFTS[from])));
  } else {
    await page.getByRole("button", { name: from }).click();
  }
  await page.locator(".strip").waitFor();
}

/** Walks to a place by the rule, until what shows that it is there has come. */
export async function go(page, place, shows = `[data-place="${place.toLowerCase()}"]`) {
  await page.locator(".rule").getByRole("link", { name: place }).click();
  await page.locator(shows).waitFor();
}

/** Opens one part of a page by its heading. */
export async function unfold(page, title) {
  const fold = page.locator("details.fold", { has: page.getByRole("heading", { name: title, exact: true, level: 2 }) });
  if ((await fold.getAttribute("open")) === null) {
    await fold.locator("summary").first().click();
  }
  return fold;
}

export const unfoldAll = (page) =>
  page.evaluate(() => {
    for (const part of document.querySelectorAll("details")) {
      part.open = true;
    }
  });

export const input = (page, path) => page.locator(`[id="${path}"]`);
export const fieldOf = (page, path) => page.locator(".field", { has: input(page, path) });

/** Types over what stands in a field, key by key, and leaves it. */
export async function type(page, path, text) {
  await input(page, path).click();
  await page.keyboard.press("Control+a");
  await page.keyboard.type(text);
  await page.keyboard.press("Tab");
}

/** Presses − or + beside a field. */
export async function step(page, path, word, times = 1) {
  const button = fieldOf(page, path).getByRole("button", { name: `, ${word} ` });
  for (let count = 0; count < times; count += 1) {
    await button.click();
  }
}

/** Chooses a segment by its word; the round box itself is hidden under it. */
export const choose = (page, path, word) =>
  page.locator(`[id="${path}"]`).locator(".segment", { hasText: new RegExp(`^\\s*${word}\\s*$`) }).click();

export const turn = (page, path) => page.locator("label.toggle", { has: input(page, path) }).click();

/** The value of a computed fact on the page. */
export async function fact(page, name) {
  const row = page.locator(".fact", { has: page.locator(".fact__name", { hasText: new RegExp(`^${name}$`) }) });
  return (await row.first().locator(".fact__value").textContent()).trim();
}

/** The figures of the strip, once the frame is laid out and judged: name to text. */
export async function strip(page) {
  await page.waitForFunction(() => [...document.querySelectorAll(".strip__value")].every((value) => value.textContent !== "–"));
  return page.locator(".strip__cell").evaluateAll((all) =>
    Object.fromEntries(all.map((cell) => [cell.querySelector(".strip__name").textContent, cell.querySelector(".strip__value").textContent])),
  );
}

/** Millimetres of a length as the app shows it: `7′ 4 5⁄16″`, `88 5⁄16″`, `2243 mm`. */
export function millimetres(text) {
  const plain = text.replace(/[\s\u00a0\u202f\u2009]+/g, " ").trim();
  const metric = /^(−|-)?([\d.]+) ?mm$/.exec(plain);
  if (metric) {
    return (metric[1] ? -1 : 1) * Number(metric[2]);
  }
  const parts = /^(−|-)?(?:(\d+)′ ?)?(?:(\d+))? ?(?:(\d+)⁄(\d+))?″?$/.exec(plain);
  assert.ok(parts && plain !== "", `no length: “${text}”`);
  const [, minus, feet = 0, inches = 0, over = 0, under = 1] = parts;
  return (minus ? -1 : 1) * 25.4 * (Number(feet) * 12 + Number(inches) + Number(over) / Number(under));
}

/** Fails unless a shown length is these inches, as finely as it is shown: 1⁄16″ or 1 mm, rounded. */
export function sameLength(shown, inches, what) {
  const step = shown.includes("mm") ? 1 : 25.4 / 16;
  const off = Math.abs(millimetres(shown) - inches * 25.4);
  assert.ok(off <= step / 2 + 0.01, `${what}: shown ${shown}, reported ${(inches * 25.4).toFixed(3)} mm`);
}

/** Saves the open project as a file; answers its name and text. */
export async function fileOut(page, within = page.locator(".page")) {
  const [download] = await Promise.all([page.waitForEvent("download"), within.getByRole("button", { name: "Save as a file" }).click()]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
}

/** The open project's file, from wherever one is. */
export async function project(page) {
  await go(page, "Papers");
  const { text } = await fileOut(page);
  return { text, file: JSON.parse(text) };
}

/** Opens a file with that text by the button in view. */
export async function fileIn(page, text, name = "try.outshot.json") {
  const buffer = Buffer.isBuffer(text) ? text : Buffer.from(text);
  await page.locator(".file-in__input").first().setInputFiles({ name, mimeType: "application/json", buffer });
}

export const saved = (page) => page.locator(".head__saved", { hasText: /^saved$/ }).waitFor();

/** Opens or closes projects and settings under the header. */
export const drawer = (page) => page.locator(".head__name").click();

/** What the native library says about a project file. */
export async function report(text) {
  const known = ["release", "debug"].map((kind) => join(ROOT, "target", kind, "report")).filter(existsSync);
  // Of two builds the newer one speaks for the code of today.
  const program = known.sort((a, b) => statSync(b).mtimeMs - statSync(a).mtimeMs)[0];
  assert.ok(program, "The native report is not built, so nothing can be compared with it: cargo build --bin report");
  const folder = await mkdtemp(join(tmpdir(), "outshot-report-"));
  try {
    const file = join(folder, "job.json");
    await writeFile(file, text);
    const ran = spawnSync(program, ["job", file, "--json"], { encoding: "utf8", maxBuffer: 64e6 });
    assert.equal(ran.status, 0, `the report refuses the file: ${ran.stderr}`);
    return JSON.parse(ran.stdout);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
