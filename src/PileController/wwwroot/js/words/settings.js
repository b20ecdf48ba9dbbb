// The settings' view.

/** Groups of settings by the first part of their path. */
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
  alarms: "Alarms",
  plan: "Plan",
};

export const title = "Settings";
export const about = "What is in force. A change lies over the settings file, which is never rewritten; write quantities with their unit, °F or °C alike. Limits of interlocks can be tightened from here, not loosened.";
export const restart = "The controller stops for a few seconds with its outputs safe, and goes on with these settings. What is held by hand ends. Should it not start with them, it takes them back and says so here.";

export const find = "Find a setting";
export const yes = "yes";
export const no = "no";
export const allowed = (doc, range) => `${doc} Allowed: ${range}.`;
/** A value as the file has it, and in the units a person chose. */
export const inOwnUnits = (value, own) => `${value} (${own})`;
export const asOwn = (own) => `= ${own}`;
export const onlyOneWay = (way, file) => ` From here only ${way} than ${file}, which the file says.`;
export const changedHere = (file) => `Changed on this page; the file says ${file}. `;
export const backToFile = "Back to the file's";
export const inFileOnly = (why) => `In the file only: ${why}.`;
export const section = (name, changed) => `${name}${changed > 0 ? ` (${changed} changed on this page)` : ""}`;

export const change = "Change";
export const look = "See what would change";
export const apply = "Apply";
export const drop = "Drop my changes";
export const wouldChange = "What would change";
export const COLUMNS = ["Setting", "Is now", "Would be"];
export const nothingChanges = "Nothing would change.";
export const wrongValue = (given, range) => `Not ${given}. Allowed: ${range}.`;
export const wrong = (count, others) => `${count === 1 ? "One thing is" : `${count} things are`} wrong; nothing is changed. ${others}`;
export const noName = "Your name: nothing is given. It goes into the record.";
export const written = "Written. The controller is starting with it.";
export const inForce = "In force.";
export const otherInForce = "The controller runs with other settings than asked for; see above.";

export const changesMade = "Changes made on this page";
export const noneYet = "None yet.";
export const past = (when, path, was, is, who, from) => `${when}: ${path} from ${was} to ${is}, by ${who} (from ${from})`;
