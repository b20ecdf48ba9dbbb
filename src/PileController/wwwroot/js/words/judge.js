// Answers of the first view: how house and heap are, and what to take care of.

export const houseUnknown = "House not known: its probe cannot be believed";
export const houseBelow = "House below its minimum";
export const houseClose = "House close to its minimum";
export const houseSafe = "House is safe";
export const minimum = (temperature) => `Minimum ${temperature}`;
export const setPoint = (temperature) => `Set point ${temperature}`;
export const outside = (temperature) => `Outside ${temperature}`;

export const heapHot = "Heap too hot: fire watch";
export const heapUnknown = "Heap not well known: too few probes";
export const heapNotLit = "Heap has not lit yet";
export const heapBelow = "Heap below its floor";
export const heapNear = "Heap near its floor";
export const heapWell = "Heap is well";
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
