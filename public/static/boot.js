// Starts the app, and stands in for it when it can't run: everything here works without WebAssembly.
const CRASH_MARK = "outshot-stopped";
const STORE_PREFIX = "outshot";
const HOUR = 60 * 60 * 1000;

const boot = document.getElementById("boot");

/** The saved records as text; every record of the address when none carries the app's own prefix. */
function savedRecords() {
  const all = {};
  for (let i = 0; i < localStorage.length; i += 1) {
    const key = localStorage.key(i);
    all[key] = localStorage.getItem(key);
  }
  const own = Object.entries(all).filter(([key]) => key.startsWith(STORE_PREFIX));
  const records = own.length > 0 ? Object.fromEntries(own) : all;
  const head = { format: "outshot-raw-records", saved: new Date().toISOString() };
  return JSON.stringify({ ...head, records }, null, 1);
}

/** Hands the records out as a file; a home-screen app on iOS has only the share sheet for that. */
async function saveCopy(answer) {
  try {
    const name = `outshot-copy-${new Date().toISOString().slice(0, 10)}.json`;
    const file = new File([savedRecords()], name, { type: "application/json" });
    if (navigator.standalone === true && navigator.canShare?.({ files: [file] })) {
      await navigator.share({ files: [file] });
      return;
    }
    const link = document.createElement("a");
    link.href = URL.createObjectURL(file);
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 2000);
    answer.textContent = `A copy was handed to the browser as ${name}.`;
  } catch (error) {
    if (error?.name !== "AbortError") {
      answer.textContent = `The copy could not be made: ${error?.message ?? error}`;
    }
  }
}

function make(tag, className, text) {
  const element = document.createElement(tag);
  element.className = className;
  element.textContent = text;
  return element;
}

function button(text, action) {
  const element = make("button", "stopped__action", text);
  element.type = "button";
  element.addEventListener("click", action);
  return element;
}

/** Covers the page with one plain notice; the first cause stays, later ones follow from it. */
function showStopped(title, reason, detail) {
  if (document.querySelector(".stopped")) {
    return;
  }
  const notice = make("section", "stopped", "");
  const sheet = make("div", "stopped__sheet", "");
  const answer = make("p", "stopped__answer", "");
  answer.setAttribute("aria-live", "polite");
  notice.setAttribute("role", "alert");
  sheet.append(
    make("h1", "stopped__title", title),
    make("p", "stopped__reason", reason),
    button("Reload", () => location.reload()),
    button("Save a copy of my data", () => saveCopy(answer)),
    answer,
    make("p", "stopped__detail", `For a report: ${detail}`),
  );
  notice.append(sheet);
  document.getElementById("app")?.setAttribute("inert", "");
  document.body.append(notice);
}

window.outshotCrash = (message) => {
  try {
    // Lets the app start on its list of projects instead of the one that stopped it.
    sessionStorage.setItem(CRASH_MARK, String(Date.now()));
  } catch {
    // Without session storage only that convenience is lost.
  }
  const reason = "Your work up to the last change is kept on this device. Save a copy first if you are unsure, then reload.";
  showStopped("The app stopped", reason, String(message));
};

window.addEventListener("error", (event) => {
  if (event.error instanceof WebAssembly.RuntimeError) {
    window.outshotCrash(event.error.message);
  }
});

async function start() {
  try {
    const app = await import(new URL(boot.dataset.js, document.baseURI).href);
    await app.default({ module_or_path: new URL(boot.dataset.wasm, document.baseURI) });
    document.querySelector(".boot-wait")?.remove();
  } catch (error) {
    const reason =
      "The app could not be loaded. Your data is still on this device. Check the connection and reload; an up-to-date browser is needed.";
    showStopped("The app did not start", reason, String(error?.message ?? error));
  }
}

/** Tells the page that a newer version waits; it takes over only when the page calls `apply`. */
function announce(worker) {
  const apply = () => {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
    worker.postMessage("SKIP_WAITING");
  };
  window.outshotUpdate = { message: "A new version is ready", apply };
  window.dispatchEvent(new CustomEvent("outshot-update", { detail: window.outshotUpdate }));
}

function watch(registration) {
  const worker = registration.installing;
  worker?.addEventListener("statechange", () => {
    // Without a controller this is the first visit, not an update.
    if (worker.state === "installed" && navigator.serviceWorker.controller) {
      announce(worker);
    }
  });
}

async function keepOffline() {
  const marked = document.querySelector('meta[name="offline-copy"]')?.content === "on";
  if (!marked || !("serviceWorker" in navigator)) {
    return;
  }
  try {
    const registration = await navigator.serviceWorker.register(new URL("sw.js", document.baseURI), { updateViaCache: "none" });
    if (registration.waiting && navigator.serviceWorker.controller) {
      announce(registration.waiting);
    }
    watch(registration);
    registration.addEventListener("updatefound", () => watch(registration));
    let asked = Date.now();
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible" && Date.now() - asked > HOUR) {
        asked = Date.now();
        registration.update().catch(() => {});
      }
    });
  } catch (error) {
    console.warn(`No offline copy: ${error?.message ?? error}`);
  }
}

await start();
await keepOffline();
