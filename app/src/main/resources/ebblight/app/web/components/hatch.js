// Our hatches over the picture: rows for what counts as a part while it is corrected, dashes where light is lost, dots
// where nothing was recorded. Told apart by their drawing alone, never by a colour.

const BURNT = 254;
const BLACK = 1;

const TILES = {
  part: [12, 12, (pen) => {
    pen.fillStyle = '#fff';
    pen.fillRect(0, 2, 12, 4);
    pen.fillStyle = '#000';
    pen.fillRect(0, 3, 12, 2);
  }],
  burnt: [20, 12, (pen) => {
    pen.fillStyle = '#000';
    pen.fillRect(1, 2, 8, 2);
    pen.fillRect(11, 8, 8, 2);
  }],
  black: [12, 12, (pen) => {
    pen.fillStyle = '#fff';
    pen.fillRect(1, 1, 3, 3);
    pen.fillRect(7, 7, 3, 3);
  }],
};

const patterns = new Map();

function patternOf(name) {
  if (!patterns.has(name)) {
    const [width, height, draw] = TILES[name];
    const tile = new OffscreenCanvas(width, height);
    const pen = tile.getContext('2d');
    draw(pen);
    patterns.set(name, pen.createPattern(tile, 'repeat'));
  }
  return patterns.get(name);
}

/** A mask { width, height, has(i) } as a picture that is opaque where it has. */
function cut({ width, height, has }) {
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d');
  const pixels = pen.createImageData(width, height);
  for (let i = 0; i < width * height; i++) {
    pixels.data[4 * i + 3] = has(i) ? 255 : 0;
  }
  pen.putImageData(pixels, 0, 0);
  return canvas;
}

/** Masks [{ hatch, width, height, has }] made ready to be laid over a picture. */
export const cutMasks = (masks) => masks.map((mask) => ({ hatch: mask.hatch, canvas: cut(mask) }));

/** Lays cut masks over a canvas; the picture fills box, in pixels of the page. */
export function layMasks(canvas, masks, box, dpr) {
  const pen = canvas.getContext('2d');
  pen.clearRect(0, 0, canvas.width, canvas.height);
  for (const { hatch, canvas: shape } of masks) {
    const layer = new OffscreenCanvas(canvas.width, canvas.height);
    const over = layer.getContext('2d');
    over.drawImage(shape, box.x * dpr, box.y * dpr, box.w * dpr, box.h * dpr);
    over.globalCompositeOperation = 'source-in';
    over.fillStyle = patternOf(hatch);
    over.fillRect(0, 0, layer.width, layer.height);
    pen.drawImage(layer, 0, 0);
  }
}

/** Where a picture has lost light: in a colour or more at the top, in all of them at the bottom, and the shares of both. */
export function lossesOf(bitmap) {
  const { width, height } = bitmap;
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  pen.drawImage(bitmap, 0, 0);
  const { data } = pen.getImageData(0, 0, width, height);
  const burnt = (i) => data[4 * i] >= BURNT || data[4 * i + 1] >= BURNT || data[4 * i + 2] >= BURNT;
  const black = (i) => data[4 * i] <= BLACK && data[4 * i + 1] <= BLACK && data[4 * i + 2] <= BLACK;
  const share = (has) => {
    let count = 0;
    for (let i = 0; i < width * height; i++) {
      count += has(i) ? 1 : 0;
    }
    return count / (width * height);
  };
  return {
    masks: cutMasks([{ hatch: 'burnt', width, height, has: burnt }, { hatch: 'black', width, height, has: black }]),
    burnt: share(burnt),
    black: share(black),
  };
}
