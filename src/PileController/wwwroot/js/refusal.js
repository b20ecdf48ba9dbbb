// Why a call was refused, by the names its fields have on the page.

const EMPTY = ['""', "null", "nothing", "NaN"];

/** A refusal in words; `names` are those of the fields on this page. */
export const worded = (refusal, names) => (names[refusal.field] === undefined
  ? refusal.message
  : `${names[refusal.field]}: ${EMPTY.includes(refusal.given) ? "nothing is given" : `${refusal.given} is not allowed`}. Allowed: ${refusal.allowed}.`);
