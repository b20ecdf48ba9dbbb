import { h, put } from "../dom.js";
import { bothPowers, full } from "../units.js";
import { folded, table } from "./parts.js";

/** A closed duct beside air drawn through the heap, in both units of power. */
export function airCard() {
  const rows = table("Closed duct and air through the heap");
  const hint = h("p", { class: "hint" });
  const node = folded("Air: closed duct or through the heap", "w6", hint, rows.node,
    h("p", { class: "hint" }, "Air out of a heap carries carbon dioxide, ammonia and spores: not into a house where people work. The water it takes must be given back. Local codes and licensed trades decide."));
  return {
    node,
    set({ sketch: { air, heap } }) {
      const through = air.throughSensibleWatts + air.throughLatentWatts;
      const times = air.closedWatts > 0 ? `, ${(through / air.closedWatts).toFixed(1)} times the closed duct's heat from the same air` : "";
      put(hint, air.flowM3PerS > 0 ? `${full("airFlow", air.flowM3PerS)} either way${times}. Most of what moist air brings is in its water.${through > Math.max(...heap.weeks.map((one) => one.generatedWatts)) ? " No heap keeps that up: it is more than this one makes in its best week, so so much air would cool it within hours." : ""}` : "The blower moves no air.");
      rows.set(["Heat", "Closed duct", "Through the heap"], [
        ["Warmth of the air", bothPowers(air.closedWatts), bothPowers(air.throughSensibleWatts)],
        ["In its moisture", bothPowers(0), bothPowers(air.throughLatentWatts)],
        ["Together", bothPowers(air.closedWatts), bothPowers(through)],
        ["Air leaves at", full("temperature", air.closedOutletC), "near the heap's own warmth"],
        ["Water the heap loses, a day", full("volume", 0), full("volume", air.throughWaterLostKgPerDay)],
        ["Oxygen it brings, a day", "none", full("mass", air.oxygenSuppliedKgPerDay)],
        ["Oxygen the heap wants, a day", full("mass", air.oxygenDemandKgPerDay), full("mass", air.oxygenDemandKgPerDay)],
      ]);
    },
  };
}
