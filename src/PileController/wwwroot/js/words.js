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
  takenOut: "taken out, in a warm hand",
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
    case "takenOut":
      return "It goes to 33 °C, as in a hand: a heap probe is marked for a minute, since no heap moves so fast; then it is believed.";
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
  valveOpening: "Valve",
  generation: "Heat made",
};

export const SECTIONS = {
  site: "Place",
  units: "Units",
  heap: "Heap",
  house: "House",
  loop: "Water circuit",
  air: "Blower and ducts",
  power: "Battery and solar panel",
  control: "Controller",
  interlocks: "Interlocks",
  rig: "Probes and actuators",
  record: "Record",
  panel: "Page",
  forecast: "Forecast",
  plan: "Plan",
};

export const SETTINGS = {
  about: "What is in force. A change lies over the settings file, which is never rewritten; write quantities with their unit, °F or °C alike. Limits of interlocks can be tightened from here, not loosened.",
  restart: "The controller stops for a few seconds with its outputs safe, and goes on with these settings. What is held by hand ends. Should it not start with them, it takes them back and says so here.",
};

/** What could have been otherwise at a tick; `full` writes a figure in the chosen units. */
export const OTHERWISE = {
  houseWarmer: (full) => `With the house ${full("kelvin", 2)} warmer`,
  houseColder: (full) => `With the house ${full("kelvin", 2)} colder`,
  outsideWarmer: (full) => `With the air outside ${full("kelvin", 5)} warmer`,
  outsideColder: (full) => `With the air outside ${full("kelvin", 5)} colder`,
  floorLower: (full) => `With the heap's floor ${full("kelvin", 2)} lower`,
  floorHigher: (full) => `With the heap's floor ${full("kelvin", 2)} higher`,
  noReserve: () => "With no heat kept back for the coldest weeks",
  setPointHigher: (full) => `With the house's set points ${full("kelvin", 2)} higher`,
  batteryFuller: () => "With the battery 1 V higher",
  batteryEmptier: () => "With the battery 1 V lower",
  noLeastTimes: () => "With no least run and rest of the pump",
  nothingByHand: () => "With nothing held by hand",
};
