import { h } from "../dom.js";
import { bare, unit } from "../units.js";
import * as say from "../words/charts.js";

/** The table of a chart, the last first, made when it is opened. `columns` are maps from a place on the axis to a value. */
export function dataTable(title, kind, series, axis) {
  const holder = h("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": say.tableOf(title) });
  const node = h("details", { ontoggle: () => fill() }, h("summary", {}, say.table), holder);
  let data = null;

  function fill() {
    if (!node.open || data === null) {
      return;
    }
    const name = unit(kind);
    const heads = series.map((one) => h("th", { scope: "col", class: "n" }, name === "" ? one.label : say.inUnit(one.label, name)));
    const rows = [...data.times].reverse().map((time) => h("tr", {},
      h("th", { scope: "row" }, axis.say(time, data.offset)),
      ...data.columns.map((column) => h("td", { class: "n" }, bare(kind, column.get(time) ?? null)))));
    holder.replaceChildren(h("table", {}, h("thead", {}, h("tr", {}, h("th", { scope: "col" }, axis.name), ...heads)), h("tbody", {}, ...rows)));
  }

  return {
    node,
    set(newData) {
      data = newData;
      fill();
    },
  };
}
