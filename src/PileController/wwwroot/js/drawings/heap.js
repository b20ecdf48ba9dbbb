import { h, s, put, mark } from "../dom.js";
import { full, unit } from "../units.js";
import * as say from "../words/drawings.js";
import { at, LEAST, MOST } from "./warmth.js";
import { anatomy, CENTRE, LABELS, place } from "./anatomy.js";

let count = 0;

function probeMark(probe, index, total, scale) {
  const labelX = 38 + (index * (360 - 76)) / Math.max(1, total - 1);
  const { x, y } = place(probe, scale);
  const path = `M${labelX} ${LABELS - 4} L${x} ${y}`;
  const number = s("text", { class: "strong", x: labelX, y: 32, "text-anchor": "middle" });
  const name = s("text", { class: "soft", x: labelX, y: 15, "text-anchor": "middle" }, say.shortName(probe.name));
  return {
    node: s("g", {}, s("path", { class: "lead-under", d: path }), s("path", { class: "lead", d: path }),
      s("circle", { class: "probe-dot", cx: x, cy: y, r: 4.5 }), name, number),
    set(current) {
      put(number, current.value === null ? say.fault : full("temperature", current.value));
      mark(number, "class", current.value === null ? "bad-text" : "strong");
    },
  };
}

function gradient(id) {
  const node = s("linearGradient", { id, x1: 0, x2: 1, y1: 0, y2: 0 });
  return {
    node,
    set(now, probes) {
      // What is believed of the heap is drawn mirrored about the axis, as the heap is round; without it, what the probes say.
      const known = now.heapField !== null
        ? now.heapField.map(([radiusM, value]) => ({ share: radiusM / now.heap.radiusM, value }))
        : probes
          .map((probe) => ({ share: probe.radiusM / now.heap.radiusM, value: now.readings.find((one) => one.channel === probe.channel)?.value ?? null }))
          .filter((one) => one.value !== null && one.share <= 1)
          .sort((a, b) => a.share - b.share);
      const stops = [...known.map((one) => [0.5 - one.share / 2, one.value]).reverse(), ...known.map((one) => [0.5 + one.share / 2, one.value])];
      const text = stops.map(([, value]) => Math.round(value)).join();
      if (node.dataset.text !== text) {
        node.dataset.text = text;
        node.replaceChildren(...stops.map(([offset, value]) => s("stop", { offset, "stop-color": at(value) })));
      }
    },
  };
}

function key() {
  const id = `key-${++count}`;
  const stops = [...Array(9).keys()].map((step) => s("stop", { offset: step / 8, "stop-color": at(LEAST + ((MOST - LEAST) * step) / 8) }));
  const ends = h("div", { class: "ends" });
  const node = h("div", { class: "key" },
    s("svg", { viewBox: "0 0 100 6", preserveAspectRatio: "none", "aria-hidden": "true" },
      s("defs", {}, s("linearGradient", { id }, ...stops)), s("rect", { width: 100, height: 6, fill: `url(#${id})` })),
    ends);
  return { node, set: () => {
    const words = [0, 0.25, 0.5, 0.75, 1].map((share) => full("temperature", LEAST + (MOST - LEAST) * share).replace(/\.0/, ""));
    if (ends.textContent !== words.join("")) {
      ends.replaceChildren(...words.map((word) => h("span", {}, word)));
    }
  } };
}

const sample = (...children) => s("svg", { class: "drawing", viewBox: "0 0 22 18", "aria-hidden": "true" }, ...children);

/** The heap as built, to scale, with its probes where they sit. */
export function heapDrawing() {
  const figure = h("figure", { class: "stack" });
  const scaleKey = key();
  const caption = h("p", { class: "hint" });
  let built = null;

  function build(now) {
    const probes = now.readings.filter((one) => one.channel.startsWith("heap")).sort((a, b) => a.radiusM - b.radiusM);
    const id = `heap-field-${++count}`;
    const field = gradient(id);
    const parts = anatomy(now.heap, `url(#${id})`);
    const marks = probes.map((probe, index) => probeMark(probe, index, probes.length, parts.scale));
    const svg = s("svg", { class: "drawing", viewBox: `0 0 ${CENTRE * 2} ${parts.height}`, role: "img" },
      s("defs", {}, field.node), ...parts.nodes, ...marks.map((one) => one.node), parts.size);
    const legend = h("ul", { class: "legend-list" },
      h("li", {}, sample(s("rect", { class: "drum-under", x: 5, y: 3, width: 12, height: 12 }), s("rect", { class: "drum", x: 5, y: 3, width: 12, height: 12 })), say.LEGEND.drum),
      h("li", {}, sample(s("circle", { class: "turn", cx: 11, cy: 9, r: 4 })), say.LEGEND.turns),
      h("li", {}, sample(s("circle", { class: "duct-under", cx: 11, cy: 9, r: 5 }), s("circle", { class: "duct", cx: 11, cy: 9, r: 5 })), say.LEGEND.ducts),
      h("li", {}, sample(s("circle", { class: "probe-dot", cx: 11, cy: 9, r: 4.5 })), say.LEGEND.probes));
    figure.replaceChildren(svg, scaleKey.node, legend, caption);
    built = { probes, field, marks, svg, parts };
  }

  function set(now) {
    if (built === null) {
      build(now);
    }
    built.field.set(now, built.probes);
    const current = built.probes.map((probe) => now.readings.find((one) => one.channel === probe.channel));
    built.marks.forEach((one, index) => one.set(current[index]));
    scaleKey.set();
    const size = say.size(full("length", now.heap.radiusM * 2), full("length", now.heap.heightM));
    put(built.parts.size, size);
    mark(built.svg, "aria-label", say.heapAs(size, current.map((one) => `${one.name} ${one.value === null ? one.qualityText : full("temperature", one.value)}`).join(", ")));
    put(caption, say.toScale(unit("temperature"), now.heapField === null));
  }

  return { node: figure, set };
}
