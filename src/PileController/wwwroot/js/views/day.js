import { h, put } from "../dom.js";
import * as api from "../api.js";
import { full } from "../units.js";
import { dayAndClock, span } from "../time.js";
import * as say from "../words/nights.js";

// Asked again after ten minutes of the place, but not oftener than this in true time.
const AGAIN = 600000;
const LEAST_TRUE = 10000;

const ROWS = [
  [say.coldest, (day) => full("temperature", day.coldestC)],
  [say.thatWasOn, (day, now) => (day.coldestC === null ? "–" : dayAndClock(day.coldestUtcMs, now.offsetMinutes))],
  [say.below, (day) => (day.coldestC === null ? "–" : day.belowMs === 0 ? say.atNoTime : span(day.belowMs))],
  [say.byWater, (day) => full("energy", day.waterKWh)],
  [say.byAir, (day) => full("energy", day.airKWh)],
  [say.pumpStarted, (day) => (day.starts === null ? "–" : say.times(day.starts))],
];

/** The last 24 hours: how cold the house got, what was drawn and how often the pump started. */
export function dayCard() {
  const list = h("dl", { class: "facts" });
  const cells = ROWS.map(([name]) => {
    const value = h("dd", {}, "–");
    list.append(h("dt", {}, name), value);
    return value;
  });
  const hint = h("p", { class: "hint" });
  const node = h("section", { class: "card live w5", "data-card": "day" }, h("h2", {}, say.lastDay), list, hint);
  let asking = false;
  let askedAt = -Infinity;
  let askedOf = -Infinity;
  let day = null;

  function show(now) {
    if (day !== null) {
      ROWS.forEach(([, read], index) => put(cells[index], read(day, now)));
      put(hint, day.untoldMs > AGAIN ? say.noRecord(span(day.untoldMs)) : "");
      hint.hidden = day.untoldMs <= AGAIN;
    }
  }

  async function load(now) {
    asking = true;
    askedAt = performance.now();
    askedOf = now.utcMs;
    try {
      day = await api.day();
      show(now);
    } catch (refusal) {
      hint.hidden = false;
      put(hint, refusal.message);
    }
    asking = false;
  }

  return {
    node,
    set(now) {
      show(now);
      if (!asking && Math.abs(now.utcMs - askedOf) > AGAIN && performance.now() - askedAt > LEAST_TRUE) {
        load(now);
      }
    },
  };
}
