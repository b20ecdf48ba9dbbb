// Why a call was refused, by the names its fields have on the page.

import { notAllowed, notGiven } from "./words/shared.js";

const EMPTY = ['""', "null", "nothing", "NaN"];

/** A refusal in words; `names` are those of the fields on this page. */
export function worded(refusal, names) {
  const name = names[refusal.field];
  if (name === undefined) {
    return refusal.message;
  }
  return EMPTY.includes(refusal.given) ? notGiven(name, refusal.allowed) : notAllowed(name, refusal.given, refusal.allowed);
}
