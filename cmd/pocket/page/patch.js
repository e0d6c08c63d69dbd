// The document becomes what the program shows. What stays the same stays in place, with what
// was typed, ticked or opened: elements are the same by their id, name or action, others by
// their tag and class.
"use strict";

const byId = (id) => document.getElementById(id);
const attr = (e, name) => e.getAttribute?.(name) ?? "";
const main = byId("main");

function patch(html) {
  const fresh = document.createElement("template");
  fresh.innerHTML = html;
  for (const e of fresh.content.querySelectorAll("script, style, link, meta, base, iframe, object, embed")) e.remove();
  for (const e of fresh.content.querySelectorAll("h1")) e.tabIndex = -1;
  fillTimer(fresh.content);
  patchChildren(main, fresh.content);
}

function patchChildren(old, fresh) {
  let at = old.firstChild; // stood there, and has no place yet
  for (const n of [...fresh.childNodes]) {
    const same = sameAs(n, at);
    if (same?.contains(document.activeElement)) { // what has the focus is not moved
      for (let next; at !== same; at = next) {
        next = at.nextSibling;
        old.append(at);
      }
    }
    if (same && same === at) at = at.nextSibling;
    else old.insertBefore(same ?? n, at);
    if (same) patchNode(same, n);
  }
  for (let next; at; at = next) {
    next = at.nextSibling;
    at.remove();
  }
}

const key = (e) => attr(e, "id") || attr(e, "name") || (attr(e, "data-do") && attr(e, "data-do") + " " + attr(e, "data-value"));

function sameAs(n, at) {
  const alike = [];
  for (let e = at; e; e = e.nextSibling) if (e.nodeName === n.nodeName && key(e) === key(n)) alike.push(e);
  return alike.find((e) => key(n) || attr(e, "class") === attr(n, "class")) ?? (alike[0] === at ? at : null);
}

function patchNode(old, n) {
  if (old.nodeType !== 1) {
    if (old.data !== n.data) old.data = n.data;
    return;
  }
  const said = saidOf(old), saying = saidOf(n);
  for (const { name } of [...old.attributes]) if (name !== "open" && !n.hasAttribute(name)) old.removeAttribute(name);
  for (const { name, value } of n.attributes) if (name !== "open" && old.getAttribute(name) !== value) old.setAttribute(name, value);
  if (!n.matches("textarea")) patchChildren(old, n);
  if (said === saying) return;
  if (n.matches("textarea")) old.defaultValue = saying;
  if (n.matches("[type=checkbox], [type=radio]")) old.checked = n.checked;
  else old.value = n.matches("select") ? n.value : saying;
}

// saidOf is what the program says is in a field, whatever was typed there since.
function saidOf(e) {
  if (e.matches("textarea")) return e.defaultValue;
  if (e.matches("select")) return e.querySelector("option[selected]")?.value ?? "";
  return e.matches("[type=checkbox], [type=radio]") ? e.defaultChecked : attr(e, "value");
}
