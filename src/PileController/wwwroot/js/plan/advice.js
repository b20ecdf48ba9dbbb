import { h } from "../dom.js";
import { system, together } from "../units.js";
import * as say from "../words/plan.js";
import { card, folded } from "./parts.js";

// What brings less than this is told, but not as a gain.
const GAIN_WATTS = 10;

const words = (one) => together(system() === "metric" ? one.metric : one.us);

function item(one, gains) {
  return h("li", { "data-gain": gains && one.watts !== null && one.watts >= GAIN_WATTS, "data-kind": one.kind }, words(one));
}

const fill = (list, all, none, gains) =>
  list.replaceChildren(...(all.length === 0 ? [h("li", { class: "muted" }, none)] : all.map((one) => item(one, gains))));

/** Sentences under a head, folded away on a phone. */
export function wordsCard(title, of, none) {
  const list = h("ul", { class: "plan-list" });
  const node = folded(title, "w12", list);
  return { node, set: (plan) => fill(list, of(plan.sketch), none, false) };
}

/** Advice: what gains heat is marked, what is not worth its trouble is folded away. */
export function adviceCard() {
  const list = h("ul", { class: "plan-list" });
  const small = h("ul", { class: "plan-list" });
  const less = h("details", {}, h("summary", {}, say.notWorthIt), small);
  const node = card(say.advice, "w12", list, less);
  return {
    node,
    set({ sketch: { advice } }) {
      const idle = advice.filter((one) => one.worth === false);
      fill(list, advice.filter((one) => one.worth !== false), say.noAdvice, true);
      fill(small, idle, "", false);
      less.hidden = idle.length === 0;
    },
  };
}

/** What can hurt someone here. */
export function cautionsCard() {
  const list = h("ul", { class: "small" });
  const node = h("section", { class: "notice w12", "aria-label": say.cautions, hidden: true }, h("h2", {}, say.cautions), list);
  return {
    node,
    set({ sketch: { cautions } }) {
      node.hidden = cautions.length === 0;
      list.replaceChildren(...cautions.map((one) => h("li", {}, words(one))));
    },
  };
}
