// The whole job from an empty project, by typing and tapping; every number is held against the native report.
import assert from "node:assert/strict";
import { test } from "node:test";
import { sizes, visit } from "./harness.mjs";
import { BEGIN, choose, fact, fieldOf, fileOut, begin, go, input, millimetres, report, sameLength, step, strip, turn, type, unfold } from "./hands.mjs";

/** Each entry: field, as it is typed, what it is in inches. */
const INCHES = {
  begin: BEGIN.inches,
  site: [
    ["site.eave_edge", "12' 4", 148],
    ["site.eave_edge", "148 3/8", 148.375],
    ["site.eave_projection", "16,5", 16.5],
    ["frame.reach", "10-6-5", 126.3125],
    ["frame.reach", "126.5", 126.5],
    ["site.ground_right", "-3 1/2", -3.5],
  ],
  frame: [
    ["frame.reach", "3.2258 m", 127],
    ["frame.beam_length", "22'", 264],
  ],
  pitch: ["3 in 12", 0.25],
  seat: ["frame.heights.beam_seat", "8' 4", 100],
  spacing: { steps: 3, inches: 1 },
  post: ["frame.posts.1.x", "10' 3 1/2", 123.5],
  last: ["frame.posts.2.x", "258", 258],
  // Rafters this close leave room for no longer one in every bay.
  lap: ["frame.scarfs.lap", "1' 4", 16],
};

const mm = (value) => value / 25.4;
const MILLIMETRES = {
  begin: BEGIN.millimetres,
  site: [
    ["site.eave_edge", "3,7 m", mm(3700)],
    ["site.eave_projection", "0,4 m", mm(400)],
    ["frame.reach", "2.243 m", mm(2243)],
    ["site.ground_right", "-85", mm(-85)],
    ["site.wall_post_spacing", "24in", 24],
  ],
  frame: [
    ["frame.reach", "3120 mm", mm(3120)],
    ["frame.beam_length", "6.6 m", mm(6600)],
  ],
  pitch: ["14°", Math.tan((14 * Math.PI) / 180)],
  seat: ["frame.heights.beam_seat", "2450", mm(2450)],
  spacing: { steps: 6, inches: mm(20) },
  post: ["frame.posts.1.x", "3150,5", mm(3150.5)],
  last: ["frame.posts.2.x", "6430", mm(6430)],
  lap: ["frame.scarfs.lap", "0,4 m", mm(400)],
};

/** Types a length and reads it back beside the field. */
async function typeAndRead(page, [path, text, inches]) {
  await type(page, path, text);
  const reading = await fieldOf(page, path).locator(".field__reading").textContent();
  const first = reading.replace("=", "").split("·")[0].trim();
  const off = Math.abs(millimetres(first) - inches * 25.4);
  assert.ok(off <= 25.4 / 64 + 0.01, `${path}: typed ${text}, read back ${first}`);
  assert.equal(await fieldOf(page, path).locator(".field__refused").textContent(), "", path);
}

async function site(page, job) {
  await go(page, "Site");
  await unfold(page, "The posts of the wall");
  for (const entry of job.site) {
    await typeAndRead(page, entry);
  }
}

async function heights(page, job) {
  await choose(page, "frame.heights.fixed", "pitch and beam");
  await type(page, "frame.heights.pitch", job.pitch[0]);
  await typeAndRead(page, job.seat);
  assert.equal(await input(page, "frame.heights.ledger_seat").count(), 0, "the height that follows is no field");
}

async function spacing(page, job) {
  const cell = async () => millimetres((await fieldOf(page, "frame.rafters.spacing").locator(".field__reading").textContent()).replace("=", "").split("·")[0]);
  const [before, sticks] = [await cell(), (await strip(page)).sticks];
  await step(page, "frame.rafters.spacing", "less", job.spacing.steps);
  const moved = before - (await cell());
  assert.ok(Math.abs(moved - job.spacing.steps * job.spacing.inches * 25.4) < 0.5, `the steps moved it by ${moved} mm`);
  assert.ok(Number((await strip(page)).sticks) > Number(sticks), "closer rafters are more sticks");
  assert.match(await page.locator(".strip__was").first().textContent(), /was /);
}

async function beam(page, job) {
  await unfold(page, "Beam and scarfs");
  await choose(page, "frame.scarfs.kind", "halved, under-squinted");
  await typeAndRead(page, job.lap);
  await turn(page, "frame.scarfs.count_is_mine");
  await input(page, "frame.scarfs.n_pieces.count").waitFor();
  const before = await strip(page);
  await step(page, "frame.scarfs.n_pieces.count", "more");
  // Three posts bear one scarf: a third piece would fold, which is said until it is taken back.
  assert.match((await page.locator(".problem--stop").allInnerTexts()).join(" "), /a beam on 3 posts bears one scarf/);
  await step(page, "frame.scarfs.n_pieces.count", "less");
  assert.equal(await page.locator(".problem--stop").count(), 0);
  assert.deepEqual(await strip(page), before);
}

