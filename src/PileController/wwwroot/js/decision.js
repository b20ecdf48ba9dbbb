import { h } from "./dom.js";
import { full, kindOf, system } from "./units.js";
import { dayAndClock } from "./time.js";
import { ACTIONS, KINDS, MODES, OTHERWISE, VERDICTS, curbWords, together } from "./words.js";

const duty = (outputs) => `pump ${full("share", outputs.pumpDuty)}, valve ${full("share", outputs.valveOpening)}, blower ${full("share", outputs.blowerDuty)}${outputs.backupOn ? ", backup on" : ""}`;

const facts = (rows) => h("dl", { class: "facts" }, ...rows.flatMap(([name, value]) => [h("dt", {}, name), h("dd", {}, value)]));

const knew = (one) => facts([
  ["Active zone", `${full("temperature", one.estimate.activeZoneC)} ± ${full("kelvin", one.estimate.uncertaintyK)}`],
  ["Estimate", one.estimate.trusted ? "trusted" : "not trusted: the careful rule stands in"],
  ["Heat made", full("power", one.estimate.generationWatts)],
  ["House set point", full("temperature", one.houseSetPointC)],
  ...one.readings.map((reading) => [reading.name, reading.value === null ? reading.qualityText : full(kindOf(reading.unit, reading.channel), reading.value)]),
]);

const chose = (one) => facts([
  ["Want", full("power", one.wantWatts)],
  ["Means", full("power", one.meansWatts)],
  ["Grant", full("power", one.grantWatts)],
  ["Limited by", curbWords(one.curb, one.mode)],
  ["Water draw, metered", `${full("power", one.waterDrawWatts)} ± ${full("power", one.waterDrawErrorWatts)}`],
  ["Told", duty(one.outputs)],
]);

const verdicts = (one) => h("div", { class: "scroll tall", tabindex: 0, role: "region", "aria-label": "Verdict of every interlock" },
  h("table", {}, h("thead", {}, h("tr", {}, ...["Interlock", "Verdict", "What it does"].map((name) => h("th", { scope: "col" }, name)))),
    h("tbody", {}, ...one.interlocks.map((row) => h("tr", {}, h("th", { scope: "row" }, row.sentence), h("td", {}, VERDICTS[row.verdict] ?? row.verdict), h("td", {}, ACTIONS[row.action] ?? row.action))))));

function otherwise(one, then) {
  const parts = [];
  if (then.mode !== one.mode) {
    parts.push(MODES[then.mode] ?? then.mode);
  }
  if (then.curb !== one.curb) {
    parts.push(`limited by ${curbWords(then.curb, then.mode)}`);
  }
  parts.push(`grant ${full("power", then.grantWatts)}`, duty(then.outputs));
  return h("li", {}, h("b", {}, OTHERWISE[then.what](full)), `: ${parts.join("; ")}.`);
}

/** One decision, opened: all it knew, every interlock's verdict, and what would have changed it. */
export function openedDecision({ decision, kinds, whatIfs }) {
  return h("article", { class: "card opened" },
    h("p", { class: "when num" }, h("time", { datetime: decision.localTime }, dayAndClock(decision.utcMs, decision.offsetMinutes)), `, tick ${decision.sequence.toLocaleString("en-US")}${kinds.length > 0 ? `: ${kinds.map((kind) => KINDS[kind] ?? kind).join(", ")}` : ""}`),
    h("h2", {}, MODES[decision.mode] ?? decision.mode),
    h("p", { class: "why" }, together(system() === "american" ? decision.whyAmerican : decision.why)),
    decision.note ? h("p", {}, decision.note) : null,
    h("h3", {}, "What it chose"), chose(decision),
    h("h3", {}, "What would have changed it"),
    whatIfs.length === 0
      ? h("p", {}, "None of the things tried: a warmer or colder house or day, another floor, reserve, set point or battery, no least run, nothing by hand.")
      : h("ul", { class: "plain" }, ...whatIfs.map((then) => otherwise(decision, then))),
    h("p", { class: "hint" }, "Each thing alone, at this very tick; what is settled over hours stood as it was. The tick was decided again from the record."),
    h("h3", {}, "What it knew"), knew(decision),
    h("h3", {}, "Interlocks"), verdicts(decision));
}
