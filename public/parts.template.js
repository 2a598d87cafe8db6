
// Below this line: how the app's own build lets the parts start, on any host and after a lost signal.

/** The small parts lie one after the other in one file. */
let small;
function within(from, to) {
  if (small === undefined) {
    const fetched = whole(fetch(new URL("./small.wasm", import.meta.url)));
    fetched.catch(() => {
      small = undefined;
    });
    small = fetched;
  }
  return small.then((bytes) => bytes.slice(from, to));
}

async function whole(answer) {
  const response = await answer;
  if (!response.ok) {
    throw new Error(`${response.url}: ${response.status}`);
  }
  return response.arrayBuffer();
}

/** Not streamed: some hosts give a wasm no type of its own, and browsers then refuse to. */
async function started(source, imports) {
  const part = await source;
  return WebAssembly.instantiate(part instanceof ArrayBuffer ? part : await whole(part), imports);
}
