// The plan's figures: what a heap gives, beside the heap as built, week by week.

export const figure = "Figure";
export const built = "As built";
export const tried = "As tried";
export const change = "Change";

export const give = "What this heap can give";
export const takes = (mean, days, most, week) =>
  `Its turns can take ${mean} on the mean of ${days} days, if the house asks for it every hour, and leave it lit; the most is ${most}, in week ${week}.`;
export const noPipe = "There is no pipe in it to take heat.";
const covers = (share) => (share >= 100 ? "covers that" : `is ${Math.round(share)}\u00a0% of it, so it does not hold the house alone`);
export const worstNight = (outside, loss, inside, share) =>
  `Worst night: at ${outside} outside the house loses ${loss} held at ${inside}. The heap's mean ${covers(share)}.`;
export const build = (volume, mass, pipe, radius, flow, head) =>
  `For that: ${volume} of chips (${mass} wet), ${pipe} of pipe at ${radius} from the axis, a pump that moves ${flow} against ${head}.`;
export const ofAll = (energy, most) => `That is ${energy} of the ${most} its solids could give if all that can rot did.`;
export const weather = (name) => `Reckoned on ${name}.`;

export const day = (number) => `day ${number}`;
export const dayOn = (number, date) => `day ${number} (${date})`;
export const noDay = "not";
export const neverLights = (days) => `It does not light within ${days} days.`;
export const lights = (on, fades) => `It lights on ${on} and ${fades}.`;
export const neverFades = (days) => `does not fade within ${days} days`;
export const fades = (on, last) => `is past its best on ${on}, when it makes less than half of that; it goes on more weakly, in the last week with ${last}`;

export const beside = "Beside the heap as it is built";
export const besideTable = "As built and as tried";
export const nothingTried = "Nothing is tried otherwise yet. Move a slider and both stand here side by side.";
export const changeIs = "The change is what was tried less what is built.";
export const days = "d";
export const ROWS = {
  drawn: "Heat drawn, mean",
  drawnAll: "Heat drawn, all season",
  made: "Heat made while lit, mean",
  hotZone: "Hot zone while lit, mean",
  lights: "Lights on",
  fades: "Past half of its best on",
  pipe: "Pipe",
  flow: "Flow at full pump",
  chips: "Chips, wet",
  waterLost: "Water it loses",
};

export const weeks = "Week by week";
export const heatByWeek = "Heat by week";
export const warmthByWeek = "Warmth by week";
export const LINES = { generatedWatts: "Made", lostWatts: "Lost by itself", drawnWatts: "Drawn", activeZoneC: "Hot zone", turnsC: "At the turns" };
export const floor = "Floor";

export const places = "The same pipe elsewhere";
export const noPlaces = "There is no pipe, or no room for it at another radius.";
export const placesAbout = (length) => `${length} of pipe at other distances from the axis, heat drawn on the season's mean. Heat creeps to the pipe through the chips: where the turns lie decides more than the pump.`;
export const hereBuilt = "as built";
export const hereTried = "as tried";
export const most = "the most";
