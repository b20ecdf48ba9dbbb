import { h, put } from "../dom.js";
import { bare, full, unit } from "../units.js";
import * as say from "../words/planFigures.js";
import { litMean } from "./season.js";
import { card, table } from "./parts.js";

const day = (value) => (value === null ? say.noDay : say.day(Math.round(value)));

// [name, kind, of(plan)]; a kind of null is a day of the season.
const ROWS = [
  [say.ROWS.drawn, "power", (plan) => plan.sketch.coil.meanDrawnWatts],
  [say.ROWS.drawnAll, "seasonEnergy", (plan) => plan.sketch.coil.meanDrawnWatts * plan.days * 0.024],
  [say.ROWS.made, "power", (plan) => litMean(plan, "generatedWatts")],
  [say.ROWS.hotZone, "temperature", (plan) => litMean(plan, "activeZoneC")],
  [say.ROWS.lights, null, (plan) => plan.sketch.heap.litOnDay],
  [say.ROWS.fades, null, (plan) => plan.sketch.heap.fadesOnDay],
  [say.ROWS.pipe, "pipe", (plan) => plan.sketch.coil.lengthM],
  [say.ROWS.flow, "flow", (plan) => plan.sketch.loop.flowLitresPerMinute],
  [say.ROWS.chips, "mass", (plan) => plan.sketch.heap.wetMassKg],
  [say.ROWS.waterLost, "volume", (plan) => plan.sketch.heap.waterLostKg],
];

const told = (kind, value) => (kind === null ? day(value) : full(kind, value));

// A difference of temperatures is no temperature.
function change(kind, from, to) {
  if (from === null || to === null) {
    return "–";
  }
  const of = kind === null ? "count" : kind === "temperature" ? "kelvin" : kind;
  const text = bare(of, to - from).replace(/^−?0(\.0+)?$/, "0");
  return `${to > from && text !== "0" ? "+" : ""}${text}\u00a0${kind === null ? say.days : unit(of)}`;
}

/** The heap as tried beside the heap as it is built. */
export function compareCard() {
  const rows = table(say.besideTable);
  const hint = h("p", { class: "hint" });
  const node = card(say.beside, "w7", hint, rows.node);
  return {
    node,
    set(base, plan) {
      const same = base === null || plan.changed.length === 0;
      put(hint, same ? say.nothingTried : say.changeIs);
      rows.set(same ? [say.figure, say.built] : [say.figure, say.built, say.tried, say.change], ROWS.map(([name, kind, of]) => (same
        ? [name, told(kind, of(plan))]
        : [name, told(kind, of(base)), told(kind, of(plan)), change(kind, of(base), of(plan))])));
    },
  };
}
