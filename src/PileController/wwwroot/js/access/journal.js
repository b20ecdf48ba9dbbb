import { h, put, toneMark } from "../dom.js";
import * as api from "../api.js";
import { dayAndClock } from "../time.js";

const WHAT = {
  "POST /api/session": "sign in",
  "POST /api/session/passphrase": "set the passphrase",
  "DELETE /api/session": "sign out",
  "DELETE /api/sessions": "sign out everywhere",
  "POST /api/tokens": "make a key",
  "DELETE /api/tokens": "take a key back",
  "POST /api/hand": "take by hand",
  "DELETE /api/hand": "give back",
  "POST /api/trips/{id}/clear": "clear a trip",
  "POST /api/servicing": "lock all outputs off",
  "DELETE /api/servicing": "end servicing",
  "POST /api/forecast": "hand over a forecast",
  "POST /api/faults": "break the demo's rig",
  "DELETE /api/faults": "mend the demo's rig",
};

const offset = () => -new Date().getTimezoneOffset();

const row = (line) => h("tr", {},
  h("td", {}, dayAndClock(line.utcMs, offset())),
  h("td", {}, line.who ?? "–"),
  h("td", {}, line.from),
  h("td", {}, `${WHAT[line.what] ?? line.what}${line.times > 1 ? `, ${line.times} times` : ""}`),
  h("td", {}, h("span", { class: "chips" }, toneMark(line.done ? "good" : "warn"), line.done ? "done" : "refused"), line.why ? h("p", { class: "muted" }, line.why) : null));

/** Who came from where and wanted what. */
export function journalCard() {
  const body = h("tbody", {});
  const trouble = h("p", { class: "error", role: "alert" });

  async function load() {
    put(trouble, "");
    try {
      const lines = await api.access({ limit: 50 });
      body.replaceChildren(...(lines.length === 0 ? [h("tr", {}, h("td", { colspan: 5 }, "Nothing yet."))] : lines.map(row)));
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  load();
  return h("section", { class: "card", "data-card": "access" },
    h("div", { class: "spread" }, h("h2", {}, "Who came, and what they did"), h("button", { type: "button", class: "quiet", onclick: load }, "Look again")),
    trouble,
    h("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": "Who came, and what they did" },
      h("table", {}, h("thead", {}, h("tr", {}, ...["When", "Who", "From", "What", "Outcome"].map((text) => h("th", { scope: "col" }, text)))), body)));
}
