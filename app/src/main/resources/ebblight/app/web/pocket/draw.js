// Pictures of the engine, linear light in three planes, for the screen.

const PIECE_WIDTH = 170;
const PIECE_HEIGHT = 92;
const WANTED_CONTRAST = 0.14;
const MOST_RAISED = 3;

// IEC 61966-2-1, in steps that no eye tells from the curve
const CODES = new Uint8ClampedArray(4097).map((_, i) => {
  const v = i / 4096;
  return Math.round(255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055));
});

/** @param planes red, green, blue one after the other, linear, 0 to 1 */
export function linearPicture(planes, width, height) {
  const n = width * height;
  const data = new Uint8ClampedArray(4 * n);
  for (let p = 0; p < n; p++) {
    for (let c = 0; c < 3; c++) {
      data[4 * p + c] = CODES[Math.max(0, Math.min(4096, Math.round(4096 * planes[c * n + p])))];
    }
    data[4 * p + 3] = 255;
  }
  return new ImageData(data, width, height);
}

/** A picture as a file of some kilobytes; what is none stays as it is. */
export async function smaller(value) {
  if (!(value instanceof ImageData)) {
    return value;
  }
  const canvas = new OffscreenCanvas(value.width, value.height);
  canvas.getContext('2d').putImageData(value, 0, 0);
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 });
}

function deviation(data, piece, pieces) {
  let sum = 0;
  let squares = 0;
  for (let y = 0; y < PIECE_HEIGHT; y++) {
    for (let x = 0; x < PIECE_WIDTH; x++) {
      const v = data[4 * ((y * pieces + piece) * PIECE_WIDTH + x) + 1];
      sum += v;
      squares += v * v;
    }
  }
  const n = PIECE_WIDTH * PIECE_HEIGHT;
  return Math.sqrt(Math.max(0, squares / n - (sum / n) ** 2));
}

/** The same patch of a part at a row of times, side by side; faint ones are raised, all alike, and say by how much. */
export async function stripOf(pictures, crop) {
  const pieces = pictures.length;
  const canvas = new OffscreenCanvas(pieces * PIECE_WIDTH, PIECE_HEIGHT);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  for (const [i, picture] of pictures.entries()) {
    const { width, height } = picture;
    const cut = await createImageBitmap(picture, Math.round(crop.left * width), Math.round(crop.top * height), Math.max(1, Math.round(crop.width * width)), Math.max(1, Math.round(crop.height * height)));
    context.drawImage(cut, i * PIECE_WIDTH, 0, PIECE_WIDTH, PIECE_HEIGHT);
    cut.close();
  }
  const image = context.getImageData(0, 0, canvas.width, canvas.height);
  const spreads = pictures.map((_, i) => deviation(image.data, i, pieces));
  const spread = Math.max(spreads[0], spreads.at(-1));
  const raised = Math.round(20 * Math.max(1, Math.min(MOST_RAISED, spread > 0 ? (WANTED_CONTRAST * 255) / spread : 1))) / 20;
  if (raised > 1) {
    raise(image.data, raised);
    context.putImageData(image, 0, 0);
  }
  return {
    href: URL.createObjectURL(await canvas.convertToBlob({ type: 'image/png' })), raised, pieceWidth: PIECE_WIDTH, pieceHeight: PIECE_HEIGHT,
    shares: spreads.map((one) => (spreads[0] > 0 ? one / spreads[0] : 1)),
  };
}

function raise(data, factor) {
  const mean = [0, 0, 0];
  for (let i = 0; i < data.length; i += 4) {
    for (let c = 0; c < 3; c++) {
      mean[c] += (4 * data[i + c]) / data.length;
    }
  }
  for (let i = 0; i < data.length; i += 4) {
    for (let c = 0; c < 3; c++) {
      data[i + c] = mean[c] + factor * (data[i + c] - mean[c]);
    }
  }
}
