// Unpacks each file named with the page's scripts and writes what came out beside it, with
// .out; or, with --damage, says how many of its damaged forms gave something else and were not refused.
"use strict";
const fs = require("fs"), path = require("path");
const [folder, how, ...files] = process.argv.slice(2);
const script = ["lzma.js", "unpack.js"].map((name) => fs.readFileSync(path.join(folder, name), "utf8")).join("\n");
const { lzma, unpack } = new Function(script + "; return { lzma, unpack }")();

for (const file of files) {
  const packed = new Uint8Array(fs.readFileSync(file));
  if (how !== "--damage") {
    fs.writeFileSync(file + ".out", (how === "--lzma" ? lzma : unpack)(packed));
    continue;
  }
  const whole = lzma(packed);
  let taken = 0, tried = 0;
  const attempt = (bytes) => {
    tried++;
    try { if (Buffer.compare(lzma(bytes), whole)) taken++; } catch (e) { if (!/damaged/.test(e.message)) throw e; }
  };
  const step = Math.max(1, Math.floor(packed.length / 200));
  for (let i = 0; i < packed.length; i += step) {
    attempt(packed.slice(0, i));
    for (const bit of [1, 16, 128]) {
      const other = packed.slice();
      other[i] ^= bit;
      attempt(other);
    }
  }
  attempt(new Uint8Array([...packed, 0]));
  console.log(`${tried} tried, ${taken} taken`);
}
