// What the authority and the makers say: typed on a phone, in either units, kept over a reload; unknown until it is typed.
import assert from "node:assert/strict";
import { test } from "node:test";
import { axe, sizes, started, visit } from "./harness.mjs";
import { BEGIN, begin, choose, fieldOf, go, input, project, report, saved, turn, type, unfold, unfoldAll } from "./hands.mjs";

const shown = (page, path) => input(page, path).inputValue();
const pick = (page, path, word) => input(page, path).selectOption({ label: word });

/** What is typed in each system, how it is shown then, and what the file holds. */
const KINDS = {
  inches: {
    snow: ["45", "45 psf", 45],
    wind: ["115", "115 mph", 115],
    height: ["850", "850 ft", 850 * 12],
    ridge: ["15' 6", "15′ 6″", 186],
    frost: ["4'", "4′ 0″", 48],
  },
  millimetres: {
    snow: ["2,5", "2.50 kPa", 2500 / 47.88025898],
    wind: ["50", "50 m/s", 50 / 0.44704],
    height: ["260", "260 m", 260000 / 25.4],
    ridge: ["4700", "4700 mm", 4700 / 25.4],
    frost: ["900", "900 mm", 900 / 25.4],
  },
};

for (const [units, kind] of Object.entries(KINDS)) {
  test(`snow and wind typed on a phone are kept, in ${units}`, async () => {
    await visit(sizes.phone, {}, async ({ page }) => {
      await begin(page, BEGIN[units]);
      await go(page, "Site");
      await unfoldAll(page);
      const fields = {
        "place.ground_snow": kind.snow,
        "place.wind_speed": kind.wind,
        "place.ground_elevation": kind.height,
        "above.eave_to_ridge": kind.ridge,
        "ground.frost_depth": kind.frost,
      };
      for (const path of Object.keys(fields).filter((path) => path !== "place.ground_elevation")) {
        assert.equal(await shown(page, path), "", `${path} is filled in before anybody said so`);
        assert.equal(await input(page, path).getAttribute("placeholder"), "not known yet");
      }
      for (const [path, [typed]] of Object.entries(fields)) {
        await type(page, path, typed);
      }
      await pick(page, "ground.soil", "sand or silty or clayey sand and gravel (SW SP SM SC GM GC)");
      await pick(page, "place.terrain", "B: town, suburb, wood");
      await saved(page);
      await page.reload();
      await started(page);
      await unfoldAll(page);
      for (const [path, [, says]] of Object.entries(fields)) {
        assert.equal(await shown(page, path), says, path);
      }
      assert.equal(await input(page, "ground.soil").inputValue(), "sand");
      const { file, text } = await project(page);
      const { place, above, ground } = file.project;
      const near = (found, expected, what) => assert.ok(Math.abs(found - expected) < 1e-3, `${what}: ${found} is not ${expected}`);
      near(place.ground_snow_psf, kind.snow[2], "snow");
      near(place.wind_speed_mph, kind.wind[2], "wind");
      near(place.ground_elevation_in, kind.height[2], "height");
      near(above.eave_to_ridge_in, kind.ridge[2], "ridge");
      near(ground.frost_depth_in, kind.frost[2], "frost");
      assert.equal(place.terrain, "B");
      assert.deepEqual((await report(text)).problems, []);
    });
  });
}

test("an emptied field is not known again, and W2 is asked by one standard only", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.barn);
    await go(page, "Site");
    await unfoldAll(page);
    await type(page, "place.ground_snow", " ");
    assert.equal(await shown(page, "place.ground_snow"), "");
    assert.equal(await input(page, "place.winter_wind").count(), 0);
    await choose(page, "place.edition", "ASCE 7-22");
    await type(page, "place.winter_wind", "0.5");
    await type(page, "place.seismic.s_ds", "0.3");
    await input(page, "place.seismic.category").waitFor();
    assert.equal(await input(page, "place.seismic.category").locator("option:checked").innerText(), "F");
    const { file } = await project(page);
    assert.equal(file.project.place.ground_snow_psf, null);
    assert.equal(file.project.place.winter_wind_share, 0.5);
    assert.deepEqual(file.project.place.seismic, { category: "F", importance: 1, s_ds: 0.3 });
    await go(page, "Site");
    await unfoldAll(page);
    await type(page, "place.seismic.s_ds", " ");
    assert.equal(await input(page, "place.seismic.category").count(), 0);
    assert.equal((await project(page)).file.project.place.seismic, null);
  });
});

