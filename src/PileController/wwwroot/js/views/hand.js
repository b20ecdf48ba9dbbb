import { h, put, mark } from "../dom.js";
import * as api from "../api.js";
import { worded } from "../refusal.js";
import { dayAndClock, span } from "../time.js";
import { inTheWay } from "../restraint.js";
import { full } from "../units.js";
import * as say from "../words/hand.js";
import { ACTUATORS } from "../words/names.js";
import { yourName } from "../words/shared.js";
import { nameInput, remember } from "../who.js";

const MINUTES = [10, 30, 60, 240];

const percent = (value) => say.percent(Math.round(value * 100));
const level = (actuator, value) => (actuator === "backup" ? (value >= 0.5 ? say.on : say.off) : percent(value));

/** What each actuator is told now. */
const told = ({ outputs }) => ({ pump: outputs.pumpDuty, valve: outputs.valveOpening, blower: outputs.blowerDuty, backup: outputs.backupOn ? 1 : 0 });

/** What was asked of an actuator and what it is given, as texts. */
function askedAndGiven(now, hand) {
  return [level(hand.actuator, hand.value), level(hand.actuator, told(now)[hand.actuator])];
}

function heldText(now, hand) {
  const [asked, given] = askedAndGiven(now, hand);
  return asked === given ? say.held(ACTUATORS[hand.actuator], asked) : say.heldOtherwise(ACTUATORS[hand.actuator], asked, given);
}

function heldRow(now, hand, act) {
  const way = inTheWay(now, hand.actuator);
  return h("div", { class: "probe", "data-held": hand.actuator },
    h("div", {}, h("p", { class: "held num" }, heldText(now, hand)),
      h("p", { class: "state num" }, say.heldBy(hand.who, dayAndClock(hand.endsUtcMs, now.offsetMinutes), span(hand.endsUtcMs - now.utcMs))),
      way === null ? null : h("p", { class: "hint" }, way)),
    h("button", { type: "button", class: "quiet", "data-actuator": hand.actuator, onclick: () => act(() => api.giveBack(hand.actuator), () => say.givenBack(ACTUATORS[hand.actuator])) }, say.giveBack));
}

function heldList(act) {
  const list = h("div", {});
  let shown = "";
  return {
    node: list,
    set(now) {
      const text = JSON.stringify([now.hands, now.hands.map((hand) => [heldText(now, hand), inTheWay(now, hand.actuator)])]) + Math.floor(now.utcMs / 60000);
      if (text === shown) {
        return;
      }
      // Kept in place while one of its buttons has the focus, else the keyboard would lose its spot each minute.
      const focused = list.contains(document.activeElement) ? document.activeElement.dataset.actuator : null;
      shown = text;
      list.replaceChildren(...(now.hands.length === 0
        ? [h("p", { class: "muted" }, say.nothingHeld)]
        : now.hands.map((hand) => heldRow(now, hand, act))));
      list.querySelector(`[data-actuator="${focused}"]`)?.focus();
    },
  };
}

function choice(id, chosen) {
  return h("label", { class: "choice", "data-actuator": id },
    h("input", { type: "radio", name: "actuator", value: id, checked: chosen }), ACTUATORS[id], h("small", { class: "num" }));
}

