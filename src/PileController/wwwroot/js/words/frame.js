// Every text a person reads on the page stands in this folder, a file a view: constants, and small functions for
// sentences with figures, which are handed in as text. What must be readable before any script runs stands in
// index.html, and what the controller says comes from it. DEVELOPERS tells how to translate.
//
// This file: what stands round the views, and what is said where the controller does not answer.

/** The views by their names. */
export const NAMES = {
  now: "Now",
  record: "Record",
  hand: "By hand",
  trips: "Alarms",
  decisions: "Decisions",
  ledger: "Ledger",
  rig: "Rig",
  commission: "Commission",
  plan: "Plan",
  settings: "Settings",
  more: "More",
  signIn: "Sign in",
};

/** What the views behind "More" are for. */
export const ABOUT = {
  decisions: "What was decided, when and why",
  ledger: "Heat, electricity, mass and money of the season",
  rig: "Probes and actuators",
  plan: "What another heap, cover or season would give",
  settings: "What the controller is told and may do",
};

export const moreViews = "More views";

/** Stands for the holding until its name has come. */
export const noHolding = "Heap and house";

export const notFetched = "The controller cannot be reached, so this view cannot be fetched. Choose it again once there is news.";
export const notReached = "The controller cannot be reached.";
export const answered = (status) => `The controller answered ${status}.`;

export const demoAsFast = (holding) => `Demo: ${holding}, an invented holding. Its clock runs as fast as yours.`;
export const demoAnHour = (holding) => `Demo: ${holding}, an invented holding. One minute here is one hour there.`;
export const demoFaster = (holding, span) => `Demo: ${holding}, an invented holding. One minute here is ${span} there.`;

export const alarmsAsking = (count) => `Alarms (${count})`;
const worstOf = (priority) => (priority === null ? "" : `, the worst of ${priority.toLowerCase()}`);
export const toBeSeen = (count, worst) => `${count} to be seen${worstOf(worst)}`;
const unseen = (count, worst) => (count === 0 ? "" : `${count} ${count === 1 ? "alarm" : "alarms"} not seen yet${worstOf(worst)}.`);
export const spoken = (mode, trips, alarms, worst) => `${mode}. ${trips > 0 ? `${trips} tripped.` : ""} ${unseen(alarms, worst)}`;

/** How the page stands with the controller. */
export const LINK = {
  waiting: () => "Waiting for news",
  silent: (seconds) => `No news for ${seconds} s`,
  live: () => "Live",
};
export const stale = "No news from the controller. The numbers below are old. This page goes on trying to reach it.";

/** The button that goes over to the other units. */
export const UNITS = {
  metric: "Units: °C, watts and litres. Change",
  american: "Units: °F, BTU and gallons. Change",
};

/** The button that goes over to other colours. */
export const SCHEMES = {
  system: "Colours: as your system has them. Change",
  light: "Colours: light. Change",
  dark: "Colours: dark. Change",
};

export const signedIn = "Signed in";
export const access = "Access";
export const signedInAs = (name) => `Signed in as ${name}. Sign out, and more`;
