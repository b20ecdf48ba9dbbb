import { h, put, toneMark } from "../dom.js";
import * as api from "../api.js";
import { dayAndClock } from "../time.js";
import * as say from "../words/access.js";
import { lookAgain } from "../words/shared.js";

const row = (line) => h("li", { class: "decision" },
  h("p", { class: "when num" }, dayAndClock(line.utcMs, line.offsetMinutes), h("span", { class: "chips" }, toneMark(line.done ? "good" : "warn"), line.done ? say.done : say.refused)),
  h("p", {}, say.call(line.who, line.from, say.wanted(say.CALLS[line.what] ?? line.what, line.times))),
  line.why ? h("p", { class: "muted small" }, line.why) : null);

/** Who came from where and wanted what. */
export function journalCard() {
  const list = h("ul", {});
  const trouble = h("p", { class: "error", role: "alert" });

  async function load() {
    put(trouble, "");
    try {
      const lines = await api.access({ limit: 50 });
      list.replaceChildren(...(lines.length === 0 ? [h("li", { class: "muted" }, say.nothingYet)] : lines.map(row)));
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  load();
  return h("section", { class: "card", "data-card": "access" },
    h("div", { class: "spread" }, h("h2", {}, say.whoCame), h("button", { type: "button", class: "quiet", onclick: load }, lookAgain)),
    trouble,
    h("div", { class: "scroll lines", tabindex: 0, role: "region", "aria-label": say.whoCame }, list));
}
