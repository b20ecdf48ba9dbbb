import { h, put, mark, toneMark, setTone } from "../dom.js";
import * as api from "../api.js";
import { bare, full, unit } from "../units.js";
import { clock, dayAndClock } from "../time.js";
import * as say from "../words/nights.js";

// A statement is made each hour of the place; asked again after a quarter of one, not oftener than this in true time.
const AGAIN = 900000;
const LEAST_TRUE = 5000;

const HOLDS = ["holdWater", "holdAll"];

// The statement takes it that heat can be given. A trip or lock shows in the mode, and an interlock may hold the heat without a trip.
const stopped = (now) => now.mode === "tripped" || now.mode === "servicing" || now.trips.length > 0
  || now.interlocks.some((row) => row.verdict === "acting" && HOLDS.includes(row.action));

const ROWS = [
  [say.mostLikely, (t) => full("temperature", t.minimumP50C)],
  [say.thatIsAbout, (t) => clock(t.atUtcMs, t.offsetMinutes)],
  [say.oneInTenColder, (t) => full("temperature", t.minimumP10C)],
  [say.oneInTenWarmer, (t) => full("temperature", t.minimumP90C)],
  [say.otherHeat, (t) => (t.backupWatts === null ? say.noHeat : say.heatFrom(full("power", t.backupWatts), clock(t.backupFromUtcMs, t.offsetMinutes)))],
];

/** The night ahead: how likely the house holds its minimum, how cold it may get, and what other heat would keep it. */
export function tonightCard() {
  const icon = toneMark();
  const head = h("span", {}, say.tonight);
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
  const warning = h("p", {}, say.stopped);
  warning.hidden = true;
  const hint = h("p", { class: "hint" });
  const node = h("section", { class: "card answer live w7", "data-card": "tonight", "data-tone": "plain" },
    h("h2", {}, icon, head), big, warning, lead, list, hint);
  let asking = false;
  let askedAt = -Infinity;
  let askedOf = -Infinity;
  let said = null;
  let latest = null;

  function show(now) {
    if (said === null) {
      put(lead, say.nothingYet);
      return;
    }
    const off = stopped(now);
    const tone = said.poor ? (said.chanceOfHolding < 0.5 ? "bad" : "warn") : off ? "warn" : "good";
    warning.hidden = !off;
    mark(node, "data-tone", tone);
    setTone(icon, tone);
    put(head, said.poor ? say.mayFall : off ? say.likelyIfRuns : say.likelyHolds);
    put(number, bare("share", said.chanceOfHolding));
    put(name, unit("share"));
    put(lead, say.staying(full("temperature", said.houseMinimumC), dayAndClock(said.untilUtcMs, said.offsetMinutes), say.chance(Math.round(said.chanceOfHolding * 10))));
    ROWS.forEach(([, read], index) => put(cells[index], read(said)));
    put(hint, `${said.usesForecast ? say.byForecast : say.byLastDays} ${say.made(dayAndClock(said.madeUtcMs, said.offsetMinutes))}`);
  }

  async function load(now) {
    asking = true;
    askedAt = performance.now();
    askedOf = now.utcMs;
    try {
      said = await api.tonight();
      show(latest);
    } catch (refusal) {
      put(hint, refusal.message);
    }
    asking = false;
  }

  return {
    node,
    set(now) {
      latest = now;
      show(now);
      if (!asking && Math.abs(now.utcMs - askedOf) > AGAIN && performance.now() - askedAt > LEAST_TRUE) {
        load(now);
      }
    },
  };
}
