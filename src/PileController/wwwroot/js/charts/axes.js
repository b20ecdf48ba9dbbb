import { dayAndClock } from "../time.js";
import { timeTicks } from "./scale.js";

/** What stands along the bottom of a chart: its name, how a place on it is said, and its marks. */
export const TIME = { name: "Time", cursor: "time", rest: "Newest", at: "At", say: dayAndClock, ticks: timeTicks };

function weekTicks(from, to, offset, wanted) {
  const step = [1, 2, 4, 8].find((one) => (to - from) / one <= wanted) ?? 13;
  return [...Array(Math.floor((to - from) / step) + 1).keys()].map((index) => ({ at: from + index * step, text: String(from + index * step) }));
}

/** Weeks of a season, counted from 1. */
export const WEEKS = { name: "Week", cursor: "weeks", rest: "At its end", at: "In", say: (week) => `week ${week}`, ticks: weekTicks };
