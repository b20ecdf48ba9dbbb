// The name of whoever sees and shelves; the same one as for taking things by hand.

import { h } from "../dom.js";

const NAME = "who";

/** The field, its value (kept when it is asked for), and a way to put the keyboard there. */
export function nameField() {
  const input = h("input", { type: "text", id: "alarm-who", maxlength: 40, autocomplete: "name", value: localStorage.getItem(NAME) ?? "" });
  return {
    node: h("div", { class: "field" }, h("label", { class: "head", for: "alarm-who" }, "Your name, for the record"), input),
    value() {
      const name = input.value.trim();
      if (name !== "") {
        localStorage.setItem(NAME, name);
      }
      return name;
    },
    focus: () => input.focus(),
  };
}
