// The grower's book.

export const title = "Ledger";
export const about = "What the heap gave, what it cost, and what you write down, season by season.";
export const season = "Season";
export const noSeason = "All days so far; no season is open";
export const seasonOpen = (name, from) => `${name}, since ${from}`;
export const seasonClosed = (name, from, to) => `${name}, ${from} to ${to}, closed`;
export const report = "Report to print";
export const stillRuns = (what) => `${what} still runs.`;
export const howToRead = "How to read it";

// What a stretch of days came to.
export const hours = (count) => `${count} h`;
export const band = (figure, error) => `${figure} ± ${error}`;
export const byWater = "Heat by water";
export const byAir = "Heat by air, reckoned";
export const unmetered = "Reckoned without a meter";
export const unmeteredOf = (inferred, running) => `${inferred} of ${running} with the pump on`;
export const none = "none";
export const electric = "Pump and blower, electric";
export const waterMoved = "Water moved";
export const daysCounted = "Days counted";
export const daysOf = (days, recorded) => `${days}, ${recorded} recorded`;
export const belowFloor = "Heap below its floor";
export const frostGuard = "Frost guard";
export const pumpStarts = "Pump starts";
export const trips = "Trips";
export const nightsKept = "Nights the house kept its minimum";
export const nightsOf = (kept, nights) => `${kept} of ${nights}`;
export const coldest = "Coldest of them";
export const noneYet = "none yet";
export const coldestOf = (date, outside, house) => `${date}: ${outside} outside, ${house} in the house`;

export const money = "Money";
export const heatAs = (fuel) => `The heat as ${fuel}`;
export const electricity = "Electricity";
export const saved = "Saved";
export const parts = "Parts, not taken off";
export const partsOf = (paid, spared) => `${paid} paid, ${spared} spared by reuse`;

export const byDay = "By day and month";
export const months = "Months";
export const month = "Month";
export const days = "Days";
export const day = "Day";
export const columns = (energy) => [`By water, ${energy}`, "±", `By air, ${energy}`, "Electric, kWh", "Pump starts", "Below floor, h"];

export const written = "Written in the book";
export const heapIn = "Heap in, wet";
export const heapOut = "Heap out";
export const notEntered = "not entered";
export const massOf = (mass, known, how) => `${mass}, ${known}${how === null ? "" : `: ${how}`}`;
export const partOf = (count, name, reused, price) => `${count} × ${name}, ${reused ? "reused; new it would have cost" : "bought for"} ${price}`;
export const by = (who, when) => `${who}, ${when}`;
