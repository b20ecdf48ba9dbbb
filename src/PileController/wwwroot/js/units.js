// Everything arrives in SI; this is the one place where it is turned into what a person chose to read.

import { choice } from "./choice.js";
import { THOUSANDS, wattsPer } from "./words/calendar.js";

const DASH = "–";

/** A number, or one as text, with its thousands set apart; for at most two decimals. */
export const many = (number) => String(number).replace(/\B(?=(?:\d{3})+(?:\.|$))/g, THOUSANDS);

const round = (digits) => (value) => many(value.toFixed(digits));
const whole = (value) => many(Math.round(value));

const METRIC = {
  temperature: { unit: "°C", of: (x) => x, write: round(1) },
  kelvin: { unit: "K", of: (x) => x, write: round(1) },
  fineKelvin: { unit: "K", of: (x) => x, write: round(2) },
  power: { unit: "W", of: (x) => x, write: whole },
  flow: { unit: "L/min", of: (x) => x, write: round(1) },
  bucket: { unit: "L", of: (x) => x, write: round(2) },
  energy: { unit: "kWh", of: (x) => x, write: round(1) },
  volume: { unit: "L", of: (x) => x, write: whole },
  seasonEnergy: { unit: "kWh", of: (x) => x, write: whole },
  length: { unit: "m", of: (x) => x, write: round(2) },
  bore: { unit: "mm", of: (x) => x, write: round(1) },
  pipe: { unit: "m", of: (x) => x, write: round(1) },
  mass: { unit: "kg", of: (x) => x, write: whole },
  bulk: { unit: "m³", of: (x) => x, write: round(1) },
  area: { unit: "m²", of: (x) => x, write: round(1) },
  density: { unit: "kg/m³", of: (x) => x, write: whole },
  speed: { unit: "m/s", of: (x) => x, write: round(2) },
  airFlow: { unit: "m³/h", of: (x) => x * 3600, write: whole },
  conductance: { unit: "W/K", of: (x) => x, write: round(1) },
  pumping: { unit: wattsPer("L/min"), of: (x) => x, write: round(1) },
  degreeHours: { unit: "K·h", of: (x) => x, write: whole },
};

const AMERICAN = {
  temperature: { unit: "°F", of: (x) => x * 1.8 + 32, write: round(1) },
  kelvin: { unit: "°F", of: (x) => x * 1.8, write: round(1) },
  fineKelvin: { unit: "°F", of: (x) => x * 1.8, write: round(2) },
  power: { unit: "BTU/h", of: (x) => x * 3.412142, write: whole },
  flow: { unit: "gal/min", of: (x) => x / 3.785412, write: round(2) },
  bucket: { unit: "gal", of: (x) => x / 3.785412, write: round(2) },
  energy: { unit: "kBTU", of: (x) => x * 3.412142, write: round(1) },
  volume: { unit: "gal", of: (x) => x / 3.785412, write: whole },
  seasonEnergy: { unit: "kBTU", of: (x) => x * 3.412142, write: whole },
  length: { unit: "ft", of: (x) => x / 0.3048, write: round(1) },
  bore: { unit: "in", of: (x) => x / 25.4, write: round(2) },
  pipe: { unit: "ft", of: (x) => x / 0.3048, write: whole },
  mass: { unit: "lb", of: (x) => x / 0.45359237, write: whole },
  bulk: { unit: "yd³", of: (x) => x / 0.764554858, write: round(1) },
  area: { unit: "ft²", of: (x) => x / 0.09290304, write: whole },
  density: { unit: "lb/yd³", of: (x) => x * 1.685555, write: whole },
  speed: { unit: "ft/s", of: (x) => x / 0.3048, write: round(1) },
  airFlow: { unit: "ft³/min", of: (x) => x * 2118.880, write: whole },
  conductance: { unit: "BTU/h·°F", of: (x) => x * 1.895634, write: round(1) },
  pumping: { unit: wattsPer("gal/min"), of: (x) => x * 3.785412, write: round(1) },
  degreeHours: { unit: "°F·h", of: (x) => x * 1.8, write: whole },
};

const COMMON = {
  share: { unit: "%", of: (x) => x * 100, write: round(0) },
  electric: { unit: "W", of: (x) => x, write: round(1) },
  electricEnergy: { unit: "kWh", of: (x) => x, write: round(2) },
  voltage: { unit: "V", of: (x) => x, write: round(2) },
  sun: { unit: "W/m²", of: (x) => x, write: round(0) },
  humidity: { unit: "%", of: (x) => x, write: round(0) },
  gas: { unit: "ppm", of: (x) => x, write: whole },
  count: { unit: "", of: (x) => x, write: round(0) },
  wattHours: { unit: "Wh", of: (x) => x, write: whole },
};

const chosen = choice("units", ["metric", "american"]);
let offered = "metric";

/** The system in use: "metric" or "american". */
export const system = () => chosen.get() ?? offered;

/** Takes the place's own units until a person chooses. */
export function offer(units) {
  offered = units;
}

