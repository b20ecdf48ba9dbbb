// The first view.

export const title = "Now";
export const house = "House";
export const heap = "Heap";
export const waiting = "Waiting";
export const cautions = "Cautions";
export const heapCut = "Heap, cut through the middle";
export const draw = "Draw";
export const loopAndHouse = "Loop and house";
export const sinceBeginning = "Since the controller first ran";
/** Of the demo, which opens with a heap that has been run for weeks. */
export const beforeTheRecord = "This holding's controller has run since its heap was built, longer than its record goes back. The Ledger counts what is recorded, and so less.";

/** What was true when the controller was last heard of. */
export const before = (says, span) => `${says.replace(" is ", " was ")}, ${span} ago`;
/** What is taken of the heap. */
export const draws = (power) => `Draws ${power}`;
/** Of which moment it is what the controller wrote into the page itself. */
export const asOf = (moment) => `As of ${moment}`;
export const limitedBy = (curb) => `Limited by ${curb}.`;
export const since = (moment, span) => `Since ${moment} (${span}).`;

export const byWater = "Heat by water";
export const byAir = "Heat by air";
export const electric = "Pump and blower, electric";
export const waterMoved = "Water moved";
export const record = "Record";
export const writing = "writing";
export const notWriting = (fault) => `not writing: ${fault ?? "no reason known"}`;
export const damaged = "; damaged, see above";
export const dropped = "Ticks dropped by the record";
export const missed = "Ticks missed";
