// What a probe says, as a person reads it.

import { full, kindOf } from "./units.js";
import * as say from "./words/rig.js";

const SWITCHES = { leak: [say.dry, say.wet], level: [say.belowTheMark, say.atTheMark] };

/** A reading's value with its unit, a switch's in words; a dash where there is none. */
export function worded(reading) {
  const words = SWITCHES[reading.channel];
  return words === undefined ? full(kindOf(reading.unit, reading.channel), reading.value) : reading.value === null ? "–" : words[reading.value >= 0.5 ? 1 : 0];
}
