import { h, put } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { full } from "../units.js";
import { dayAndClock } from "../time.js";
import { KINDS, MODES, curbWords, together } from "../words.js";

const TONES = { trip: "bad", warning: "warn", probe: "warn", tonight: "warn" };

function knew(line) {
  const rows = [
    ["Limited by", curbWords(line.curb, line.mode)],
    ["Want", full("power", line.wantWatts)],
    ["Means", full("power", line.meansWatts)],
    ["Grant", full("power", line.grantWatts)],
    ["Water draw", full("power", line.waterDrawWatts)],
    ["Active zone", full("temperature", line.activeZoneC)],
    ["House air", full("temperature", line.houseC)],
    ["Tick", line.sequence.toLocaleString("en-US")],
  ];
  return h("details", {}, h("summary", {}, "What it knew"),
    h("dl", { class: "facts" }, ...rows.flatMap(([name, value]) => [h("dt", {}, name), h("dd", {}, value)])));
}

const item = (line, offset) => h("li", { class: "decision" },
  h("p", { class: "when num" }, h("time", { datetime: line.localTime }, dayAndClock(line.utcMs, offset)),
    ...line.kinds.map((kind) => h("span", { class: "chip", "data-tone": TONES[kind] ?? null }, KINDS[kind] ?? kind))),
  h("h2", {}, MODES[line.mode] ?? line.mode),
  h("p", { class: "text" }, together(line.why)),
  line.note ? h("p", { class: "text muted" }, line.note) : null,
  knew(line));

/** What was decided, newest first. */
export function decisionsView() {
  const kinds = Object.entries(KINDS).map(([id, name]) => ({ id, box: h("input", { type: "checkbox", onchange: () => load() }), name }));
  const words = h("input", { type: "search", id: "decision-words", autocomplete: "off", oninput: () => render() });
  const list = h("ol", { class: "card decisions" });
  const count = h("p", { class: "hint", role: "status" });
  const trouble = h("p", { class: "error", role: "alert" });
  const more = h("button", { type: "button", class: "quiet", hidden: true, onclick: () => { limit = Math.min(1000, limit * 4); load(); } }, "Show more");
  const again = h("button", { type: "button", class: "quiet", onclick: () => load() }, "Look again");
  let limit = 30;
  let answer = null;
  let turn = 0;

  async function load() {
    const mine = ++turn;
    const kind = kinds.filter((one) => one.box.checked).map((one) => one.id).join();
    try {
      const got = await api.decisions({ kind, limit });
      if (mine === turn) {
        answer = got;
        put(trouble, "");
        render();
      }
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  function render() {
    if (answer === null) {
      return;
    }
    const offset = feed.now()?.offsetMinutes ?? 0;
    const wanted = words.value.trim().toLowerCase();
    const shown = answer.decisions.filter((line) =>
      `${line.why} ${line.note ?? ""} ${MODES[line.mode]} ${curbWords(line.curb, line.mode)}`.toLowerCase().includes(wanted));
    list.replaceChildren(...shown.map((line) => item(line, offset)));
    list.hidden = shown.length === 0;
    more.hidden = !answer.more || limit === 1000;
    put(count, shown.length === 0 ? "No decision fits." : `${shown.length} ${shown.length === 1 ? "decision" : "decisions"} of the last 14 days, newest first.`);
  }

  load();
  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, "Decisions"),
        h("p", { class: "hint" }, "Each line is a moment at which something changed, and why. Times are those of the place.")),
      h("section", { class: "card", "aria-label": "Filter" },
        h("fieldset", {}, h("legend", {}, "Kind"), h("div", { class: "ticks" }, ...kinds.map((one) => h("label", { class: "tick" }, one.box, one.name)))),
        h("div", { class: "field" }, h("label", { class: "head", for: "decision-words" }, "Words in it"), words)),
      h("div", { class: "spread" }, count, again), trouble, list, more,
    ],
    unitsChanged: render,
  };
}
