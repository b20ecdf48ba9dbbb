import { weekChart } from "../charts/weekChart.js";
import { h } from "../dom.js";
import { folded } from "./parts.js";

const line = (name, label, color, dash) => ({ name, label, color: `c-${color}`, dash });

const CHARTS = [
  {
    title: "Heat by week",
    kind: "power",
    zero: true,
    series: [line("generatedWatts", "Made", "ember"), line("lostWatts", "Lost by itself", "slate", "6 3"), line("drawnWatts", "Drawn", "moss", "9 3")],
  },
  {
    title: "Warmth by week",
    kind: "temperature",
    series: [line("activeZoneC", "Hot zone", "ember"), line("turnsC", "At the turns", "lake", "6 2 1 2")],
    level: { label: "Floor", color: "c-bad", dash: "12 4", of: (now) => now.heapFloorC },
  },
];

/** The season week by week, with tables. */
export function weekCharts() {
  const charts = CHARTS.map(weekChart);
  const node = folded("Week by week", "w12", h("div", { class: "charts" }, ...charts.map((one) => one.node)));
  return {
    node,
    set(plan, now) {
      const { weeks } = plan.sketch.heap;
      const answer = (series) => ({
        fromUtcMs: 1,
        toUtcMs: Math.max(2, weeks.length),
        series: series.map(({ name }) => ({ name, points: weeks.map((one) => [one.week, null, one[name], null]) })),
      });
      charts.forEach((one, index) => one.set(answer(CHARTS[index].series), now));
    },
    redraw: () => charts.forEach((one) => one.redraw()),
    end: () => charts.forEach((one) => one.end()),
  };
}
