// The script of the page: sends what is touched and typed to the program, which runs in a
// worker, and shows what comes back. It knows nothing of water and fish. patch.js and
// timer.js stand before it in the same script.
"use strict";

// Events go to the program one at a time; what is touched meanwhile waits.

const waiting = [];
let given = { do: "start" }; // what the program works on: at first it starts
let worker = null, dead = "", slow = 0;
let shown = { depth: 0 }; // what the program showed last
let depth = 0; // of the screen that will be seen once all that waits is done

function send(event) {
  if (dead) return byId("trouble").scrollIntoView({ block: "nearest" });
  if (given?.do === "start") { // once is enough of what waits for the start
    const same = waiting.findIndex((w) => w.do === event.do && w.value === event.value);
    if (same >= 0) waiting.splice(same, 1);
    tell("Starting. This is done as soon as the program runs.");
  }
  waiting.push(event);
  next();
}

function next() {
  if (given || !waiting.length) return;
  given = waiting.shift();
  worker.postMessage({ do: given.do, value: given.value, fields: given.fields });
  slow = setTimeout(() => busy(true), 300);
}

function busy(is) {
  clearTimeout(slow);
  byId("busy").hidden = !is;
  main.setAttribute("aria-busy", is);
}

function tell(text) {
  const say = byId("say");
  say.textContent = say.textContent === text && text ? text + "\u00a0" : text; // said again
}

function show(s) {
  if (s.trouble) return fail(s.trouble, s.detail);
  const active = document.activeElement, was = main.contains(active) && active;
  if (!s.aside) { // what follows by itself is no answer to what was done
    given = null;
    busy(false);
  }
  shown = s;
  document.title = s.title;
  patch(s.main);
  putTexts();
  if (!s.aside) tell(s.say);
  if (s.turn) scrollTo(0, 0);
  const lost = was && !was.isConnected, typing = !lost && was && was.matches("input, textarea, select");
  const to = s.focus && byId(s.focus) || lost && was.id && byId(was.id) ||
    (lost || s.turn && !typing) && main.querySelector("h1");
  if (to && to !== document.activeElement) to.focus();
  if (s.persist) navigator.storage?.persist?.();
  keepLight();
  if (!waiting.length && !given) goTo(s.depth ?? 0);
  next();
}

const troubles = {
  browser: "This browser is too old for this page. Open it in an up-to-date one.",
  start: "The program of this page did not start. Load the page again; if that does not help, get the page anew.",
  ended: "The program has stopped. What was kept is safe. Load the page again to go on.",
};

function fail(what, detail) {
  if (dead) return;
  for (const e of [given, ...waiting]) for (const [field, text] of e?.typed ?? []) field.value ||= text;
  dead = what;
  busy(false);
  tell("");
  const again = element("button", "Load again");
  again.onclick = () => { keepTexts(); location.reload(); };
  byId("trouble").replaceChildren(element("p", troubles[what]), ...detail ? [element("p", detail)] : [],
    element("p", "What you typed still stands in its field. A text stays there when you load again; a single number is typed again."), again);
  byId("trouble").scrollIntoView({ block: "nearest" });
}

// Texts outlive loading again: each goes back into its field, where that says what it said
// before. A number does not: it could end up at another depth.

const TEXTS = "coldseam-texts";
let texts = {};

function keepTexts() {
  const all = {};
  for (const f of document.querySelectorAll("main textarea[id]:not([data-own])")) if (f.value !== f.defaultValue) all[f.id] = [f.defaultValue, f.value];
  try { sessionStorage.setItem(TEXTS, JSON.stringify(all)); } catch { /* this browser keeps nothing */ }
}

function takeTexts() {
  try {
    texts = JSON.parse(sessionStorage.getItem(TEXTS)) ?? {};
    sessionStorage.removeItem(TEXTS);
  } catch { /* there are none */ }
  putTexts();
}

function putTexts() {
  for (const [id, [was, text]] of Object.entries(texts)) {
    const field = byId(id);
    if (field?.value !== was) continue;
    field.value = text;
    delete texts[id];
  }
}

// The phone's own way back: each screen behind the first is a step of the browser's history.

function goTo(to) {
  depth = to;
  let at = history.state?.depth ?? 0;
  while (at < to) history.pushState({ depth: ++at }, "");
  if (at > to) history.go(to - at);
}

addEventListener("popstate", () => {
  const to = history.state?.depth ?? 0;
  if (to > depth) history.go(depth - to); // nothing leads forward
  for (; depth > to; depth--) send({ do: "back", value: "", fields: {} });
});

// What is touched and typed.

