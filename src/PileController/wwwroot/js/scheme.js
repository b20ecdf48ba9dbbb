// Light or dark: as the system has it, or as a person chose on this page.

const KEY = "scheme";

// What the page's meta says, and the halves of the mark: one filled as in the system's, none, both.
const SCHEMES = {
  system: { meta: ["light", "dark"], left: "currentColor", right: "none" },
  light: { meta: ["light"], left: "none", right: "none" },
  dark: { meta: ["dark"], left: "currentColor", right: "currentColor" },
};

const ORDER = Object.keys(SCHEMES);

const kept = localStorage.getItem(KEY);
let chosen = ORDER.includes(kept) ? kept : ORDER[0];

/** What is in use: "system", "light" or "dark". */
export const scheme = () => chosen;

/** How the two halves of its mark are filled. */
export const halves = () => [SCHEMES[chosen].left, SCHEMES[chosen].right];

// The controller writes the first look itself, and is told by the cookie in which colours.
function show() {
  document.querySelector("meta[name=color-scheme]").content = SCHEMES[chosen].meta.join(" ");
  document.cookie = `${KEY}=${chosen}; Path=/; Max-Age=31536000; SameSite=Strict`;
}

if (kept !== null) {
  show();
}

/** Goes over to the next and remembers it here. */
export function next() {
  chosen = ORDER[(ORDER.indexOf(chosen) + 1) % ORDER.length];
  localStorage.setItem(KEY, chosen);
  show();
}
