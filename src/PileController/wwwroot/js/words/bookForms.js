// Forms that write into the grower's book.

/** The fields by the names they have in a refusal. */
export const FIELDS = { text: "What", name: "Name", who: "Your name", kilograms: "Kilograms", priceEach: "Price of one", count: "How many", how: "How it is known", heapBuilt: "Heap built on", closedOn: "Last day" };

export const yourName = "Your name, for the book";
export const written = "Written.";

export const openSeason = "Open a season";
export const openIt = "Open it";
export const writeNote = "Write a note";
export const writeIt = "Write it";
export const enterMass = "Enter the heap's mass";
export const enterPart = "Enter a part";
export const enterIt = "Enter it";
export const closeSeason = "Close the season";
export const closeIt = "Close it";

export const whichWay = "Which way";
export const WAYS = { in: "in, when built", out: "out, when taken down" };
export const pounds = "Pounds";
export const KNOWN = { measured: "weighed", guessed: "guessed" };
export const byWhat = "By what";
export const whereFrom = "Where from";
export const ORIGINS = { bought: "bought", reused: "reused: price as new" };
