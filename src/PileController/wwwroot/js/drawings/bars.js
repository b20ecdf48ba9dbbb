import { h, s, put, mark } from "../dom.js";
import { bare, full, unit } from "../units.js";
import * as say from "../words/drawings.js";

function bar({ name, about }, parts) {
  const rects = parts.map((part) => s("rect", { class: `bar-${part}`, y: 0, height: 10, x: 0, width: 0 }));
  const error = s("line", { class: "bar-error", y1: 5, y2: 5, x1: 0, x2: 0 });
  const value = h("span", { class: "value num" });
  const node = h("div", { class: "bar" },
    h("span", { class: "name" }, name, " ", h("small", {}, about)), value,
    s("svg", { viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" },
      s("rect", { class: "bar-track", width: 100, height: 10 }), ...rects, error));
  return { node, rects, error, value };
}

/** Want, means, grant and draw on one scale. */
export function drawBars() {
  const bars = Object.fromEntries(Object.entries(say.BARS).map(([id, words]) => [id, bar(words, id === "draw" ? ["water", "air"] : [id])]));
  const split = h("p", { class: "hint num" });
  const node = h("div", { class: "bars" }, ...Object.values(bars).map((one) => one.node), split);

  function set(now) {
    const water = Math.max(0, now.waterDrawWatts ?? 0);
    const air = Math.max(0, now.airDrawWatts ?? 0);
    const watts = { want: now.wantWatts, means: now.meansWatts, grant: now.grantWatts, draw: water + air };
    const most = Math.max(500, ...Object.values(watts).map((one) => one ?? 0)) * 1.05;
    const place = (one) => Math.max(0, Math.min(100, ((one ?? 0) / most) * 100));
    for (const id of ["want", "means", "grant"]) {
      mark(bars[id].rects[0], "width", place(watts[id]));
      put(bars[id].value, full("power", watts[id]));
    }
    const error = now.waterDrawErrorWatts ?? 0;
    mark(bars.draw.rects[0], "width", place(water));
    mark(bars.draw.rects[1], "x", place(water));
    mark(bars.draw.rects[1], "width", place(air));
    mark(bars.draw.error, "x1", place(watts.draw - error));
    mark(bars.draw.error, "x2", place(watts.draw + error));
    put(bars.draw.value, `${bare("power", watts.draw)}${error > 0 ? `\u00a0±\u00a0${bare("power", error)}` : ""}\u00a0${unit("power")}`);
    put(split, say.split(full("power", now.waterDrawWatts), now.drawInferred, full("power", now.airDrawWatts)));
  }

  return { node, set };
}
