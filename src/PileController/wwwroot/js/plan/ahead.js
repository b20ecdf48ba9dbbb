import { h, put, mark } from "../dom.js";
import * as api from "../api.js";
import { full, system } from "../units.js";
import * as say from "../words/ahead.js";
import { notAllowed } from "../words/shared.js";
import { table } from "./parts.js";

const ROWS = [
  [say.ROWS.drawn, "power", ({ ahead }) => ahead.drawnWatts],
  [say.ROWS.drawnAll, "seasonEnergy", ({ ahead }) => ahead.drawnKWh],
  [say.ROWS.useful, "seasonEnergy", ({ ahead }) => ahead.usefulKWh],
  [say.ROWS.coldest, "temperature", ({ ahead }) => ahead.coldestC],
  [say.ROWS.below, "count", ({ ahead }) => ahead.hoursBelowMinimum],
  [say.ROWS.lights, "count", ({ ahead }) => ahead.litOnDay],
  [say.ROWS.fades, "count", ({ ahead }) => ahead.fadedOnDay],
  [say.ROWS.waterLost, "volume", ({ ahead }) => ahead.waterLostKg],
];

// Sums in the grower's own money, against the fuel that the settings say the heap stands in for.
function money({ money: { money: sign, replacedFuel, savedASeason, paybackSeasons } }) {
  const shown = (value) => (value === null ? say.never : value.toFixed(1).replace("-", "−"));
  return [
    [say.saved(replacedFuel, sign), shown, () => savedASeason],
    [say.payback, shown, () => paybackSeasons],
  ];
}

// A percentile that is none is a day that does not come within the season.
const told = (kind, value) => (typeof kind === "function" ? kind(value) : value === null ? say.notWithin : full(kind, value));

/** Many winters with the real controller: started here, run behind the ticks, told as what may be relied on. */
export function aheadCard() {
  const said = h("p", { role: "status" });
  const trouble = h("p", { class: "error", role: "alert" });
  const bar = h("progress", { max: 1, value: 0, "aria-label": say.done, hidden: true });
  const count = h("input", { type: "number", id: "ahead-seasons", min: 1, max: 200, step: 1, value: 20, inputmode: "numeric" });
  const start = h("button", { type: "button", onclick: () => act(() => api.startAhead(count.valueAsNumber)) }, say.start);
  const stop = h("button", { type: "button", class: "quiet", hidden: true, onclick: () => act(api.endAhead) }, say.stop);
  const rows = table(say.cameTo);
  const words = h("p", { class: "hint" });
  rows.node.hidden = true;
  const node = h("section", { class: "card w12", "data-card": "ahead" }, h("h2", {}, say.title),
    h("p", { class: "hint" }, say.about),
    h("div", { class: "field" }, h("label", { class: "head", for: "ahead-seasons" }, say.howMany), h("div", { class: "row" }, count, start, stop)),
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
    put(said, running ? say.running(latest.seasons) : latest.state === "done" ? say.ended(latest.seasons) : "");
    mark(node, "aria-busy", running ? "true" : null);
    if (latest.fault !== null) {
      put(trouble, say.failed(latest.fault));
    }
    rows.node.hidden = latest.result === null;
    if (latest.result !== null) {
      const { result } = latest;
      rows.set(say.COLUMNS, [...ROWS, ...money(result)].map(([name, kind, of]) => [name, ...["p10", "p50", "p90"].map((at) => told(kind, of(result)[at]))]));
      const wish = result.wish === null ? "" : ` ${system() === "metric" ? result.wish.metric : result.wish.us}`;
      put(words, `${say.holds(full("share", result.ahead.chanceOfHoldingMinimum))}${wish}`);
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
      put(trouble, refusal.field === "seasons" ? notAllowed(say.howMany, refusal.given, refusal.allowed) : refusal.message);
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
