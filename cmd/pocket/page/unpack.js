// unpack gives the program of the page from its packed form. Before a call the program notes
// where to go on: the number of its function, and that of the place in it. When it was made
// small (calls.go), each such note became its distance from the one before.
"use strict";

function unpack(packed) {
  const b = lzma(packed);
  let at = 8; // behind the head of a module
  const number = () => { // LEB128
    let n = 0, shift = 1;
    do {
      n += (b[at] & 127) * shift;
      shift *= 128;
    } while (b[at++] >= 128);
    return n;
  };
  while (at < b.length && b[at++] !== 10) { // to the code
    const size = number();
    at += size;
  }
  number();
  const functions = number(), all = 2 ** 35;
  for (let f = 0; f < functions; f++) {
    const size = number(), end = at + size;
    let note = (0x1000 + f) * 65536;
    while (at < end - 8) {
      if (b[at] !== 0x42 || b[at + 6] !== 0x37 || b[at + 7] !== 3 || b[at + 8] !== 0 ||
        (b[at + 1] & b[at + 2] & b[at + 3] & b[at + 4] & ~b[at + 5] & 128) === 0) {
        at++;
        continue;
      }
      for (let i = 1, scale = 1; i <= 5; i++, scale *= 128) note += (b[at + i] & 127) * scale;
      note %= all;
      for (let i = 1, rest = note; i <= 5; i++, rest = Math.floor(rest / 128)) b[at + i] = rest % 128 | (i < 5 ? 128 : 0);
      at += 9;
    }
    at = end;
  }
  return b;
}
