// The plan's view: what is tried, the drawing of it, advice.

export const title = "Plan";
export const about = "Try other turns or another heap and see what it would give. Trying changes nothing on the rig and nothing in the settings.";
export const reckoning = "Reckoning…";
export const asBuilt = "as it is built";
export const moreThanBuilt = (power) => `${power} more than as built`;
export const lessThanBuilt = (power) => `${power} less than as built`;
export const mean = (power, beside) => `${power} on the season's mean, ${beside}.`;
/** Marks what was reckoned before a change. */
export const old = "from before your change";

export const sheet = "Build sheet";
export const sheetAbout = "One page with the heap, the turns, the pipe list and the order of building, for what is tried above.";
export const sheetOpen = "Open the build sheet to print";

export const tryIt = "Try it otherwise";
export const whatYouTry = "What you try";
export const tryAbout = "Turns keep their number when their radius changes, so the pipe gets longer or shorter. A wider heap is more of the same chips. The number beside a slider may be typed.";
export const reset = "Back to as built";
export const FIELDS = { turns: "Turns of pipe", radiusM: "Radius of the turns", heapRadiusM: "Radius of the heap", coverM: "Cover" };
export const fieldAsBuilt = (figure) => `${figure}, as built`;
export const fieldTried = (figure, built) => `${figure}, built ${built}`;
export const typed = (name, unit) => `${name}, ${unit || "number"}`;

export const drawing = "Heap as tried, cut through the middle";
export const size = (wide, high) => `${wide} wide, ${high} high`;
export const pipe = (turns, radius, length) => `${turns} turns at ${radius}, ${length} of pipe`;
export const noPipe = "no pipe in it";
export const pipeAndCover = (pipeWords, cover, differs) => `${pipeWords}; cover ${cover}.${differs ? " The broken line is the heap as it is built." : ""}`;
export const shaded = (temperature) => `Shaded as warm as its hot zone is on the mean while it is lit, ${temperature}.`;
export const cutThrough = (sizeWords, pipeWords) => `Heap cut through the middle, to scale: ${sizeWords}, ${pipeWords}.`;

export const advice = "What to change";
export const noAdvice = "Nothing to change stands out.";
export const notWorthIt = "Not worth it here";
export const claims = "Wishes and what the heap holds";
export const noClaims = "No wish is set.";
export const cautions = "Cautions";
