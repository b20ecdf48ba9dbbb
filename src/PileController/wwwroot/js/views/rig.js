import { h, put, mark } from "../dom.js";
import * as api from "../api.js";
import { full } from "../units.js";
import { worded } from "../reading.js";
import { span } from "../time.js";
import { faultName, faultTools, switchRow } from "../rig/faults.js";
import { lastCalibrated, lastProven, offsetWords } from "../rig/proofs.js";
import { ACTUATORS } from "../words/names.js";
import * as say from "../words/rig.js";

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
      put(proof, calibration === undefined ? "" : say.ofProbe(offsetWords(calibration.offsetK), lastCalibrated(calibration.calibratedUtcMs, calibration.verdict, offset)));
    },
    set(now, reading) {
      const good = reading.quality === "good";
      const faults = (now.faults ?? []).filter((one) => one.channel === reading.channel);
      const age = reading.ageSeconds > 0 ? say.old(span(reading.ageSeconds * 1000)) : "";
      const purpose = faults.length > 0 ? say.onPurpose(faults.map(faultName)) : "";
      mark(node, "data-tone", good ? null : "bad");
      put(value, worded(reading));
      put(state, `${good ? "" : "✕ "}${reading.qualityText}${age}${purpose}`);
      tools?.set(faults.length > 0);
    },
  };
}

/** Probes, actuators, and in the demo the faults. */
export function rigView() {
  const probes = h("ul", { class: "card probes" });
  const told = h("dl", { class: "facts" });
  const trouble = h("p", { class: "error", role: "alert" });
  const said = h("p", { class: "hint", role: "status" });
  const switches = Object.entries(say.RIG_FAULTS).map(([kind, name]) => switchRow(kind, name, act));
  const faults = h("section", { class: "card", hidden: true }, h("h2", {}, say.breakRig),
    h("p", { class: "hint" }, say.breakRigAbout),
    h("div", { class: "row" }, ...switches.map((one) => one.node)),
    h("ul", { class: "hint" }, ...Object.entries(say.RIG_FAULT_SHOWS).map(([kind, text]) => h("li", {}, say.rigFault(say.RIG_FAULTS[kind], text)))),
    h("div", { class: "row" }, h("button", { type: "button", onclick: () => act(() => api.removeFault({})) }, say.mendAll)));
  let rows = null;
  let proven = null;
  const proofs = h("ul", { class: "hint proofs", "aria-label": say.lastProofs });

  // Without it the view still tells what it is for.
  api.commissioning().then((answer) => {
    proven = answer;
  }, () => {});

  async function act(call) {
    put(trouble, "");
    try {
      await call();
      put(said, say.takesEffect);
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  function actuators(now) {
    const power = (channel) => full("electric", now.readings.find((one) => one.channel === channel)?.value ?? null);
    const list = [
      [ACTUATORS.pump, say.level(full("share", now.outputs.pumpDuty), power("pumpPower"))],
      [ACTUATORS.valve, full("share", now.outputs.valveOpening)],
      ...(now.fitted.blower ? [[ACTUATORS.blower, say.level(full("share", now.outputs.blowerDuty), power("blowerPower"))]] : []),
      ...(now.fitted.backup ? [[ACTUATORS.backup, now.outputs.backupOn ? say.on : say.off]] : []),
    ];
    if (told.children.length !== list.length * 2) {
      told.replaceChildren(...list.flatMap(([name]) => [h("dt", {}, name), h("dd", {})]));
    }
    list.forEach(([, text], index) => put(told.children[index * 2 + 1], text));
  }

  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, say.title), h("p", { class: "hint" }, say.about)),
      trouble, said,
      h("div", { class: "two live" },
        h("section", {}, h("h2", { class: "unseen" }, say.probes), probes),
        h("div", { class: "now-grid" }, h("section", { class: "card w12" }, h("h2", {}, say.told), told, proofs, h("p", { class: "hint" }, h("a", { class: "button quiet", href: "#commission" }, say.commission))), h("div", { class: "w12" }, faults))),
    ],
    update(now) {
      if (rows === null) {
        rows = now.readings.map((one) => probeRow(one, now.faults !== null, act));
        probes.replaceChildren(...rows.map((row) => row.node));
      }
      rows.forEach((row, index) => row.set(now, now.readings[index]));
      if (proven !== null && proofs.children.length === 0) {
        proofs.append(...proven.actuators.filter((one) => now.fitted[one.actuator])
          .map((one) => h("li", {}, say.proofOf(ACTUATORS[one.actuator], lastProven(one.provenUtcMs, one.verdict, now.offsetMinutes)))));
      }
      rows.forEach((row, index) => row.prove(proven?.probes.find((one) => one.channel === now.readings[index].channel), now.offsetMinutes));
      switches.forEach((one) => one.set(now));
      faults.hidden = now.faults === null;
      actuators(now);
    },
  };
}
