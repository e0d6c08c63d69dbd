// Stands where the program stands in the worker: it shows what it is told to, and remembers
// what it was sent. unpack and folder stand in for those of the same names.
"use strict";

const unpack = (packed) => packed;
globalThis.pocketFolder = { ready: new Promise((open) => setTimeout(() => open({ durable: true }), START)) };

class Go {
  importObject = {};

  async run() {
    const events = [];
    let shown = { title: "Stand-in", main: FIRST, say: "", focus: "", persist: false, awake: false, depth: 0, turn: false };
    for (let e = { do: "start" }; e.do !== "end"; e = await pocket.next()) {
      if (e.do === "show") shown = { ...shown, say: "", focus: "", turn: false, ...JSON.parse(e.value) };
      else if (e.do === "slow") {
        pocket.show({ ...shown, events, title: "Meanwhile", say: "aside", aside: true });
        await new Promise((go) => setTimeout(go, Number(e.value)));
      }
      else if (e.do === "throw") setTimeout(() => { throw new Error("broken"); });
      else if (e.do === "lock") shown = { ...shown, say: await pocket.lock() ? "locked" : "in use" };
      if (e.fields && e.do !== "show") events.push(e);
      pocket.show({ ...shown, events });
    }
  }
}
