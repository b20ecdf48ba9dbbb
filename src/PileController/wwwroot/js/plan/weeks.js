import { weekChart } from "../charts/weekChart.js";
import { h } from "../dom.js";
import * as say from "../words/planFigures.js";
import { folded } from "./parts.js";

const line = (name, color, dash) => ({ name, label: say.LINES[name], color: `c-${color}`, dash });

const CHARTS = [
  {
    title: say.heatByWeek,
    kind: "power",
    zero: true,
    series: [line("generatedWatts", "ember"), line("lostWatts", "slate", "6 3"), line("drawnWatts", "moss", "9 3")],
  },
  {
    title: say.warmthByWeek,
    kind: "temperature",
    series: [line("activeZoneC", "ember"), line("turnsC", "lake", "6 2 1 2")],
    level: { label: say.floor, color: "c-bad", dash: "12 4", of: (now) => now.heapFloorC },
  },
];

/** The season week by week, with tables. */
export function weekCharts() {
  const charts = CHARTS.map(weekChart);
  const node = folded(say.weeks, "w12", h("div", { class: "charts" }, ...charts.map((one) => one.node)));
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
