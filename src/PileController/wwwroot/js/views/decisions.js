import { h, put } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { full, inUnits, many, together } from "../units.js";
import { dayAndClock, momentOf } from "../time.js";
import { openedDecision } from "../decision.js";
import * as say from "../words/decisions.js";
import { CURBS, MODES, curbWords } from "../words/names.js";
import { lookAgain } from "../words/shared.js";

const TONES = { trip: "bad", warning: "warn", probe: "warn", tonight: "warn" };

function knew(line) {
  const rows = [
    [say.limitedBy, curbWords(line.curb, line.mode)],
    [say.want, full("power", line.wantWatts)],
    [say.means, full("power", line.meansWatts)],
    [say.grant, full("power", line.grantWatts)],
    [say.waterDraw, full("power", line.waterDrawWatts)],
    [say.activeZone, full("temperature", line.activeZoneC)],
    [say.houseAir, full("temperature", line.houseC)],
    [say.tick, many(line.sequence)],
  ];
  return h("details", {}, h("summary", {}, say.whatItKnew),
    h("dl", { class: "facts" }, ...rows.flatMap(([name, value]) => [h("dt", {}, name), h("dd", {}, value)])));
}

const item = (line, offset) => h("li", { class: "decision" },
  h("p", { class: "when num" }, h("time", { datetime: line.localTime }, dayAndClock(line.utcMs, offset)),
    ...line.kinds.map((kind) => h("span", { class: "chip", "data-tone": TONES[kind] ?? null }, say.KINDS[kind] ?? kind))),
  h("h2", {}, MODES[line.mode] ?? line.mode),
  h("p", { class: "text" }, together(inUnits(line.why, true))),
  line.note ? h("p", { class: "text muted" }, together(inUnits(line.note))) : null,
  h("div", { class: "row" }, h("a", { class: "button quiet", href: `#decisions/${line.sequence}` }, say.open)),
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
      h("div", { class: "view-head" }, h("h1", {}, say.one)),
      h("div", { class: "row" }, h("a", { class: "button quiet", href: "#decisions" }, say.all)), trouble, holder,
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
  const kinds = Object.entries(say.KINDS).map(([id, name]) => ({ id, box: h("input", { type: "checkbox", onchange: () => load() }), name }));
  const mode = select("decision-mode", MODES, say.anyMode, () => load());
  const curb = select("decision-curb", CURBS, say.anyCurb, () => load());
  const day = h("input", { type: "date", id: "decision-day", onchange: () => load() });
  const words = h("input", { type: "search", id: "decision-words", autocomplete: "off", oninput: () => { clearTimeout(typing); typing = setTimeout(() => load(), 300); } });
  const list = h("ol", { class: "card decisions" });
  const count = h("p", { class: "hint", role: "status" });
  const trouble = h("p", { class: "error", role: "alert" });
  const more = h("button", { type: "button", class: "quiet", hidden: true, onclick: () => { limit = Math.min(1000, limit * 4); load(); } }, say.more);
  const again = h("button", { type: "button", class: "quiet", onclick: () => load() }, lookAgain);
  let limit = 30;
  let answer = null;
  let turn = 0;
  let typing = 0;

  // The end of the chosen day at the place; nothing chosen means up to now.
  const until = () => (day.value === "" ? null : momentOf(Date.parse(`${day.value}T00:00:00Z`) + 86400000, feed.now()?.offsetMinutes ?? 0));

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
    put(count, shown.length === 0 ? say.noneFits : say.shown(shown.length));
  }

  load();
  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, say.title),
        h("p", { class: "hint" }, say.about)),
      h("section", { class: "card", "aria-label": say.filter },
        h("fieldset", {}, h("legend", {}, say.kind), h("div", { class: "ticks" }, ...kinds.map((one) => h("label", { class: "tick" }, one.box, one.name)))),
        h("div", { class: "filters" },
          h("div", { class: "field" }, h("label", { class: "head", for: "decision-mode" }, say.mode), mode),
          h("div", { class: "field" }, h("label", { class: "head", for: "decision-curb" }, say.limitedBy), curb),
          h("div", { class: "field" }, h("label", { class: "head", for: "decision-day" }, say.upTo), day),
          h("div", { class: "field" }, h("label", { class: "head", for: "decision-words" }, say.wordsInIt), words))),
      h("div", { class: "spread" }, count, again), trouble, list, more,
    ],
    unitsChanged: render,
    end: () => clearTimeout(typing),
  };
}
