// Keeps the page on the phone, so that it opens without a signal. Of each version all files
// are kept, or none. The page is one document, so the one that is open stays as it is, and
// the next start opens the newest that was kept.
"use strict";

const files = [FILES];
const own = `coldseam ${registration.scope} `; // other pages of this server keep theirs
const kept = own + "VERSION";

addEventListener("install", (e) => e.waitUntil((async () => {
  const cache = await caches.open(kept);
  await cache.addAll(files.map((name) => new Request(name, { cache: "reload" })));
  await skipWaiting();
})()));

addEventListener("activate", (e) => e.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith(own) && name !== kept) await caches.delete(name);
  await clients.claim();
})()));

addEventListener("fetch", (e) => {
  if (e.request.method !== "GET") return;
  const asked = e.request.url.split(/[?#]/)[0].replace(/\/index\.html$/, "/");
  if (files.some((name) => new URL(name, registration.scope).href === asked)) {
    e.respondWith((async () => await (await caches.open(kept)).match(asked) ?? fetch(e.request))());
  }
});