/** Take an actuator by hand until an end time, or give it back. */
export function handView() {
  const said = h("p", { role: "status" });
  const trouble = h("p", { class: "error", role: "alert" });
  const blocked = h("div", { class: "notice", id: "hand-blocked", hidden: true });
  const held = heldList(act);
  const choices = Object.keys(ACTUATORS).map((id) => choice(id, id === "pump"));
  const value = h("input", { type: "range", id: "hand-value", min: 0, max: 100, step: 5, value: 50, oninput: describe });
  const valueText = h("output", { for: "hand-value", class: "num" });
  const minutes = h("input", { type: "number", id: "hand-minutes", min: 1, max: 1440, step: 1, value: 10, inputmode: "numeric", required: true, oninput: describe });
  const who = nameInput({ id: "hand-who", required: true });
  const go = h("button", { type: "submit", class: "wide", "aria-describedby": "hand-blocked" });
  const bears = h("p", { class: "hint num" });
  const quick = [0, 50, 100].map((share) => h("button", { type: "button", class: "quiet", onclick: () => { value.value = share; describe(); } }, share === 0 ? say.shareOff : share === 100 ? say.shareFull : say.shareHalf));
  const times = MINUTES.map((one) => h("button", { type: "button", class: "quiet", onclick: () => { minutes.value = one; describe(); } }, span(one * 60000)));
  const lock = h("button", { type: "button", class: "quiet", onclick: () => turnLock(!locked) });
  let locked = false;
  let latest = null;
  // What was asked here last, until it is over: only a tick after it tells what came of it.
  let last = null;

  const actuator = () => form.querySelector("input[name=actuator]:checked").value;

  function describe() {
    const share = actuator() === "backup" ? Number(value.value >= 50) : value.value / 100;
    put(valueText, level(actuator(), share));
    mark(value, "aria-valuetext", level(actuator(), share));
    const shut = latest === null ? "" : latest.mode === "tripped" ? say.tripped : locked ? say.locked : "";
    const way = latest === null || shut !== "" ? null : inTheWay(latest, actuator());
    put(go, (way === null ? say.takeIt : say.askForIt)(ACTUATORS[actuator()], level(actuator(), share), span(minutes.value * 60000)));
    put(blocked, shut === "" ? way : shut);
    blocked.hidden = shut === "" && way === null;
    mark(blocked, "data-tone", shut === "" ? null : "bad");
    go.disabled = shut !== "";
    bears.hidden = actuator() !== "pump" || latest === null;
    if (!bears.hidden) {
      const duty = latest.outputs.pumpDuty;
      const means = full("power", latest.meansWatts);
      put(bears, duty > 0 ? say.bearsAndTakes(means, full("power", latest.waterDrawWatts), percent(duty)) : say.bears(means));
    }
  }

  async function act(call, done) {
    put(trouble, "");
    put(said, "");
    last = null;
    try {
      put(said, done(await call()));
    } catch (refusal) {
      put(trouble, worded(refusal, say.FIELDS));
    }
  }

  const turnLock = (on) => act(() => api.servicing(on), () => (on ? say.lockComes : say.lockGoes));

  function tellLast(now) {
    if (last === null || now.sequence < last.from) {
      return;
    }
    const name = ACTUATORS[last.actuator];
    const hand = now.hands.find((one) => one.actuator === last.actuator);
    if (hand === undefined) {
      put(said, last.seen ? "" : say.notKept(name));
      last = null;
      return;
    }
    last.seen = true;
    const [asked, given] = askedAndGiven(now, hand);
    put(said, asked === given ? say.given(name, given, dayAndClock(hand.endsUtcMs, now.offsetMinutes)) : say.givenOtherwise(name, asked, given));
  }

  const form = h("form", {
    class: "card",
    novalidate: true,
    onchange: describe,
    onsubmit: (event) => {
      event.preventDefault();
      remember(who.value.trim());
      const share = actuator() === "backup" ? Number(value.value >= 50) : value.value / 100;
      const id = actuator();
      act(() => api.takeByHand({ actuator: id, value: share, minutes: Number(minutes.value), who: who.value.trim() }), (answer) => {
        last = { actuator: id, from: answer.effectiveSequence, seen: false };
        return say.asked(ACTUATORS[id], level(id, share));
      });
    },
  },
  h("h2", {}, say.take),
  h("fieldset", {}, h("legend", {}, say.what), h("div", { class: "choices" }, ...choices)),
  h("div", { class: "field" }, h("div", { class: "spread" }, h("label", { class: "head", for: "hand-value" }, say.howMuch), valueText), value, h("div", { class: "row" }, ...quick), bears),
  h("div", { class: "field" }, h("label", { class: "head", for: "hand-minutes" }, say.howLong), h("div", { class: "row" }, minutes, ...times)),
  h("div", { class: "field" }, h("label", { class: "head", for: "hand-who" }, yourName), who),
  blocked, go, trouble, said);
  describe();

  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, say.title),
        h("p", { class: "hint" }, say.about)),
      h("section", { class: "card" }, h("h2", {}, say.heldNow), held.node),
      form,
      h("section", { class: "card" }, h("h2", {}, say.work),
        h("p", { class: "hint" }, say.workAbout),
        h("div", { class: "row" }, lock)),
    ],
    update(now) {
      latest = now;
      held.set(now);
      locked = now.mode === "servicing";
      put(lock, locked ? say.lockEnds : say.lock);
      describe();
      tellLast(now);
      for (const one of choices) {
        const id = one.dataset.actuator;
        one.firstChild.disabled = !now.fitted[id];
        put(one.lastChild, now.fitted[id] ? say.levelNow(level(id, told(now)[id])) : say.notFitted);
      }
    },
  };
}
