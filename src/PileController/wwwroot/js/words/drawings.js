// What stands in and under the drawings of the first view.

export const BARS = {
  want: { name: "Want", about: "what the house would like" },
  means: { name: "Means", about: "what the heap can bear" },
  grant: { name: "Grant", about: "what is allowed" },
  draw: { name: "Draw", about: "what is taken now" },
};
export const split = (water, inferred, air) =>
  `Water ${water}${inferred ? " (inferred: a probe is missing)" : ""}, air ${air}. The fine line on the draw is its error band.`;

/** A probe's name without what stands over the drawing anyway. */
export const shortName = (name) => name.replace(/^Heap (at the )?/, "");
export const fault = "✕ fault";
export const LEGEND = { drum: "drum", turns: "coil turns", ducts: "ducts", probes: "probes" };
export const size = (wide, high) => `${wide} wide, ${high} high`;
export const heapAs = (sizeWords, probes) => `Heap ${sizeWords}. ${probes}.`;
export const toScale = (unit, measured) =>
  `Drawn to scale, in ${unit}. Numbers are measured; the shading is ${measured ? "a guess from them" : "what the controller believes of the heap along its radius"}.`;

export const heap = "Heap";
export const house = "House";
export const supply = "Supply";
export const back = "Return";
export const noProbe = (name) => `${name}: no probe`;
export const notRead = (name, why) => `${name}: ${why}`;
export const flow = (figure) => `Flow ${figure}`;
export const noFlow = "No flow";
export const pump = (share, power) => `Pump ${share}, ${power}`;
export const pumpOff = "Pump off";
export const valveOpen = (share) => `Valve open ${share}`;
export const valveShut = "Valve shut";
export const air = (temperature) => `Air ${temperature}`;
export const setPoint = (temperature) => `Set point ${temperature}`;
export const minimum = (temperature) => `Minimum ${temperature}`;
export const tank = (temperature) => `Tank ${temperature}`;
export const blower = (share, temperature) => `Blower ${share ?? "off"}, duct air ${temperature}`;