/** Goes over to the other system and remembers it here. */
export function toggle() {
  chosen.set(system() === "metric" ? "american" : "metric");
}

const row = (kind) => (system() === "metric" ? METRIC : AMERICAN)[kind] ?? COMMON[kind];

/** The unit of a kind. */
export const unit = (kind) => row(kind).unit;

/** A number in the chosen unit. */
export const convert = (kind, value) => row(kind).of(value);

/** A number as text without its unit; a dash when there is none. */
export const bare = (kind, value) =>
  value === null || value === undefined ? DASH : row(kind).write(row(kind).of(value)).replace(/^-/, "−");

/** A number as text with its unit; the two never part at the end of a line. */
export function full(kind, value) {
  const text = bare(kind, value);
  const name = unit(kind);
  return text === DASH || name === "" ? text : `${text}\u00a0${name}`;
}

// Quantities of the settings file by the sign of their unit there: kind, how many of it one is, decimals that mean
// something. Watts and watt-hours are left out: most of those in the settings are electric.
const FILED = {
  "°C": ["temperature", 1, 1],
  K: ["fineKelvin", 1, 2],
  mm: ["bore", 1, 1],
  m: ["length", 1, 2],
  m2: ["area", 1, 2],
  m3: ["bulk", 1, 2],
  L: ["volume", 1, 1],
  kg: ["mass", 1, 1],
  "kg/m3": ["density", 1, 1],
  "L/min": ["flow", 1, 2],
  "m3/h": ["airFlow", 1 / 3600, 1],
  "W/K": ["conductance", 1, 2],
};

const QUANTITY = /^([−-]?\d+(?:\.\d+)?) (\S+)$/;

/** A quantity of the settings as it is written there, no finer than it was meant: 43 °F are 6.111111111111111 °C. */
export const tidy = (text) => text.replace(QUANTITY, (whole, figure, sign) => {
  const digits = FILED[sign]?.[2] ?? 4;
  return figure.length - figure.indexOf(".") > 5 && figure.includes(".") && Math.abs(Number(figure)) >= 10 ** -digits
    ? `${Number(Number(figure).toFixed(digits))} ${sign}` : whole;
});

/** The same quantity in the chosen units; null where the file has it in those already. */
export function chosenFor(text) {
  const [, figure, sign] = QUANTITY.exec(text) ?? [];
  const [kind, factor] = system() === "american" ? FILED[sign] ?? [] : [];
  const value = kind === undefined ? NaN : Number(figure.replace("−", "-")) * factor;
  // What is too small for the decimals of its kind, a permeability say, would be told as nought.
  return Number.isNaN(value) || (value !== 0 && /^−?[0.]+$/.test(bare(kind, value)) && kind !== "temperature") ? null : full(kind, value);
}

/** A number from the chosen unit back in SI. */
export function back(kind, shown) {
  const zero = convert(kind, 0);
  return (shown - zero) / (convert(kind, 1) - zero);
}

/** A power in both systems, where the two are to be seen side by side. */
export const bothPowers = (watts) => `${whole(watts)}\u00a0W, ${whole(AMERICAN.power.of(watts))}\u00a0BTU/h`.replaceAll("-", "−");

/** A sentence of the controller's with thousands set apart as everywhere, and each figure and its unit on one line; nothing stays nothing. */
export const together = (text) => (text === null || text === undefined ? text : text
  .replace(/(\d)[ ,](?=\d{3}(?!\d))/g, `$1${THOUSANDS}`)
  .replace(/\d{4,}(?= (?:W|Wh|kWh|BTU|kBTU|kg|lb|L|gal|h|ppm)\b)/g, (figure) => many(figure))
  .replace(/(\d) (?=W\b|K\b|L\/min|°|BTU|gal|kWh|%|h\b)/g, "$1\u00a0"));

// Figures within the controller's sentences. A bare "K" stays: where one is told, the other stands beside it.
const FIGURES = [
  [/([−-]?\d+(?:\.\d+)?)[ \u00a0]°C/g, "temperature"],
  [/(\d+(?:\.\d+)?)[ \u00a0]L\/min/g, "flow"],
];

const HEAT = [/(\d{1,3}(?:[ \u00a0]\d{3})+|\d+)[ \u00a0]W\b(?!\/)/g, "power"];

/** A sentence that the controller tells in metric units only, in the chosen ones; its watts only where they are heat. */
export function inUnits(text, heat = false) {
  if (!text || system() === "metric") {
    return text;
  }
  const all = heat ? [...FIGURES, HEAT] : FIGURES;
  return all.reduce((said, [figures, kind]) => said.replace(figures, (_, figure) => full(kind, Number(figure.replace("−", "-").replace(/\s/g, "")))), text);
}

/** The kind that goes with a unit on the wire. */
export const kindOf = (wire, channel) =>
  channel === "pumpPower" || channel === "blowerPower" ? "electric"
    : ({ "°C": "temperature", W: "power", "L/min": "flow", V: "voltage", "W/m²": "sun", "%": "humidity", ppm: "gas" })[wire] ?? "count";
