import { bare, full, many, unit } from "../units.js";
import * as say from "../words/ledger.js";

const hours = (value) => say.hours(many(Math.round(value)));
const fine = (value) => (Math.abs(value) < 100 ? "energy" : "seasonEnergy");

/** Heat by water with its error band, both as finely. */
export const water = (sum) => say.band(bare(fine(sum.waterKWh), sum.waterKWh), full(fine(sum.waterKWh), sum.waterErrorKWh));

/** Heat without a band. */
export const heat = (value) => full(fine(value), value);

/** What a stretch of days came to, by rows. */
export const rows = (sum) => [
  [say.byWater, water(sum)],
  [say.byAir, heat(sum.airKWh)],
  [say.unmetered, sum.inferredHours > 0 ? say.unmeteredOf(hours(sum.inferredHours), hours(sum.runningHours)) : say.none],
  [say.electric, full("electricEnergy", sum.pumpKWh + sum.blowerKWh)],
  [say.waterMoved, full("volume", sum.litres)],
  [say.daysCounted, say.daysOf(sum.days, hours(sum.recordedHours))],
  [say.belowFloor, hours(sum.belowFloorHours)],
  [say.frostGuard, hours(sum.frostGuardHours)],
  [say.pumpStarts, many(sum.pumpStarts)],
  [say.trips, String(sum.trips)],
  [say.nightsKept, say.nightsOf(sum.nightsKept, sum.nights)],
  [say.coldest, sum.coldestNightKept === null ? say.noneYet
    : say.coldestOf(sum.coldestNightKept.date, full("temperature", sum.coldestNightKept.outsideC), full("temperature", sum.coldestNightKept.houseC))],
];

const money = (value, sign) => `${value.toFixed(2)} ${sign}`;

/** What a season saved, by rows. */
export const moneyRows = (m) => [
  [say.heatAs(m.fuel), say.band(money(m.heatWorth, m.money), money(m.heatWorthError, m.money))],
  [say.electricity, money(m.electricityCost, m.money)],
  [say.saved, money(m.saved, m.money)],
  [say.parts, say.partsOf(money(m.partsPaid, m.money), money(m.partsReused, m.money))],
];

/** Heads of the table of days and months, behind the first. */
export const heads = () => say.columns(unit("energy"));

/** One row of it. */
export const cells = (sum) => [
  bare("energy", sum.waterKWh), bare("energy", sum.waterErrorKWh), bare("energy", sum.airKWh),
  (sum.pumpKWh + sum.blowerKWh).toFixed(2), String(sum.pumpStarts), sum.belowFloorHours.toFixed(1),
];
