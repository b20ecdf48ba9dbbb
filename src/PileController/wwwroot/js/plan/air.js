import { h, put } from "../dom.js";
import { bothPowers, full } from "../units.js";
import * as say from "../words/planParts.js";
import { folded, table } from "./parts.js";

/** A closed duct beside air drawn through the heap, in both units of power. */
export function airCard() {
  const rows = table(say.airTable);
  const hint = h("p", { class: "hint" });
  const node = folded(say.air, "w6", hint, rows.node,
    h("p", { class: "hint" }, say.airAbout));
  return {
    node,
    set({ sketch: { air, heap } }) {
      const through = air.throughSensibleWatts + air.throughLatentWatts;
      const times = air.closedWatts > 0 ? (through / air.closedWatts).toFixed(1) : null;
      const tooMuch = through > Math.max(...heap.weeks.map((one) => one.generatedWatts));
      put(hint, air.flowM3PerS > 0 ? say.airFlow(full("airFlow", air.flowM3PerS), times, tooMuch) : say.noAir);
      rows.set(say.AIR_COLUMNS, [
        [say.AIR.warmth, bothPowers(air.closedWatts), bothPowers(air.throughSensibleWatts)],
        [say.AIR.moisture, bothPowers(0), bothPowers(air.throughLatentWatts)],
        [say.AIR.together, bothPowers(air.closedWatts), bothPowers(through)],
        [say.AIR.leavesAt, full("temperature", air.closedOutletC), say.AIR.nearHeap],
        [say.AIR.waterLost, full("volume", 0), full("volume", air.throughWaterLostKgPerDay)],
        [say.AIR.oxygenIn, say.AIR.none, full("mass", air.oxygenSuppliedKgPerDay)],
        [say.AIR.oxygenWanted, full("mass", air.oxygenDemandKgPerDay), full("mass", air.oxygenDemandKgPerDay)],
      ]);
    },
  };
}
