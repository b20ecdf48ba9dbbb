// The view in which things are taken by hand.

export const title = "By hand";
export const about = "What you take ends by itself. Interlocks outrank it: what one holds back stays back, and a trip cannot be overridden by hand. Nothing held by hand outlives a restart.";

export const what = "What";
export const howMuch = "How much";
export const howLong = "For how many minutes";
/** The fields by the names they have in a refusal. */
export const FIELDS = { who: "Your name", minutes: howLong, value: howMuch, actuator: what };

export const on = "on";
export const off = "off";
export const percent = (count) => `${count} %`;

export const heldNow = "Held now";
export const nothingHeld = "Nothing is held by hand. The controller has it all.";
export const held = (actuator, level) => `${actuator} at ${level}`;
/** Where an interlock, or a pump that knows only on and off, gives another level than asked. */
export const heldOtherwise = (actuator, asked, given) => `${actuator}: ${asked} asked, ${given} given`;
export const heldBy = (who, ends, span) => `by ${who}, ends ${ends} (in ${span})`;
export const giveBack = "Give back";
export const givenBack = (actuator) => `${actuator} goes back to the controller at the next tick.`;

export const take = "Take by hand";
export const shareOff = "Off";
export const shareHalf = "Half";
export const shareFull = "Full";
export const takeIt = (actuator, level, span) => `Take the ${actuator.toLowerCase()}: ${level} for ${span}`;
/** The button while an interlock acts on what is chosen. */
export const askForIt = (actuator, level, span) => `Ask for the ${actuator.toLowerCase()}: ${level} for ${span}, as far as interlocks let it`;
export const asked = (actuator, level) => `Asked for: ${actuator.toLowerCase()} at ${level}, from the next tick.`;
export const given = (actuator, level, ends) => `The ${actuator.toLowerCase()} is at ${level}, as asked, and goes back by itself ${ends}.`;
export const givenOtherwise = (actuator, asked, given) => `The ${actuator.toLowerCase()} was asked for ${asked} and is given ${given}.`;
export const notKept = (actuator) => `The ${actuator.toLowerCase()} is not held by hand.`;

export const heldOff = (actuator) => `The ${actuator.toLowerCase()} is held off, whatever is asked; once this lets go it does what is then asked by hand.`;
export const guardAtLeast = (actuator) => `The ${actuator.toLowerCase()} gets what the guard against frost needs, where you ask for less.`;
export const guardOnly = (actuator) => `The ${actuator.toLowerCase()} gets what the guard against frost needs and no more, whatever is asked.`;
export const because = (sentence, remedy) => `${sentence} ${remedy}`;
export const bears = (means) => `The heap can bear ${means} now.`;
export const bearsAndTakes = (means, draw, duty) => `The heap can bear ${means} now; the water takes ${draw} with the pump at ${duty}.`;
export const tripped = "The rig is tripped. Clear the trip first, once its cause is gone.";
export const locked = "The outputs are locked off for work. End servicing first.";
export const levelNow = (level) => `now ${level}`;
export const notFitted = "not fitted";

export const work = "Work on the rig";
export const workAbout = "Locks all outputs off. It is no substitute for pulling the plug: make sure of it at the rig before you reach in.";
export const lock = "Lock all outputs off";
export const lockEnds = "End servicing";
export const lockComes = "All outputs are locked off at the next tick.";
export const lockGoes = "Servicing ends at the next tick.";
