import { h, s, put, mark } from "../dom.js";
import { convert, full, many, unit } from "../units.js";
import * as say from "../words/charts.js";
import { WEEKS } from "./axes.js";
import { limits, linear, ticks } from "./scale.js";
import { dataTable } from "./table.js";
import { cursor } from "./cursor.js";

const HIGH = 220;
const EDGE = { left: 44, right: 10, top: 18, bottom: 24 };

/** A path through the points; a gap in the data is a gap in the line. */
function path(points, x, y) {
  let pen = "M";
  let text = "";
  for (const [at, , mean] of points) {
    if (mean === null) {
      pen = "M";
    } else {
      text += `${pen}${x(at).toFixed(1)} ${y(mean).toFixed(1)}`;
      pen = "L";
    }
  }
  return text;
}

const sample = (one) => s("svg", { viewBox: "0 0 28 12", "aria-hidden": "true" },
  s("line", { class: `series ${one.color}`, x1: 0, x2: 28, y1: 6, y2: 6, "stroke-dasharray": one.dash ?? null }));

function legendRow(one) {
  const value = h("span", { class: "value" });
  return { node: h("li", {}, sample(one), h("span", {}, one.label), value), value };
}

/**
 * One chart of a season: lines over its weeks with a cursor for pointer and keyboard and a table of the same data.
 * `series` are {name, label, color, dash}; `level` is an optional fixed line {label, color, dash, of(now)}.
 */
export function weekChart({ title, kind, series, level = null, zero = false }) {
  const plot = s("svg", { "aria-hidden": "true", height: HIGH });
  const when = h("p", { class: "chart-when" });
  const rows = series.map(legendRow);
  const levelRow = level === null ? null : legendRow(level);
  const table = dataTable(title, kind, series, WEEKS);
  let data = null;

  const steer = cursor(say.cursorInWeeks(title), plot, (index) => tell(index));
  const node = h("section", { class: "card chart" }, h("h2", {}, title),
    h("ul", { class: "chart-legend" }, ...rows.map((row) => row.node), levelRow?.node), when, steer.node, table.node);

  // Where nothing is pointed at, the newest values stand in the legend.
  function tell(index) {
    const at = index ?? data.times.length - 1;
    const moment = data.times[at];
    put(when, moment === undefined ? "" : (index === null ? say.atItsEnd : say.during)(WEEKS.say(moment)));
    const figures = series.map((one, number) => {
      const text = full(kind, data.columns[number].get(moment) ?? null);
      put(rows[number].value, text);
      return `${one.label} ${text}`;
    });
    if (levelRow !== null) {
      put(levelRow.value, full(kind, data.level));
    }
    steer.say(at, data.times.length, moment === undefined ? say.noData : say.told(WEEKS.say(moment), figures.join(", ")));
  }

  function draw() {
    const width = Math.max(240, steer.node.clientWidth || 340);
    const values = data.points.flat().map((one) => one[2]).filter((one) => one !== null);
    mark(plot, "viewBox", `0 0 ${width} ${HIGH}`);
    if (values.length === 0) {
      plot.replaceChildren(s("text", { class: "empty", x: width / 2, y: HIGH / 2, "text-anchor": "middle" }, say.nothing));
      steer.scale([], null, EDGE, HIGH);
      return;
    }
    if (data.level !== null) {
      values.push(data.level);
    }
    const shown = values.map((one) => convert(kind, one));
    const [low, high] = limits(zero ? Math.min(0, ...shown) : Math.min(...shown), Math.max(...shown));
    const x = linear(data.from, data.to, EDGE.left, width - EDGE.right);
    const y = linear(low, high, HIGH - EDGE.bottom, EDGE.top);
    const inUnit = (value) => y(convert(kind, value));
    const levelLine = data.level === null ? null
      : s("line", { class: `series series-limit ${level.color}`, x1: EDGE.left, x2: width - EDGE.right, y1: inUnit(data.level), y2: inUnit(data.level), "stroke-dasharray": level.dash });
    plot.replaceChildren(
      s("text", { x: EDGE.left, y: 10, "text-anchor": "start" }, unit(kind)),
      ...ticks(low, high).flatMap((at) => [
        s("line", { class: "grid", x1: EDGE.left, x2: width - EDGE.right, y1: y(at), y2: y(at) }),
        s("text", { x: EDGE.left - 6, y: y(at) + 4, "text-anchor": "end" }, many(Number(at.toFixed(2))).replace("-", "−")),
      ]),
      ...WEEKS.ticks(data.from, data.to, width / 70).flatMap(({ at, text }) => [
        s("line", { class: "grid", x1: x(at), x2: x(at), y1: EDGE.top, y2: HIGH - EDGE.bottom }),
        s("text", { x: Math.min(Math.max(x(at), EDGE.left + 8), width - 22), y: HIGH - 6, "text-anchor": "middle" }, text),
      ]),
      s("line", { class: "axis", x1: EDGE.left, x2: width - EDGE.right, y1: HIGH - EDGE.bottom, y2: HIGH - EDGE.bottom }),
      ...(levelLine === null ? [] : [levelLine]),
      ...series.map((one, number) => s("path", { class: `series ${one.color}`, d: path(data.points[number], x, inUnit), "stroke-dasharray": one.dash ?? null })));
    steer.scale(data.times, x, EDGE, HIGH);
  }

  const watch = new ResizeObserver(() => data !== null && draw());
  watch.observe(steer.node);

  return {
    node,
    end: () => watch.disconnect(),
    set(answer, now) {
      const points = series.map((one) => answer.series.find((found) => found.name === one.name)?.points ?? []);
      const columns = points.map((list) => new Map(list.map((point) => [point[0], point[2]])));
      const times = [...new Set(points.flat().map((point) => point[0]))].sort((a, b) => a - b);
      data = { points, columns, times, from: answer.fromUtcMs, to: answer.toUtcMs, level: level === null ? null : level.of(now) };
      draw();
      tell(null);
      table.set(data);
    },
    redraw() {
      if (data !== null) {
        draw();
        tell(null);
        table.set(data);
      }
    },
  };
}
