// The name of whoever sees and shelves; the same one as for taking things by hand.

import { h } from "../dom.js";
import { yourName } from "../words/shared.js";
import { nameInput, remember } from "../who.js";

/** The field, its value (kept when it is asked for), and a way to put the keyboard there. */
export function nameField() {
  const input = nameInput({ id: "alarm-who" });
  return {
    node: h("div", { class: "field" }, h("label", { class: "head", for: "alarm-who" }, yourName), input),
    value() {
      const name = input.value.trim();
      if (name !== "") {
        remember(name);
      }
      return name;
    },
    focus: () => input.focus(),
  };
}
