import { h, put } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { full } from "../units.js";
import { dayAndClock } from "../time.js";
import { openedDecision } from "../decision.js";
import { CURBS, KINDS, MODES, curbWords, together } from "../words.js";

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
  h("div", { class: "row" }, h("a", { class: "button quiet", href: `#decisions/${line.sequence}` }, "Open it")),
  knew(line));

// One decision by its number, with the way back to the list.
function oneView(sequence) {
  const trouble = h("p", { class: "error", role: "alert" });
  const holder = h("div", {});
  let answer = null;

  const render = () => answer !== null && holder.replaceChildren(openedDecision(answer));

  api.decision(sequence).then((got) => { answer = got; render(); }, (refusal) => put(trouble, refusal.message));
  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, "One decision")),
      h("div", { class: "row" }, h("a", { class: "button quiet", href: "#decisions" }, "All decisions")), trouble, holder,
    ],
    unitsChanged: render,
  };
}

const select = (id, words, all, changed) => h("select", { id, onchange: changed }, h("option", { value: "" }, all), ...Object.entries(words).map(([value, name]) => h("option", { value }, name)));

/** What was decided, newest first; or one decision, opened. */
export function decisionsView(sequence) {
  return sequence === undefined ? listView() : oneView(sequence);
}

function listView() {
  const kinds = Object.entries(KINDS).map(([id, name]) => ({ id, box: h("input", { type: "checkbox", onchange: () => load() }), name }));
  const mode = select("decision-mode", MODES, "any", () => load());
  const curb = select("decision-curb", CURBS, "anything", () => load());
  const day = h("input", { type: "date", id: "decision-day", onchange: () => load() });
  const words = h("input", { type: "search", id: "decision-words", autocomplete: "off", oninput: () => { clearTimeout(typing); typing = setTimeout(() => load(), 300); } });
  const list = h("ol", { class: "card decisions" });
  const count = h("p", { class: "hint", role: "status" });
  const trouble = h("p", { class: "error", role: "alert" });
  const more = h("button", { type: "button", class: "quiet", hidden: true, onclick: () => { limit = Math.min(1000, limit * 4); load(); } }, "Show more");
  const again = h("button", { type: "button", class: "quiet", onclick: () => load() }, "Look again");
  let limit = 30;
  let answer = null;
  let turn = 0;
  let typing = 0;

  // The end of the chosen day at the place; nothing chosen means up to now.
  const until = () => (day.value === "" ? null : Date.parse(`${day.value}T00:00:00Z`) + 86400000 - (feed.now()?.offsetMinutes ?? 0) * 60000);

  async function load() {
    const mine = ++turn;
    const kind = kinds.filter((one) => one.box.checked).map((one) => one.id).join();
    try {
      const got = await api.decisions({ kind, mode: mode.value, curb: curb.value, text: words.value.trim(), to: until(), limit });
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
    const shown = answer.decisions;
    list.replaceChildren(...shown.map((line) => item(line, offset)));
    list.hidden = shown.length === 0;
    more.hidden = !answer.more || limit === 1000;
    put(count, shown.length === 0 ? "No decision fits." : `${shown.length} ${shown.length === 1 ? "decision" : "decisions"} of 14 days, newest first.`);
  }

  load();
  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, "Decisions"),
        h("p", { class: "hint" }, "Each line is a moment at which something changed, and why. Times are those of the place.")),
      h("section", { class: "card", "aria-label": "Filter" },
        h("fieldset", {}, h("legend", {}, "Kind"), h("div", { class: "ticks" }, ...kinds.map((one) => h("label", { class: "tick" }, one.box, one.name)))),
        h("div", { class: "filters" },
          h("div", { class: "field" }, h("label", { class: "head", for: "decision-mode" }, "Mode"), mode),
          h("div", { class: "field" }, h("label", { class: "head", for: "decision-curb" }, "Limited by"), curb),
          h("div", { class: "field" }, h("label", { class: "head", for: "decision-day" }, "Up to the day"), day),
          h("div", { class: "field" }, h("label", { class: "head", for: "decision-words" }, "Words in it"), words))),
      h("div", { class: "spread" }, count, again), trouble, list, more,
    ],
    unitsChanged: render,
    end: () => clearTimeout(typing),
  };
}
