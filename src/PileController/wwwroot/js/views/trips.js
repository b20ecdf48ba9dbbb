import { h, put, toneMark } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { ACTIONS, VERDICTS } from "../words.js";
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
      put(trouble, refusal.field === "who" ? "Your name is needed, for the record: 1 to 40 letters." : refusal.message);
      if (refusal.field === "who") {
        who.focus();
      }
    }
  }

  const deeds = {
    chosen,
    see: (alarm) => act(() => api.seeAlarm({ key: alarm.key, who: who.value() }), `Noted: ${alarm.name} has been seen.`),
    shelve: (alarm, minutes, words) => act(() => api.shelveAlarm({ key: alarm.key, minutes, who: who.value() }), `${alarm.name} is on the shelf for ${words}, and comes back by itself.`),
    unshelve: (alarm) => act(() => api.unshelveAlarm({ key: alarm.key, who: who.value() }), `${alarm.name} is off the shelf.`),
    clear: (id) => act(() => api.clearTrip(id), "Asked for at the next tick. If the cause still stands, the trip stays and the reason is told."),
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
    h("p", { class: "line" }, "It stays tripped until a person clears it, once its cause is gone."),
    h("div", { class: "row" }, h("button", { type: "button", class: "stop", "aria-label": `Clear this trip: ${row.sentence}`, "data-focus": `clear-${row.id}`, onclick: () => deeds.clear(row.id) }, "Clear this trip")));

  const other = (row) => h("section", { class: "notice w12" }, h("h2", {}, `${row.sentence}`),
    h("p", {}, `${VERDICTS[row.verdict]}; ${ACTIONS[row.action] ?? row.action}. ${row.remedy}`));

  const line = (row) => h("tr", {},
    h("td", {}, h("span", { class: "chips" }, toneMark(TONES[row.verdict]), VERDICTS[row.verdict] ?? row.verdict)),
    h("td", {}, row.sentence), h("td", {}, ACTIONS[row.action] ?? row.action));

  function quiet(silent) {
    return h("p", { class: "notice w12", "data-tone": silent ? null : "good" },
      silent ? "When last heard of, no alarm stood." : "No alarm stands.");
  }

  function draw() {
    if (latest === null || alarms === null) {
      return;
    }
    const silent = feed.silent();
    const text = JSON.stringify([alarms, latest.interlocks, silent]);
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
    shelf.replaceChildren(h("h2", {}, "On the shelf"), ...alarms.shelved.map((alarm) => shelfCard(alarm, latest, deeds)));
    recent.set(alarms.recent, latest.offsetMinutes);
    others.replaceChildren(...latest.interlocks.filter((row) => row.verdict === "acting" || row.verdict === "blind").map(other));
    body.replaceChildren(...latest.interlocks.map(line));
    if (focused) {
      (document.querySelector(`[data-focus="${CSS.escape(focused)}"]`) ?? document.getElementById("view")).focus({ preventScroll: true });
    }
  }

  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, "Trips and alarms"),
        h("p", { class: "hint" }, "An alarm is something a person can do something about. A trip has stopped the rig, and stays until a person clears it.")),
      trouble, said, standing, shelf,
      h("section", { class: "card" }, who.node),
      h("section", { class: "card" }, h("h2", {}, "Lately"), recent.node),
      others,
      h("section", { class: "card" }, h("h2", {}, "All interlocks"),
        h("p", { class: "hint" }, "They look at every decision before it reaches the rig."),
        h("div", { class: "scroll tall", tabindex: 0, role: "region", "aria-label": "All interlocks" },
          h("table", {}, h("thead", {}, h("tr", {}, ...["Now", "Watches for", "What it does"].map((text) => h("th", { scope: "col" }, text)))), body))),
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
