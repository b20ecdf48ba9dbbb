import { h, put } from "../dom.js";
import { bare, full, unit } from "../units.js";
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
    h("div", { class: "spread" }, h("h2", {}, "What this heap can give"), h("span", { class: "old-mark" }, "from before your change")),
    h("p", { class: "big" }, number, name), says, night, build, lit, most, on);
  return {
    node,
    set(plan) {
      const { heap, coil, house, loop } = plan.sketch;
      const best = heap.weeks.reduce((top, one) => (one.drawnWatts > top.drawnWatts ? one : top), heap.weeks[0]);
      put(number, bare("power", coil.meanDrawnWatts));
      put(name, unit("power"));
      put(says, coil.lengthM > 0
        ? `Its turns can take ${full("power", coil.meanDrawnWatts)} on the mean of ${plan.days} days, if the house asks for it every hour, and leave it lit; the most is ${full("power", best.drawnWatts)}, in week ${best.week}.`
        : "There is no pipe in it to take heat.");
      const share = house.designLossWatts > 0 ? (100 * coil.meanDrawnWatts) / house.designLossWatts : 100;
      put(night, `Worst night: at ${full("temperature", house.designOutsideC)} outside the house loses ${full("power", house.designLossWatts)} held at ${full("temperature", house.insideC)}. The heap's mean ${share >= 100 ? "covers that" : `is ${Math.round(share)}\u00a0% of it, so it does not hold the house alone`}.`);
      put(build, `For that: ${full("bulk", heap.volumeM3)} of chips (${full("mass", heap.wetMassKg)} wet), ${full("pipe", coil.lengthM)} of pipe at ${full("length", coil.radiusM)} from the axis, a pump that moves ${full("flow", loop.flowLitresPerMinute)} against ${full("length", loop.headM)}.`);
      put(lit, litWords(plan));
      const kWh = coil.meanDrawnWatts * plan.days * 0.024;
      put(most, `That is ${full("seasonEnergy", kWh)} of the ${full("seasonEnergy", heap.mostHeatKWh)} its solids could give if all that can rot did.`);
      put(on, `Reckoned on ${plan.weather}.`);
    },
  };
}
