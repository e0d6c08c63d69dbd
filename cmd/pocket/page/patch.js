// The document becomes what the program shows. What stays the same stays in place, with what
// was typed, ticked or opened: elements are the same by their id, name or action, others by
// their tag and class.
"use strict";

const byId = (id) => document.getElementById(id);
const attr = (e, name) => e.getAttribute?.(name) ?? "";
const main = byId("main");

function element(tag, text, set = {}) {
  const e = document.createElement(tag);
  e.textContent = text;
  for (const name in set) e.setAttribute(name, set[name]);
  return e;
}

const key = (e) => attr(e, "id") || attr(e, "name") || (attr(e, "data-do") && attr(e, "data-do") + " " + attr(e, "data-value"));
const own = (e) => e?.nodeType === 1 && e.hasAttribute("data-own");
const skipOwn = (e) => { while (own(e)) e = e.nextSibling; return e; };

function patch(html) {
  const fresh = document.createElement("template");
  fresh.innerHTML = html;
  for (const e of fresh.content.querySelectorAll("script, style, link, meta, base, iframe, object, embed")) e.remove();
  for (const e of fresh.content.querySelectorAll("h1")) e.tabIndex = -1;
  for (const e of fresh.content.querySelectorAll(".timer")) fillTimer(e);
  patchChildren(main, fresh.content);
  if (clock && !clock.button.isConnected) endTimer();
}

function patchChildren(old, fresh) {
  let at = skipOwn(old.firstChild);
  for (const n of [...fresh.childNodes]) {
    const same = sameAs(n, at);
    if (!same) {
      old.insertBefore(n, at);
      continue;
    }
    const between = [];
    for (let e = at; e !== same; e = e.nextSibling) between.push(e);
    if (between.some((e) => e.contains(document.activeElement))) old.insertBefore(same, at);
    else {
      old.append(...between); // what has the focus is not moved
      at = skipOwn(same.nextSibling);
    }
    patchNode(same, n);
  }
  while (at) {
    const gone = at;
    at = skipOwn(at.nextSibling);
    gone.remove();
  }
}

function sameAs(n, at) {
  let near = null;
  for (let e = at; e; e = e.nextSibling) {
    if (e.nodeName !== n.nodeName || key(e) !== key(n) || own(e)) continue;
    if (key(n) || attr(e, "class") === attr(n, "class")) return e;
    if (e === at) near = e;
  }
  return near;
}

function patchNode(old, n) {
  if (old.nodeType !== 1) {
    if (old.data !== n.data) old.data = n.data;
    return;
  }
  if (old === clock?.button && goalOf(old) === goalOf(n)) return;
  const said = saidOf(old), saying = saidOf(n);
  for (const a of [...old.attributes]) if (!n.hasAttribute(a.name) && !(a.name === "open" && n.matches("details"))) old.removeAttribute(a.name);
  for (const a of n.attributes) if (old.getAttribute(a.name) !== a.value && !(a.name === "open" && n.matches("details"))) old.setAttribute(a.name, a.value);
  if (n.matches("textarea")) {
    if (said !== saying) old.defaultValue = saying;
  } else patchChildren(old, n);
  if (said === saying) return;
  if (n.matches("[type=checkbox], [type=radio]")) old.checked = n.checked;
  else old.value = n.matches("select") ? n.value : saying;
}

// saidOf is what the program says is in a field, whatever was typed there since.
function saidOf(e) {
  if (e.matches("textarea")) return e.defaultValue;
  if (e.matches("select")) return e.querySelector("option[selected]")?.value ?? "";
  return e.matches("[type=checkbox], [type=radio]") ? e.defaultChecked : attr(e, "value");
}
