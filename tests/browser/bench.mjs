// How long an edit takes to be seen on a slow phone, and what the site weighs. Not a test: npm run bench
import { readdir, readFile } from "node:fs/promises";
import { extname, join } from "node:path";
import { gzipSync } from "node:zlib";
import { open, SITE, sizes } from "./harness.mjs";
import { BEGIN, begin, go } from "./hands.mjs";

const SLOWER = 4;
const EDITS = 30;

/** Runs in the page: types a spacing, waits for the strip's new text and for the frame after it. */
async function edits({ times, path }) {
  const field = document.getElementById(path);
  const cells = document.querySelector(".strip__cells");
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const taken = [];
  field.focus();
  for (let count = 0; count < times; count += 1) {
    const before = cells.textContent;
    const start = performance.now();
    field.value = count % 2 === 0 ? '20"' : '27"';
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
    while (cells.textContent === before) {
      if (performance.now() - start > 10_000) {
        throw new Error("the strip does not follow the field");
      }
      await frame();
    }
    await frame();
    await frame();
    taken.push(performance.now() - start);
    await new Promise((done) => setTimeout(done, 900));
  }
  return taken;
}

async function speed(place) {
  const visit = await open(sizes.phone, {});
  try {
    const { page, context } = visit;
    await begin(page, BEGIN.barn);
    await go(page, place);
    const session = await context.newCDPSession(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
    const taken = await page.evaluate(edits, { times: EDITS, path: "frame.rafters.spacing" });
    const sorted = taken.toSorted((a, b) => a - b);
    const ms = (value) => `${value.toFixed(0)} ms`;
    console.log(`edit to painted strip, ${SLOWER}× slower, ${EDITS} edits, ${place}: min ${ms(sorted[0])}, median ${ms((sorted[14] + sorted[15]) / 2)}, max ${ms(sorted.at(-1))}`);
  } finally {
    await visit.close();
  }
}

async function weights() {
  const sums = new Map();
  for (const name of await readdir(SITE)) {
    const kind = extname(name);
    if ([".wasm", ".js", ".css"].includes(kind)) {
      const bytes = await readFile(join(SITE, name));
      const [raw, packed] = sums.get(kind) ?? [0, 0];
      sums.set(kind, [raw + bytes.length, packed + gzipSync(bytes, { level: 9 }).length]);
    }
  }
  for (const [kind, [raw, packed]] of sums) {
    console.log(`${kind.slice(1).padEnd(4)} ${(raw / 1000).toFixed(1).padStart(7)} kB raw ${(packed / 1000).toFixed(1).padStart(7)} kB gzipped`);
  }
}

await speed("Frame");
await weights();
