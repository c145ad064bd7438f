// A text as the modules of a QR code (ISO/IEC 18004): bytes, level M (an eighth of it may be hidden), versions 1 to 20.

// ISO/IEC 18004, table 9: code words of correction in a block, and blocks, of level M
const CORRECTION = [10, 16, 26, 18, 24, 16, 18, 22, 22, 26, 30, 22, 22, 24, 24, 28, 28, 26, 26, 26];
const BLOCKS = [1, 1, 1, 2, 2, 4, 4, 4, 5, 5, 5, 8, 9, 9, 10, 10, 11, 13, 14, 16];
const LEVEL_M = 0;

/** Code words of a version that are neither pattern nor version. */
const words = (version) => {
  const aligned = version > 1 ? Math.floor(version / 7) + 2 : 0;
  const patterns = version > 1 ? 25 * aligned * aligned - 10 * aligned - 55 + (version > 6 ? 36 : 0) : 0;
  return ((16 * version + 128) * version + 64 - patterns) >> 3;
};

const room = (version) => words(version) - CORRECTION[version - 1] * BLOCKS[version - 1];

/** Product in the field of 256 with x⁸ + x⁴ + x³ + x² + 1. */
function times(a, b) {
  let product = 0;
  for (let i = 7; i >= 0; i--) {
    product = (product << 1) ^ ((product >> 7) * 0x11d) ^ (((b >> i) & 1) * a);
  }
  return product;
}

/** The remainder of data by the generator of a degree: Reed and Solomon's code words. */
function correction(data, degree) {
  const generator = new Uint8Array(degree);
  generator[degree - 1] = 1;
  let root = 1;
  for (let i = 0; i < degree; i++, root = times(root, 2)) {
    for (let j = 0; j < degree; j++) {
      generator[j] = times(generator[j], root) ^ (j + 1 < degree ? generator[j + 1] : 0);
    }
  }
  const rest = new Uint8Array(degree);
  for (const byte of data) {
    const factor = byte ^ rest[0];
    rest.copyWithin(0, 1);
    rest[degree - 1] = 0;
    generator.forEach((g, i) => { rest[i] ^= times(g, factor); });
  }
  return rest;
}

function dataOf(bytes, version) {
  const bits = [];
  const put = (value, count) => {
    for (let i = count - 1; i >= 0; i--) {
      bits.push((value >> i) & 1);
    }
  };
  put(4, 4);
  put(bytes.length, version < 10 ? 8 : 16);
  bytes.forEach((byte) => put(byte, 8));
  const whole = 8 * room(version);
  put(0, Math.min(4, whole - bits.length));
  put(0, -bits.length & 7);
  for (let pad = 0xec; bits.length < whole; pad ^= 0xec ^ 0x11) {
    put(pad, 8);
  }
  return Uint8Array.from({ length: whole / 8 }, (_, i) => bits.slice(8 * i, 8 * i + 8).reduce((v, bit) => 2 * v + bit, 0));
}

/** Data and correction, taken from the blocks in turn. */
function interleaved(bytes, version) {
  const data = dataOf(bytes, version);
  const blocks = BLOCKS[version - 1];
  const short = blocks - (data.length % blocks);
  const least = Math.floor(data.length / blocks);
  const cut = [];
  for (let i = 0, at = 0; i < blocks; i++) {
    const length = least + (i < short ? 0 : 1);
    cut.push(data.subarray(at, at += length));
  }
  const fixed = cut.map((block) => correction(block, CORRECTION[version - 1]));
  const inTurn = (lists, most) => Array.from({ length: most }, (_, i) => lists.filter((list) => i < list.length).map((list) => list[i])).flat();
  return [...inTurn(cut, least + 1), ...inTurn(fixed, CORRECTION[version - 1])];
}

const remainder = (value, shift, generator) => {
  let rest = value;
  for (let i = 0; i < shift; i++) {
    rest = (rest << 1) ^ ((rest >> (shift - 1)) * generator);
  }
  return rest;
};

const MASKS = [
  (x, y) => (x + y) % 2, (x, y) => y % 2, (x) => x % 3, (x, y) => (x + y) % 3,
  (x, y) => (Math.floor(x / 3) + Math.floor(y / 2)) % 2, (x, y) => ((x * y) % 2) + ((x * y) % 3),
  (x, y) => (((x * y) % 2) + ((x * y) % 3)) % 2, (x, y) => (((x + y) % 2) + ((x * y) % 3)) % 2,
];

