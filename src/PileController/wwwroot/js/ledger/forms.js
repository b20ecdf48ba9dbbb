import { h, put } from "../dom.js";
import * as api from "../api.js";
import { worded } from "../refusal.js";
import { FIELDS, written, yourName } from "../words/bookForms.js";
import { nameInput, remember } from "../who.js";

let count = 0;

/** A labelled field. `read` gives what goes into the call; null leaves it out. */
export function field(label, input, read = (one) => one.value.trim() || undefined) {
  const id = `ledger-${++count}`;
  input.id = id;
  return { node: h("div", { class: "field" }, h("label", { class: "head", for: id }, label), input), read: () => read(input), clear: () => { if (input.tagName === "INPUT") { input.value = ""; } } };
}

export const text = (most) => h("input", { type: "text", maxlength: most, autocomplete: "off" });
export const number = (step = "any") => h("input", { type: "number", min: 0, step, inputmode: "decimal" });
export const amount = (input) => (input.value === "" ? undefined : Number(input.value));
export const date = () => h("input", { type: "date" });
export const select = (options) => h("select", {}, ...Object.entries(options).map(([value, name]) => h("option", { value }, name)));

/** A form behind a summary that writes one thing into the book. */
export function bookForm(title, button, path, fields, extra, done) {
  const trouble = h("p", { class: "error", role: "alert" });
  const said = h("p", { role: "status" });
  const who = field(yourName, nameInput());
  const form = h("form", {
    novalidate: true,
    onsubmit: async (event) => {
      event.preventDefault();
      put(trouble, "");
      put(said, "");
      remember(who.read() ?? "");
      const body = { ...extra, who: who.read() };
      for (const [key, one] of Object.entries(fields)) {
        const value = one.read();
        if (value !== undefined) {
          body[key] = value;
        }
      }
      try {
        const page = await api.writeLedger(path, body);
        Object.values(fields).forEach((one) => one.clear());
        put(said, written);
        done(page);
      } catch (refusal) {
        put(trouble, worded(refusal, FIELDS));
      }
    },
  }, ...Object.values(fields).map((one) => one.node), who.node, trouble, said, h("button", { type: "submit" }, button));
  return h("details", { class: "card" }, h("summary", {}, title), form);
}
