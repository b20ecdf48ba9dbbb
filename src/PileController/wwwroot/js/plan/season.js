import { dayOnly } from "../time.js";
import { full } from "../units.js";

const DAY = 86400000;

/** "day 9 (10 Nov)": a day of the season, counted from the day of building. */
export const dayOf = (plan, day) => `day ${Math.round(day)} (${dayOnly(Date.parse(`${plan.start}T00:00Z`) + Math.round(day) * DAY, 0)})`;

/** When the heap lights and fades, in words. */
export function litWords(plan) {
  const { litOnDay, fadesOnDay, weeks } = plan.sketch.heap;
  if (litOnDay === null) {
    return `It does not light within ${plan.days} days.`;
  }
  const fades = fadesOnDay === null ? `does not fade within ${plan.days} days` : `is past its best on ${dayOf(plan, fadesOnDay)}, when it makes less than half of that; it goes on more weakly, in the last week with ${full("power", weeks.at(-1).generatedWatts)}`;
  return `It lights on ${dayOf(plan, litOnDay)} and ${fades}.`;
}

/** Mean of a figure over the weeks in which the heap is lit; null when it never is. */
export function litMean(plan, key) {
  const { weeks, litOnDay } = plan.sketch.heap;
  const lit = litOnDay === null ? [] : weeks.filter((one) => one.week * 7 > litOnDay);
  return lit.length === 0 ? null : lit.reduce((sum, one) => sum + one[key], 0) / lit.length;
}
