// The night ahead and the day behind, on the first view.

export const tonight = "Tonight";
export const nothingYet = "Nothing is said of the night yet.";
export const mayFall = "Tonight the house may fall below its minimum";
export const likelyHolds = "Tonight the house is likely to hold";
export const likelyIfRuns = "Likely to hold tonight, but only if heat is given";
export const stopped = "The heat is stopped now. This takes it that the rig runs all night: mend and clear what stops it, or have other heat ready.";
export const made = (moment) => `Made on ${moment}.`;
export const mostLikely = "Coldest house air, most likely";
export const thatIsAbout = "That is about";
export const oneInTenColder = "One night in ten is colder than";
export const oneInTenWarmer = "One night in ten is warmer than";
export const otherHeat = "Other heat to have ready";
export const noHeat = "none";
export const heatFrom = (power, clock) => `${power} from ${clock}`;

/** A chance in words, told in tenths. */
export const chance = (tens) => (tens === 10 ? "nearly sure" : tens === 0 ? "hardly a chance" : `${tens} in 10`);
export const staying = (temperature, until, chanceWords) => `The chance of staying at ${temperature} or above until ${until}: ${chanceWords}.`;
export const byForecast = "From the forecast that was handed over. Backup heat is not counted on.";
export const byLastDays = "From the weather of the last days alone; no forecast covers the night. Backup heat is not counted on.";

export const lastDay = "The last 24 hours";
export const coldest = "Coldest house air";
export const thatWasOn = "That was on";
export const below = "House below its minimum";
export const atNoTime = "at no time";
export const byWater = "Heat by water";
export const byAir = "Heat by air";
export const pumpStarted = "Pump started";
export const times = (count) => (count === 0 ? "not once" : count === 1 ? "once" : `${count} times`);
export const noRecord = (span) => `Of ${span} of it there is no record.`;
