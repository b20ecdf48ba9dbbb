import { h, put } from "../dom.js";
import { old } from "../words/plan.js";

/** A card of figures with the mark that shows while they are from before a change. */
export function card(title, width, ...children) {
  return h("section", { class: `card ${width}` },
    h("div", { class: "spread" }, h("h2", {}, title), h("span", { class: "old-mark" }, old)), ...children);
}

/** The same, folded away on a phone behind its heading; the card stands open where there is room beside it. */
export function folded(title, width, ...children) {
  const node = h("details", { class: `card fold ${width}` },
    h("summary", {}, h("h2", {}, title), h("span", { class: "old-mark" }, old)), ...children);
  node.open = window.matchMedia("(min-width: 60rem)").matches;
  return node;
}

/** A table that is filled anew: a head, and rows of a name and cells. */
export function table(title) {
  const head = h("tr", {});
  const body = h("tbody", {});
  const node = h("div", { class: "scroll tall", tabindex: 0, role: "region", "aria-label": title },
    h("table", { class: "plan-table" }, h("thead", {}, head), body));
  return {
    node,
    set(columns, rows) {
      head.replaceChildren(...columns.map((name, index) => h("th", { scope: "col", class: index === 0 ? null : "n" }, name)));
      body.replaceChildren(...rows.map(([name, ...cells]) => h("tr", {}, h("th", { scope: "row" }, name), ...cells.map((cell) => h("td", { class: "n" }, cell)))));
    },
  };
}

/** Names and values; rows are [name, of(sketch)]. */
export function facts(rows) {
  const cells = rows.map(() => h("dd", {}));
  const node = h("dl", { class: "facts" }, ...rows.flatMap(([name], index) => [h("dt", {}, name), cells[index]]));
  return { node, set: (from) => rows.forEach(([, of], index) => put(cells[index], of(from))) };
}
