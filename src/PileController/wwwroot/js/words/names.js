// Words that stand for names on the wire, where more than one view says them.

export const MODES = {
  standby: "Standing by",
  priming: "Priming the loop",
  drawing: "Drawing heat",
  recovering: "Letting the heap recover",
  frostGuard: "Guarding the lines from frost",
  byHand: "By hand",
  servicing: "Locked off for work",
  tripped: "Tripped: stopped",
};

export const CURBS = {
  none: "nothing: the house gets what it wants",
  noWant: "the house, which wants no heat",
  means: "what the heap can bear",
  notLit: "the heap, which has not lit yet",
  floor: "the heap's floor",
  reach: "what coil and ducts can carry at this pace",
  rest: "a least run or rest time",
  power: "the battery",
  priming: "the priming of the loop",
  interlock: "an interlock",
  byHand: "a person, who has it by hand",
  probes: "probes that cannot be trusted",
  saving: "heat kept for a colder hour",
};

/** What limits it while somebody works on the rig. */
export const lockedOff = "the lock for work on the rig";

/** What limits the draw, in words that go on from "Limited by". */
export const curbWords = (curb, mode) => (mode === "servicing" ? lockedOff : CURBS[curb] ?? curb);

export const PRIORITIES = { high: "High priority", medium: "Medium priority", low: "Low priority" };

export const ACTUATORS = { pump: "Pump", valve: "Valve", blower: "Blower", backup: "Backup heat" };
