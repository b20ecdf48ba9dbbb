// The words of the rig's view; they follow into the folder words when that view does.

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
