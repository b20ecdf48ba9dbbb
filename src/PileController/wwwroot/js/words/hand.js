// The view in which things are taken by hand.

export const ACTUATORS = { pump: "Pump", valve: "Valve", blower: "Blower", backup: "Backup heat" };

export const title = "By hand";
export const about = "What you take ends by itself. Interlocks still stop the rig when they must, and a trip cannot be overridden by hand. Nothing held by hand outlives a restart.";

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
export const heldBy = (who, ends, span) => `by ${who}, ends ${ends} (in ${span})`;
export const giveBack = "Give back";
export const givenBack = (actuator) => `${actuator} goes back to the controller at the next tick.`;

export const take = "Take by hand";
export const shareOff = "Off";
export const shareHalf = "Half";
export const shareFull = "Full";
export const takeIt = (actuator, level, span) => `Take the ${actuator.toLowerCase()}: ${level} for ${span}`;
export const taken = (actuator) => `The ${actuator.toLowerCase()} is yours from the next tick, and goes back by itself.`;
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
