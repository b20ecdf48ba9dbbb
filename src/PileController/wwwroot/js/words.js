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
  noWant: "the house, which wants no heat",
  means: "what the heap can bear",
  notLit: "the heap, which has not lit yet",
  floor: "the heap's floor",
  reach: "what coil and water can carry",
  rest: "a least run or rest time",
  power: "the battery",
  priming: "the priming of the loop",
  interlock: "an interlock",
  byHand: "a person, who has it by hand",
  probes: "probes that cannot be trusted",
  saving: "heat kept for a colder hour",
};

/** What limits the draw, in words that go on from "Limited by". */
export const curbWords = (curb, mode) => (mode === "servicing" ? "the lock for work on the rig" : CURBS[curb] ?? curb);

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
  tonight: "Night ahead",
};

export const PRIORITIES = { high: "High priority", medium: "Medium priority", low: "Low priority" };

export const ALARM_EVENTS = {
  raised: "Rose",
  returned: "Over by itself",
  seen: "Seen",
  reminded: "Still stands",
  shelved: "Shelved",
  unshelved: "Off the shelf",
  shelfEnded: "Shelf time over",
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

const QUICK = ["supply", "return", "ductAir"];

/** How soon a fault of a probe shows, in words. */
export function showsWhen(kind, reading) {
  const warm = reading.unit === "°C";
  switch (kind) {
    case "stuck":
      return warm ? "Shows late: marked after 2 to 3 hours there." : "Not marked: this probe may well say the same for hours.";
    case "drift":
      return "Not told apart from the truth until it leaves what is believable.";
    case "spike":
      return warm && !QUICK.includes(reading.channel)
        ? "Each wild value is marked at its tick: it moves too fast to be true."
        : "Seen only where a wild value leaves what is believable: this one may move fast.";
    default:
      return "Shows at the next tick.";
  }
}

/** How soon a fault of the rig shows, in words. */
export const RIG_FAULT_SHOWS = {
  deadPump: "shows once the pump is told to run: a trip within minutes.",
  blockedLine: "shows once the pump is told to run: a trip within minutes.",
  valveJammed: "no switch tells it; seen in the flow and the draw alone.",
  slowBus: "shows within a few ticks: temperatures are marked late.",
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
