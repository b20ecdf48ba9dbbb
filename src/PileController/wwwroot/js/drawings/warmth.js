// A warmth scale of our own in a perceptual colour space: lightness grows evenly with temperature, so it reads
// the same without colour vision and in print.

/** The scale's ends, °C. */
export const LEAST = 0;
export const MOST = 80;

/** The colour of a temperature. */
export function at(celsius) {
  const share = Math.max(0, Math.min(1, (celsius - LEAST) / (MOST - LEAST)));
  const lightness = 0.3 + 0.56 * share;
  const chroma = 0.07 + 0.09 * Math.sin(Math.PI * share);
  const hue = (275 + 160 * share) % 360;
  return `oklch(${lightness.toFixed(3)} ${chroma.toFixed(3)} ${hue.toFixed(1)})`;
}
