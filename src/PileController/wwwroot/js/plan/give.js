import { h, put } from "../dom.js";
import { bare, full, unit } from "../units.js";
import * as say from "../words/planFigures.js";
import { old } from "../words/plan.js";
import { litWords } from "./season.js";

/** First of all: what this heap can give. */
export function giveCard() {
  const number = h("span", {}, "–");
  const name = h("span", { class: "unit" });
  const says = h("p", { class: "why" });
  const lit = h("p", { class: "line num" });
  const most = h("p", { class: "line num" });
  const night = h("p", { class: "line num" });
  const build = h("p", { class: "line num" });
  const on = h("p", { class: "line" });
  const node = h("section", { class: "card answer w5", "data-tone": "plain" },
    h("div", { class: "spread" }, h("h2", {}, say.give), h("span", { class: "old-mark" }, old)),
    h("p", { class: "big" }, number, name), says, night, build, lit, most, on);
  return {
    node,
    set(plan) {
      const { heap, coil, house, loop } = plan.sketch;
      const best = heap.weeks.reduce((top, one) => (one.drawnWatts > top.drawnWatts ? one : top), heap.weeks[0]);
      put(number, bare("power", coil.meanDrawnWatts));
      put(name, unit("power"));
      put(says, coil.lengthM > 0
        ? say.takes(full("power", coil.meanDrawnWatts), plan.days, full("power", best.drawnWatts), best.week)
        : say.noPipe);
      const share = house.designLossWatts > 0 ? (100 * coil.meanDrawnWatts) / house.designLossWatts : 100;
      put(night, say.worstNight(full("temperature", house.designOutsideC), full("power", house.designLossWatts), full("temperature", house.insideC), share));
      put(build, say.build(full("bulk", heap.volumeM3), full("mass", heap.wetMassKg), full("pipe", coil.lengthM), full("length", coil.radiusM), full("flow", loop.flowLitresPerMinute), full("length", loop.headM)));
      put(lit, litWords(plan));
      const kWh = coil.meanDrawnWatts * plan.days * 0.024;
      put(most, say.ofAll(full("seasonEnergy", kWh), full("seasonEnergy", heap.mostHeatKWh)));
      put(on, say.weather(plan.weather));
    },
  };
}
