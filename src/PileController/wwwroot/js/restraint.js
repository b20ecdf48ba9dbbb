// What interlocks do with an actuator, whatever is asked of it.

import * as say from "./words/hand.js";
import { ACTUATORS } from "./words/names.js";

/** What is in an actuator's way now and why, in sentences; null while nothing is. */
export function inTheWay(now, actuator) {
  const all = now.restraints.filter((one) => one.actuator === actuator);
  if (all.length === 0) {
    return null;
  }
  const held = all.some((one) => one.does === "holdsOff");
  const moved = all.some((one) => one.does === "moves");
  const name = ACTUATORS[actuator];
  const what = !moved ? say.heldOff(name) : held ? say.guardOnly(name) : say.guardAtLeast(name);
  const why = all.map((one) => now.interlocks.find((row) => row.id === one.interlock)).map((row) => say.because(row.sentence, row.remedy));
  return [what, ...why].join(" ");
}
