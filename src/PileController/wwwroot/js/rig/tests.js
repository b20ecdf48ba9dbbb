// The parts of the commissioning view: a test to begin, the test that runs, what it found.

import { h, put, toneMark } from "../dom.js";
import { dayAndClock, span } from "../time.js";
import { back, convert, full, inUnits, kindOf, system, unit } from "../units.js";
import * as say from "../words/commission.js";

const TONES = { sound: "good", doubtful: "warn", failed: "bad" };

const list = (items) => h("ul", { class: "plain" }, ...items.map((text) => h("li", {}, text)));

/** A test that can be begun: what hurts, what moves, and the button that says so. */
export function testCard(test, probes, begin) {
  const ticks = test.id !== "ice" ? [] : probes.map((probe) => h("label", { class: "tick" },
    h("input", { type: "checkbox", value: probe.channel, checked: probe.channel === "supply" || probe.channel === "return" }), probe.name));
  const moves = test.moving.length === 0 ? say.nothingMoves : say.heldMeanwhile(test.moving);
  const go = h("button", { type: "button", class: "wide", onclick: () => begin(test.id, ticks.map((one) => one.firstChild).filter((box) => box.checked).map((box) => box.value)) },
    test.moving.length === 0 ? say.begin(test.title) : say.beginMoving(test.title));
  return h("details", { class: "card", "data-test": test.id },
    h("summary", {}, test.title),
    test.whyNot === null ? null : h("p", { class: "notice" }, test.whyNot),
    list(test.cautions), h("p", { class: "hint" }, moves),
    ticks.length === 0 ? null : h("fieldset", {}, h("legend", {}, say.inTheIce), h("div", { class: "ticks" }, ...ticks)),
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

// Units in which the controller asks or finds, and the kind each is to a reader.
const KINDS = { "°C": "temperature", K: "fineKelvin", L: "bucket", "L/min": "flow" };

// What is asked in the units of the moment at which it is asked, whatever is chosen while it is typed.
function askedIn(question) {
  const kind = KINDS[question.unit];
  if (kind === undefined || system() === "metric") {
    return { text: question.text, unit: question.unit, least: question.least, most: question.most, told: (typed) => typed };
  }
  const [none, one] = [back(kind, 0), back(kind, 1)];
  const shown = (value) => Number(convert(kind, value).toFixed(3));
  return { text: say.inGallons(question.text), unit: unit(kind), least: shown(question.least), most: shown(question.most), told: (typed) => none + typed * (one - none) };
}

function answerField(question, asked) {
  if (question.kind === "yesNo") {
    return null;
  }
  return question.kind === "text"
    ? h("input", { type: "text", id: "commission-answer", maxlength: question.most, autocomplete: "off" })
    : h("input", { type: "number", id: "commission-answer", min: asked.least, max: asked.most, step: "any", inputmode: "decimal" });
}

/** The step that runs: what to do, and the big button that goes on. */
export function stepCard(run, answer, giveUp) {
  const elapsed = h("p", { class: "hint num" });
  const asks = run.awaits && run.question !== null;
  const asked = asks ? askedIn(run.question) : null;
  const field = asks ? answerField(run.question, asked) : null;
  const send = (body) => answer({ step: run.step, ...body });
  const typed = () => (run.question.kind === "text" ? (field.value.trim() === "" ? {} : { text: field.value.trim() }) : field.value === "" ? {} : { figure: asked.told(Number(field.value)) });
  const buttons = !run.awaits ? []
    : asks && field === null
      ? [h("button", { type: "button", onclick: () => send({ figure: 1 }) }, say.yes), h("button", { type: "button", class: "quiet", onclick: () => send({ figure: 0 }) }, say.no)]
      : [h("button", { type: "submit", class: "wide" }, asks ? say.answer : say.goOn)];
  const form = h("form", { novalidate: true, onsubmit: (event) => { event.preventDefault(); send(field === null ? {} : typed()); } },
    asks ? h("div", { class: "field" }, h(field === null ? "p" : "label", field === null ? { class: "head" } : { class: "head", for: "commission-answer" },
      say.asked(asked.text, asked.unit)), field) : null,
    h("div", { class: "row" }, ...buttons));
  return {
    node: h("section", { class: "card", "data-step": run.step },
      h("h2", {}, say.step(run.title, run.step, run.steps)),
      h("p", { class: "why" }, inUnits(run.say)), form, elapsed,
      h("div", { class: "row" }, h("button", { type: "button", class: "quiet", onclick: giveUp }, say.giveUp))),
    set(next) {
      const most = next.mostSeconds ?? null;
      const time = span(next.elapsedSeconds * 1000);
      put(elapsed, next.awaits ? say.waits : most === null ? say.elapsed(time) : say.elapsedOf(time, span(most * 1000)));
    },
  };
}

const rounded = (value, digits, sign) => `${Number(value.toPrecision(digits))} ${sign}`;

function figure(one) {
  if ((one.figure ?? null) === null) {
    return "";
  }
  const kind = KINDS[one.unit];
  const sign = kind === undefined ? one.unit : unit(kind);
  const shown = (value) => (kind === undefined ? value : convert(kind, value));
  const value = rounded(shown(one.figure), 4, sign);
  return (one.uncertainty ?? null) === null ? value : say.uncertain(value, rounded(shown(one.uncertainty) - shown(0), 2, sign));
}

function adoption(one, adopt) {
  return (one.adopt ?? []).map((line) => h("div", { class: "row" },
    h("code", { class: "path" }, `${line.path}: ${line.json}`),
    line.fromPage
      ? h("button", { type: "button", class: "quiet", "aria-label": say.trySettingOf(line.path), onclick: () => adopt(line) }, say.trySetting)
      : h("span", { class: "hint" }, say.byFile)));
}

/** What a test found. */
export const outcomeList = (outcomes, adopt) => h("ul", { class: "plain" }, ...outcomes.map((one) => h("li", { "data-subject": one.subject, "data-verdict": one.verdict },
  h("p", { class: "row" }, toneMark(TONES[one.verdict]), h("b", {}, say.SOUNDNESS[one.verdict]), h("span", { class: "num" }, figure(one))),
  h("p", {}, inUnits(one.sentence)),
  ...(adopt === null ? [] : adoption(one, adopt)),
  one.file === undefined || one.file === null ? null : h("details", {}, h("summary", {}, say.pumpFile), h("pre", { class: "scroll", tabindex: 0 }, one.file)))));

/** The tests that were kept, newest first. */
export const sheetList = (entries, offset) => (entries.length === 0
  ? h("p", { class: "hint" }, say.nothingKept)
  : h("ul", { class: "plain" }, ...entries.map((entry) => h("li", {},
    h("p", {}, h("b", {}, entry.title), say.keptBy(dayAndClock(entry.by.atUtcMilliseconds, offset), entry.by.who)),
    h("p", { class: "hint" }, entry.outcomes.map((one) => say.outcome(one.subject, say.SOUNDNESS[one.verdict])).join(", "))))));
