// The script of the page: sends what is touched and typed to the program, which runs in a
// worker, and shows what comes back. It knows nothing of water and fish. patch.js and
// timer.js stand before it in the same script.
"use strict";

// Events go to the program one at a time; what is touched meanwhile waits.

let waiting = [];
let given = { do: "start" }; // what the program works on: at first it starts
let worker = null, dead = "", slow = 0;
let shown = { depth: 0 }; // what the program showed last
let depth = 0; // of the screen that will be seen once all that waits is done

function send(event) {
  if (dead) return byId("trouble").scrollIntoView({ block: "nearest" });
  if (given?.do === "start") { // once is enough of what waits for the start
    waiting = waiting.filter((w) => w.do !== event.do);
    tell("Starting: this is done soon.");
  }
  waiting.push(event);
  next();
}

function next() {
  if (given || !waiting.length) return;
  given = waiting.shift();
  worker.postMessage({ do: given.do, value: given.value ?? "", fields: given.fields ?? {} });
  slow = setTimeout(() => busy(true), 300);
}

function busy(is) {
  clearTimeout(slow);
  byId("busy").hidden = !is;
  main.setAttribute("aria-busy", is);
}

function tell(text) {
  const say = byId("say");
  say.textContent = text && say.textContent === text ? text + "\u00a0" : text; // said again
}

function show(s) {
  if (s.trouble) return fail(s.trouble, s.detail);
  if (!s.aside) { // what follows by itself is no answer to what was done
    given = null;
    busy(false);
    tell(s.say);
  }
  shown = s;
  const was = document.activeElement;
  document.title = s.title;
  patch(s.main);
  putTexts();
  if (s.turn || s.focus) scrollTo(0, 0); // what is asked stands above its field
  const lost = !was.isConnected, typing = !lost && was.matches("input, textarea, select");
  const to = byId(s.focus) || lost && byId(was.id) || (lost || s.turn && !typing) && main.querySelector("h1");
  if (to) {
    to.focus();
    to.scrollIntoView({ block: "nearest" });
  }
  if (s.persist) navigator.storage?.persist?.();
  keepLight();
  if (!waiting.length && !given) goTo(s.depth);
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
  const lines = [troubles[what], detail, "What you typed still stands in its field. A text stays there when you load again; a single number is typed again."];
  const again = element("button", "Load again");
  again.onclick = () => { keepTexts(); location.reload(); };
  byId("trouble").replaceChildren(...lines.filter(Boolean).map((line) => element("p", line)), again);
  byId("trouble").scrollIntoView({ block: "nearest" });
}

// Texts outlive loading again: each goes back into its field, where that says what it said
// before. A number does not: it could end up at another depth.

let texts = history.state?.texts ?? []; // that have no field yet

function keepTexts() {
  const all = [...main.querySelectorAll("textarea[id]")].filter((f) => f.value !== f.defaultValue);
  history.replaceState({ ...history.state, texts: all.map((f) => [f.id, f.defaultValue, f.value]) }, "");
}

function putTexts() {
  texts = texts.filter(([id, was, text]) => {
    const field = byId(id), goes = field?.value === was;
    if (goes) field.value = text;
    return !goes;
  });
}

// The phone's own way back: each screen behind the first is a step of the browser's history.

let going = false; // a step back of our own, which the browser takes in its own time

function goTo(to) {
  depth = to;
  if (going) return; // once it is taken
  let at = history.state?.depth ?? 0;
  while (at < to) history.pushState({ depth: ++at }, "");
  if (at > to) {
    going = true;
    history.go(to - at);
  }
}

addEventListener("popstate", () => {
  if (going) {
    going = false;
    return goTo(depth);
  }
  const to = history.state?.depth ?? 0;
  if (to > depth) history.go(depth - to); // nothing leads forward
  for (; depth > to; depth--) send({ do: "back" });
});

// What is touched and typed.

document.addEventListener("click", (e) => {
  const b = e.target.closest("button"), has = b?.dataset ?? {};
  if (b?.matches(".timer")) touchTimer(b);
  else if (b?.id === "go-on") runTimer();
  else if (has.copy) copy(byId(has.copy));
  else if (has.share) share(byId(has.share), has.name);
  else if (has.save) save(byId(has.save), has.name);
  else if (has.do) send({ do: has.do, value: has.timer ? touchedBottom() : has.value });
});

// A touch on a button leaves the keyboard of the phone open where the next number is typed.
document.addEventListener("mousedown", (e) => {
  if (e.target.closest("button") && document.activeElement.matches("[data-once]")) e.preventDefault();
});

document.addEventListener("submit", (e) => {
  e.preventDefault();
  const form = e.target, once = [...form.querySelectorAll("[data-once]")];
  if (!form.dataset.do) return;
  const event = { do: form.dataset.do, fields: Object.fromEntries(new FormData(form)), typed: once.map((field) => [field, field.value]) };
  for (const field of once) field.value = "";
  send(event);
});

document.addEventListener("change", async ({ target: field }) => {
  if (field.dataset.do) send({ do: field.dataset.do, fields: { checked: field.checked ? "true" : "" } });
  if (!field.dataset.file) return;
  const files = [...field.files];
  field.value = ""; // so that the same file can be chosen again
  for (const file of files) {
    if (file.size > 8e6) tell(file.name + " is too large for a page of readings.");
    else send({ do: field.dataset.file, value: await file.text(), fields: { name: file.name } });
  }
});

// Texts that leave the page.

async function copy(from) {
  try {
    await navigator.clipboard.writeText(from.textContent);
  } catch { // then what is marked is copied, or can be
    const { hidden } = from;
    from.hidden = false;
    getSelection().selectAllChildren(from);
    if (!document.execCommand("copy")) return tell("The text is marked: copy it from there.");
    from.hidden = hidden;
  }
  tell("Copied");
}

// share hands on a text as a file, or where it has no name as a message.
async function share(from, name) {
  const text = from.textContent;
  const what = name ? { files: [new File([text], name, { type: "text/plain" })] } : { text };
  const instead = () => name ? save(from, name) : copy(from);
  if (!navigator.canShare?.(what)) return instead();
  await navigator.share(what).catch((e) => e.name === "AbortError" || instead());
}

function save(from, name) {
  const a = element("a", "", { download: name });
  a.href = URL.createObjectURL(new Blob([from.textContent], { type: "text/plain" }));
  a.click();
  setTimeout(() => URL.revokeObjectURL(a.href), 60e3);
  tell("Saved as " + name);
}

function element(tag, text, set = {}) {
  const e = document.createElement(tag);
  e.textContent = text;
  for (const name in set) e.setAttribute(name, set[name]);
  return e;
}

// The program: first in the worker, then here.

function begin() {
  history.replaceState({ ...history.state, texts: [] }, "");
  putTexts();
  if (document.querySelector("link[rel=manifest]")) navigator.serviceWorker?.register("sw.js");
  try {
    worker = new Worker(URL.createObjectURL(new Blob([byId("worker").textContent], { type: "text/javascript" })));
  } catch (e) {
    return fail("browser", String(e));
  }
  worker.onmessage = (message) => show(message.data);
  worker.onerror = (e) => fail(given?.do === "start" ? "start" : "ended", e.message);
  worker.postMessage({ program: byId("program").textContent.trim() });
}

document.addEventListener("DOMContentLoaded", begin);
