import { h, put, mark } from "../dom.js";
import * as api from "../api.js";
import { full, system } from "../units.js";
import { table } from "./parts.js";

const ROWS = [
  ["Heat drawn, mean", "power", ({ ahead }) => ahead.drawnWatts],
  ["Heat drawn, all season", "seasonEnergy", ({ ahead }) => ahead.drawnKWh],
  ["Of use to the house", "seasonEnergy", ({ ahead }) => ahead.usefulKWh],
  ["Coldest in the house", "temperature", ({ ahead }) => ahead.coldestC],
  ["Hours below its minimum", "count", ({ ahead }) => ahead.hoursBelowMinimum],
  ["Lights on day", "count", ({ ahead }) => ahead.litOnDay],
  ["Past half of its best on day", "count", ({ ahead }) => ahead.fadedOnDay],
  ["Water it loses", "volume", ({ ahead }) => ahead.waterLostKg],
];

// Sums in the grower's own money, against the fuel that the settings say the heap stands in for.
function money({ money: { money: sign, replacedFuel, savedASeason, paybackSeasons } }) {
  const shown = (value) => (value === null ? "never" : value.toFixed(1).replace("-", "−"));
  return [
    [`Saved a season against ${replacedFuel}, ${sign}`, shown, () => savedASeason],
    ["Seasons until what was bought is paid", shown, () => paybackSeasons],
  ];
}

// A percentile that is none is a day that does not come within the season.
const told = (kind, value) => (typeof kind === "function" ? kind(value) : value === null ? "not" : full(kind, value));

/** Many winters with the real controller: started here, run behind the ticks, told as what may be relied on. */
export function aheadCard() {
  const said = h("p", { role: "status" });
  const trouble = h("p", { class: "error", role: "alert" });
  const bar = h("progress", { max: 1, value: 0, "aria-label": "Seasons done", hidden: true });
  const count = h("input", { type: "number", id: "ahead-seasons", min: 1, max: 200, step: 1, value: 20, inputmode: "numeric" });
  const start = h("button", { type: "button", onclick: () => act(() => api.startAhead(count.valueAsNumber)) }, "Run the seasons");
  const stop = h("button", { type: "button", class: "quiet", hidden: true, onclick: () => act(api.endAhead) }, "Give it up");
  const rows = table("What the seasons came to");
  const words = h("p", { class: "hint" });
  rows.node.hidden = true;
  const node = h("section", { class: "card w12", "data-card": "ahead" }, h("h2", {}, "Seasons ahead"),
    h("p", { class: "hint" }, "Runs whole winters of the heap as it is built, each with a heap and a house drawn a little otherwise and the real controller at work. It takes seconds a season on a desk machine and longer on a small board, and gives way to the ticks."),
    h("div", { class: "field" }, h("label", { class: "head", for: "ahead-seasons" }, "How many seasons"), h("div", { class: "row" }, count, start, stop)),
    bar, trouble, said, rows.node, words);
  let latest = null;
  let ended = false;
  let timer = 0;

  function show() {
    const running = latest.state === "running";
    // A button that goes away hands its focus to the one that comes.
    const focused = node.contains(document.activeElement) && document.activeElement.tagName === "BUTTON";
    start.hidden = running;
    stop.hidden = !running;
    if (focused && document.activeElement !== (running ? stop : start)) {
      (running ? stop : start).focus();
    }
    bar.hidden = !running;
    bar.value = latest.share;
    put(said, running ? `Running ${latest.seasons} seasons…` : latest.state === "done" ? `${latest.seasons} seasons are done.` : "");
    mark(node, "aria-busy", running ? "true" : null);
    if (latest.fault !== null) {
      put(trouble, `The run ended: ${latest.fault}`);
    }
    rows.node.hidden = latest.result === null;
    if (latest.result !== null) {
      const { result } = latest;
      rows.set(["Figure", "P10", "P50", "P90"], [...ROWS, ...money(result)].map(([name, kind, of]) => [name, ...["p10", "p50", "p90"].map((at) => told(kind, of(result)[at]))]));
      const wish = result.wish === null ? "" : ` ${system() === "metric" ? result.wish.metric : result.wish.us}`;
      put(words, `The house holds its minimum all winter in ${full("share", result.ahead.chanceOfHoldingMinimum)} of the seasons. A tenth of the seasons lie below P10, half below P50, nine tenths below P90.${wish}`);
    }
  }

  async function look() {
    clearTimeout(timer);
    try {
      latest = await api.ahead();
      if (ended) {
        return;
      }
      show();
    } catch (refusal) {
      put(trouble, refusal.message);
    }
    if (!ended && latest?.state === "running") {
      timer = setTimeout(look, 1000);
    }
  }

  async function act(call) {
    put(trouble, "");
    try {
      await call();
    } catch (refusal) {
      put(trouble, refusal.field === "seasons" ? `How many seasons: ${refusal.given} is not allowed. Allowed: ${refusal.allowed}.` : refusal.message);
    }
    await look();
  }

  look();
  return {
    node,
    redraw: () => latest !== null && show(),
    end() {
      ended = true;
      clearTimeout(timer);
    },
  };
}
