// The list of decisions, and one that is opened.

/** What happened at a decision. */
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

export const title = "Decisions";
export const about = "Each line is a moment at which something changed, and why. Times are those of the place.";
export const filter = "Filter";
export const kind = "Kind";
export const mode = "Mode";
export const anyMode = "any";
export const anyCurb = "anything";
export const upTo = "Up to the day";
export const wordsInIt = "Words in it";
export const more = "Show more";
export const noneFits = "No decision fits.";
export const shown = (count) => `${count} ${count === 1 ? "decision" : "decisions"} of 14 days, newest first.`;

export const open = "Open it";
export const one = "One decision";
export const all = "All decisions";

// Figures of a decision.
export const limitedBy = "Limited by";
export const want = "Want";
export const means = "Means";
export const grant = "Grant";
export const waterDraw = "Water draw";
export const waterMetered = "Water draw, metered";
export const activeZone = "Active zone";
export const houseAir = "House air";
export const tick = "Tick";
export const estimate = "Estimate";
export const trusted = "trusted";
export const notTrusted = "not trusted: the careful rule stands in";
export const heatMade = "Heat made";
export const setPoint = "House set point";
export const outputs = "Told";
export const duty = (pump, valve, blower, backup) => `pump ${pump}, valve ${valve}, blower ${blower}${backup ? ", backup on" : ""}`;

// What is opened.
export const tickOf = (number, kinds) => `, tick ${number}${kinds === "" ? "" : `: ${kinds}`}`;
export const askedBy = (name, known, from) => `Asked for by ${name ?? "somebody"}${known === undefined ? "" : ` (${known})`}, from ${from}.`;
export const KNOWN_BY = { session: "signed in", token: "by a key", loopback: "no passphrase is set" };
export const whatItChose = "What it chose";
export const whatItKnew = "What it knew";
export const interlocks = "Interlocks";
export const verdicts = "Verdict of every interlock";
export const VERDICT_COLUMNS = ["Interlock", "Verdict", "What it does"];
export const otherwise = "What would have changed it";
export const nothingOtherwise = "None of the things tried: a warmer or colder house or day, another floor, reserve, set point or battery, no least run, nothing by hand.";
export const otherwiseAbout = "Each thing alone, at this very tick; what is settled over hours stood as it was. The tick was decided again from the record.";
export const limitedThenBy = (curb) => `limited by ${curb}`;
export const grantThen = (power) => `grant ${power}`;
export const then = (parts) => `: ${parts.join("; ")}.`;

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
