import { h } from "../dom.js";
import { kindOf } from "../units.js";
import * as say from "../words/record.js";
import { choices } from "./series.js";

const KEY = "channels";

/** Which channels to show together; none chosen means the usual charts. Remembered here. */
export function picker(changed) {
  const ticks = h("div", { class: "ticks" });
  const node = h("details", { class: "card" }, h("summary", {}, say.choose),
    h("p", { class: "hint" }, say.chooseAbout), ticks,
    h("div", { class: "row" }, h("button", { type: "button", class: "quiet", onclick: () => { boxes.forEach((one) => { one.box.checked = false; }); tell(); } }, say.usual)));
  let boxes = [];

  function tell() {
    const list = boxes.filter((one) => one.box.checked).map((one) => one.row);
    localStorage.setItem(KEY, list.map((one) => one.name).join());
    changed(list);
  }

  return {
    node,
    /** Offers what this rig has; once. */
    offer(now) {
      if (boxes.length > 0) {
        return;
      }
      const kept = (localStorage.getItem(KEY) ?? "").split(",");
      boxes = choices(now, kindOf).map((row) => ({ row, box: h("input", { type: "checkbox", checked: kept.includes(row.name), onchange: tell }) }));
      ticks.replaceChildren(...boxes.map((one) => h("label", { class: "tick" }, one.box, one.row.label)));
      if (boxes.some((one) => one.box.checked)) {
        changed(boxes.filter((one) => one.box.checked).map((one) => one.row));
      }
    },
  };
}