const fieldsOf = (form) => {
  const out = {};
  for (const [name, value] of form ? new FormData(form) : []) if (typeof value === "string") out[name] = value;
  return out;
};

document.addEventListener("click", (e) => {
  const b = e.target.closest?.("button");
  if (!b) return;
  if (b.matches(".timer")) touchTimer(b);
  else if (b.hasAttribute("data-go-on")) goOn();
  else if (attr(b, "data-copy")) copy(textOf(attr(b, "data-copy")), b);
  else if (attr(b, "data-share")) share(textOf(attr(b, "data-share")), attr(b, "data-name"), b);
  else if (attr(b, "data-save")) save(textOf(attr(b, "data-save")), attr(b, "data-name"));
  else if (attr(b, "data-do")) {
    let value = attr(b, "data-value");
    if (attr(b, "data-timer") === "touched") value = touchedBottom();
    send({ do: attr(b, "data-do"), value, fields: fieldsOf(b.form) });
  } else return;
  e.preventDefault();
});

document.addEventListener("submit", (e) => {
  e.preventDefault();
  const form = e.target, typed = [];
  if (!attr(form, "data-do")) return;
  const event = { do: attr(form, "data-do"), value: e.submitter ? attr(e.submitter, "data-value") : "", fields: fieldsOf(form), typed };
  for (const field of form.querySelectorAll("[data-once]")) {
    typed.push([field, field.value]);
    field.value = "";
  }
  send(event);
});

// A touch on a button leaves the keyboard of the phone open where the next number is typed.
document.addEventListener("mousedown", (e) => {
  if (e.target.closest?.("button") && document.activeElement.matches("[data-once]")) e.preventDefault();
});

// Enter sends the form, whichever of its buttons comes first.
document.addEventListener("keydown", (e) => {
  if (e.key !== "Enter" || e.isComposing || !e.target.matches("form[data-do] input:not([type=checkbox], [type=radio], [type=file])")) return;
  e.preventDefault();
  if (!e.repeat) e.target.form.requestSubmit();
});

document.addEventListener("change", async (e) => {
  const field = e.target, what = attr(field, "data-file");
  if (attr(field, "data-do") && field.matches("input, select")) {
    send({ do: attr(field, "data-do"), value: attr(field, "data-value") || field.value, fields: { checked: field.checked ? "true" : "" } });
  }
  if (!what) return;
  const files = [...field.files];
  field.value = ""; // so that the same file can be chosen again
  for (const file of files) {
    if (file.size > 8e6) tell(file.name + " is too large for a page of readings.");
    else send({ do: what, value: await file.text(), fields: { name: file.name } });
  }
});

// Texts that leave the page.

const textOf = (id) => byId(id)?.textContent ?? "";

async function copy(text, button) {
  try {
    await navigator.clipboard.writeText(text);
    tell("Copied");
  } catch {
    select(text, button);
  }
}

// select marks a text where it cannot be copied otherwise.
function select(text, button) {
  byId("to-copy")?.remove();
  const area = element("textarea", text, { id: "to-copy", readonly: "", "data-own": "", "aria-label": "Text to copy", rows: "6" });
  (button.closest(".row") ?? button).after(area);
  area.select();
  if (document.execCommand("copy")) {
    area.remove();
    button.focus();
    tell("Copied");
  } else {
    tell("The text is marked: copy it from there.");
  }
}

// share hands on a text as a file, or where it has no name as a message.
async function share(text, name, button) {
  const what = name ? { files: [new File([text], name, { type: "text/plain" })] } : { text };
  const instead = () => name ? save(text, name) : copy(text, button);
  if (!navigator.canShare?.(what)) return instead();
  try {
    await navigator.share(what);
  } catch (e) {
    if (e.name !== "AbortError") instead();
  }
}

function save(text, name) {
  const a = element("a", "", { download: name || "coldseam.txt" });
  a.href = URL.createObjectURL(new Blob([text], { type: "text/plain" }));
  a.click();
  setTimeout(() => URL.revokeObjectURL(a.href), 60e3);
  tell("Saved as " + a.download);
}

// The program: first in the worker, then here.

function begin() {
  takeTexts();
  if (document.querySelector("link[rel=manifest]")) navigator.serviceWorker?.register("sw.js");
  try {
    const code = new Blob([byId("worker").textContent], { type: "text/javascript" });
    worker = new Worker(URL.createObjectURL(code));
  } catch (e) {
    return fail("browser", String(e));
  }
  worker.onmessage = (message) => show(message.data);
  worker.onerror = (e) => fail(given?.do === "start" ? "start" : "ended", e.message);
  worker.postMessage({ program: byId("program").textContent.trim() });
}

document.addEventListener("DOMContentLoaded", begin);
