// Undoes the packer's LZMA, a quarter smaller than gzip on the engine. Written after the LZMA specification that comes with
// the public-domain LZMA SDK (Igor Pavlov); a stream of the kind .lzma: thirteen bytes of head, then the coded bytes. A
// classic script: the worker has it before its own source.

const unlzma = (from) => {
  // what was seen so far decides how the next bit is coded; the names are those of the specification
  const MATCH = 0;
  const REP = 192;
  const REP_G0 = 204;
  const REP_G1 = 216;
  const REP_G2 = 228;
  const REP0_LONG = 240;
  const SLOT = 432;
  const NEAR = 688;
  const ALIGN = 816;
  const LENGTH = 832;
  const REP_LENGTH = 1346;
  const LITERAL = 1860;

  const lc = from[0] % 9;
  const lp = Math.floor(from[0] / 9) % 5;
  const pb = Math.floor(from[0] / 45);
  const to = new Uint8Array(new DataView(from.buffer, from.byteOffset).getUint32(5, true));
  const probabilities = new Uint16Array(LITERAL + (768 << (lc + lp))).fill(1024);
  let at = 14;
  let range = 0xffffffff;
  let code = 0;
  for (let i = 0; i < 4; i++) {
    code = code * 256 + from[at++];
  }

  const more = () => {
    if (range < 0x1000000) {
      range = (range << 8) >>> 0;
      code = ((code << 8) | from[at++]) >>> 0;
    }
  };
  const bit = (context) => {
    const p = probabilities[context];
    const bound = (range >>> 11) * p;
    if (code < bound) {
      range = bound;
      probabilities[context] = p + ((2048 - p) >> 5);
      more();
      return 0;
    }
    range -= bound;
    code -= bound;
    probabilities[context] = p - (p >> 5);
    more();
    return 1;
  };
  const tree = (base, bits) => {
    let m = 1;
    for (let i = 0; i < bits; i++) {
      m = (m << 1) | bit(base + m);
    }
    return m - (1 << bits);
  };
  const reversed = (base, bits) => {
    let m = 1;
    let value = 0;
    for (let i = 0; i < bits; i++) {
      const b = bit(base + m);
      m = (m << 1) | b;
      value |= b << i;
    }
    return value;
  };
  const direct = (bits) => {
    let value = 0;
    for (let i = 0; i < bits; i++) {
      range >>>= 1;
      const b = code >= range ? 1 : 0;
      code -= b * range;
      value = (value << 1) | b;
      more();
    }
    return value;
  };
  const lengthOf = (base, position) => {
    if (!bit(base)) {
      return 2 + tree(base + 2 + (position << 3), 3);
    }
    return bit(base + 1) ? 18 + tree(base + 258, 8) : 10 + tree(base + 130 + (position << 3), 3);
  };
  const distanceOf = (length) => {
    const slot = tree(SLOT + (Math.min(length - 2, 3) << 6), 6);
    if (slot < 4) {
      return slot;
    }
    const bits = (slot >> 1) - 1;
    const distance = (2 | (slot & 1)) << bits;
    return slot < 14 ? distance + reversed(NEAR + distance - slot, bits) : distance + (direct(bits - 4) << 4) + reversed(ALIGN, 4);
  };

  let state = 0;
  let rep0 = 0;
  let rep1 = 0;
  let rep2 = 0;
  let rep3 = 0;
  let done = 0;
  while (done < to.length) {
    const position = done & ((1 << pb) - 1);
    if (!bit(MATCH + (state << 4) + position)) {
      const before = done ? to[done - 1] : 0;
      const base = LITERAL + 768 * (((done & ((1 << lp) - 1)) << lc) + (before >> (8 - lc)));
      let symbol = 1;
      if (state >= 7) {
        let match = to[done - rep0 - 1];
        while (symbol < 256) {
          const wanted = match >> 7;
          match = (match << 1) & 255;
          const b = bit(base + ((1 + wanted) << 8) + symbol);
          symbol = (symbol << 1) | b;
          if (b !== wanted) {
            break;
          }
        }
      }
      while (symbol < 256) {
        symbol = (symbol << 1) | bit(base + symbol);
      }
      to[done++] = symbol;
      state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
      continue;
    }
    let length;
    if (!bit(REP + state)) {
      [rep3, rep2, rep1] = [rep2, rep1, rep0];
      length = lengthOf(LENGTH, position);
      rep0 = distanceOf(length);
      state = state < 7 ? 7 : 10;
    } else {
      let short = false;
      if (!bit(REP_G0 + state)) {
        short = !bit(REP0_LONG + (state << 4) + position);
      } else if (!bit(REP_G1 + state)) {
        [rep1, rep0] = [rep0, rep1];
      } else if (!bit(REP_G2 + state)) {
        [rep2, rep1, rep0] = [rep1, rep0, rep2];
      } else {
        [rep3, rep2, rep1, rep0] = [rep2, rep1, rep0, rep3];
      }
      length = short ? 1 : lengthOf(REP_LENGTH, position);
      state = short ? (state < 7 ? 9 : 11) : state < 7 ? 8 : 11;
    }
    for (const end = Math.min(to.length, done + length); done < end; done++) {
      to[done] = to[done - rep0 - 1];
    }
  }
  return to;
};
