// Light or dark: as the system has it, or as a person chose on this page.

import { choice } from "./choice.js";

// What the page's meta says, and the halves of the mark: one filled as in the system's, none, both.
const SCHEMES = {
  system: { meta: ["light", "dark"], left: "currentColor", right: "none" },
  light: { meta: ["light"], left: "none", right: "none" },
  dark: { meta: ["dark"], left: "currentColor", right: "currentColor" },
};

const ORDER = Object.keys(SCHEMES);

const chosen = choice("scheme", ORDER);

/** What is in use: "system", "light" or "dark". */
export const scheme = () => chosen.get() ?? ORDER[0];

/** How the two halves of its mark are filled. */
export const halves = () => [SCHEMES[scheme()].left, SCHEMES[scheme()].right];

function show() {
  document.querySelector("meta[name=color-scheme]").content = SCHEMES[scheme()].meta.join(" ");
}

show();

/** Goes over to the next and remembers it here. */
export function next() {
  chosen.set(ORDER[(ORDER.indexOf(scheme()) + 1) % ORDER.length]);
  show();
}
