import { dayOnly } from "../time.js";
import { full } from "../units.js";
import * as say from "../words/planFigures.js";

const DAY = 86400000;

/** "day 9 (10 Nov)": a day of the season, counted from the day of building. */
export const dayOf = (plan, day) => say.dayOn(Math.round(day), dayOnly(Date.parse(`${plan.start}T00:00Z`) + Math.round(day) * DAY, 0));

/** When the heap lights and fades, in words. */
export function litWords(plan) {
  const { litOnDay, fadesOnDay, weeks } = plan.sketch.heap;
  if (litOnDay === null) {
    return say.neverLights(plan.days);
  }
  const fades = fadesOnDay === null ? say.neverFades(plan.days) : say.fades(dayOf(plan, fadesOnDay), full("power", weeks.at(-1).generatedWatts));
  return say.lights(dayOf(plan, litOnDay), fades);
}

/** Mean of a figure over the weeks in which the heap is lit; null when it never is. */
export function litMean(plan, key) {
  const { weeks, litOnDay } = plan.sketch.heap;
  const lit = litOnDay === null ? [] : weeks.filter((one) => one.week * 7 > litOnDay);
  return lit.length === 0 ? null : lit.reduce((sum, one) => sum + one[key], 0) / lit.length;
}
