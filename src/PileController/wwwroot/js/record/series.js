import * as say from "../words/record.js";

// The kinds of figure a chart can hold, in the order of the charts.
const KINDS = ["temperature", "power", "share", "flow", "electric", "voltage", "sun", "humidity", "gas"];

// What is recorded beside the fitted probes.
const DECIDED = [
  ["activeZone", "temperature"], ["setPoint", "temperature"], ["want", "power"], ["means", "power"], ["grant", "power"],
  ["waterDraw", "power"], ["airDraw", "power"], ["generation", "power"], ["pumpDuty", "share"], ["valveOpening", "share"], ["blowerDuty", "share"],
];

const COLORS = ["ember", "lake", "moss", "plum", "amber", "slate"];
const DASHES = [null, "9 3", "2 3", "6 2 1 2", "4 3"];

const styled = (name, label, index) => ({ name, label, color: `c-${COLORS[index % COLORS.length]}`, dash: DASHES[index % DASHES.length] });
const line = (name, color, dash = null) => ({ name, label: say.SERIES[name], color: `c-${color}`, dash });

/** The charts shown until a person chooses. */
export const USUAL = [
  {
    title: say.CHARTS.heap,
    kind: "temperature",
    series: [line("activeZone", "ember"), line("heapCore", "plum", "9 3"), line("heapMiddle", "amber", "2 3"), line("heapTurns", "lake", "6 2 1 2"), line("heapEdge", "slate", "4 3")],
    level: { label: say.floor, of: (now) => now.heapFloorC },
  },
  {
    title: say.CHARTS.house,
    kind: "temperature",
    series: [line("house", "moss"), line("outside", "lake", "6 3"), line("setPoint", "slate", "2 3")],
    level: { label: say.minimum, of: (now) => now.houseMinimumC },
  },
  {
    title: say.CHARTS.draw,
    kind: "power",
    zero: true,
    series: [line("want", "slate", "2 3"), line("means", "moss", "9 3"), line("grant", "plum", "6 2 1 2"), line("waterDraw", "ember"), line("airDraw", "lake", "4 3")],
  },
  { title: say.CHARTS.work, kind: "share", zero: true, series: [line("pumpDuty", "ember"), line("blowerDuty", "lake", "6 3")] },
];

/** Everything that can be chosen on this rig: {name, label, kind}. */
export function choices(now, kindOf) {
  const probes = now.readings.map((one) => ({ name: one.channel, label: one.name, kind: kindOf(one.unit, one.channel) }));
  return [...DECIDED.map(([name, kind]) => ({ name, label: say.SERIES[name] ?? name, kind })), ...probes.filter((one) => KINDS.includes(one.kind))];
}

/** One chart for each kind of figure among the chosen. */
export function chosenCharts(list) {
  return KINDS.map((kind) => ({
    title: say.KINDS[kind],
    kind,
    zero: kind !== "temperature" && kind !== "voltage",
    series: list.filter((one) => one.kind === kind).map((one, index) => styled(one.name, one.label, index)),
  })).filter((one) => one.series.length > 0);
}
