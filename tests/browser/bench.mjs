// How long an edit takes to be seen on a slow phone, and what the site weighs. Not a test: npm run bench
import { readdir, readFile } from "node:fs/promises";
import { extname, join } from "node:path";
import { gzipSync } from "node:zlib";
import { open, SITE, sizes } from "./harness.mjs";
import { BEGIN, begin, go } from "./hands.mjs";

const SLOWER = 4;
const EDITS = 30;
/** An edit is seen whole once nothing more changes for so long; what it keeps on the phone is written later. */
const QUIET = 700;

/** Runs in the page: types a spacing, and tells when the strip's new text was painted, and when the last of what the edit changed was: the picture of the frame and its checks come in later frames. */
async function edits({ times, path, quiet }) {
  const field = document.getElementById(path);
  const cells = document.querySelector(".strip__cells");
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  /** Asked for within a frame, it comes once that frame is painted. */
  const painted = () =>
    new Promise((done) => {
      const channel = new MessageChannel();
      channel.port1.onmessage = done;
      channel.port2.postMessage(null);
    });
  let changed = false;
  const watch = new MutationObserver(() => {
    changed = true;
  });
  for (const place of [document.querySelector("main"), cells]) {
    watch.observe(place, { subtree: true, childList: true, characterData: true, attributes: true });
  }
  const taken = { strip: [], all: [] };
  field.focus();
  for (let count = 0; count < times; count += 1) {
    const before = cells.textContent;
    const start = performance.now();
    let [strip, all] = [undefined, undefined];
    field.value = count % 2 === 0 ? '22"' : '26"';
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
    while (performance.now() - (all ?? start) < (strip === undefined ? 10_000 : quiet)) {
      await frame();
      const now = changed;
      changed = false;
      await painted();
      const then = performance.now() - start;
      if (now) {
        strip ??= cells.textContent === before ? undefined : then;
        all = start + then;
      }
    }
    if (strip === undefined) {
      throw new Error("the strip does not follow the field");
    }
    taken.strip.push(strip);
    taken.all.push(all - start);
    await new Promise((done) => setTimeout(done, quiet));
  }
  return taken;
}

function say(what, times) {
  const sorted = times.toSorted((a, b) => a - b);
  const middle = (sorted[Math.floor((sorted.length - 1) / 2)] + sorted[Math.ceil((sorted.length - 1) / 2)]) / 2;
  const ms = (value) => `${value.toFixed(0)} ms`;
  console.log(`${what}: min ${ms(sorted[0])}, median ${ms(middle)}, max ${ms(sorted.at(-1))}`);
}

async function speed(place) {
  const visit = await open(sizes.phone, {});
  try {
    const { page, context } = visit;
    await begin(page, BEGIN.barnExample);
    await go(page, place);
    const session = await context.newCDPSession(page);
    await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
    const taken = await page.evaluate(edits, { times: EDITS, path: "frame.rafters.spacing", quiet: QUIET });
    say(`edit to painted strip, ${SLOWER}× slower, ${EDITS} edits, ${place}`, taken.strip);
    say(`edit to all of it painted, ${SLOWER}× slower, ${EDITS} edits, ${place}`, taken.all);
  } finally {
    await visit.close();
  }
}

async function weights() {
  const sums = new Map();
  for (const name of await readdir(SITE, { recursive: true })) {
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
