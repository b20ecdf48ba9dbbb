// What several views say alike.

export const yourName = "Your name, for the record";
export const lookAgain = "Look again";

/** Why a call was refused, by the name its field has on the page. */
export const notAllowed = (name, given, allowed) => `${name}: ${given} is not allowed. Allowed: ${allowed}.`;
export const notGiven = (name, allowed) => `${name}: nothing is given. Allowed: ${allowed}.`;