test("too much snow stands at its field, in the units shown, and the strip leads there", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.millimetres);
    await go(page, "Site");
    await unfold(page, "Snow");
    await type(page, "place.ground_snow", "500 psf");
    const problem = fieldOf(page, "place.ground_snow").locator(".problem--stop");
    await problem.waitFor();
    assert.match(await problem.innerText(), /between 0 kPa and 19\.15 kPa/);
    await go(page, "Frame");
    await page.locator(".strip__trouble--stop").click();
    await page.locator('[data-place="site"]').waitFor();
    await page.waitForFunction(() => document.activeElement?.id === "place.ground_snow");
  });
});

test("fixings are asked one by one, and a value of one's own asks for its source", async () => {
  await visit(sizes.phone, {}, async ({ page }) => {
    await begin(page, BEGIN.inches);
    await go(page, "Frame");
    const fixings = await unfold(page, "What fixes it");
    assert.match(await fixings.locator(".fold__summary").textContent(), /7 of 7 not known yet/);
    assert.equal(await input(page, "fixings.scarf.pull").count(), 0);
    await type(page, "fixings.scarf.count", "3");
    await type(page, "fixings.scarf.pull", "800");
    const caution = fieldOf(page, "fixings.scarf.source").locator(".problem");
    assert.match(await caution.innerText(), /where these values come from/);
    await type(page, "fixings.scarf.source", "the maker's sheet");
    await caution.waitFor({ state: "detached" });
    await pick(page, "fixings.ledger.fastener", "5/8 in lag screw");
    await pick(page, "fixings.ledger.wall_species", "Northern red oak");
    await type(page, "fixings.ledger.rows", "40");
    await fieldOf(page, "fixings.ledger.rows").getByRole("button", { name: "Use 8" }).click();
    const wood = await unfold(page, "Wood and its grade");
    await choose(page, "wood.timber_grade", "No.1");
    await turn(page, "wood.is_dry");
    await wood.getByRole("button", { name: "Add a value" }).click();
    await pick(page, "wood.own.0.used", "rafters");
    await type(page, "wood.own.0.value", "900");
    await type(page, "wood.own.0.source", "a grader's letter");
    await wood.getByRole("button", { name: "Add a value" }).click();
    await wood.getByRole("button", { name: "Take value 2 away" }).click();
    const { file } = await project(page);
    assert.deepEqual(file.project.fixings.scarf, {
      bores: null,
      count: 3,
      pull_lb: 800,
      sideways_lb: 0,
      source: "the maker's sheet",
    });
    assert.equal(file.project.fixings.ledger.fastener, "lag_5_8");
    assert.equal(file.project.fixings.ledger.rows, 8);
    assert.deepEqual(file.project.wood.own, [{ property: "F_b", source: "a grader's letter", used: "rafter", value_psi: 900 }]);
    assert.equal(file.project.wood.timber_grade, "No.1");
    assert.equal(file.project.wood.is_dry, true);
  });
});

test("the new parts can be read by everybody and fit a phone", async () => {
  for (const [size, options] of [[sizes.phone, {}], [sizes.desk, { colorScheme: "dark" }]]) {
    await visit(size, options, async ({ page }) => {
      await begin(page, BEGIN.inches);
      for (const place of ["Site", "Frame", "Roof"]) {
        await go(page, place);
        await unfoldAll(page);
        assert.deepEqual(await axe(page), [], place);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
        assert.ok(wide <= 0, `${place} is ${wide} px too wide`);
      }
    });
  }
});
