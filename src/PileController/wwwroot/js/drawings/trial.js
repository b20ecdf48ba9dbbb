import { h, s, put, mark } from "../dom.js";
import { full } from "../units.js";
import { turnsOf } from "../plan/changes.js";
import * as say from "../words/plan.js";
import { anatomy, CENTRE, fit } from "./anatomy.js";
import { at } from "./warmth.js";

const PLAIN = "var(--sunk)";

/** The heap as tried, to scale, over the outline of the heap as built. */
export function trialDrawing() {
  const svg = s("svg", { class: "drawing", role: "img" });
  const words = h("p", { class: "hint num" });
  const shade = h("p", { class: "hint" });
  const node = h("figure", { class: "stack" }, svg, words, shade);

  function set(built, tried, activeZoneC) {
    const perM = Math.min(fit(built), fit(tried));
    const options = { perM, above: 12, mostTurns: 60 };
    const now = anatomy(tried, activeZoneC === null ? PLAIN : at(activeZoneC), options);
    const was = anatomy(built, "none", options);
    const differs = was.outline !== now.outline;
    mark(svg, "viewBox", `0 0 ${CENTRE * 2} ${Math.max(now.height, was.height)}`);
    // Both stand on the same ground.
    const down = Math.max(0, was.base - now.base);
    const up = Math.max(0, now.base - was.base);
    const size = say.size(full("length", tried.radiusM * 2), full("length", tried.heightM));
    put(now.size, size);
    svg.replaceChildren(
      s("g", { transform: `translate(0 ${down})` }, ...now.nodes, now.size),
      ...(differs ? [s("path", { class: "as-built", d: was.outline, transform: `translate(0 ${up})` })] : []));
    const turns = turnsOf(tried);
    const pipe = tried.coilLengthM > 0
      ? say.pipe(turns.toFixed(1).replace(/\.0$/, ""), full("length", tried.coilRadiusM), full("pipe", tried.coilLengthM))
      : say.noPipe;
    put(words, say.pipeAndCover(pipe, full("length", tried.coverM), differs));
    put(shade, activeZoneC === null ? "" : say.shaded(full("temperature", activeZoneC)));
    mark(svg, "aria-label", say.cutThrough(size, pipe));
  }

  return { node, set };
}
