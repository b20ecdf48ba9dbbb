// What was calibrated and proven, in a few words, for the rig's list.

import { dayAndClock } from "../time.js";
import { full } from "../units.js";
import { SOUNDNESS } from "../words/commission.js";
import * as say from "../words/rig.js";

const last = (atUtcMs, verdict, offset, never, worded) =>
  ((atUtcMs ?? null) === null ? never : worded(dayAndClock(atUtcMs, offset), SOUNDNESS[verdict]));

/** When a probe was calibrated last, and how well; `offset` is that of the clock, in minutes. */
export const lastCalibrated = (atUtcMs, verdict, offset) => last(atUtcMs, verdict, offset, say.neverCalibrated, say.calibrated);

/** When an actuator was proven last, and how well; `offset` is that of the clock, in minutes. */
export const lastProven = (atUtcMs, verdict, offset) => last(atUtcMs, verdict, offset, say.neverProven, say.proven);

/** An offset of a probe. */
export const offsetWords = (kelvin) => (kelvin === 0 ? say.noOffset : say.offset(kelvin > 0 ? "+" : "−", full("fineKelvin", Math.abs(kelvin))));
