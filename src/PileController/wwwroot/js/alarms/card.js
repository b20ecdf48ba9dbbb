// One alarm: what is the matter, what comes of it, what to do, and what people do with it.

import { h, toneMark } from "../dom.js";
import { dayAndClock, span } from "../time.js";
import { inUnits, together } from "../units.js";
import * as say from "../words/alarms.js";
import { PRIORITIES } from "../words/names.js";

const TONES = { high: "bad", medium: "warn", low: "plain" };
const SHELF_MINUTES = [10, 30, 60, 240, 720, 1440];

const since = (alarm, now) => (alarm.sinceUtc === null ? "" : say.since(dayAndClock(Date.parse(alarm.sinceUtc), now.offsetMinutes)));

const times = (alarm) => SHELF_MINUTES.filter((minutes) => minutes <= alarm.mostShelvedMinutes);

function shelving(alarm, deeds) {
  const kept = deeds.chosen.get(alarm.key) ?? { minutes: Math.min(60, Math.max(...times(alarm))), open: false };
  deeds.chosen.set(alarm.key, kept);
  const choose = h("select", {
    "aria-label": say.howLongOf(alarm.name),
    "data-focus": `time-${alarm.key}`,
    onchange: (event) => { kept.minutes = Number(event.target.value); },
  }, ...times(alarm).map((minutes) => h("option", { value: minutes, selected: minutes === kept.minutes }, span(minutes * 60000))));
  const most = alarm.mostShelvedMinutes < 60 ? say.shelveLongest(span(alarm.mostShelvedMinutes * 60000)) : "";
  return h("details", { open: kept.open, ontoggle: (event) => { kept.open = event.target.open; } },
    h("summary", { "data-focus": `shelf-${alarm.key}`, "aria-label": say.shelveAWhileOf(alarm.name) }, say.shelveAWhile),
    h("p", { class: "hint" }, `${say.shelveAbout}${most}`),
    h("div", { class: "row" }, choose,
      h("button", { type: "button", class: "quiet", "data-focus": `shelve-${alarm.key}`, "aria-label": say.shelveNowOf(alarm.name), onclick: () => deeds.shelve(alarm, kept.minutes, span(kept.minutes * 60000)) }, say.shelve)));
}

/** An alarm that stands, or that has ended unseen; with the clearing of its trip where it has one. */
export function alarmCard(alarm, trip, now, deeds) {
  const tone = alarm.stands ? TONES[alarm.priority] : "plain";
  return h("section", { class: "card answer alarm w12", "data-tone": tone, "data-key": alarm.key },
    h("h2", {}, toneMark(tone), alarm.name),
    h("p", { class: "chips" },
      h("span", { class: "chip", "data-tone": tone }, PRIORITIES[alarm.priority]),
      alarm.firstUp ? h("span", { class: "chip" }, say.firstUp) : null,
      alarm.stands ? null : h("span", { class: "chip" }, typeof alarm.clearedBy === "string" ? say.clearedBy(alarm.clearedBy) : say.overByItself),
      alarm.seen ? h("span", { class: "chip" }, say.seenBy(alarm.seenBy)) : h("span", { class: "chip" }, say.notSeen),
      h("span", { class: "line num" }, since(alarm, now))),
    alarm.detail ? h("p", {}, say.told(together(inUnits(alarm.detail)))) : null,
    h("p", {}, h("b", {}, say.whatToDo), together(inUnits(alarm.action))),
    h("p", {}, h("b", {}, say.whatComes), together(inUnits(alarm.consequence))),
    h("p", {}, h("b", {}, say.cause), together(inUnits(alarm.cause))),
    alarm.follows.length > 0 ? h("p", { class: "line" }, say.follows(alarm.follows.join("; "))) : null,
    trip ? h("p", { class: "line" }, say.hasTripped) : null,
    h("div", { class: "row" },
      trip ? h("button", { type: "button", class: "stop", "data-focus": `clear-${trip.id}`, "aria-label": say.clearOf(trip.sentence), onclick: () => deeds.clear(trip.id) }, say.clear) : null,
      alarm.seen ? null : h("button", { type: "button", "data-focus": `see-${alarm.key}`, "aria-label": say.seeOf(alarm.name), onclick: () => deeds.see(alarm) }, say.see)),
    alarm.stands ? shelving(alarm, deeds) : null);
}

/** An alarm on the shelf. */
export function shelfCard(alarm, now, deeds) {
  const until = Date.parse(alarm.shelvedUntilUtc);
  return h("div", { class: "spread", "data-key": alarm.key },
    h("div", {}, h("p", {}, h("b", {}, alarm.name), alarm.stands ? say.stands : say.standsNot),
      h("p", { class: "line num" }, say.shelfUntil(PRIORITIES[alarm.priority], dayAndClock(until, now.offsetMinutes), alarm.shelvedBy))),
    h("button", { type: "button", class: "quiet", "data-focus": `unshelve-${alarm.key}`, "aria-label": say.unshelveOf(alarm.name), onclick: () => deeds.unshelve(alarm) }, say.unshelve));
}
