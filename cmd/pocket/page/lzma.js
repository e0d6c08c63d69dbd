// lzma unpacks a stream as .lzma files have it (Igor Pavlov's "LZMA specification", 2015):
// properties, size of the dictionary, size of what was packed, then the bits of a range coder.
// What is cut off or damaged is an error, never an endless run.
"use strict";

function lzma(packed) {
  const damaged = () => new Error("The program in this page is damaged: get the page anew.");
  const largest = 1 << 26; // bytes unpacked: more is no program of ours
  const head = 13;
  if (packed.length < head + 5 || packed[0] >= 9 * 5 * 5) throw damaged();
  const lc = packed[0] % 9, lp = (packed[0] / 9 | 0) % 5, pb = packed[0] / 45 | 0;
  let size = 0;
  for (let i = 12; i >= 5; i--) size = size * 256 + packed[i];
  if (size > largest || lc + lp > 4) throw damaged();
  const out = new Uint8Array(size);

  // Chances that a bit is 0, in 2048ths, each part of the table for bits of one meaning.
  let chances = 0;
  const part = (n) => (chances += n) - n;
  const isMatch = part(12 << 4), isRep = part(12), isRep0 = part(12), isRep0Long = part(12 << 4), isRep1 = part(12), isRep2 = part(12);
  const slots = part(4 << 6), distances = part(128), aligns = part(16);
  const lengths = part(2 + 2 * (16 << 3) + 256), repLengths = part(2 + 2 * (16 << 3) + 256);
  const literals = part(0x300 << (lc + lp));
  const chance = new Uint16Array(chances).fill(1024);

  // The range coder.
  let at = head, range = -1, code = 0; // as unsigned numbers of 32 bits
  if (packed[at++] !== 0) throw damaged();
  for (let i = 0; i < 4; i++) code = code << 8 | packed[at++];

  function more() {
    if (at === packed.length) throw damaged();
    range <<= 8;
    code = code << 8 | packed[at++];
  }

  function bit(i) {
    const c = chance[i], bound = (range >>> 11) * c;
    if ((code >>> 0) < (bound >>> 0)) {
      range = bound;
      chance[i] = c + (2048 - c >> 5);
      if (range >>> 24 === 0) more();
      return 0;
    }
    range = range - bound | 0;
    code = code - bound | 0;
    chance[i] = c - (c >> 5);
    if (range >>> 24 === 0) more();
    return 1;
  }

  function tree(first, bits) { // the highest bit first
    let m = 1;
    for (let i = 0; i < bits; i++) m = m << 1 | bit(first + m);
    return m - (1 << bits);
  }

  function turned(first, bits) { // the lowest bit first
    let m = 1, n = 0;
    for (let i = 0; i < bits; i++) {
      const b = bit(first + m);
      m = m << 1 | b;
      n |= b << i;
    }
    return n;
  }

  function direct(bits) { // 0 as likely as 1
    let n = 0;
    for (let i = 0; i < bits; i++) {
      range >>>= 1;
      const b = (code >>> 0) >= range ? 1 : 0;
      if (b) code = code - range | 0;
      n = n << 1 | b;
      if (range >>> 24 === 0) more();
    }
    return n;
  }

  function length(first, place) {
    if (!bit(first)) return 2 + tree(first + 2 + (place << 3), 3);
    if (!bit(first + 1)) return 10 + tree(first + 2 + 128 + (place << 3), 3);
    return 18 + tree(first + 2 + 256, 8);
  }

  function distance(long) {
    const slot = tree(slots + (Math.min(long - 2, 3) << 6), 6);
    if (slot < 4) return slot;
    const low = (slot >> 1) - 1, high = 2 | slot & 1;
    if (slot < 14) return (high << low) + turned(distances + (high << low) - slot, low);
    return (high << low >>> 0) + (direct(low - 4) << 4 >>> 0) + turned(aligns, 4);
  }

  let done = 0, state = 0, rep0 = 0, rep1 = 0, rep2 = 0, rep3 = 0;
  const placeMask = (1 << pb) - 1, literalMask = (1 << lp) - 1;
  while (done < size) {
    const place = done & placeMask;
    if (!bit(isMatch + (state << 4) + place)) {
      const before = done > 0 ? out[done - 1] : 0;
      const first = literals + 0x300 * (((done & literalMask) << lc) + (before >> 8 - lc));
      let m = 1;
      if (state >= 7) { // after a match: what followed there tells of what follows here
        let there = out[done - rep0 - 1];
        do {
          const bitThere = there >> 7 & 1, b = bit(first + (1 + bitThere << 8) + m);
          there <<= 1;
          m = m << 1 | b;
          if (b !== bitThere) break;
        } while (m < 0x100);
      }
      while (m < 0x100) m = m << 1 | bit(first + m);
      out[done++] = m;
      state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
      continue;
    }
    let long;
    if (!bit(isRep + state)) {
      rep3 = rep2, rep2 = rep1, rep1 = rep0;
      long = length(lengths, place);
      rep0 = distance(long);
      state = state < 7 ? 7 : 10;
    } else {
      if (bit(isRep0 + state)) {
        let far = rep1;
        if (bit(isRep1 + state)) {
          far = rep2;
          if (bit(isRep2 + state)) {
            far = rep3;
            rep3 = rep2;
          }
          rep2 = rep1;
        }
        rep1 = rep0, rep0 = far;
      } else if (!bit(isRep0Long + (state << 4) + place)) {
        if (rep0 >= done) throw damaged();
        state = state < 7 ? 9 : 11;
        out[done] = out[done++ - rep0 - 1];
        continue;
      }
      long = length(repLengths, place);
      state = state < 7 ? 8 : 11;
    }
    if (rep0 >= done || long > size - done) throw damaged();
    for (let from = done - rep0 - 1; long > 0; long--) out[done++] = out[from++];
  }
  if (code !== 0 || at !== packed.length) throw damaged();
  return out;
}
