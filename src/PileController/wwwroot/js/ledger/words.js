import { bare, full, unit } from "../units.js";

const hours = (value) => `${Math.round(value).toLocaleString("en-US")} h`;
const fine = (value) => (Math.abs(value) < 100 ? "energy" : "seasonEnergy");

/** Heat by water with its error band, both as finely. */
export const water = (sum) => `${bare(fine(sum.waterKWh), sum.waterKWh)} ± ${full(fine(sum.waterKWh), sum.waterErrorKWh)}`;

/** Heat without a band. */
export const heat = (value) => full(fine(value), value);

/** What a stretch of days came to, by rows. */
export const rows = (sum) => [
  ["Heat by water", water(sum)],
  ["Heat by air, reckoned", heat(sum.airKWh)],
  ["Reckoned without a meter", sum.inferredHours > 0 ? `${hours(sum.inferredHours)} of ${hours(sum.runningHours)} with the pump on` : "none"],
  ["Pump and blower, electric", full("electricEnergy", sum.pumpKWh + sum.blowerKWh)],
  ["Water moved", full("volume", sum.litres)],
  ["Days counted", `${sum.days}, ${hours(sum.recordedHours)} recorded`],
  ["Heap below its floor", hours(sum.belowFloorHours)],
  ["Frost guard", hours(sum.frostGuardHours)],
  ["Pump starts", sum.pumpStarts.toLocaleString("en-US")],
  ["Trips", String(sum.trips)],
  ["Nights the house kept its minimum", `${sum.nightsKept} of ${sum.nights}`],
  ["Coldest of them", sum.coldestNightKept === null ? "none yet"
    : `${sum.coldestNightKept.date}: ${full("temperature", sum.coldestNightKept.outsideC)} outside, ${full("temperature", sum.coldestNightKept.houseC)} in the house`],
];

const money = (value, sign) => `${value.toFixed(2)} ${sign}`;

/** What a season saved, by rows. */
export const moneyRows = (m) => [
  [`The heat as ${m.fuel}`, `${money(m.heatWorth, m.money)} ± ${money(m.heatWorthError, m.money)}`],
  ["Electricity", money(m.electricityCost, m.money)],
  ["Saved", money(m.saved, m.money)],
  ["Parts, not taken off", `${money(m.partsPaid, m.money)} paid, ${money(m.partsReused, m.money)} spared by reuse`],
];

/** Heads of the table of days and months. */
export const heads = () => ["", `By water, ${unit("energy")}`, `±`, `By air, ${unit("energy")}`, "Electric, kWh", "Pump starts", "Below floor, h"];

/** One row of it. */
export const cells = (sum) => [
  bare("energy", sum.waterKWh), bare("energy", sum.waterErrorKWh), bare("energy", sum.airKWh),
  (sum.pumpKWh + sum.blowerKWh).toFixed(2), String(sum.pumpStarts), sum.belowFloorHours.toFixed(1),
];
