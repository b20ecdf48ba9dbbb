// One alarm: what is the matter, what comes of it, what to do, and what people do with it.

import { h, toneMark } from "../dom.js";
import { dayAndClock, span } from "../time.js";
import { PRIORITIES } from "../words.js";

const TONES = { high: "bad", medium: "warn", low: "plain" };
const SHELF_MINUTES = [10, 30, 60, 240, 720, 1440];

const since = (alarm, now) => (alarm.sinceUtc === null ? "" : `since ${dayAndClock(Date.parse(alarm.sinceUtc), now.offsetMinutes)}`);

const times = (alarm) => SHELF_MINUTES.filter((minutes) => minutes <= alarm.mostShelvedMinutes);

function shelving(alarm, deeds) {
  const kept = deeds.chosen.get(alarm.key) ?? { minutes: Math.min(60, Math.max(...times(alarm))), open: false };
  deeds.chosen.set(alarm.key, kept);
  const choose = h("select", {
    "aria-label": `For how long: ${alarm.name}`,
    "data-focus": `time-${alarm.key}`,
    onchange: (event) => { kept.minutes = Number(event.target.value); },
  }, ...times(alarm).map((minutes) => h("option", { value: minutes, selected: minutes === kept.minutes }, span(minutes * 60000))));
  const most = alarm.mostShelvedMinutes < 60 ? ` It protects people, so ${span(alarm.mostShelvedMinutes * 60000)} is the longest.` : "";
  return h("details", { open: kept.open, ontoggle: (event) => { kept.open = event.target.open; } },
    h("summary", { "data-focus": `shelf-${alarm.key}`, "aria-label": `Shelve for a while: ${alarm.name}` }, "Shelve for a while"),
    h("p", { class: "hint" }, `For an alarm you know of and work on. It is not listed, sent or lit until the time is over.${most}`),
    h("div", { class: "row" }, choose,
      h("button", { type: "button", class: "quiet", "data-focus": `shelve-${alarm.key}`, "aria-label": `Shelve now: ${alarm.name}`, onclick: () => deeds.shelve(alarm, kept.minutes, span(kept.minutes * 60000)) }, "Shelve")));
}

/** An alarm that stands, or that has ended unseen; with the clearing of its trip where it has one. */
export function alarmCard(alarm, trip, now, deeds) {
  const tone = alarm.stands ? TONES[alarm.priority] : "plain";
  return h("section", { class: "card answer alarm w12", "data-tone": tone, "data-key": alarm.key },
    h("h2", {}, toneMark(tone), alarm.name),
    h("p", { class: "chips" },
      h("span", { class: "chip", "data-tone": tone }, PRIORITIES[alarm.priority]),
      alarm.firstUp ? h("span", { class: "chip" }, "First up: look here first") : null,
      alarm.stands ? null : h("span", { class: "chip" }, "Over by itself"),
      alarm.seen ? h("span", { class: "chip" }, `Seen by ${alarm.seenBy}`) : h("span", { class: "chip" }, "Not seen yet"),
      h("span", { class: "line num" }, since(alarm, now))),
    alarm.detail ? h("p", {}, `Told: ${alarm.detail}`) : null,
    h("p", {}, h("b", {}, "What to do: "), alarm.action),
    h("p", {}, h("b", {}, "What comes of it: "), alarm.consequence),
    h("p", {}, h("b", {}, "Cause: "), alarm.cause),
    alarm.follows.length > 0 ? h("p", { class: "line" }, `Follows from it and is held back: ${alarm.follows.join("; ")}.`) : null,
    trip ? h("p", { class: "line" }, "It has tripped the rig, and stays until a person clears it, once its cause is gone.") : null,
    h("div", { class: "row" },
      trip ? h("button", { type: "button", class: "stop", "data-focus": `clear-${trip.id}`, "aria-label": `Clear this trip: ${trip.sentence}`, onclick: () => deeds.clear(trip.id) }, "Clear this trip") : null,
      alarm.seen ? null : h("button", { type: "button", "data-focus": `see-${alarm.key}`, "aria-label": `I have seen it: ${alarm.name}`, onclick: () => deeds.see(alarm) }, "I have seen it")),
    alarm.stands ? shelving(alarm, deeds) : null);
}

/** An alarm on the shelf. */
export function shelfCard(alarm, now, deeds) {
  const until = Date.parse(alarm.shelvedUntilUtc);
  return h("div", { class: "spread", "data-key": alarm.key },
    h("div", {}, h("p", {}, h("b", {}, alarm.name), alarm.stands ? " (stands)" : " (does not stand now)"),
      h("p", { class: "line num" }, `${PRIORITIES[alarm.priority]}. Until ${dayAndClock(until, now.offsetMinutes)}, by ${alarm.shelvedBy}.`)),
    h("button", { type: "button", class: "quiet", "data-focus": `unshelve-${alarm.key}`, "aria-label": `Take off the shelf: ${alarm.name}`, onclick: () => deeds.unshelve(alarm) }, "Take off the shelf"));
}
