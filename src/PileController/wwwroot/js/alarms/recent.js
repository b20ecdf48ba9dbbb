// What happened to alarms lately, newest first.

import { h } from "../dom.js";
import { dayAndClock } from "../time.js";
import { inUnits, system, together } from "../units.js";
import * as say from "../words/alarms.js";
import { PRIORITIES } from "../words/names.js";

const what = (one) => (one.event === "returned" && typeof one.who === "string"
  ? say.clearedBy(one.who)
  : say.event(say.EVENTS[one.event] ?? one.event, one.who, one.event === "raised" && one.firstUp));

/** The table; filled by set(). */
export function recentTable() {
  const body = h("tbody", {});
  const none = h("p", { class: "muted" }, say.nothingYet);
  const table = h("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": say.latelyAll, hidden: true },
    h("table", {}, h("thead", {}, h("tr", {}, ...say.RECENT_COLUMNS.map((text) => h("th", { scope: "col" }, text)))), body));
  let newest = "";
  return {
    node: h("div", {}, none, table),
    set(events, offset) {
      const last = `${events[0]?.number ?? 0} ${system()}`;
      if (last === newest) {
        return;
      }
      newest = last;
      none.hidden = events.length > 0;
      table.hidden = events.length === 0;
      body.replaceChildren(...events.map((one) => h("tr", {},
        h("td", { class: "num" }, dayAndClock(Date.parse(one.atUtc), offset)),
        h("td", {}, what(one)),
        h("td", {}, say.eventOf(one.name, PRIORITIES[one.priority], one.event === "returned" ? null : together(inUnits(one.detail)))))));
    },
  };
}
