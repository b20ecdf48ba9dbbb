import { full } from "../units.js";
import { span } from "../time.js";
import * as say from "../words/planParts.js";
import { folded, facts } from "./parts.js";

const LOOP = [
  [say.LOOP.flow, ({ loop }) => full("flow", loop.flowLitresPerMinute)],
  [say.LOOP.head, ({ loop }) => full("length", loop.headM)],
  [say.LOOP.power, ({ loop }) => full("electric", loop.pumpWatts)],
  [say.LOOP.perFlow, ({ loop }) => full("pumping", loop.wattsPerLitrePerMinute)],
  [say.LOOP.aDay, ({ loop }) => full("wattHours", loop.wattHoursPerDay)],
  [say.LOOP.speed, ({ loop }) => full("speed", loop.velocityMPerS)],
  [say.LOOP.purges, ({ loop }) => (loop.purgesAir ? say.yes : say.bleed)],
  [say.LOOP.round, ({ loop }) => (loop.transitSeconds === null ? say.nothingFlows : span(loop.transitSeconds * 1000))],
  [say.LOOP.freezes, ({ loop }) => (loop.minutesToFreezeStill === null ? say.freezesNot : span(loop.minutesToFreezeStill * 60000))],
];

const HEAP = [
  [say.HEAP.wet, ({ heap }) => full("mass", heap.wetMassKg)],
  [say.HEAP.dry, ({ heap }) => full("mass", heap.dryMassKg)],
  [say.HEAP.moisture, ({ heap }) => full("share", heap.moisturePercent / 100)],
  [say.HEAP.volume, ({ heap }) => full("bulk", heap.volumeM3)],
  [say.HEAP.surface, ({ heap }) => full("area", heap.surfaceM2)],
  [say.HEAP.density, ({ heap }) => full("density", heap.bulkDensityKgPerM3)],
  [say.HEAP.airSpace, ({ heap }) => full("share", heap.freeAirSpacePercent / 100)],
  [say.HEAP.rots, ({ heap }) => full("mass", heap.degradableKg)],
  [say.HEAP.waterLost, ({ heap }) => full("volume", heap.waterLostKg)],
  [say.HEAP.firstHour, ({ coil }) => full("conductance", coil.firstHourWPerK)],
  [say.HEAP.month, ({ coil }) => full("conductance", coil.monthWPerK)],
];

function factCard(title, rows) {
  const list = facts(rows);
  const node = folded(title, "w6", list.node);
  return { node, set: (plan) => list.set(plan.sketch) };
}

/** The pump on its loop. */
export const loopCard = () => factCard(say.loop, LOOP);

/** What the heap is made of, and how its turns tire as the chips round the pipe cool. */
export const stuffCard = () => factCard(say.heap, HEAP);
