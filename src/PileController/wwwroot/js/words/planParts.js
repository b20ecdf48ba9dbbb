// The plan's parts: air, house, loop and heap.

export const air = "Air: closed duct or through the heap";
export const airTable = "Closed duct and air through the heap";
export const airAbout = "Air out of a heap carries carbon dioxide, ammonia and spores: not into a house where people work. The water it takes must be given back. Local codes and licensed trades decide.";
export const airFlow = (flow, times, tooMuch) =>
  `${flow} either way${times === null ? "" : `, ${times} times the closed duct's heat from the same air`}. Most of what moist air brings is in its water.${tooMuch ? " No heap keeps that up: it is more than this one makes in its best week, so so much air would cool it within hours." : ""}`;
export const noAir = "The blower moves no air.";
export const AIR_COLUMNS = ["Heat", "Closed duct", "Through the heap"];
export const AIR = {
  warmth: "Warmth of the air",
  moisture: "In its moisture",
  together: "Together",
  leavesAt: "Air leaves at",
  nearHeap: "near the heap's own warmth",
  waterLost: "Water the heap loses, a day",
  oxygenIn: "Oxygen it brings, a day",
  oxygenWanted: "Oxygen the heap wants, a day",
  none: "none",
};

export const house = "House on its worst night";
export const houseTable = "What changes to the house would save";
export const houseLoses = (outside, inside, loss, share, season) =>
  `At ${outside} outside and ${inside} within the house loses ${loss}${share === null ? "" : `; the heap's mean is ${share}\u00a0% of that`}. The season has ${season} of cold.`;
export const HOUSE_COLUMNS = ["House", "Worst night", "Season", "Saves"];
export const asItIs = "As it is";
export const HOUSE_CHANGES = {
  curtain: "Close night curtain",
  secondSkin: "Second skin",
  thermalMass: "More thermal mass",
  draughts: "Half the leaks",
  lowerSetPoint: "Lower set point",
};

export const loop = "Pump on its loop";
export const LOOP = {
  flow: "Flow at full pump, valve open",
  head: "Head the pump makes",
  power: "Pump power",
  perFlow: "For each bit of flow",
  aDay: "Electricity a day",
  speed: "Speed in the pipe",
  purges: "Clears itself of air",
  round: "Once round the loop",
  freezes: "Still water in the line freezes after",
};
export const yes = "yes";
export const bleed = "no: bleed it by hand";
export const nothingFlows = "nothing flows";
export const freezesNot = "not on the design night";

export const heap = "Heap and turns";
export const HEAP = {
  wet: "Chips, wet",
  dry: "Of that dry",
  moisture: "Moisture",
  volume: "Volume",
  surface: "Surface",
  density: "Density as laid",
  airSpace: "Free air space",
  rots: "Can rot within a season",
  waterLost: "Water it loses in the season",
  firstHour: "Turns, first hour",
  month: "Turns, after a month of draw",
};
