import { h, s, put, mark } from "../dom.js";
import { full } from "../units.js";
import * as say from "../words/planFigures.js";
import { folded } from "./parts.js";

function bar(place, most, best, here) {
  const words = [here ?? "", best ? say.most : ""].filter((one) => one !== "").join(", ");
  return h("div", { class: "bar", "data-here": here !== null },
    h("span", { class: "name" }, full("length", place.radiusM), " ", h("small", {}, words)),
    h("span", { class: "value num" }, full("power", place.meanDrawnWatts)),
    s("svg", { viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" },
      s("rect", { class: "bar-track", width: 100, height: 10 }),
      s("rect", { class: "bar-place", width: most > 0 ? (100 * Math.max(0, place.meanDrawnWatts)) / most : 0, height: 10 })));
}

/** The same pipe at other radii. */
export function placesCard() {
  const hint = h("p", { class: "hint" });
  const bars = h("div", { class: "bars" });
  const node = folded(say.places, "w6", hint, bars);
  return {
    node,
    set(plan) {
      const { places, radiusM, lengthM } = plan.sketch.coil;
      const most = Math.max(0, ...places.map((one) => one.meanDrawnWatts));
      const off = (one) => Math.abs(one.radiusM - radiusM);
      const name = plan.changed.length === 0 ? say.hereBuilt : say.hereTried;
      const near = Math.min(...places.map(off));
      put(hint, places.length === 0
        ? say.noPlaces
        : say.placesAbout(full("pipe", lengthM)));
      bars.replaceChildren(...places.map((one) => bar(one, most, one.meanDrawnWatts === most && most > 0, off(one) === near ? name : null)));
      mark(bars, "data-count", places.length);
    },
  };
}