function alignments(version, size) {
  if (version === 1) {
    return [];
  }
  const count = Math.floor(version / 7) + 2;
  const step = 2 * Math.ceil((version * 4 + 4) / (count * 2 - 2));
  return [6, ...Array.from({ length: count - 1 }, (_, i) => size - 7 - i * step).reverse()];
}

/** Rows of 0 and 1 without the quiet border; 1 is dark. Null when the text is too long. */
export function modules(text) {
  const bytes = new TextEncoder().encode(text);
  let version = 1;
  while (version <= 20 && room(version) < bytes.length + (version < 10 ? 2 : 3)) {
    version++;
  }
  if (version > 20) {
    return null;
  }
  const size = 17 + 4 * version;
  const dark = Array.from({ length: size }, () => new Uint8Array(size));
  const taken = Array.from({ length: size }, () => new Uint8Array(size));
  const set = (x, y, value) => {
    if (x >= 0 && y >= 0 && x < size && y < size) {
      dark[y][x] = value;
      taken[y][x] = 1;
    }
  };
  for (let i = 0; i < size; i++) {
    set(6, i, (i + 1) & 1);
    set(i, 6, (i + 1) & 1);
  }
  const ring = (cx, cy, reach, light) => {
    for (let y = -reach; y <= reach; y++) {
      for (let x = -reach; x <= reach; x++) {
        set(cx + x, cy + y, light.includes(Math.max(Math.abs(x), Math.abs(y))) ? 0 : 1);
      }
    }
  };
  [[3, 3], [size - 4, 3], [3, size - 4]].forEach(([x, y]) => ring(x, y, 4, [2, 4]));
  const places = alignments(version, size);
  places.forEach((y) => places.forEach((x) => {
    if (!((x === 6 && y === 6) || (x === 6 && y === size - 7) || (y === 6 && x === size - 7))) {
      ring(x, y, 2, [1]);
    }
  }));
  if (version > 6) {
    const told = (version << 12) | remainder(version, 12, 0x1f25);
    for (let i = 0; i < 18; i++) {
      const [a, b] = [size - 11 + (i % 3), Math.floor(i / 3)];
      set(a, b, (told >> i) & 1);
      set(b, a, (told >> i) & 1);
    }
  }
  const format = (mask) => {
    const value = (LEVEL_M << 3) | mask;
    const told = ((value << 10) | remainder(value, 10, 0x537)) ^ 0x5412;
    for (let i = 0; i < 15; i++) {
      const bit = (told >> i) & 1;
      set(8, i < 6 ? i : i < 8 ? i + 1 : size - 15 + i, bit);
      set(i < 8 ? size - 1 - i : i < 9 ? 7 : 14 - i, 8, bit);
    }
    set(8, size - 8, 1);
  };
  format(0);
  const stream = interleaved(bytes, version);
  let at = 0;
  for (let column = size - 1; column > 0; column -= column === 8 ? 3 : 2) {
    for (let k = 0; k < size; k++) {
      const y = ((column + 1) & 2) === 0 ? size - 1 - k : k;
      for (const x of [column, column - 1]) {
        if (!taken[y][x]) {
          dark[y][x] = at < 8 * stream.length ? (stream[at >> 3] >> (7 - (at & 7))) & 1 : 0;
          at++;
        }
      }
    }
  }
  const masked = MASKS.map((mask, number) => {
    format(number);
    return dark.map((row, y) => row.map((value, x) => (taken[y][x] ? value : value ^ (mask(x, y) === 0 ? 1 : 0))));
  });
  return masked.reduce((best, one) => (cost(one) < cost(best) ? one : best));
}

/** What a reader would stumble over: long runs, blocks, patterns like a corner's, more dark than light. */
function cost(rows) {
  const size = rows.length;
  let sum = 0;
  let count = 0;
  const line = (at) => {
    let text = '';
    for (let i = 0; i < size; i++) {
      text += at(i);
    }
    (text.match(/0{5,}|1{5,}/g) || []).forEach((run) => { sum += run.length - 2; });
    for (const like of ['10111010000', '00001011101']) {
      for (let i = text.indexOf(like); i >= 0; i = text.indexOf(like, i + 1)) {
        sum += 40;
      }
    }
  };
  for (let y = 0; y < size; y++) {
    line((i) => rows[y][i]);
    line((i) => rows[i][y]);
    for (let x = 0; x < size; x++) {
      count += rows[y][x];
      const block = x && y && rows[y][x] + rows[y - 1][x] + rows[y][x - 1] + rows[y - 1][x - 1];
      sum += x && y && (block === 0 || block === 4) ? 3 : 0;
    }
  }
  return sum + 10 * Math.floor(Math.abs((20 * count) / (size * size) - 10));
}
