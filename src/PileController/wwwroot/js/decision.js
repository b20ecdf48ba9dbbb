import { h } from "./dom.js";
import { worded } from "./reading.js";
import { full, inUnits, many, system, together } from "./units.js";
import { dayAndClock } from "./time.js";
import * as say from "./words/decisions.js";
import { ACTIONS, VERDICTS } from "./words/interlocks.js";
import { MODES, curbWords } from "./words/names.js";

const duty = (outputs) => say.duty(full("share", outputs.pumpDuty), full("share", outputs.valveOpening), full("share", outputs.blowerDuty), outputs.backupOn);

const facts = (rows) => h("dl", { class: "facts" }, ...rows.flatMap(([name, value]) => [h("dt", {}, name), h("dd", {}, value)]));

const knew = (one) => facts([
  [say.activeZone, `${full("temperature", one.estimate.activeZoneC)} ± ${full("kelvin", one.estimate.uncertaintyK)}`],
  [say.estimate, one.estimate.trusted ? say.trusted : say.notTrusted],
  [say.heatMade, full("power", one.estimate.generationWatts)],
  [say.setPoint, full("temperature", one.houseSetPointC)],
  ...one.readings.map((reading) => [reading.name, reading.value === null ? reading.qualityText : worded(reading)]),
]);

const chose = (one) => facts([
  [say.want, full("power", one.wantWatts)],
  [say.means, full("power", one.meansWatts)],
  [say.grant, full("power", one.grantWatts)],
  [say.limitedBy, curbWords(one.curb, one.mode)],
  [say.waterMetered, `${full("power", one.waterDrawWatts)} ± ${full("power", one.waterDrawErrorWatts)}`],
  [say.outputs, duty(one.outputs)],
]);

const verdicts = (one) => h("div", { class: "scroll tall", tabindex: 0, role: "region", "aria-label": say.verdicts },
  h("table", {}, h("thead", {}, h("tr", {}, ...say.VERDICT_COLUMNS.map((name) => h("th", { scope: "col" }, name)))),
    h("tbody", {}, ...one.interlocks.map((row) => h("tr", {}, h("th", { scope: "row" }, row.sentence), h("td", {}, VERDICTS[row.verdict] ?? row.verdict), h("td", {}, ACTIONS[row.action] ?? row.action))))));

function otherwise(one, then) {
  const parts = [];
  if (then.mode !== one.mode) {
    parts.push(MODES[then.mode] ?? then.mode);
  }
  if (then.curb !== one.curb) {
    parts.push(say.limitedThenBy(curbWords(then.curb, then.mode)));
  }
  parts.push(say.grantThen(full("power", then.grantWatts)), duty(then.outputs));
  return h("li", {}, h("b", {}, say.OTHERWISE[then.what](full)), say.then(parts));
}

/** One decision, opened: all it knew, every interlock's verdict, and what would have changed it. */
export function openedDecision({ decision, kinds, askers, whatIfs }) {
  return h("article", { class: "card opened" },
    h("p", { class: "when num" }, h("time", { datetime: decision.localTime }, dayAndClock(decision.utcMs, decision.offsetMinutes)), say.tickOf(many(decision.sequence), kinds.map((kind) => say.KINDS[kind] ?? kind).join(", "))),
    h("h2", {}, MODES[decision.mode] ?? decision.mode),
    h("p", { class: "why" }, together(system() === "american" ? decision.whyAmerican : decision.why)),
    decision.note ? h("p", {}, together(inUnits(decision.note))) : null,
    askers.map((asker) => h("p", { class: "hint" }, say.askedBy(asker.name, say.KNOWN_BY[asker.by], asker.from))),
    h("h3", {}, say.whatItChose), chose(decision),
    h("h3", {}, say.otherwise),
    whatIfs.length === 0
      ? h("p", {}, say.nothingOtherwise)
      : h("ul", { class: "plain" }, ...whatIfs.map((then) => otherwise(decision, then))),
    h("p", { class: "hint" }, say.otherwiseAbout),
    h("h3", {}, say.whatItKnew), knew(decision),
    h("h3", {}, say.interlocks), verdicts(decision));
}
