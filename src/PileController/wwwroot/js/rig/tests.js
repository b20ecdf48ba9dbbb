// The parts of the commissioning view: a test to begin, the test that runs, what it found.

import { h, put, toneMark } from "../dom.js";
import { dayAndClock, span } from "../time.js";
import { full, kindOf } from "../units.js";
import { SOUNDNESS, TONES } from "./words.js";

const list = (items) => h("ul", { class: "plain" }, ...items.map((text) => h("li", {}, text)));

/** A test that can be begun: what hurts, what moves, and the button that says so. */
export function testCard(test, probes, begin) {
  const ticks = test.id !== "ice" ? [] : probes.map((probe) => h("label", { class: "tick" },
    h("input", { type: "checkbox", value: probe.channel, checked: probe.channel === "supply" || probe.channel === "return" }), probe.name));
  const moves = test.moving.length === 0 ? "Nothing moves." : `Held by hand meanwhile, interlocks above it: ${test.moving.join("; ")}.`;
  const go = h("button", { type: "button", class: "wide", onclick: () => begin(test.id, ticks.map((one) => one.firstChild).filter((box) => box.checked).map((box) => box.value)) },
    test.moving.length === 0 ? `Begin: ${test.title.toLowerCase()}` : `Begin: ${test.title.toLowerCase()}, it moves the rig`);
  return h("details", { class: "card", "data-test": test.id },
    h("summary", {}, test.title),
    test.whyNot === null ? null : h("p", { class: "notice" }, test.whyNot),
    list(test.cautions), h("p", { class: "hint" }, moves),
    ticks.length === 0 ? null : h("fieldset", {}, h("legend", {}, "Which probes are in the ice"), h("div", { class: "ticks" }, ...ticks)),
    test.whyNot === null ? go : null);
}

/** The figures that show what is happening while a test runs. */
export function liveFigures() {
  const node = h("dl", { class: "facts live" });
  const cells = new Map();
  return {
    node,
    set(now) {
      for (const reading of now.readings.filter((one) => one.unit !== "" && one.unit !== "W/m²")) {
        if (!cells.has(reading.channel)) {
          cells.set(reading.channel, h("dd", {}));
          node.append(h("dt", {}, reading.name), cells.get(reading.channel));
        }
        put(cells.get(reading.channel), reading.value === null ? reading.qualityText : full(kindOf(reading.unit, reading.channel), reading.value));
      }
    },
  };
}

function answerField(question) {
  if (question.kind === "yesNo") {
    return null;
  }
  return question.kind === "text"
    ? h("input", { type: "text", id: "commission-answer", maxlength: question.most, autocomplete: "off" })
    : h("input", { type: "number", id: "commission-answer", min: question.least, max: question.most, step: "any", inputmode: "decimal" });
}

/** The step that runs: what to do, and the big button that goes on. */
export function stepCard(run, answer, giveUp) {
  const elapsed = h("p", { class: "hint num" });
  const asks = run.awaits && run.question !== null;
  const field = asks ? answerField(run.question) : null;
  const say = (body) => answer({ step: run.step, ...body });
  const typed = () => (run.question.kind === "text" ? (field.value.trim() === "" ? {} : { text: field.value.trim() }) : field.value === "" ? {} : { figure: Number(field.value) });
  const buttons = !run.awaits ? []
    : asks && field === null
      ? [h("button", { type: "button", onclick: () => say({ figure: 1 }) }, "Yes"), h("button", { type: "button", class: "quiet", onclick: () => say({ figure: 0 }) }, "No")]
      : [h("button", { type: "submit", class: "wide" }, asks ? "Answer and go on" : "Go on")];
  const form = h("form", { novalidate: true, onsubmit: (event) => { event.preventDefault(); say(field === null ? {} : typed()); } },
    asks ? h("div", { class: "field" }, h(field === null ? "p" : "label", field === null ? { class: "head" } : { class: "head", for: "commission-answer" },
      `${run.question.text}${run.question.unit === "" ? "" : ` (${run.question.unit})`}`), field) : null,
    h("div", { class: "row" }, ...buttons));
  return {
    node: h("section", { class: "card", "data-step": run.step },
      h("h2", {}, `${run.title}: step ${run.step} of ${run.steps}`),
      h("p", { class: "why" }, run.say), form, elapsed,
      h("div", { class: "row" }, h("button", { type: "button", class: "quiet", onclick: giveUp }, "Give up"))),
    set(next) {
      const most = next.mostSeconds === null || next.mostSeconds === undefined ? "" : ` of at most ${span(next.mostSeconds * 1000)}`;
      put(elapsed, next.awaits ? "It waits for you." : `${span(next.elapsedSeconds * 1000)}${most}. It goes on by itself.`);
    },
  };
}

const figure = (one) => (one.figure === undefined || one.figure === null ? null
  : `${Number(one.figure.toPrecision(4))} ${one.unit}${one.uncertainty === undefined || one.uncertainty === null ? "" : ` ± ${Number(one.uncertainty.toPrecision(2))} ${one.unit} (k = 2)`}`);

function adoption(one, adopt) {
  return (one.adopt ?? []).map((line) => h("div", { class: "row" },
    h("code", { class: "path" }, `${line.path}: ${line.json}`),
    line.fromPage
      ? h("button", { type: "button", class: "quiet", "aria-label": `Try ${line.path} in the settings`, onclick: () => adopt(line) }, "Try in the settings")
      : h("span", { class: "hint" }, "to be written into the settings file")));
}

/** What a test found. */
export const outcomeList = (outcomes, adopt) => h("ul", { class: "plain" }, ...outcomes.map((one) => h("li", { "data-subject": one.subject, "data-verdict": one.verdict },
  h("p", { class: "row" }, toneMark(TONES[one.verdict]), h("b", {}, SOUNDNESS[one.verdict]), h("span", { class: "num" }, figure(one) ?? "")),
  h("p", {}, one.sentence),
  ...(adopt === null ? [] : adoption(one, adopt)),
  one.file === undefined || one.file === null ? null : h("details", {}, h("summary", {}, "The file for calc pump"), h("pre", { class: "scroll", tabindex: 0 }, one.file)))));

/** The tests that were kept, newest first. */
export const sheetList = (entries, offset) => (entries.length === 0
  ? h("p", { class: "hint" }, "Nothing has been kept yet.")
  : h("ul", { class: "plain" }, ...entries.map((entry) => h("li", {},
    h("p", {}, h("b", {}, entry.title), `, ${dayAndClock(entry.by.atUtcMilliseconds, offset)}, ${entry.by.who}`),
    h("p", { class: "hint" }, entry.outcomes.map((one) => `${one.subject}: ${SOUNDNESS[one.verdict].toLowerCase()}`).join(", "))))));

/** A calibration or proof in a few words, for the rig's list. */
export const provenWords = (verb, atUtcMs, verdict, offset) => (atUtcMs === null || atUtcMs === undefined
  ? `never ${verb}`
  : `${verb} ${dayAndClock(atUtcMs, offset)}: ${SOUNDNESS[verdict].toLowerCase()}`);

/** An offset of a probe. */
export const offsetWords = (kelvin) => (kelvin === 0 ? "no offset" : `offset ${kelvin > 0 ? "+" : "−"}${full("fineKelvin", Math.abs(kelvin))}`);
