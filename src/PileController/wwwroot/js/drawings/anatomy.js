import { s } from "../dom.js";

// The drawing is 360 units wide whatever the heap; one scale for both directions.
export const CENTRE = 180;
export const LABELS = 42;
const MARGIN = 8;

const top = (scale) => scale.above + scale.cover;

/** Where a probe sits in the drawing. */
export const place = (probe, scale) => ({
  x: CENTRE + probe.radiusM * scale.perM,
  y: top(scale) + (scale.heightM - probe.heightM) * scale.perM,
});

// A drum is drawn half as high again as it is wide, the shape such drums have.
function drum(heap, scale) {
  if (heap.drumLitres <= 0) {
    return [];
  }
  const wide = Math.cbrt((4 * heap.drumLitres) / 1000 / (Math.PI * 1.5));
  const box = {
    x: CENTRE - (wide * scale.perM) / 2,
    y: top(scale) + (heap.heightM / 2 - wide * 0.75) * scale.perM,
    width: wide * scale.perM,
    height: wide * 1.5 * scale.perM,
    rx: 4,
  };
  return [s("rect", { class: "drum-under", ...box }), s("rect", { class: "drum", ...box })];
}

// As many turns as the pipe makes, up to what can still be told apart.
function turns(heap, scale, most) {
  if (heap.coilLengthM <= 0) {
    return [];
  }
  const made = Math.max(1, Math.round(heap.coilLengthM / (2 * Math.PI * heap.coilRadiusM)));
  const shown = Math.min(made, most);
  const r = Math.min(3, (0.42 * 0.6 * heap.heightM * scale.perM) / shown);
  return [...Array(shown).keys()].flatMap((index) => {
    const y = top(scale) + heap.heightM * scale.perM * (0.2 + (0.6 * (index + 0.5)) / shown);
    return [-1, 1].map((side) => s("circle", { class: "turn", cx: CENTRE + side * heap.coilRadiusM * scale.perM, cy: y, r }));
  });
}

function ducts(heap, scale) {
  if (heap.ductLengthM <= 0) {
    return [];
  }
  const r = (heap.ductDiameterM / 2) * scale.perM;
  return [0.25, 0.75].flatMap((share) => [-1, 1].flatMap((side) => {
    const at = { cx: CENTRE + side * heap.ductRadiusM * scale.perM, cy: top(scale) + heap.heightM * scale.perM * share, r };
    return [s("circle", { class: "duct-under", ...at }), s("circle", { class: "duct", ...at })];
  }));
}

/** Units of the drawing to a metre, so that a heap fills its width. */
export const fit = (heap) => (CENTRE - MARGIN) / (heap.radiusM + heap.coverM);

/** The heap's parts, to scale, with room above for labels. */
export function anatomy(heap, fill, { perM = fit(heap), above = LABELS + 26, mostTurns = 14 } = {}) {
  const scale = { perM, above, cover: heap.coverM * perM, heightM: heap.heightM };
  const left = CENTRE - heap.radiusM * perM;
  const width = heap.radiusM * 2 * perM;
  const high = heap.heightM * perM;
  const base = top(scale) + high;
  const shape = (x, y, w, r) => `M${x} ${base} V${y + r} Q${x} ${y} ${x + r} ${y} H${x + w - r} Q${x + w} ${y} ${x + w} ${y + r} V${base} Z`;
  const size = s("text", { class: "soft", x: CENTRE, y: base + 20, "text-anchor": "middle" });
  return {
    scale,
    size,
    outline: shape(left - scale.cover, top(scale) - scale.cover, width + 2 * scale.cover, 26),
    base,
    height: base + 28,
    nodes: [
      s("path", { class: "cover", d: shape(left - scale.cover, top(scale) - scale.cover, width + 2 * scale.cover, 26) }),
      s("path", { d: shape(left, top(scale), width, 18), fill }),
      s("path", { class: "body-edge", d: shape(left, top(scale), width, 18) }),
      s("line", { class: "ground", x1: 0, x2: CENTRE * 2, y1: base, y2: base }),
      ...ducts(heap, scale), ...turns(heap, scale, mostTurns), ...drum(heap, scale),
    ],
  };
}
