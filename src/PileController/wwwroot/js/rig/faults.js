// The faults a person can put into the demo's rig, of one probe and of the whole.

import { h, put, mark } from "../dom.js";
import * as api from "../api.js";
import * as say from "../words/rig.js";

const ICE_CELSIUS = 0;
const QUICK = ["supply", "return", "ductAir", "spareOne", "spareTwo", "spareThree", "spareFour"];

// A probe that was taken out goes into a hand when no size is told, which the controller knows, or into ice.
const choicesOf = (kind) => (kind === "takenOut"
  ? [{ kind, word: "inHand" }, { kind, word: "inIce", size: ICE_CELSIUS }]
  : [{ kind, word: kind }]);

/** A fault of a probe by its name. */
export const faultName = (fault) => say.PROBE_FAULTS[fault.kind === "takenOut" ? (fault.size === ICE_CELSIUS ? "inIce" : "inHand") : fault.kind];

function showsWhen(word, reading) {
  const warm = reading.unit === "°C";
  switch (word) {
    case "stuck":
      return warm || reading.unit === "ppm" ? say.SHOWS.stuckLate : say.SHOWS.stuckNever;
    case "spike":
      return warm && !QUICK.includes(reading.channel) ? say.SHOWS.spikeEach : say.SHOWS.spikeFar;
    default:
      return say.SHOWS[word] ?? say.SHOWS.atOnce;
  }
}

/** A row opens to offer faults; once broken, its button mends. */
export function faultTools(first, act) {
  const choices = first.faultKinds.flatMap(choicesOf);
  const pick = h("select", { "aria-label": say.faultFor(first.name), onchange: () => tell() }, ...choices.map(({ word }) => h("option", { value: word }, say.PROBE_FAULTS[word] ?? word)));
  const chosen = () => choices[pick.selectedIndex];
  const breakIt = h("button", { type: "button", "aria-label": say.breakNowOf(first.name), onclick: () => {
    const { kind, size } = chosen();
    open(false);
    act(() => api.addFault({ kind, size, channel: first.channel }));
  } }, say.breakIt);
  const soon = h("p", { class: "hint" });
  const tools = h("div", { class: "tools", hidden: true }, pick, breakIt, soon);
  const button = h("button", { type: "button", class: "quiet", onclick: () => (broken ? act(() => api.removeFault({ channel: first.channel })) : open(tools.hidden)) });
  let broken = false;

  const tell = () => put(soon, showsWhen(chosen().word, first));
  tell();

  function open(show) {
    tools.hidden = !show;
    mark(button, "aria-expanded", broken ? null : String(show));
  }

  return {
    nodes: [button, tools],
    set(isBroken) {
      broken = isBroken;
      put(button, broken ? say.mend : say.breakOne);
      mark(button, "aria-label", broken ? say.mendOf(first.name) : say.breakOf(first.name));
      open(!broken && !tools.hidden);
    },
  };
}

/** A button that breaks the whole rig in one way, and mends it. */
export function switchRow(kind, name, act) {
  const button = h("button", { type: "button", class: "quiet", onclick: () => act(() => (on ? api.removeFault({ kind }) : api.addFault({ kind }))) }, name);
  let on = false;
  return {
    node: button,
    set(now) {
      on = (now.faults ?? []).some((one) => one.kind === kind);
      mark(button, "aria-pressed", String(on));
    },
  };
}
