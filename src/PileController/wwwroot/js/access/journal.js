import { h, put, toneMark } from "../dom.js";
import * as api from "../api.js";
import { dayAndClock } from "../time.js";
import * as say from "../words/access.js";
import { lookAgain } from "../words/shared.js";

const row = (line) => h("tr", {},
  h("td", {}, dayAndClock(line.utcMs, line.offsetMinutes)),
  h("td", {}, line.who ?? "–"),
  h("td", {}, line.from),
  h("td", {}, say.wanted(say.CALLS[line.what] ?? line.what, line.times)),
  h("td", {}, h("span", { class: "chips" }, toneMark(line.done ? "good" : "warn"), line.done ? say.done : say.refused), line.why ? h("p", { class: "muted" }, line.why) : null));

/** Who came from where and wanted what. */
export function journalCard() {
  const body = h("tbody", {});
  const trouble = h("p", { class: "error", role: "alert" });

  async function load() {
    put(trouble, "");
    try {
      const lines = await api.access({ limit: 50 });
      body.replaceChildren(...(lines.length === 0 ? [h("tr", {}, h("td", { colspan: 5 }, say.nothingYet))] : lines.map(row)));
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  load();
  return h("section", { class: "card", "data-card": "access" },
    h("div", { class: "spread" }, h("h2", {}, say.whoCame), h("button", { type: "button", class: "quiet", onclick: load }, lookAgain)),
    trouble,
    h("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": say.whoCame },
      h("table", {}, h("thead", {}, h("tr", {}, ...say.JOURNAL_COLUMNS.map((text) => h("th", { scope: "col" }, text)))), body)));
}
