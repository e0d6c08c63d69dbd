// The worker's part: unpacks the program, which comes in base64 from the page, runs it, and
// passes on what the page sends and what the program shows. unpack.js, folder.js and Go's
// wasm_exec.js stand before it in the same script.
"use strict";

(() => {
  const events = []; // sent by the page, not yet taken by the program
  let taker = null; // of the next event, where the program waits for it

  // What the program (main_js.go) finds here.
  globalThis.pocket = {
    durable: false, // what is saved outlives the page
    next: () => new Promise((give) => events.length ? give(events.shift()) : taker = give),
    show: (what) => postMessage(what),
    // lock is null where another page holds it. A browser without locks has no way to know of
    // other pages. The browser lets go of it when the page ends.
    lock: () => new Promise((give) => {
      if (!navigator.locks) return give(() => {});
      navigator.locks.request("coldseam", { ifAvailable: true }, (lock) => {
        if (!lock) return give(null);
        return new Promise((unlock) => give(unlock));
      }).catch(() => give(() => {}));
    }),
  };

  onmessage = (message) => {
    if (message.data.program !== undefined) {
      run(message.data.program).catch((e) => postMessage({ trouble: "start", detail: String(e) }));
    } else if (taker) {
      const give = taker;
      taker = null;
      give(message.data);
    } else {
      events.push(message.data);
    }
  };

  async function run(base64) {
    if (!globalThis.WebAssembly) return postMessage({ trouble: "browser" });
    const storage = await globalThis.pocketFolder.ready;
    globalThis.pocket.durable = storage.durable;
    const go = new Go();
    const { instance } = await WebAssembly.instantiate(unpack(bytes(base64)), go.importObject);
    await go.run(instance);
    postMessage({ trouble: "ended" });
  }

  function bytes(base64) {
    if (Uint8Array.fromBase64) return Uint8Array.fromBase64(base64);
    const text = atob(base64), out = new Uint8Array(text.length);
    for (let i = 0; i < out.length; i++) out[i] = text.charCodeAt(i);
    return out;
  }
})();
