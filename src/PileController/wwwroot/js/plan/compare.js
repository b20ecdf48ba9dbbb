import { h, put } from "../dom.js";
import { bare, full, unit } from "../units.js";
import { litMean } from "./season.js";
import { card, table } from "./parts.js";

const day = (value) => (value === null ? "not" : `day ${Math.round(value)}`);

// [name, kind, of(plan)]; a kind of null is a day of the season.
const ROWS = [
  ["Heat drawn, mean", "power", (plan) => plan.sketch.coil.meanDrawnWatts],
  ["Heat drawn, all season", "seasonEnergy", (plan) => plan.sketch.coil.meanDrawnWatts * plan.days * 0.024],
  ["Heat made while lit, mean", "power", (plan) => litMean(plan, "generatedWatts")],
  ["Hot zone while lit, mean", "temperature", (plan) => litMean(plan, "activeZoneC")],
  ["Lights on", null, (plan) => plan.sketch.heap.litOnDay],
  ["Past half of its best on", null, (plan) => plan.sketch.heap.fadesOnDay],
  ["Pipe", "pipe", (plan) => plan.sketch.coil.lengthM],
  ["Flow at full pump", "flow", (plan) => plan.sketch.loop.flowLitresPerMinute],
  ["Chips, wet", "mass", (plan) => plan.sketch.heap.wetMassKg],
  ["Water it loses", "volume", (plan) => plan.sketch.heap.waterLostKg],
];

const told = (kind, value) => (kind === null ? day(value) : full(kind, value));

// A difference of temperatures is no temperature.
function change(kind, from, to) {
  if (from === null || to === null) {
    return "–";
  }
  const of = kind === null ? "count" : kind === "temperature" ? "kelvin" : kind;
  const text = bare(of, to - from).replace(/^−?0(\.0+)?$/, "0");
  return `${to > from && text !== "0" ? "+" : ""}${text}\u00a0${kind === null ? "d" : unit(of)}`;
}

/** The heap as tried beside the heap as it is built. */
export function compareCard() {
  const rows = table("As built and as tried");
  const hint = h("p", { class: "hint" });
  const node = card("Beside the heap as it is built", "w7", hint, rows.node);
  return {
    node,
    set(base, plan) {
      const same = base === null || plan.changed.length === 0;
      put(hint, same ? "Nothing is tried otherwise yet. Move a slider and both stand here side by side." : "The change is what was tried less what is built.");
      rows.set(same ? ["Figure", "As built"] : ["Figure", "As built", "As tried", "Change"], ROWS.map(([name, kind, of]) => (same
        ? [name, told(kind, of(plan))]
        : [name, told(kind, of(base)), told(kind, of(plan)), change(kind, of(base), of(plan))])));
    },
  };
}
