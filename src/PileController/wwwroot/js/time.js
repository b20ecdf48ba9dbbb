// Times of the place, not of the browser: the offset comes with the news, and with it the zone's name where the offset
// changes with the season.

import * as say from "./words/calendar.js";

const two = (number) => String(number).padStart(2, "0");

const QUARTER = 900000;
let zone = null;
let clocks = null;
let known = new Map();

/** Tells by which zone's rules moments are told; null for the offset alone. One the browser does not know counts as null. */
export function tellBy(name) {
  if (name === zone) {
    return;
  }
  zone = name;
  known = new Map();
  try {
    clocks = name === null ? null : new Intl.DateTimeFormat("en-US", {
      timeZone: name, hourCycle: "h23", year: "numeric", month: "numeric", day: "numeric", hour: "numeric", minute: "numeric",
    });
  } catch {
    clocks = null;
  }
}

/** Local time minus UTC at a moment, minutes; `now` is what the news says of the present. */
export function offsetAt(utcMs, now) {
  if (clocks === null || !Number.isFinite(utcMs)) {
    return now;
  }
  // No zone changes its clocks within a quarter of an hour.
  const quarter = Math.floor(utcMs / QUARTER) * QUARTER;
  if (!known.has(quarter)) {
    const shown = Object.fromEntries(clocks.formatToParts(quarter).map((part) => [part.type, Number(part.value)]));
    known.set(quarter, (Date.UTC(shown.year, shown.month - 1, shown.day, shown.hour, shown.minute) - quarter) / 60000);
  }
  return known.get(quarter);
}

/** The moment at which the clocks of the place show a time that is given as if it were UTC. */
export const momentOf = (localMs, now) => localMs - offsetAt(localMs - offsetAt(localMs, now) * 60000, now) * 60000;

/** The parts of a moment at the place. */
export function parts(utcMs, offsetMinutes) {
  const local = new Date(utcMs + offsetAt(utcMs, offsetMinutes) * 60000);
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
