// Turns a tick into answers: a tone, a sentence, one number and the lines below it. The controller judges, and writes the
// same into the page before any script runs (Panel/Sight).

import { full } from "./units.js";
import { dayAndClock } from "./time.js";
import * as say from "./words/judge.js";

/** The reading of one channel, or undefined when no such probe is fitted. */
export const reading = (now, channel) => now.readings.find((one) => one.channel === channel);

/** The believed value of one channel, or null. */
export const value = (now, channel) => reading(now, channel)?.value ?? null;

/** Is the house safe? */
export function houseAnswer(now) {
  const below = [
    say.minimum(full("temperature", now.houseMinimumC)),
    say.setPoint(full("temperature", now.houseSetPointC)),
    say.outside(full("temperature", value(now, "outside"))),
  ];
  return { tone: now.judged.houseTone, says: say.HOUSE[now.judged.house], value: value(now, "house"), plusMinus: null, below };
}

/** Is the heap well? */
export function heapAnswer(now) {
  const e = now.estimate;
  const trend = e.trendKPerDay === null ? "–" : say.aDay(`${e.trendKPerDay >= 0 ? "+" : ""}${full("kelvin", e.trendKPerDay)}`);
  const below = [
    say.floorAndReserve(full("temperature", now.heapFloorC), full("energy", e.reserveMJ === null ? null : e.reserveMJ / 3.6)),
    // While heat is drawn the bed at the turns cools first: what the trend then says is of the moment.
    now.outputs.pumpDuty > 0 ? say.trendDrawing(trend) : say.trend(trend),
    say.makes(full("power", e.generationWatts)),
  ];
  return { tone: now.judged.heapTone, says: say.HEAP[now.judged.heap], value: e.activeZoneC, plusMinus: e.uncertaintyK, below };
}

/** The cautions that apply at this moment. */
export function cautions(now) {
  const list = [];
  const hottest = Math.max(...["supply", "return", "tank"].map((name) => value(now, name) ?? -Infinity));
  if (hottest > 50) {
    list.push(say.scald(full("temperature", hottest)));
  }
  const tank = value(now, "tank");
  if (tank !== null && tank >= 20 && tank <= 50) {
    list.push(say.warmTank(full("temperature", tank)));
  }
  if (now.heap.throughHeap) {
    list.push(say.heapAir);
  }
  if (value(now, "heapCore") >= now.heapFireC) {
    list.push(say.fireWatch);
  }
  const { damage } = now.record;
  if (damage) {
    list.push(say.damage(damage.filesSetAside, damage.damagedParts, dayAndClock(damage.sinceUtcMs, now.offsetMinutes), damage.newest));
  }
  return list;
}
