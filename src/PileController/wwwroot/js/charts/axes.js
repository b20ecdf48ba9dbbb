import { dayAndClock } from "../time.js";
import { time, week, weekOf } from "../words/charts.js";

/** What stands along the bottom of a chart: its name and how a place on it is said. */
export const TIME = { name: time, say: dayAndClock };

function weekTicks(from, to, wanted) {
  const step = [1, 2, 4, 8].find((one) => (to - from) / one <= wanted) ?? 13;
  return [...Array(Math.floor((to - from) / step) + 1).keys()].map((index) => ({ at: from + index * step, text: String(from + index * step) }));
}

/** Weeks of a season, counted from 1, with the marks between two of them. */
export const WEEKS = { name: week, say: weekOf, ticks: weekTicks };
