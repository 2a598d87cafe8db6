import { sizes, visit } from "./harness.mjs";
import { BEGIN, begin, go, unfold } from "./hands.mjs";
for (const [name, size] of Object.entries({ phone: sizes.phone, desk: sizes.desk })) {
  await visit(size, {}, async ({ page }) => {
    await begin(page, name === "phone" ? BEGIN.barn : BEGIN.store);
    await go(page, "Mill");
    const a = await unfold(page, "Bringing it home");
    await a.getByRole("heading", { level: 3, name: /^Load 1/ }).waitFor();
    const shot = async (locator, file) => { await locator.scrollIntoViewIfNeeded(); await page.evaluate(() => { for (const e of document.querySelectorAll(".rule,.strip,.head")) e.style.visibility = "hidden"; }); await locator.screenshot({ path: `/tmp/w8p/${file}-${name}.png` }); };
    const h = (n) => page.locator(".group", { has: page.getByRole("heading", { level: 3, name: n }) });
    await shot(h(/^Load 1 /), "l1"); await shot(h(/^Load 2 /), "l2"); 
    await shot(a.locator(".table-box"), "carry");
    const w = await unfold(page, "What the wood does in five years");
    await w.getByRole("heading", { level: 3, name: "What moves, year by year" }).waitFor();
    await shot(w.locator(".drawing-view"), "joint");
    await shot(h("What to do in year one"), "year1");
    await shot(w.locator(".table-box").first(), "moves");
    await shot(h("What it weighs"), "weighs");
  });
}
