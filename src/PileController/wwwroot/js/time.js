// Times of the place, not of the browser: the offset comes with the news.

import * as say from "./words/calendar.js";

const two = (number) => String(number).padStart(2, "0");

/** The parts of a moment at the place. */
export function parts(utcMs, offsetMinutes) {
  const local = new Date(utcMs + offsetMinutes * 60000);
  return {
    day: say.DAYS[local.getUTCDay()],
    date: local.getUTCDate(),
    month: say.MONTHS[local.getUTCMonth()],
    year: local.getUTCFullYear(),
    hour: local.getUTCHours(),
    time: `${two(local.getUTCHours())}:${two(local.getUTCMinutes())}`,
  };
}

/** "05:10". */
export const clock = (utcMs, offset) => parts(utcMs, offset).time;

/** "Tue 27 Jan, 05:10". */
export const dayAndClock = (utcMs, offset) => say.dayAndClock(parts(utcMs, offset));

/** "27 Jan". */
export const dayOnly = (utcMs, offset) => say.dayOnly(parts(utcMs, offset));

/** "3 h 20 min", "4 min", "12 s", "2 d 3 h". */
export function span(ms) {
  const seconds = Math.max(0, Math.round(ms / 1000));
  if (seconds < 60) {
    return say.seconds(seconds);
  }
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) {
    return say.minutes(minutes);
  }
  const hours = Math.floor(minutes / 60);
  if (hours < 24) {
    return minutes % 60 === 0 ? say.hours(hours) : `${say.hours(hours)} ${say.minutes(minutes % 60)}`;
  }
  const days = say.days(Math.floor(hours / 24));
  return hours % 24 === 0 ? days : `${days} ${say.hours(hours % 24)}`;
}
