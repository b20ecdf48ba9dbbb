import { h, put, mark } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { chart } from "../charts/chart.js";
import { SERIES } from "../words.js";

const HOUR = 3600000;

const SPANS = [
  { name: "Last 24 hours", ms: 24 * HOUR, step: "10 min" },
  { name: "Last 14 days", ms: 14 * 24 * HOUR, step: "1 h" },
];

const line = (name, color, dash) => ({ name, label: SERIES[name], color: `c-${color}`, dash });

const CHARTS = [
  {
    title: "Heap temperatures",
    kind: "temperature",
    series: [line("activeZone", "ember"), line("heapCore", "plum", "9 3"), line("heapMiddle", "amber", "2 3"), line("heapTurns", "lake", "6 2 1 2"), line("heapEdge", "slate", "4 3")],
    level: { label: "Floor", color: "c-bad", dash: "12 4", of: (now) => now.heapFloorC },
  },
  {
    title: "House and outside",
    kind: "temperature",
    series: [line("house", "moss"), line("outside", "lake", "6 3"), line("setPoint", "slate", "2 3")],
    level: { label: "Minimum", color: "c-bad", dash: "12 4", of: (now) => now.houseMinimumC },
  },
  {
    title: "Want, means, grant and draw",
    kind: "power",
    zero: true,
    series: [line("want", "slate", "2 3"), line("means", "moss", "9 3"), line("grant", "plum", "6 2 1 2"), line("waterDraw", "ember"), line("airDraw", "lake", "4 3")],
  },
  {
    title: "Pump and blower",
    kind: "share",
    zero: true,
    series: [line("pumpDuty", "ember"), line("blowerDuty", "lake", "6 3")],
  },
];

/** The last day and the last fortnight. */
export function historyView() {
  const charts = CHARTS.map(chart);
  const names = [...new Set(CHARTS.flatMap((one) => one.series.map((series) => series.name)))].join();
  const trouble = h("p", { class: "error", role: "alert" });
  const buttons = SPANS.map((span) => h("button", { type: "button", class: "quiet", onclick: () => choose(span) }, span.name));
  let chosen = SPANS[0];
  let asking = false;
  let askedAt = -Infinity;

  async function load() {
    const now = feed.now();
    if (now === null || asking) {
      return;
    }
    asking = true;
    askedAt = performance.now();
    const wanted = chosen;
    const fields = { from: now.utcMs - wanted.ms, to: now.utcMs + 1, step: wanted.step };
    try {
      const answer = await api.samples({ channel: names, ...fields });
      put(trouble, "");
      charts.forEach((one, index) => one.set(answer, now,
        api.samplesPath({ channel: CHARTS[index].series.map((series) => series.name).join(), ...fields, format: "csv" })));
    } catch (refusal) {
      put(trouble, refusal.message);
    }
    asking = false;
    if (wanted !== chosen) {
      load();
    }
  }

  function choose(span) {
    chosen = span;
    buttons.forEach((button, index) => mark(button, "aria-pressed", SPANS[index] === span));
    load();
  }

  choose(chosen);
  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, "Day and fortnight"),
        h("p", { class: "hint" }, "Point at a chart, or reach it with Tab and use the arrow keys, to read values at one moment.")),
      h("div", { class: "row", role: "group", "aria-label": "Time shown" }, ...buttons), trouble,
      h("div", { class: "charts" }, ...charts.map((one) => one.node)),
    ],
    update() {
      if (performance.now() - askedAt > 15000) {
        load();
      }
    },
    unitsChanged: () => charts.forEach((one) => one.redraw()),
    end: () => charts.forEach((one) => one.end()),
  };
}
