import { h, put, toneMark } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { system } from "../units.js";
import * as say from "../words/alarms.js";
import { ACTIONS, VERDICTS } from "../words/interlocks.js";
import { alarmCard, shelfCard } from "../alarms/card.js";
import { recentTable } from "../alarms/recent.js";
import { nameField } from "../alarms/name.js";

const TONES = { latched: "bad", acting: "bad", pending: "warn", blind: "warn", clear: "good" };
// Times on the shelf and "since" go on though nothing happens; looked at anew this often, ms.
const LOOK_AGAIN = 30000;

/** What asks for a person: alarms with cause and what to do, trips with their clearing, what happened lately. */
export function tripsView() {
  const standing = h("div", { class: "now-grid", id: "alarms" });
  const shelf = h("section", { class: "card", hidden: true });
  const recent = recentTable();
  const others = h("div", { class: "now-grid" });
  const body = h("tbody", {});
  const said = h("p", { role: "status" });
  const trouble = h("p", { class: "error", role: "alert" });
  const who = nameField();
  const chosen = new Map();
  let latest = null;
  let alarms = null;
  let asked = "";
  let askedAt = -Infinity;
  let shown = "";
  let ended = false;

  async function act(call, done) {
    put(trouble, "");
    put(said, "");
    try {
      const answer = await call();
      put(said, done);
      if (answer?.standing) {
        alarms = answer;
        draw();
      }
    } catch (refusal) {
      put(trouble, refusal.field === "who" ? say.needName : refusal.message);
      if (refusal.field === "who") {
        who.focus();
      }
    }
  }

  const deeds = {
    chosen,
    see: (alarm) => act(() => api.seeAlarm({ key: alarm.key, who: who.value() }), say.seen(alarm.name)),
    shelve: (alarm, minutes, span) => act(() => api.shelveAlarm({ key: alarm.key, minutes, who: who.value() }), say.shelved(alarm.name, span)),
    unshelve: (alarm) => act(() => api.unshelveAlarm({ key: alarm.key, who: who.value() }), say.unshelved(alarm.name)),
    clear: (id) => act(() => api.clearTrip(id, who.value()), say.clearAsked),
  };

  async function look() {
    askedAt = performance.now();
    try {
      alarms = await api.alarms();
    } catch {
      // The head says that there is no news; what was told last stays.
      return;
    }
    if (!ended) {
      draw();
    }
  }

  const tripped = (row) => h("section", { class: "card answer w12", "data-tone": "bad" },
    h("h2", {}, toneMark("bad"), row.sentence),
    h("p", {}, row.remedy),
    h("p", { class: "line" }, say.staysTripped),
    h("div", { class: "row" }, h("button", { type: "button", class: "stop", "aria-label": say.clearOf(row.sentence), "data-focus": `clear-${row.id}`, onclick: () => deeds.clear(row.id) }, say.clear)));

  const other = (row) => h("section", { class: "notice w12" }, h("h2", {}, row.sentence),
    h("p", {}, say.acts(VERDICTS[row.verdict], ACTIONS[row.action] ?? row.action, row.remedy)));

  const line = (row) => h("tr", {},
    h("td", {}, h("span", { class: "chips" }, toneMark(TONES[row.verdict]), VERDICTS[row.verdict] ?? row.verdict)),
    h("td", {}, row.sentence), h("td", {}, ACTIONS[row.action] ?? row.action));

  function quiet(silent) {
    return h("p", { class: "notice w12", "data-tone": silent ? null : "good" },
      silent ? say.noneStood : say.noneStands);
  }

  function draw() {
    if (latest === null || alarms === null) {
      return;
    }
    const silent = feed.silent();
    const text = JSON.stringify([alarms, latest.interlocks, silent, system()]);
    if (text === shown) {
      return;
    }
    shown = text;
    // What is rebuilt keeps the keyboard's place.
    const focused = document.activeElement?.dataset?.focus;
    const listed = new Set(alarms.standing.map((alarm) => alarm.key));
    const trips = latest.interlocks.filter((row) => row.verdict === "latched");
    const bare = trips.filter((row) => !listed.has(row.id));
    const rows = new Map(trips.map((row) => [row.id, row]));
    standing.replaceChildren(...bare.map(tripped), ...alarms.standing.map((alarm) => alarmCard(alarm, rows.get(alarm.key), latest, deeds)),
      ...(bare.length + alarms.standing.length === 0 ? [quiet(silent)] : []));
    shelf.hidden = alarms.shelved.length === 0;
    shelf.replaceChildren(h("h2", {}, say.onTheShelf), ...alarms.shelved.map((alarm) => shelfCard(alarm, latest, deeds)));
    recent.set(alarms.recent, latest.offsetMinutes);
    others.replaceChildren(...latest.interlocks.filter((row) => row.verdict === "acting" || row.verdict === "blind").map(other));
    body.replaceChildren(...latest.interlocks.map(line));
    if (focused) {
      (document.querySelector(`[data-focus="${CSS.escape(focused)}"]`) ?? document.getElementById("view")).focus({ preventScroll: true });
    }
  }

  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, say.title),
        h("p", { class: "hint" }, say.about)),
      trouble, said, standing, shelf,
      h("section", { class: "card" }, who.node),
      h("section", { class: "card" }, h("h2", {}, say.lately), recent.node),
      others,
      h("section", { class: "card" }, h("h2", {}, say.interlocks),
        h("p", { class: "hint" }, say.interlocksAbout),
        h("div", { class: "scroll tall", tabindex: 0, role: "region", "aria-label": say.interlocks },
          h("table", {}, h("thead", {}, h("tr", {}, ...say.INTERLOCK_COLUMNS.map((text) => h("th", { scope: "col" }, text)))), body))),
    ],
    update(now) {
      latest = now;
      const question = JSON.stringify([now.alarms, now.trips]);
      if (question !== asked || performance.now() - askedAt > LOOK_AGAIN) {
        asked = question;
        look();
      }
      draw();
    },
    end() {
      ended = true;
    },
  };
}
