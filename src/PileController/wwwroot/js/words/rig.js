// The rig's view: probes, actuators, and in the demo the faults.

export const title = "Rig";
export const about = "What each probe says and how far it is believed. A reading that is not good is never acted on as a number.";
export const probes = "Probes";
export const told = "What the actuators are told";
export const level = (share, power) => `${share}, takes ${power}`;
export const on = "on";
export const off = "off";
export const commission = "Commission: find, calibrate, prove";

export const wet = "wet";
export const dry = "dry";
export const atTheMark = "at the mark";
export const belowTheMark = "below the mark";
export const old = (span) => `, ${span} old`;
export const onPurpose = (faults) => `; broken on purpose: ${faults.join(", ")}`;

export const lastProofs = "Last proof of each actuator";
export const proofOf = (actuator, proof) => `${actuator}: ${proof}`;
export const ofProbe = (offset, calibration) => `${offset}, ${calibration}`;
export const noOffset = "no offset";
export const offset = (sign, figure) => `offset ${sign}${figure}`;

// When something was calibrated or proven, and how well.
const last = (verb, moment, verdict) => `${verb} ${moment}: ${verdict.toLowerCase()}`;
export const neverCalibrated = "never calibrated";
export const calibrated = (moment, verdict) => last("calibrated", moment, verdict);
export const neverProven = "never proven";
export const proven = (moment, verdict) => last("proven", moment, verdict);

export const breakRig = "Break the demo's rig";
export const breakRigAbout = "Nothing real is touched. Watch what the controller makes of it.";
export const breakIt = "Break it";
export const breakOne = "Break";
export const breakOf = (name) => `Break ${name}`;
export const breakNowOf = (name) => `Break ${name} now`;
export const faultFor = (name) => `Fault for ${name}`;
export const mend = "Mend";
export const mendOf = (name) => `Mend ${name}`;
export const mendAll = "Mend everything";
export const takesEffect = "Takes effect at the next tick.";

export const PROBE_FAULTS = {
  open: "broken wire",
  short: "shorted",
  stuck: "stuck",
  drift: "drifting",
  spike: "spikes",
  inHand: "taken out, in a warm hand",
  inIce: "taken out, in melting ice",
};

/** How soon a fault of a probe shows. */
export const SHOWS = {
  atOnce: "Shows at the next tick.",
  stuckLate: "Shows late: marked after 2 to 3 hours there.",
  stuckNever: "Not marked: this probe may well say the same for hours.",
  drift: "Not told apart from the truth until it leaves what is believable.",
  spikeEach: "Each wild value is marked at its tick: it moves too fast to be true.",
  spikeFar: "Seen only where a wild value leaves what is believable: this one may move fast.",
  inHand: "It goes to 33 °C, as in a hand: a heap probe is marked for a minute, since no heap moves so fast; then it is believed.",
  inIce: "It goes to 0 °C, as in melting ice: a heap probe is marked for a minute, since no heap moves so fast; then it is believed.",
};

export const RIG_FAULTS = {
  deadPump: "Pump does not turn",
  blockedLine: "Line blocked",
  valveJammed: "Valve jammed",
  slowBus: "Probe bus slow",
};

/** How soon a fault of the rig shows. */
export const RIG_FAULT_SHOWS = {
  deadPump: "shows once the pump is told to run: a trip within minutes.",
  blockedLine: "shows once the pump is told to run: a trip within minutes.",
  valveJammed: "no switch tells it; seen in the flow and the draw alone.",
  slowBus: "shows within a few ticks: temperatures are marked late.",
};
export const rigFault = (name, shows) => `${name}: ${shows}`;
