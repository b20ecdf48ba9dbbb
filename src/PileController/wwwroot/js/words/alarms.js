// Alarms, trips and interlocks.

export const title = "Trips and alarms";
export const about = "An alarm is something a person can do something about. A trip has stopped the rig, and stays until a person clears it.";
export const needName = "Your name is needed, for the record: 1 to 40 letters.";

export const noneStands = "No alarm stands.";
export const noneStood = "When last heard of, no alarm stood.";
export const staysTripped = "It stays tripped until a person clears it, once its cause is gone.";
export const hasTripped = "It has tripped the rig, and stays until a person clears it, once its cause is gone.";
export const clear = "Clear this trip";
export const clearOf = (sentence) => `Clear this trip: ${sentence}`;
export const clearAsked = "Asked for at the next tick. What shows while the rig stands is checked: if the cause shows now, the trip stays and the reason is told. Whether water moves and the pump takes power shows only when the pump next runs; if the cause is still there then, the rig trips again.";

export const since = (moment) => `since ${moment}`;
export const firstUp = "First up: look here first";
export const overByItself = "Over by itself";
export const clearedBy = (who) => (who === "" ? "Trip cleared, by somebody who gave no name" : `Trip cleared by ${who}`);
export const seenBy = (who) => `Seen by ${who}`;
export const notSeen = "Not seen yet";
export const told = (detail) => `Told: ${detail}`;
export const whatToDo = "What to do: ";
export const whatComes = "What comes of it: ";
export const cause = "Cause: ";
export const follows = (names) => `Follows from it and is held back: ${names}.`;
export const see = "I have seen it";
export const seeOf = (name) => `I have seen it: ${name}`;
export const seen = (name) => `Noted: ${name} has been seen.`;

export const shelveAWhile = "Shelve for a while";
export const shelveAWhileOf = (name) => `Shelve for a while: ${name}`;
export const shelveAbout = "For an alarm you know of and work on. It is not listed, sent or lit until the time is over.";
export const shelveLongest = (span) => ` It protects people, so ${span} is the longest.`;
export const howLongOf = (name) => `For how long: ${name}`;
export const shelve = "Shelve";
export const shelveNowOf = (name) => `Shelve now: ${name}`;
export const shelved = (name, span) => `${name} is on the shelf for ${span}, and comes back by itself.`;
export const onTheShelf = "On the shelf";
export const stands = " (stands)";
export const standsNot = " (does not stand now)";
export const shelfUntil = (priority, until, who) => `${priority}. Until ${until}, by ${who}.`;
export const unshelve = "Take off the shelf";
export const unshelveOf = (name) => `Take off the shelf: ${name}`;
export const unshelved = (name) => `${name} is off the shelf.`;

export const lately = "Lately";
export const latelyAll = "What happened lately";
export const nothingYet = "Nothing yet.";
export const RECENT_COLUMNS = ["When", "What", "Alarm"];
export const EVENTS = {
  raised: "Rose",
  returned: "Over by itself",
  seen: "Seen",
  reminded: "Still stands",
  shelved: "Shelved",
  unshelved: "Off the shelf",
  shelfEnded: "Shelf time over",
};
export const event = (name, who, first) => `${name}${who ? `, ${who}` : ""}${first ? ", first up" : ""}`;
export const eventOf = (name, priority, detail) => `${name} (${priority.toLowerCase()})${detail ? `: ${detail}` : ""}`;

export const interlocks = "All interlocks";
export const interlocksAbout = "They look at every decision before it reaches the rig.";
export const INTERLOCK_COLUMNS = ["Now", "Watches for", "What it does"];
export const acts = (verdict, action, remedy) => `${verdict}; ${action}. ${remedy}`;
