import { h, s, put, mark } from "../dom.js";
import { convert, full, many, unit } from "../units.js";
import { dayAndClock } from "../time.js";
import * as say from "../words/charts.js";
import { limits as rounded, linear, ticks, timeTicks } from "./scale.js";
import { pane } from "./pane.js";
import { bandPath, FRAME, linePath, nearestIndex } from "./paths.js";
import { TIME } from "./axes.js";
import { dataTable } from "./table.js";

const HIGH = 220;
const EDGE = { left: 44, right: 10, top: 18, bottom: 30 };

const sample = (one) => s("svg", { viewBox: "0 0 28 12", "aria-hidden": "true" },
  s("line", { class: `series ${one.color}`, x1: 0, x2: 28, y1: 6, y2: 6, "stroke-dasharray": one.dash }));

function legendRow(one) {
  const value = h("span", { class: "value" });
  return { node: h("li", {}, sample(one), h("span", {}, one.label), value), value };
}

const pen = (one) => {
  const band = s("path", { class: `band f-${one.color}` });
  const line = s("path", { class: `series ${one.color}`, "stroke-dasharray": one.dash });
  return { node: s("g", {}, band, line), band, line };
};

/**
 * Lines over time. `set` draws the loaded stretch once; `look` moves to a part of it, cheaply enough for every frame;
 * `point` puts the cursor at a moment. The title bar has a table and a CSV of what is seen.
 */
