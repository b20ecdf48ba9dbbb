// Answers of the first view: how house and heap are, and what to take care of.

/** How the house is. */
export const HOUSE = {
  unknown: "House not known: its probe cannot be believed",
  below: "House below its minimum",
  close: "House close to its minimum",
  safe: "House is safe",
  hot: "House is too warm",
  foulAir: "Do not go in: the air in the house is foul",
  airUnknown: "House air not known: its carbon dioxide probe cannot be believed",
};
export const minimum = (temperature) => `Minimum ${temperature}`;
export const setPoint = (temperature) => `Set point ${temperature}`;
export const outside = (temperature) => `Outside ${temperature}`;

/** How the heap is. */
export const HEAP = {
  hot: "Heap too hot: fire watch",
  unknown: "Heap not well known: too few probes",
  notLit: "Heap has not lit yet",
  below: "Heap below its floor",
  near: "Heap near its floor",
  well: "Heap is well",
};
export const floorAndReserve = (floor, reserve) => `Floor ${floor}, reserve ${reserve}`;
export const aDay = (change) => `${change}\u00a0a\u00a0day`;
export const trendDrawing = (trend) => `Of this moment, while drawing: ${trend}`;
export const trend = (change) => `Trend ${change}`;
export const makes = (power) => `Makes ${power} net`;

export const scald = (temperature) => `Scald: loop water is at ${temperature}. Open nothing by hand without gloves and face cover.`;
export const warmTank = (temperature) => `Tank at ${temperature}: warm still water can breed Legionella. Not for drinking or spray.`;
export const heapAir = "The blower draws air through the heap: carbon dioxide, ammonia and spores. Air the house before anyone works in it.";
export const fireWatch = "Heap above its fire-watch limit: do not open it without water at hand.";

const aside = (files) => (files === 1 ? "1 damaged file was set aside" : `${files} damaged files were set aside`);
const unread = (parts) => (parts === 1 ? "1 part cannot be read" : `${parts} parts cannot be read`);
const lost = (files, parts) => (files === 0 ? unread(parts) : parts === 0 ? aside(files) : `${aside(files)}, ${unread(parts)}`);

/** What of the record is damaged, in sentences. */
export const damage = (files, parts, since, newest) =>
  `Record: ${lost(files, parts)}, first found on ${since}; everything else can be read. The newest: ${newest.replace(/\.$/, "")}.`;