async function frame(page, job) {
  await go(page, "Frame");
  for (const entry of job.frame) {
    await typeAndRead(page, entry);
  }
  await heights(page, job);
  await unfold(page, "Posts");
  await typeAndRead(page, job.last);
  await typeAndRead(page, job.post);
  await spacing(page, job);
  await beam(page, job);
  assert.equal(await page.locator(".problem--stop").count(), 0, await page.locator(".strip").innerText());
  await unfold(page, "Seats, head and tail");
  await unfold(page, "Braces");
  const names = ["Rafters", "Rafter, along the top edge", "Headroom under the beam", "Rise from seat to seat", "How many"];
  const shown = {};
  for (const name of names) {
    shown[name] = await fact(page, name);
  }
  return { ...shown, strip: await strip(page) };
}

async function mill(page) {
  await go(page, "Mill");
  const truck = await unfold(page, "As it comes");
  await truck.locator("label.tick").first().click();
  assert.match(await truck.locator(".fold__summary").textContent(), /^1 of \d+ on the truck$/);
  const lines = await page.locator(".order__line").evaluateAll((cards) =>
    cards.map((card) => ({ count: Number(card.querySelector(".order__count").textContent), size: card.querySelector(".order__size").textContent })),
  );
  return { lines, pieces: Number(await fact(page, "Pieces of stock")), price: await fact(page, "Price in all") };
}

/** Walks all marks of R1; answers the first figure of each. */
async function walk(page) {
  const figures = [];
  const marked = page.getByRole("button", { name: "Marked" });
  for (;;) {
    const count = await page.locator(".walk__count").textContent();
    if (/^all/.test(count)) {
      return { figures, count };
    }
    assert.equal(count.split(" ")[1], String(figures.length + 1), "marks come in order");
    figures.push({
      shown: await page.locator(".walk__figure").first().textContent(),
      metric: (await page.locator(".walk__figure").first().locator(".walk__unit").count()) > 0,
      what: await page.locator(".walk__what").textContent(),
    });
    await marked.click();
  }
}

