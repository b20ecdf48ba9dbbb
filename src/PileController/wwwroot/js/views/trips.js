import { h, put, toneMark } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { ACTIONS, VERDICTS } from "../words.js";

const TONES = { latched: "bad", acting: "bad", pending: "warn", blind: "warn", clear: "good" };

/** What has tripped, why, and what can be done. */
export function tripsView() {
  const standing = h("div", { class: "now-grid" });
  const body = h("tbody", {});
  const said = h("p", { role: "status" });
  const trouble = h("p", { class: "error", role: "alert" });
  let shown = "";

  async function clear(id) {
    put(trouble, "");
    put(said, "");
    try {
      await api.clearTrip(id);
      put(said, "Asked for at the next tick. If the cause still stands, the trip stays and the reason is told.");
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  const tripped = (row) => h("section", { class: "card answer w12", "data-tone": "bad" },
    h("h2", {}, toneMark("bad"), row.sentence),
    h("p", {}, row.remedy),
    h("p", { class: "line" }, "It stays tripped until a person clears it, once its cause is gone."),
    h("div", { class: "row" }, h("button", { type: "button", class: "stop", "aria-label": `Clear this trip: ${row.sentence}`, onclick: () => clear(row.id) }, "Clear this trip")));

  const other = (row) => h("section", { class: "notice w12" }, h("h2", {}, `${row.sentence}`),
    h("p", {}, `${VERDICTS[row.verdict]}; ${ACTIONS[row.action] ?? row.action}. ${row.remedy}`));

  const line = (row) => h("tr", {},
    h("td", {}, h("span", { class: "chips" }, toneMark(TONES[row.verdict]), VERDICTS[row.verdict] ?? row.verdict)),
    h("td", {}, row.sentence), h("td", {}, ACTIONS[row.action] ?? row.action));

  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, "Trips"),
        h("p", { class: "hint" }, "Interlocks look at every decision before it reaches the rig. A trip stops the rig until a person clears it.")),
      trouble, said, standing,
      h("section", { class: "card" }, h("h2", {}, "All interlocks"),
        h("div", { class: "scroll tall", tabindex: 0, role: "region", "aria-label": "All interlocks" },
          h("table", {}, h("thead", {}, h("tr", {}, ...["Now", "Watches for", "What it does"].map((text) => h("th", { scope: "col" }, text)))), body))),
    ],
    update(now) {
      const silent = feed.silent();
      const text = JSON.stringify(now.interlocks) + silent;
      if (text === shown) {
        return;
      }
      shown = text;
      const latched = now.interlocks.filter((row) => row.verdict === "latched");
      const others = now.interlocks.filter((row) => row.verdict === "acting" || row.verdict === "blind");
      standing.replaceChildren(...latched.map(tripped), ...others.map(other),
        ...(latched.length + others.length === 0
          ? [h("p", { class: "notice w12", "data-tone": silent ? null : "good" },
            silent ? "When last heard of, nothing had tripped and nothing was held back." : "Nothing has tripped and nothing is held back.")]
          : []));
      body.replaceChildren(...now.interlocks.map(line));
    },
  };
}
