// What an interlock finds and what it does.

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
