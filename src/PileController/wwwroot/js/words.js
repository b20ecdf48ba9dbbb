// All words that stand for names on the wire.

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
  noWant: "the house wants no heat",
  means: "what the heap can bear",
  notLit: "the heap has not lit yet",
  floor: "the heap's floor",
  reach: "what coil and water can carry",
  rest: "a least run or rest time",
  power: "the battery",
  priming: "priming",
  interlock: "an interlock",
  byHand: "a person has it by hand",
  probes: "probes that cannot be trusted",
  saving: "heat kept for a colder hour",
};

// A figure and its unit stay on one line.
export const together = (text) =>
  text.replace(/(\d) (?=\d{3}\b|W\b|K\b|L\/min|°|BTU|gal|kWh|%|h\b)/g, "$1\u00a0");

export const KINDS = {
  mode: "Mode",
  curb: "Curb",
  trip: "Trip",
  clear: "Clearing",
  hand: "By hand",
  probe: "Probe",
  warning: "Warning",
  start: "Start",
};

export const ACTUATORS = { pump: "Pump", valve: "Valve", blower: "Blower", backup: "Backup heat" };

export const VERDICTS = {
  clear: "clear",
  pending: "limit passed, waiting",
  acting: "acting now",
  latched: "tripped",
  blind: "blind: its probe cannot be believed",
};

export const ACTIONS = {
  trip: "stops the rig",
  holdWater: "holds the water",
  holdAir: "holds the blower",
  holdAll: "holds all draw",
  guardFrost: "moves water against frost",
  warn: "says so only",
};

export const PROBE_FAULTS = {
  open: "broken wire",
  short: "shorted",
  stuck: "stuck",
  drift: "drifting",
  spike: "spikes",
};

export const RIG_FAULTS = {
  deadPump: "Pump does not turn",
  blockedLine: "Line blocked",
  valveJammed: "Valve jammed",
  slowBus: "Probe bus slow",
};

export const SERIES = {
  heapCore: "Core",
  heapMiddle: "Middle",
  heapTurns: "At the turns",
  heapEdge: "Edge",
  activeZone: "Active zone",
  house: "House air",
  outside: "Outside",
  setPoint: "Set point",
  want: "Want",
  means: "Means",
  grant: "Grant",
  waterDraw: "Water draw",
  airDraw: "Air draw",
  pumpDuty: "Pump",
  blowerDuty: "Blower",
};
