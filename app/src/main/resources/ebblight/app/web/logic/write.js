// Sizes of what is written. No document here.

export const PPI = [150, 180, 200, 240, 254, 300, 360, 400, 480, 600, 720];
export const EDGES = [640, 800, 1080, 1200, 1600, 2048, 2560, 3000, 3840, 5000, 6000, 8000];
export const BYTES = [50e3, 100e3, 150e3, 200e3, 300e3, 400e3, 500e3, 600e3, 800e3, 1e6, 1.5e6, 2e6, 3e6, 5e6, 10e6];

/** What becomes of colours that paper and ink cannot hold (the rendering intents of ICC.1:2022), and our words for it. */
export const INTENTS = [['relative', 'the nearest that it has'], ['perceptual', 'all drawn in together'], ['absolute', 'with the paper’s own white'], ['saturation', 'kept strong']];

/** What a proof says, in sentences. */
export function provedWords({ profile, movedFraction, joinedSteps, darkestLightness }) {
  const share = 100 * movedFraction;
  const joined = joinedSteps.length;
  return [
    share < 0.05 ? 'every colour holds' : `${share < 10 ? share.toFixed(1) : Math.round(share)} % of the picture changes its colour`,
    joined ? `the darkest ${joined} half ${joined === 1 ? 'step joins' : 'steps join'} the one before` : 'every half stop down to black stays apart',
    `its black: L* ${Math.round(darkestLightness)}${profile ? `; ${profile}` : ''}`,
  ];
}

const INCH = 2.54;
const BYTES_A_PIXEL = 6;

export const nearest = (list, value) => list.reduce((best, one) => (Math.abs(one - value) < Math.abs(best - value) ? one : best));

/** The next value of a list in a direction, from a value that need not be in it. */
export function stepIn(list, value, way) {
  const beyond = way > 0 ? list.find((one) => one > value) : [...list].reverse().find((one) => one < value);
  return beyond ?? (way > 0 ? list[list.length - 1] : list[0]);
}

const short = (cm) => String(Math.round(10 * cm) / 10);

/** A print so many centimetres wide: what it measures on paper and in pixels. */
export function printFacts({ width, height }, centimetres, ppi, border) {
  const high = (centimetres * height) / width;
  const pixels = [centimetres + 2 * border, high + 2 * border].map((cm) => Math.round((cm * ppi) / INCH));
  const own = Math.round((width / centimetres) * INCH);
  return {
    widthWords: short(centimetres),
    heightWords: short(high),
    paperWidth: centimetres + 2 * border,
    paperWords: `${short(centimetres + 2 * border)} × ${short(high + 2 * border)}`,
    pixels,
    bytes: BYTES_A_PIXEL * pixels[0] * pixels[1],
    native: own >= ppi ? `the picture holds ${own}` : `the picture holds ${own}: it is enlarged`,
  };
}
