import { h, put, mark } from "../dom.js";
import * as api from "../api.js";
import { worded } from "../refusal.js";
import { dayAndClock, span } from "../time.js";
import { full } from "../units.js";
import { ACTUATORS } from "../words.js";

const NAME = "who";
const MINUTES = [10, 30, 60, 240];
// The fields by the names they have on this page.
const FIELDS = { who: "Your name", minutes: "For how many minutes", value: "How much", actuator: "What" };

const percent = (value) => `${Math.round(value * 100)} %`;
const level = (actuator, value) => (actuator === "backup" ? (value >= 0.5 ? "on" : "off") : percent(value));

function heldList(act) {
  const list = h("div", {});
  let shown = "";
  return {
    node: list,
    set(now) {
      const text = JSON.stringify(now.hands) + Math.floor(now.utcMs / 60000);
      if (text === shown) {
        return;
      }
      // Kept in place while one of its buttons has the focus, else the keyboard would lose its spot each minute.
      const focused = list.contains(document.activeElement) ? document.activeElement.dataset.actuator : null;
      shown = text;
      list.replaceChildren(...(now.hands.length === 0
        ? [h("p", { class: "muted" }, "Nothing is held by hand. The controller has it all.")]
        : now.hands.map((hand) => h("div", { class: "probe", "data-held": hand.actuator },
          h("div", {}, h("p", { class: "value" }, `${ACTUATORS[hand.actuator]} at ${level(hand.actuator, hand.value)}`),
            h("p", { class: "state num" }, `by ${hand.who}, ends ${dayAndClock(hand.endsUtcMs, now.offsetMinutes)} (in ${span(hand.endsUtcMs - now.utcMs)})`)),
          h("button", { type: "button", class: "quiet", "data-actuator": hand.actuator, onclick: () => act(() => api.giveBack(hand.actuator), `${ACTUATORS[hand.actuator]} goes back to the controller at the next tick.`) }, "Give back")))));
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
  const blocked = h("div", { class: "notice", id: "hand-blocked", "data-tone": "bad", hidden: true });
  const held = heldList(act);
  const choices = Object.keys(ACTUATORS).map((id) => choice(id, id === "pump"));
  const value = h("input", { type: "range", id: "hand-value", min: 0, max: 100, step: 5, value: 50, oninput: describe });
  const valueText = h("output", { for: "hand-value", class: "num" });
  const minutes = h("input", { type: "number", id: "hand-minutes", min: 1, max: 1440, step: 1, value: 10, inputmode: "numeric", required: true, oninput: describe });
  const who = h("input", { type: "text", id: "hand-who", maxlength: 40, autocomplete: "name", required: true, value: localStorage.getItem(NAME) ?? "" });
  const go = h("button", { type: "submit", class: "wide", "aria-describedby": "hand-blocked" });
  const bears = h("p", { class: "hint num" });
  const quick = [0, 50, 100].map((share) => h("button", { type: "button", class: "quiet", onclick: () => { value.value = share; describe(); } }, share === 0 ? "Off" : share === 100 ? "Full" : "Half"));
  const times = MINUTES.map((one) => h("button", { type: "button", class: "quiet", onclick: () => { minutes.value = one; describe(); } }, span(one * 60000)));
  const lock = h("button", { type: "button", class: "quiet", onclick: () => act(() => api.servicing(!locked), locked ? "Servicing ends at the next tick." : "All outputs are locked off at the next tick.") });
  let locked = false;
  let latest = null;

  const actuator = () => form.querySelector("input[name=actuator]:checked").value;

  function describe() {
    const share = actuator() === "backup" ? Number(value.value >= 50) : value.value / 100;
    put(valueText, level(actuator(), share));
    mark(value, "aria-valuetext", level(actuator(), share));
    put(go, `Take the ${ACTUATORS[actuator()].toLowerCase()}: ${level(actuator(), share)} for ${span(minutes.value * 60000)}`);
    bears.hidden = actuator() !== "pump" || latest === null;
    if (!bears.hidden) {
      const duty = latest.outputs.pumpDuty;
      const takes = duty > 0 ? `; the water takes ${full("power", latest.waterDrawWatts)} with the pump at ${percent(duty)}` : "";
      put(bears, `The heap can bear ${full("power", latest.meansWatts)} now${takes}.`);
    }
  }

  async function act(call, done) {
    put(trouble, "");
    put(said, "");
    try {
      await call();
      put(said, done);
    } catch (refusal) {
      put(trouble, worded(refusal, FIELDS));
    }
  }

  const form = h("form", {
    class: "card",
    novalidate: true,
    onchange: describe,
    onsubmit: (event) => {
      event.preventDefault();
      localStorage.setItem(NAME, who.value.trim());
      const share = actuator() === "backup" ? Number(value.value >= 50) : value.value / 100;
      act(() => api.takeByHand({ actuator: actuator(), value: share, minutes: Number(minutes.value), who: who.value.trim() }),
        `The ${ACTUATORS[actuator()].toLowerCase()} is yours from the next tick, and goes back by itself.`);
    },
  },
  h("h2", {}, "Take by hand"),
  h("fieldset", {}, h("legend", {}, "What"), h("div", { class: "choices" }, ...choices)),
  h("div", { class: "field" }, h("div", { class: "spread" }, h("label", { class: "head", for: "hand-value" }, "How much"), valueText), value, h("div", { class: "row" }, ...quick), bears),
  h("div", { class: "field" }, h("label", { class: "head", for: "hand-minutes" }, "For how many minutes"), h("div", { class: "row" }, minutes, ...times)),
  h("div", { class: "field" }, h("label", { class: "head", for: "hand-who" }, "Your name, for the record"), who),
  blocked, go, trouble, said);
  describe();

  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, "By hand"),
        h("p", { class: "hint" }, "What you take ends by itself. Interlocks still stop the rig when they must, and a trip cannot be overridden by hand. Nothing held by hand outlives a restart.")),
      h("section", { class: "card" }, h("h2", {}, "Held now"), held.node),
      form,
      h("section", { class: "card" }, h("h2", {}, "Work on the rig"),
        h("p", { class: "hint" }, "Locks all outputs off. It is no substitute for pulling the plug: make sure of it at the rig before you reach in."),
        h("div", { class: "row" }, lock)),
    ],
    update(now) {
      latest = now;
      held.set(now);
      locked = now.mode === "servicing";
      put(lock, locked ? "End servicing" : "Lock all outputs off");
      const reason = now.mode === "tripped" ? "The rig is tripped. Clear the trip first, once its cause is gone." : locked ? "The outputs are locked off for work. End servicing first." : "";
      put(blocked, reason);
      blocked.hidden = reason === "";
      go.disabled = reason !== "";
      describe();
      const told = { pump: now.outputs.pumpDuty, valve: now.outputs.valveOpening, blower: now.outputs.blowerDuty, backup: now.outputs.backupOn ? 1 : 0 };
      for (const one of choices) {
        const id = one.dataset.actuator;
        one.firstChild.disabled = !now.fitted[id];
        put(one.lastChild, now.fitted[id] ? `now ${level(id, told[id])}` : "not fitted");
      }
    },
  };
}
