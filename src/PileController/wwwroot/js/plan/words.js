import { h } from "../dom.js";
import { system } from "../units.js";
import { card } from "./parts.js";

// What brings less than this is told, but not as a gain.
const GAIN_WATTS = 10;

function item(one, gains) {
  const text = system() === "metric" ? one.metric : one.us;
  return h("li", { "data-gain": gains && one.watts !== null && one.watts >= GAIN_WATTS, "data-kind": one.kind }, text);
}

/** A list of sentences under a head; where they are advice, what gains heat is marked. */
export function wordsCard(title, of, none, gains = false) {
  const list = h("ul", { class: "plan-list" });
  const node = card(title, "w12", list);
  return {
    node,
    set(plan) {
      const words = of(plan.sketch);
      list.replaceChildren(...(words.length === 0 ? [h("li", { class: "muted" }, none)] : words.map((one) => item(one, gains))));
    },
  };
}

/** What can hurt someone here. */
export function cautionsCard() {
  const list = h("ul", { class: "small" });
  const node = h("section", { class: "notice w12", "aria-label": "Cautions", hidden: true }, h("h2", {}, "Cautions"), list);
  return {
    node,
    set({ sketch: { cautions } }) {
      node.hidden = cautions.length === 0;
      list.replaceChildren(...cautions.map((one) => h("li", {}, system() === "metric" ? one.metric : one.us)));
    },
  };
}
