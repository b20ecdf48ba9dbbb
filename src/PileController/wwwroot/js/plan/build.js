import { full } from "../units.js";
import { span } from "../time.js";
import { folded, facts } from "./parts.js";

const LOOP = [
  ["Flow at full pump, valve open", ({ loop }) => full("flow", loop.flowLitresPerMinute)],
  ["Head the pump makes", ({ loop }) => full("length", loop.headM)],
  ["Pump power", ({ loop }) => full("electric", loop.pumpWatts)],
  ["For each bit of flow", ({ loop }) => full("pumping", loop.wattsPerLitrePerMinute)],
  ["Electricity a day", ({ loop }) => full("wattHours", loop.wattHoursPerDay)],
  ["Speed in the pipe", ({ loop }) => full("speed", loop.velocityMPerS)],
  ["Clears itself of air", ({ loop }) => (loop.purgesAir ? "yes" : "no: bleed it by hand")],
  ["Once round the loop", ({ loop }) => (loop.transitSeconds === null ? "nothing flows" : span(loop.transitSeconds * 1000))],
  ["Still water in the line freezes after", ({ loop }) => (loop.minutesToFreezeStill === null ? "not on the design night" : span(loop.minutesToFreezeStill * 60000))],
];

const HEAP = [
  ["Chips, wet", ({ heap }) => full("mass", heap.wetMassKg)],
  ["Of that dry", ({ heap }) => full("mass", heap.dryMassKg)],
  ["Moisture", ({ heap }) => full("share", heap.moisturePercent / 100)],
  ["Volume", ({ heap }) => full("bulk", heap.volumeM3)],
  ["Surface", ({ heap }) => full("area", heap.surfaceM2)],
  ["Density as laid", ({ heap }) => full("density", heap.bulkDensityKgPerM3)],
  ["Free air space", ({ heap }) => full("share", heap.freeAirSpacePercent / 100)],
  ["Can rot within a season", ({ heap }) => full("mass", heap.degradableKg)],
  ["Water it loses in the season", ({ heap }) => full("volume", heap.waterLostKg)],
  ["Turns, first hour", ({ coil }) => full("conductance", coil.firstHourWPerK)],
  ["Turns, after a month of draw", ({ coil }) => full("conductance", coil.monthWPerK)],
];

function factCard(title, rows) {
  const list = facts(rows);
  const node = folded(title, "w6", list.node);
  return { node, set: (plan) => list.set(plan.sketch) };
}

/** The pump on its loop. */
export const loopCard = () => factCard("Pump on its loop", LOOP);

/** What the heap is made of, and how its turns tire as the chips round the pipe cool. */
export const stuffCard = () => factCard("Heap and turns", HEAP);
