import { h, put, mark, toneMark, setTone } from "../dom.js";
import { bare, full, inUnits, many, system, together, unit } from "../units.js";
import * as time from "../time.js";
import * as say from "../words/now.js";
import { MODES, curbWords } from "../words/names.js";
import * as feed from "../feed.js";
import { houseAnswer, heapAnswer, cautions } from "../judge.js";
import { dayCard } from "./day.js";
import { tonightCard } from "./tonight.js";
import { drawBars } from "../drawings/bars.js";
import { heapDrawing } from "../drawings/heap.js";
import { loopDrawing } from "../drawings/loop.js";

// While no news comes nothing is vouched for: the tick goes, and the words say how old they are.
const aged = (tone) => (feed.silent() && tone === "good" ? "plain" : tone);
const agedWords = (says) => (feed.silent() ? say.before(says, time.span(feed.age() * 1000)) : says);

function answer(title, width) {
  const icon = toneMark();
  const head = h("span", {}, title);
  const number = h("span", {}, "–");
  const name = h("span", { class: "unit" });
  const give = h("span", { class: "give" });
  const big = h("p", { class: "big" }, number, name, give);
  const lines = h("div", {});
  const node = h("section", { class: `card answer live ${width}` }, h("h2", {}, icon, head), big, lines);
  return {
    node,
    set({ tone, says, value, plusMinus, below }) {
      mark(node, "data-tone", aged(tone));
      setTone(icon, aged(tone));
      put(head, agedWords(says));
      put(number, bare("temperature", value));
      put(name, unit("temperature"));
      put(give, plusMinus === null ? "" : `± ${full("kelvin", plusMinus)}`);
      while (lines.children.length < below.length) {
        lines.append(h("p", { class: "line num" }));
      }
      below.forEach((text, index) => put(lines.children[index], text));
      [...lines.children].slice(below.length).forEach((line) => line.remove());
    },
  };
}

function workAnswer() {
  const icon = toneMark();
  const head = h("span", {}, say.waiting);
  const why = h("p", { class: "why" });
  const note = h("p", { class: "line" });
  const since = h("p", { class: "line num" });
  const curb = h("p", { class: "line" });
  const draws = h("p", { class: "line num" });
  const node = h("section", { class: "card answer live w6" }, h("h2", {}, icon, head), why, curb, draws, since, note);
  return {
    node,
    set(now) {
      const tone = aged(now.judged.workTone);
      mark(node, "data-tone", tone);
      setTone(icon, tone);
      put(head, agedWords(MODES[now.mode] ?? now.mode));
      put(why, together(system() === "american" ? now.whyAmerican : now.why));
      put(curb, say.limitedBy(curbWords(now.curb, now.mode)));
      put(draws, say.draws(full("power", Math.max(0, now.waterDrawWatts ?? 0) + Math.max(0, now.airDrawWatts ?? 0))));
      put(since, say.since(time.dayAndClock(now.modeSinceUtcMs, now.offsetMinutes), time.span(now.utcMs - now.modeSinceUtcMs)));
      put(note, together(inUnits(now.note) ?? ""));
      note.hidden = !now.note;
    },
  };
}

function facts(rows) {
  const list = h("dl", { class: "facts" });
  const cells = rows.map(([name]) => {
    const value = h("dd", {});
    list.append(h("dt", {}, name), value);
    return value;
  });
  return { node: list, set: (now) => rows.forEach(([, read], index) => put(cells[index], read(now))) };
}

const plusMinus = (now) => (now.totals.waterErrorKWh === null ? "" : ` ± ${bare("energy", now.totals.waterErrorKWh)}`);

const TOTALS = [
  [say.byWater, (now) => `${bare("energy", now.totals.waterKWh)}${plusMinus(now)} ${unit("energy")}`],
  [say.byAir, (now) => full("energy", now.totals.airKWh)],
  [say.electric, (now) => full("electricEnergy", (now.totals.pumpKWh ?? 0) + (now.totals.blowerKWh ?? 0))],
  [say.waterMoved, (now) => full("volume", now.totals.litres)],
  [say.record, (now) => `${now.record.accepting ? say.writing : say.notWriting(now.record.fault)}${now.record.damage ? say.damaged : ""}`],
  [say.dropped, (now) => many(now.record.droppedTicks)],
  [say.missed, (now) => many(now.service.missedTicks)],
];

/** The moment: is the house safe, is the heap well, what is done and why. */
export function nowView() {
  const house = answer(say.house, "w3");
  const heap = answer(say.heap, "w3");
  const work = workAnswer();
  const bars = drawBars();
  const section = heapDrawing();
  const loop = loopDrawing();
  const tonight = tonightCard();
  const day = dayCard();
  const totals = facts(TOTALS);
  const earlier = h("p", { class: "hint" }, say.beforeTheRecord);
  const warned = h("ul", { class: "small" });
  const warnings = h("section", { class: "notice w12", "aria-label": say.cautions }, warned);
  const grid = h("div", { class: "now-grid" },
    house.node, heap.node, work.node, warnings, tonight.node,
    day.node,
    h("section", { class: "card live w7 deep" }, h("h2", {}, say.heapCut), section.node),
    h("section", { class: "card live w5" }, h("h2", {}, say.draw), bars.node),
    h("section", { class: "card live w5" }, h("h2", {}, say.loopAndHouse), loop.node),
    h("section", { class: "card live w7" }, h("h2", {}, say.sinceBeginning), totals.node, earlier));

  return {
    nodes: [h("h1", { class: "unseen" }, say.title), grid],
    update(now) {
      house.set(houseAnswer(now));
      heap.set(heapAnswer(now));
      work.set(now);
      bars.set(now);
      section.set(now);
      loop.set(now);
      tonight.set(now);
      day.set(now);
      totals.set(now);
      earlier.hidden = !now.demo;
      const list = cautions(now);
      warnings.hidden = list.length === 0;
      if (warned.dataset.text !== list.join("|")) {
        warned.dataset.text = list.join("|");
        warned.replaceChildren(...list.map((text) => h("li", {}, text)));
      }
    },
  };
}
