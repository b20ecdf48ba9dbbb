import { h, put, mark } from "../dom.js";
import * as api from "../api.js";
import { full, kindOf } from "../units.js";
import { span } from "../time.js";
import { offsetWords, provenWords } from "../rig/tests.js";
import { ACTUATORS, PROBE_FAULTS, RIG_FAULTS, RIG_FAULT_SHOWS, showsWhen } from "../words.js";

const worded = (reading) => {
  if (reading.channel === "leak") {
    return reading.value === null ? "–" : reading.value >= 0.5 ? "wet" : "dry";
  }
  if (reading.channel === "level") {
    return reading.value === null ? "–" : reading.value >= 0.5 ? "at the mark" : "below the mark";
  }
  return full(kindOf(reading.unit, reading.channel), reading.value);
};

// In the demo a row opens to offer faults; once broken, its button mends.
function faultTools(first, act) {
  const pick = h("select", { "aria-label": `Fault for ${first.name}`, onchange: () => tell() }, ...first.faultKinds.map((id) => h("option", { value: id }, PROBE_FAULTS[id] ?? id)));
  const breakIt = h("button", { type: "button", "aria-label": `Break ${first.name} now`, onclick: () => {
    open(false);
    act(() => api.addFault({ kind: pick.value, channel: first.channel }));
  } }, "Break it");
  const soon = h("p", { class: "hint" });
  const tools = h("div", { class: "tools", hidden: true }, pick, breakIt, soon);
  const button = h("button", { type: "button", class: "quiet", onclick: () => (broken ? act(() => api.removeFault({ channel: first.channel })) : open(tools.hidden)) });
  let broken = false;

  const tell = () => put(soon, showsWhen(pick.value, first));
  tell();

  function open(show) {
    tools.hidden = !show;
    mark(button, "aria-expanded", broken ? null : String(show));
  }

  return {
    nodes: [button, tools],
    set(isBroken) {
      broken = isBroken;
      put(button, broken ? "Mend" : "Break");
      mark(button, "aria-label", `${broken ? "Mend" : "Break"} ${first.name}`);
      open(!broken && !tools.hidden);
    },
  };
}

function probeRow(first, demo, act) {
  const value = h("p", { class: "value" });
  const state = h("p", { class: "state num" });
  const proof = h("p", { class: "state num", hidden: true });
  const tools = demo ? faultTools(first, act) : null;
  const node = h("li", { class: "probe", "data-channel": first.channel }, h("div", {}, h("h3", {}, first.name), state, proof), value, ...(tools?.nodes ?? []));
  return {
    node,
    prove(calibration, offset) {
      proof.hidden = calibration === undefined;
      put(proof, calibration === undefined ? "" : `${offsetWords(calibration.offsetK)}, ${provenWords("calibrated", calibration.calibratedUtcMs, calibration.verdict, offset)}`);
    },
    set(now, reading) {
      const good = reading.quality === "good";
      const faults = (now.faults ?? []).filter((one) => one.channel === reading.channel);
      const age = reading.ageSeconds > 0 ? `, ${span(reading.ageSeconds * 1000)} old` : "";
      const purpose = faults.length > 0 ? `; broken on purpose: ${faults.map((one) => PROBE_FAULTS[one.kind]).join(", ")}` : "";
      mark(node, "data-tone", good ? null : "bad");
      put(value, worded(reading));
      put(state, `${good ? "" : "✕ "}${reading.qualityText}${age}${purpose}`);
      tools?.set(faults.length > 0);
    },
  };
}

function switchRow(kind, name, act) {
  const button = h("button", { type: "button", class: "quiet", onclick: () => act(() => (on ? api.removeFault({ kind }) : api.addFault({ kind }))) }, name);
  let on = false;
  return {
    node: button,
    set(now) {
      on = (now.faults ?? []).some((one) => one.kind === kind);
      mark(button, "aria-pressed", on);
    },
  };
}

/** Probes, actuators, and in the demo the faults. */
export function rigView() {
  const probes = h("ul", { class: "card probes" });
  const told = h("dl", { class: "facts" });
  const trouble = h("p", { class: "error", role: "alert" });
  const said = h("p", { class: "hint", role: "status" });
  const switches = Object.entries(RIG_FAULTS).map(([kind, name]) => switchRow(kind, name, act));
  const faults = h("section", { class: "card", hidden: true }, h("h2", {}, "Break the demo's rig"),
    h("p", { class: "hint" }, "Nothing real is touched. Watch what the controller makes of it."),
    h("div", { class: "row" }, ...switches.map((one) => one.node)),
    h("ul", { class: "hint" }, ...Object.entries(RIG_FAULT_SHOWS).map(([kind, text]) => h("li", {}, `${RIG_FAULTS[kind]}: ${text}`))),
    h("div", { class: "row" }, h("button", { type: "button", onclick: () => act(() => api.removeFault({})) }, "Mend everything")));
  let rows = null;
  let proven = null;
  const proofs = h("ul", { class: "hint proofs", "aria-label": "Last proof of each actuator" });

  // Without it the view still tells what it is for.
  api.commissioning().then((answer) => {
    proven = answer;
  }, () => {});

  async function act(call) {
    put(trouble, "");
    try {
      await call();
      put(said, "Takes effect at the next tick.");
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  function actuators(now) {
    const power = (channel) => full("electric", now.readings.find((one) => one.channel === channel)?.value ?? null);
    const list = [
      ["Pump", `${full("share", now.outputs.pumpDuty)}, takes ${power("pumpPower")}`],
      ["Valve", full("share", now.outputs.valveOpening)],
      ...(now.fitted.blower ? [["Blower", `${full("share", now.outputs.blowerDuty)}, takes ${power("blowerPower")}`]] : []),
      ...(now.fitted.backup ? [["Backup heat", now.outputs.backupOn ? "on" : "off"]] : []),
    ];
    if (told.children.length !== list.length * 2) {
      told.replaceChildren(...list.flatMap(([name]) => [h("dt", {}, name), h("dd", {})]));
    }
    list.forEach(([, text], index) => put(told.children[index * 2 + 1], text));
  }

  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, "Rig"), h("p", { class: "hint" }, "What each probe says and how far it is believed. A reading that is not good is never acted on as a number.")),
      trouble, said,
      h("div", { class: "two live" },
        h("section", {}, h("h2", { class: "unseen" }, "Probes"), probes),
        h("div", { class: "now-grid" }, h("section", { class: "card w12" }, h("h2", {}, "What the actuators are told"), told, proofs, h("p", { class: "hint" }, h("a", { class: "button quiet", href: "#commission" }, "Commission: find, calibrate, prove"))), h("div", { class: "w12" }, faults))),
    ],
    update(now) {
      if (rows === null) {
        rows = now.readings.map((one) => probeRow(one, now.faults !== null, act));
        probes.replaceChildren(...rows.map((row) => row.node));
      }
      rows.forEach((row, index) => row.set(now, now.readings[index]));
      if (proven !== null && proofs.children.length === 0) {
        proofs.append(...proven.actuators.filter((one) => now.fitted[one.actuator])
          .map((one) => h("li", {}, `${ACTUATORS[one.actuator]}: ${provenWords("proven", one.provenUtcMs, one.verdict, now.offsetMinutes)}`)));
      }
      rows.forEach((row, index) => row.prove(proven?.probes.find((one) => one.channel === now.readings[index].channel), now.offsetMinutes));
      switches.forEach((one) => one.set(now));
      faults.hidden = now.faults === null;
      actuators(now);
    },
  };
}