async function bench(page) {
  await go(page, "Bench");
  const n_sticks = await page.locator(".stick-link").count();
  await page.getByRole("link", { name: /^R1 / }).click();
  assert.match(page.url(), /#\/bench\/R1$/);
  assert.ok(await page.locator(".mark__box").first().isDisabled(), "no mark before the question is answered");
  await page.getByRole("button", { name: "Yes, it lies so" }).click();
  await page.getByRole("button", { name: "Walk the marks" }).click();
  const walked = await walk(page);
  await page.locator(".walk__done").getByText("All marks made").waitFor();
  await page.getByLabel("R1 is cut").check();
  await page.getByRole("button", { name: "Back to the whole sheet" }).click();
  await page.locator(".seal", { hasText: "It is cut to this layout." }).waitFor();
  assert.equal(await page.locator(".gate").count(), 0, "a cut stick asks nothing");
  return { n_sticks, ...walked };
}

async function roof(page) {
  await go(page, "Roof");
  const [, rows, sheets, long] = /^(\d+) rows of purlins, (\d+) sheets of (.+)$/.exec(await page.locator(".page__about").textContent());
  assert.equal(await page.locator(".purlin").count(), Number(rows));
  const covers = await page.locator(".page .table tbody tr td:nth-child(3)").allTextContents();
  return { rows: Number(rows), sheets: Number(sheets), long, covers };
}

/** Closed form: the top edge runs from the wall gap to the tail, both level, at the pitch. */
function topEdge({ frame }) {
  return (frame.reach_in + frame.tail_in - frame.wall_gap_in) * Math.hypot(1, frame.heights.pitch_rise_per_run);
}

function checkFrame(shown, said, file) {
  const { geometry, sticks } = said;
  assert.ok(Math.abs(topEdge(file) - geometry.rafter_top_edge_in) < 1e-4, `by hand ${topEdge(file)} in, reported ${geometry.rafter_top_edge_in} in`);
  sameLength(shown["Rafter, along the top edge"], geometry.rafter_top_edge_in, "rafter, top edge");
  sameLength(shown["Headroom under the beam"], geometry.clear_under_beam_in, "headroom");
  sameLength(shown["Rise from seat to seat"], geometry.ledger_seat_in - geometry.beam_seat_in, "rise");
  assert.equal(Number(shown.Rafters), geometry.n_rafters);
  assert.equal(Number(shown["How many"]), sticks.filter((stick) => stick.mark.startsWith("K")).length, "braces");
  assert.equal(Number(shown.strip.sticks), sticks.length, "sticks on the strip");
  const heaviest = sticks.reduce((a, b) => (b.green_weight_lb > a.green_weight_lb ? b : a));
  const [, weight, unit] = /([\d,.]+)\s*(lb|kg)/.exec(shown.strip.heaviest);
  const pounds = Number(weight.replace(",", "")) * (unit === "kg" ? 2.2046226218 : 1);
  assert.ok(Math.abs(pounds - heaviest.green_weight_lb) < 1.5, `heaviest: ${shown.strip.heaviest}, reported ${heaviest.green_weight_lb} lb`);
  assert.equal(geometry.scarfs.length, file.frame.scarfs.n_pieces - 1);
}

function checkOrder(shown, said) {
  const count = (lines) => lines.reduce((sum, line) => sum + line.count, 0);
  assert.deepEqual(shown.lines.map((line) => line.count), said.order.map((line) => line.count));
  assert.equal(shown.pieces, count(said.order));
  shown.lines.forEach((line, index) => sameLength(line.size.split("×").at(-1).trim(), said.order[index].length_in, line.size));
  const price = said.order.reduce((sum, line) => sum + line.price, 0);
  const paid = Number(shown.price.replace(/[^\d.]/g, ""));
  // A sum this large is shown in whole money.
  assert.ok(Math.abs(paid - price) < 0.501, `price ${shown.price}, reported ${price}`);
}

function checkBench(shown, said) {
  const rafter = said.sticks.find((stick) => stick.mark === "R1");
  assert.equal(shown.n_sticks, said.sticks.length);
  assert.equal(shown.figures.length, rafter.marks.length);
  shown.figures.forEach(({ shown: text, metric, what }, index) => {
    assert.ok(what.startsWith(rafter.marks[index].what), what);
    // What lies on the other side of zero is said in words, not by a minus.
    sameLength(metric && !text.includes("mm") ? `${text} mm` : text, Math.abs(rafter.marks[index].near_in), what);
  });
}

function checkRoof(shown, { roof }) {
  assert.equal(shown.rows, roof.purlin_rows);
  assert.equal(shown.sheets, roof.sheets[0].count);
  assert.equal(shown.covers.length, roof.sheets[0].count);
  sameLength(shown.long, roof.sheets[0].length_in, "sheet");
  const covered = shown.covers.reduce((sum, cover) => sum + millimetres(cover), 0);
  assert.ok(Math.abs(covered - roof.width_in * 25.4) < shown.covers.length, `sheets cover ${covered} mm of ${roof.width_in * 25.4}`);
}

/** What was typed is what the file holds, exactly. */
function checkFile(project, job, file) {
  const typed = [...job.site, ...job.frame, job.seat, job.post, job.last, job.lap];
  const last = new Map(typed.map(([path, , inches]) => [path, inches]));
  for (const [path, inches] of last) {
    const keys = path.split(".");
    const value = keys.slice(0, -1).reduce((at, key) => at[key], project)[`${keys.at(-1)}_in`];
    assert.ok(Math.abs(value - inches) < 1e-9, `${path}: the file holds ${value}, typed was ${inches}`);
  }
  assert.ok(Math.abs(project.frame.heights.pitch_rise_per_run - job.pitch[1]) < 1e-9);
  assert.equal(project.frame.scarfs.kind, "halved under-squinted");
  assert.equal(Object.keys(project.progress.pieces).length, 1);
  assert.ok(project.progress.cut.R1);
  assert.match(file.name, /^new-lean-to\.outshot\.json$/);
}

for (const [name, size, job] of [["phone, inches", sizes.phone, INCHES], ["desk, millimetres", sizes.desk, MILLIMETRES]]) {
  test(`the whole job (${name})`, async () => {
    await visit(size, {}, async ({ page }) => {
      await begin(page, job.begin);
      await site(page, job);
      const framed = await frame(page, job);
      const milled = await mill(page);
      const benched = await bench(page);
      const roofed = await roof(page);
      await go(page, "Papers");
      const file = await fileOut(page);
      const { project } = JSON.parse(file.text);
      checkFile(project, job, file);
      const said = await report(file.text);
      checkFrame(framed, said, project);
      checkOrder(milled, said);
      checkBench(benched, said);
      checkRoof(roofed, said);
    });
  });
}
