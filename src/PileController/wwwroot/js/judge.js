// Turns the numbers of a tick into answers: a tone, a sentence, one number and the lines below it.

import { full } from "./units.js";
import { dayAndClock } from "./time.js";

/** The reading of one channel, or undefined when no such probe is fitted. */
export const reading = (now, channel) => now.readings.find((one) => one.channel === channel);

/** The believed value of one channel, or null. */
export const value = (now, channel) => reading(now, channel)?.value ?? null;

/** Is the house safe? */
export function houseAnswer(now) {
  const air = value(now, "house");
  const below = [
    `Minimum ${full("temperature", now.houseMinimumC)}`,
    `Set point ${full("temperature", now.houseSetPointC)}`,
    `Outside ${full("temperature", value(now, "outside"))}`,
  ];
  const say = (tone, says) => ({ tone, says, value: air, plusMinus: null, below });
  if (air === null) {
    return say("bad", "House not known: its probe cannot be believed");
  }
  if (air < now.houseMinimumC) {
    return say("bad", "House below its minimum");
  }
  return air < now.houseMinimumC + 1 ? say("warn", "House close to its minimum") : say("good", "House is safe");
}

/** Is the heap well? */
export function heapAnswer(now) {
  const e = now.estimate;
  const trend = e.trendKPerDay === null ? "–" : `${e.trendKPerDay >= 0 ? "+" : ""}${full("kelvin", e.trendKPerDay)}\u00a0a\u00a0day`;
  const below = [
    `Floor ${full("temperature", now.heapFloorC)}, reserve ${full("energy", e.reserveMJ === null ? null : e.reserveMJ / 3.6)}`,
    // While heat is drawn the bed at the turns cools first: what the trend then says is of the moment.
    now.outputs.pumpDuty > 0 ? `Of this moment, while drawing: ${trend}` : `Trend ${trend}`,
    `Makes ${full("power", e.generationWatts)} net`,
  ];
  const say = (tone, says) => ({ tone, says, value: e.activeZoneC, plusMinus: e.uncertaintyK, below });
  const hottest = Math.max(...["heapCore", "heapMiddle", "heapTurns", "heapEdge"].map((name) => value(now, name) ?? -Infinity));
  if (hottest >= now.heapFireC) {
    return say("bad", "Heap too hot: fire watch");
  }
  if (!e.trusted) {
    return say("warn", "Heap not well known: too few probes");
  }
  if (!e.lit) {
    return say("plain", "Heap has not lit yet");
  }
  if (e.activeZoneC < now.heapFloorC) {
    return say("bad", "Heap below its floor");
  }
  return e.activeZoneC < now.heapFloorC + 2 ? say("warn", "Heap near its floor") : say("good", "Heap is well");
}

/** The tone of what is being done. */
export function workTone(now) {
  const tones = { tripped: "bad", servicing: "warn", byHand: "warn", recovering: "warn", frostGuard: "warn" };
  return tones[now.mode] ?? (now.trips.length > 0 ? "bad" : "good");
}

/** What of the record is damaged, in sentences. */
export function damageWords(damage, offsetMinutes) {
  const { filesSetAside: files, damagedParts: parts } = damage;
  const aside = files === 1 ? "1 damaged file was set aside" : `${files} damaged files were set aside`;
  const unread = parts === 1 ? "1 part cannot be read" : `${parts} parts cannot be read`;
  const what = files === 0 ? unread : parts === 0 ? aside : `${aside}, ${unread}`;
  const since = dayAndClock(damage.sinceUtcMs, offsetMinutes);
  return `${what}, first found on ${since}; everything else can be read. The newest: ${damage.newest.replace(/\.$/, "")}.`;
}

/** The cautions that apply at this moment. */
export function cautions(now) {
  const list = [];
  const hottest = Math.max(...["supply", "return", "tank"].map((name) => value(now, name) ?? -Infinity));
  if (hottest > 50) {
    list.push(`Scald: loop water is at ${full("temperature", hottest)}. Open nothing by hand without gloves and face cover.`);
  }
  const tank = value(now, "tank");
  if (tank !== null && tank >= 20 && tank <= 50) {
    list.push(`Tank at ${full("temperature", tank)}: warm still water can breed Legionella. Not for drinking or spray.`);
  }
  if (now.heap.throughHeap) {
    list.push("The blower draws air through the heap: carbon dioxide, ammonia and spores. Air the house before anyone works in it.");
  }
  if (value(now, "heapCore") >= now.heapFireC) {
    list.push("Heap above its fire-watch limit: do not open it without water at hand.");
  }
  if (now.record.damage) {
    list.push(`Record: ${damageWords(now.record.damage, now.offsetMinutes)}`);
  }
  return list;
}
