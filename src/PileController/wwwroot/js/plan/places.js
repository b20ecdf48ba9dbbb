import { h, s, put, mark } from "../dom.js";
import { full } from "../units.js";
import { folded } from "./parts.js";

function bar(place, most, best, here) {
  const words = [here ?? "", best ? "the most" : ""].filter((one) => one !== "").join(", ");
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
  const node = folded("The same pipe elsewhere", "w6", hint, bars);
  return {
    node,
    set(plan) {
      const { places, radiusM, lengthM } = plan.sketch.coil;
      const most = Math.max(0, ...places.map((one) => one.meanDrawnWatts));
      const off = (one) => Math.abs(one.radiusM - radiusM);
      const name = plan.changed.length === 0 ? "as built" : "as tried";
      const near = Math.min(...places.map(off));
      put(hint, places.length === 0
        ? "There is no pipe, or no room for it at another radius."
        : `${full("pipe", lengthM)} of pipe at other distances from the axis, heat drawn on the season's mean. Heat creeps to the pipe through the chips: where the turns lie decides more than the pump.`);
      bars.replaceChildren(...places.map((one) => bar(one, most, one.meanDrawnWatts === most && most > 0, off(one) === near ? name : null)));
      mark(bars, "data-count", places.length);
    },
  };
}
