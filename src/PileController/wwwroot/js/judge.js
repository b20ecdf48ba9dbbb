// Turns the numbers of a tick into answers: a tone, a sentence, one number and the lines below it.

import { full } from "./units.js";
import { dayAndClock } from "./time.js";
import * as say from "./words/judge.js";

/** The reading of one channel, or undefined when no such probe is fitted. */
export const reading = (now, channel) => now.readings.find((one) => one.channel === channel);

/** The believed value of one channel, or null. */
export const value = (now, channel) => reading(now, channel)?.value ?? null;

/** Is the house safe? */
export function houseAnswer(now) {
  const air = value(now, "house");
  const below = [
    say.minimum(full("temperature", now.houseMinimumC)),
    say.setPoint(full("temperature", now.houseSetPointC)),
    say.outside(full("temperature", value(now, "outside"))),
  ];
  const answer = (tone, says) => ({ tone, says, value: air, plusMinus: null, below });
  if (air === null) {
    return answer("bad", say.houseUnknown);
  }
  if (air < now.houseMinimumC) {
    return answer("bad", say.houseBelow);
  }
  return air < now.houseMinimumC + 1 ? answer("warn", say.houseClose) : answer("good", say.houseSafe);
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
  const answer = (tone, says) => ({ tone, says, value: e.activeZoneC, plusMinus: e.uncertaintyK, below });
  const hottest = Math.max(...["heapCore", "heapMiddle", "heapTurns", "heapEdge"].map((name) => value(now, name) ?? -Infinity));
  if (hottest >= now.heapFireC) {
    return answer("bad", say.heapHot);
  }
  if (!e.trusted) {
    return answer("warn", say.heapUnknown);
  }
  if (!e.lit) {
    return answer("plain", say.heapNotLit);
  }
  if (e.activeZoneC < now.heapFloorC) {
    return answer("bad", say.heapBelow);
  }
  return e.activeZoneC < now.heapFloorC + 2 ? answer("warn", say.heapNear) : answer("good", say.heapWell);
}

/** The tone of what is being done. */
export function workTone(now) {
  const tones = { tripped: "bad", servicing: "warn", byHand: "warn", recovering: "warn", frostGuard: "warn" };
  return tones[now.mode] ?? (now.trips.length > 0 ? "bad" : "good");
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
