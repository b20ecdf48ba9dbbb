// The record's view, its channels and its marks.

export const title = "Record";
export const about = "Drag to move, pinch or Ctrl and wheel to zoom. By keyboard: Tab to a chart, arrows for the cursor, Shift and arrows to move, + and − to zoom.";

export const howLong = "How long";
export const SPANS = { sixHours: "6 hours", day: "Day", threeDays: "3 days", fortnight: "14 days", season: "Season" };
export const moveAndZoom = "Move and zoom";
export const TOOLS = { earlier: "Earlier", later: "Later", closer: "Closer", wider: "Wider", newest: "Newest" };
export const seen = (from, to, span) => `${from} to ${to} (${span})`;

export const choose = "Choose channels";
export const chooseAbout = "Those of one kind share a chart. With none chosen the usual charts are shown.";
export const usual = "The usual charts";

export const decisions = (count) => `${count} ${count === 1 ? "decision" : "decisions"} in this time`;
export const newestDecisions = (count) => `The newest ${count} decisions in this time`;
export const decided = (mode, why) => `${mode}: ${why}`;

/** What a chart of one kind of figure is called. */
export const KINDS = {
  temperature: "Temperatures",
  power: "Heat",
  share: "Duty and opening",
  flow: "Flow",
  electric: "Electric power",
  voltage: "Battery",
  sun: "Sun",
  humidity: "Humidity",
  gas: "Carbon dioxide",
};

export const CHARTS = {
  heap: "Heap temperatures",
  house: "House and outside",
  draw: "Want, means, grant and draw",
  work: "Pump and blower",
};
// Settings of the past may have been others.
export const floor = "Floor, as set now";
export const minimum = "Minimum, as set now";

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
