// The name under which a person does things here: one for all views, remembered in this browser.

import { h } from "./dom.js";

const KEY = "who";

/** Keeps a name for the next time. */
export const remember = (name) => localStorage.setItem(KEY, name);

/** An input with the name given last; further attributes may be given. */
export const nameInput = (more) => h("input", { type: "text", maxlength: 40, autocomplete: "name", value: localStorage.getItem(KEY) ?? "", ...more });
