import { h, put, mark } from "../dom.js";
import { back, bare, convert, full, system, unit } from "../units.js";
import * as say from "../words/plan.js";
import { NOTHING, apply, turnsOf } from "./changes.js";

// Least and most are in SI and depend on the heap as tried; steps are round in either system.
const FIELDS = [
  { id: "turns", kind: "count", of: turnsOf, step: { metric: 1, american: 1 }, least: () => 1, most: (heap, limit) => limit("turns").most },
  { id: "radiusM", kind: "length", of: (heap) => heap.coilRadiusM, step: { metric: 0.1, american: 0.25 }, least: (heap, limit) => limit("radiusM").least, most: (heap) => heap.radiusM - 0.1 },
  { id: "heapRadiusM", kind: "length", of: (heap) => heap.radiusM, step: { metric: 0.1, american: 0.25 }, least: (heap) => Math.max(heap.coilRadiusM, heap.ductRadiusM) + 0.1, most: () => 3.5 },
  { id: "coverM", kind: "length", of: (heap) => heap.coverM, step: { metric: 0.05, american: 0.1 }, least: () => 0, most: () => 1 },
];

const onStep = (value, step, round = Math.round) => Number((round(Number((value / step).toFixed(6))) * step).toFixed(4));

function field(one, changed) {
  const id = `try-${one.id}`;
  const slider = h("input", { type: "range", id, oninput: () => changed(Number(slider.value)) });
  const number = h("input", { type: "number", inputmode: "decimal", oninput: () => changed(number.value === "" ? NaN : number.valueAsNumber) });
  const said = h("output", { for: id, class: "num" });
  const node = h("div", { class: "field", "data-field": one.id },
    h("div", { class: "spread" }, h("label", { class: "head", for: id }, say.FIELDS[one.id]), said),
    h("div", { class: "try" }, slider, number));

  function set(built, heap, value, limit) {
    const step = one.step[system()];
    const shown = (x) => convert(one.kind, x);
    const least = onStep(shown(one.least(heap, limit)), step, Math.ceil);
    const most = onStep(shown(one.most(heap, limit)), step, Math.floor);
    const now = value === null ? onStep(shown(one.of(built)), step) : onStep(shown(value), 0.0001);
    for (const [name, text] of [["min", least], ["max", most], ["step", step]]) {
      mark(slider, name, text);
      mark(number, name, text);
    }
    slider.value = now;
    // What is being typed is left alone.
    if (document.activeElement !== number) {
      number.value = now;
    }
    const text = value === null ? say.fieldAsBuilt(full(one.kind, one.of(built))) : say.fieldTried(full(one.kind, value), bare(one.kind, one.of(built)));
    put(said, text);
    mark(slider, "aria-valuetext", text);
    mark(number, "aria-label", say.typed(say.FIELDS[one.id], unit(one.kind)));
    mark(node, "data-changed", value === null ? null : "");
  }

  return { node, set };
}

/** Sliders and numbers for what may be tried; `changed` gets the changes each time. What is told stands on top. */
export function tries(changed, ...told) {
  let built = null;
  let limits = null;
  let tried = NOTHING;
  const limit = (name) => limits.find((one) => one.field === name);
  const rows = FIELDS.map((one) => field(one, (shown) => take(one, shown)));
  const reset = h("button", { type: "button", class: "quiet", onclick: () => settle(NOTHING) }, say.reset);
  const fields = h("div", { class: "tries", hidden: true }, ...rows.map((row) => row.node),
    h("p", { class: "hint" }, say.tryAbout),
    h("div", { class: "row" }, reset));
  const node = h("section", { class: "card w5", "aria-label": say.whatYouTry }, h("h2", {}, say.tryIt), ...told, fields);

  function take(one, shown) {
    if (!Number.isFinite(shown)) {
      return;
    }
    const asBuilt = onStep(convert(one.kind, one.of(built)), one.step[system()]);
    settle({ ...tried, [one.id]: shown === asBuilt ? null : back(one.kind, shown) });
  }

  function settle(next) {
    tried = next;
    draw();
    changed(tried);
  }

  function draw() {
    if (built === null || limits === null) {
      return;
    }
    fields.hidden = false;
    const heap = apply(built, tried);
    rows.forEach((row, index) => row.set(built, heap, tried[FIELDS[index].id], limit));
  }

  return {
    node,
    /** The heap as built and what the controller allows. */
    set(newBuilt, newLimits) {
      built = newBuilt;
      limits = newLimits;
      draw();
    },
    redraw: draw,
  };
}