export function timeChart({ title, kind, series, level = null, zero = false }) {
  const plot = s("svg", { "aria-hidden": "true", height: HIGH });
  const grid = s("g", {});
  const labels = s("g", {});
  const moving = pane(HIGH, EDGE);
  const cursor = s("line", { class: "cursor", y1: EDGE.top, y2: HIGH - EDGE.bottom, visibility: "hidden" });
  const empty = s("text", { class: "empty", y: HIGH / 2, "text-anchor": "middle", visibility: "hidden" }, say.nothing);
  const pens = series.map(pen);
  const floor = level === null ? null : s("line", { class: "series series-limit c-bad", x1: 0, x2: FRAME, "stroke-dasharray": "12 4", visibility: "hidden" });
  moving.frame.append(...pens.map((one) => one.node), ...(floor === null ? [] : [floor]));
  plot.append(grid, labels, cursor, empty);

  const when = h("p", { class: "chart-when" });
  const rows = series.map(legendRow);
  const levelRow = level === null ? null : legendRow({ label: level.label, color: "c-bad", dash: "12 4" });
  const table = dataTable(title, kind, series, TIME);
  const csv = h("a", { class: "button quiet", download: `${title.toLowerCase().replace(/\W+/g, "-")}.csv`, "aria-label": say.asCsv(title) }, say.csv);
  const stage = h("div", { class: "chart-plot", role: "slider", tabindex: 0, "aria-label": say.cursorInTime(title), "aria-valuemin": 0, "aria-valuemax": 0, "aria-valuenow": 0 }, plot, moving.node);
  const node = h("section", { class: "card chart" }, h("div", { class: "spread" }, h("h2", {}, title), csv),
    h("ul", { class: "chart-legend" }, ...rows.map((row) => row.node), levelRow?.node), when, stage, table.node);

  let data = null;
  let window = null;
  let decisions = [];
  let y = null;
  let at = null;
  let wide = 0;

  // Asked of the browser once a size: asked in a frame it would have to lay the page out for the answer.
  const width = () => {
    wide ||= stage.clientWidth;
    return Math.max(240, wide || 340);
  };
  const x = () => linear(window.from, window.to, EDGE.left, width() - EDGE.right);
  const seen = (points) => points.filter((point) => point[0] >= window.from - data.step * 1000 && point[0] <= window.to);

  function draw() {
    const shown = data.points.flatMap((points) => seen(points).flatMap(([, least, mean, most]) => (mean === null ? [] : [least, most])));
    empty.setAttribute("visibility", shown.length === 0 ? "visible" : "hidden");
    mark(empty, "x", width() / 2);
    if (level !== null && data.level !== null) {
      shown.push(data.level);
    }
    const values = shown.map((one) => convert(kind, one));
    const low = values.reduce((least, one) => Math.min(least, one), zero || values.length === 0 ? 0 : values[0]);
    const high = values.reduce((most, one) => Math.max(most, one), values.length === 0 ? 1 : values[0]);
    y = { ends: rounded(low, high) };
    y.of = linear(...y.ends, HIGH - EDGE.bottom, EDGE.top);
    y.inUnit = (value) => y.of(convert(kind, value));
    data.points.forEach((points, number) => {
      mark(pens[number].line, "d", linePath(points, data, y.inUnit));
      mark(pens[number].band, "d", bandPath(points, data, y.inUnit));
    });
    if (floor !== null && data.level !== null) {
      mark(floor, "visibility", "visible");
      mark(floor, "y1", y.inUnit(data.level));
      mark(floor, "y2", y.inUnit(data.level));
    }
    scaleUp();
    moving.renew();
    look(window);
  }

  // What stands still while the stretch moves.
  function scaleUp() {
    const right = width() - EDGE.right;
    mark(plot, "viewBox", `0 0 ${width()} ${HIGH}`);
    grid.replaceChildren(
      s("text", { x: EDGE.left, y: 10, "text-anchor": "start" }, unit(kind)),
      ...ticks(...y.ends).flatMap((value) => [
        s("line", { class: "grid", x1: EDGE.left, x2: right, y1: y.of(value), y2: y.of(value) }),
        s("text", { x: EDGE.left - 6, y: y.of(value) + 4, "text-anchor": "end" }, many(Number(value.toFixed(2))).replace("-", "−")),
      ]),
      s("line", { class: "axis", x1: EDGE.left, x2: right, y1: HIGH - EDGE.bottom, y2: HIGH - EDGE.bottom }));
  }

  function look(next) {
    window = next;
    if (data === null) {
      return;
    }
    const most = width() / 70;
    moving.look(window, data, width() - EDGE.left - EDGE.right, decisions, most);
    const place = x();
    const shown = timeTicks(window.from, window.to, data.offset, most);
    while (labels.children.length > shown.length) {
      labels.lastChild.remove();
    }
    shown.forEach((tick, index) => {
      const label = labels.children[index] ?? labels.appendChild(s("text", { y: HIGH - 4, "text-anchor": "middle" }));
      mark(label, "x", Math.min(Math.max(place(tick.at), EDGE.left + 8), width() - 22).toFixed(1));
      put(label, tick.text);
    });
    point(at);
  }

  // Where nothing is pointed at, the newest values that are seen stand in the legend.
  function point(moment) {
    at = moment;
    if (data === null) {
      return;
    }
    const known = seen(data.times);
    const index = nearestIndex(known, moment ?? window.to);
    const found = index < 0 ? null : known[index][0];
    cursor.setAttribute("visibility", moment === null || found === null ? "hidden" : "visible");
    const place = x();
    if (moment !== null && found !== null) {
      mark(cursor, "x1", place(found));
      mark(cursor, "x2", place(found));
    }
    const near = moment === null || found === null ? null : decisions.find((one) => Math.abs(place(one.at) - place(found)) < 5);
    const clock = found === null ? "" : dayAndClock(found, data.offset);
    const decided = near ? say.decidedThen(near.text) : "";
    put(when, found === null ? "" : moment === null ? say.newest(clock) : `${say.at(clock)}${decided}`);
    const figures = series.map((one, number) => {
      const text = full(kind, data.columns[number].get(found) ?? null);
      put(rows[number].value, text);
      return `${one.label} ${text}`;
    });
    if (levelRow !== null) {
      put(levelRow.value, full(kind, data.level));
    }
    mark(stage, "aria-valuemax", Math.max(0, known.length - 1));
    mark(stage, "aria-valuenow", Math.max(0, index));
    mark(stage, "aria-valuetext", found === null ? say.noData : `${say.told(clock, figures.join(", "))}${decided}`);
  }

  return {
    node,
    stage,
    title,
    names: series.map((one) => one.name),
    /** The moment under a place on the screen. */
    momentAt(clientX) {
      const box = plot.getBoundingClientRect();
      return linear(EDGE.left, width() - EDGE.right, window.from, window.to)(((clientX - box.left) / box.width) * width());
    },
    /** Pixels the stretch is wide. */
    room: () => width() - EDGE.left - EDGE.right,
    /** The moments that are seen, in order. */
    moments: () => (data === null ? [] : seen(data.times).map((one) => one[0])),
    look,
    point,
    /** Told when there is more or less room. */
    resized() {
      wide = 0;
      if (data !== null) {
        scaleUp();
        look(window);
      }
    },
    set(loaded, now, seenWindow, csvPath) {
      const points = series.map((one) => loaded.series.get(one.name)?.points ?? []);
      const columns = points.map((list) => new Map(list.map((one) => [one[0], one[2]])));
      const times = [...new Set(points.flatMap((list) => list.map((one) => one[0])))].sort((a, b) => a - b).map((one) => [one]);
      data = { points, columns, times, from: loaded.from, to: loaded.to, step: loaded.step, offset: now.offsetMinutes, level: level === null ? null : level.of(now) };
      window = seenWindow;
      this.settle(csvPath);
    },
    /** Told once a movement has ended: scale, table and CSV go by what is seen. */
    settle(csvPath) {
      if (data === null) {
        return;
      }
      draw();
      mark(csv, "href", csvPath);
      const known = seen(data.times).map((one) => one[0]);
      table.set({ columns: data.columns, times: known, offset: data.offset });
    },
    mark(list) {
      decisions = list;
      if (data !== null) {
        moving.renew();
        look(window);
      }
    },
  };
}
