import { h, put, mark, toneMark, setTone } from "../dom.js";
import * as api from "../api.js";
import { bare, full, unit } from "../units.js";
import { clock, dayAndClock } from "../time.js";

// A statement is made each hour of the place; asked again after a quarter of one, not oftener than this in true time.
const AGAIN = 900000;
const LEAST_TRUE = 5000;

const chanceWords = (chance) => {
  const tens = Math.round(chance * 10);
  return tens === 10 ? "nearly sure" : tens === 0 ? "hardly a chance" : `${tens} in 10`;
};

const ROWS = [
  ["Coldest house air, most likely", (t) => full("temperature", t.minimumP50C)],
  ["That is about", (t) => clock(t.atUtcMs, t.offsetMinutes)],
  ["One night in ten is colder than", (t) => full("temperature", t.minimumP10C)],
  ["One night in ten is warmer than", (t) => full("temperature", t.minimumP90C)],
  ["Other heat to have ready", (t) => (t.backupWatts === null ? "none" : `${full("power", t.backupWatts)} from ${clock(t.backupFromUtcMs, t.offsetMinutes)}`)],
];

/** The night ahead: how likely the house holds its minimum, how cold it may get, and what other heat would keep it. */
export function tonightCard() {
  const icon = toneMark();
  const head = h("span", {}, "Tonight");
  const number = h("span", {}, "–");
  const name = h("span", { class: "unit" });
  const big = h("p", { class: "big" }, number, name);
  const lead = h("p", { class: "line" });
  const list = h("dl", { class: "facts" });
  const cells = ROWS.map(([label]) => {
    const value = h("dd", {}, "–");
    list.append(h("dt", {}, label), value);
    return value;
  });
  const hint = h("p", { class: "hint" });
  const node = h("section", { class: "card answer live w7", "data-card": "tonight", "data-tone": "plain" },
    h("h2", {}, icon, head), big, lead, list, hint);
  let asking = false;
  let askedAt = -Infinity;
  let askedOf = -Infinity;
  let said = null;

  function show() {
    if (said === null) {
      put(lead, "Nothing is said of the night yet.");
      return;
    }
    const tone = said.poor ? (said.chanceOfHolding < 0.5 ? "bad" : "warn") : "good";
    mark(node, "data-tone", tone);
    setTone(icon, tone);
    put(head, said.poor ? "Tonight the house may fall below its minimum" : "Tonight the house is likely to hold");
    put(number, bare("share", said.chanceOfHolding));
    put(name, unit("share"));
    put(lead, `The chance of staying at ${full("temperature", said.houseMinimumC)} or above until ${dayAndClock(said.untilUtcMs, said.offsetMinutes)}: ${chanceWords(said.chanceOfHolding)}.`);
    ROWS.forEach(([, read], index) => put(cells[index], read(said)));
    put(hint, `${said.usesForecast ? "From the forecast that was handed over" : "From the weather of the last days alone; no forecast covers the night"}. Backup heat is not counted on.`);
  }

  async function load(now) {
    asking = true;
    askedAt = performance.now();
    askedOf = now.utcMs;
    try {
      said = await api.tonight();
      show();
    } catch (refusal) {
      put(hint, refusal.message);
    }
    asking = false;
  }

  return {
    node,
    set(now) {
      show();
      if (!asking && Math.abs(now.utcMs - askedOf) > AGAIN && performance.now() - askedAt > LEAST_TRUE) {
        load(now);
      }
    },
  };
}
