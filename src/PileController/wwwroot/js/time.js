// Times of the place, not of the browser: the offset comes with the news.

const DAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const two = (number) => String(number).padStart(2, "0");

/** The parts of a moment at the place. */
export function parts(utcMs, offsetMinutes) {
  const local = new Date(utcMs + offsetMinutes * 60000);
  return {
    day: DAYS[local.getUTCDay()],
    date: local.getUTCDate(),
    month: MONTHS[local.getUTCMonth()],
    year: local.getUTCFullYear(),
    hour: local.getUTCHours(),
    time: `${two(local.getUTCHours())}:${two(local.getUTCMinutes())}`,
  };
}

/** "05:10". */
export const clock = (utcMs, offset) => parts(utcMs, offset).time;

/** "Tue 27 Jan, 05:10". */
export function dayAndClock(utcMs, offset) {
  const p = parts(utcMs, offset);
  return `${p.day} ${p.date} ${p.month}, ${p.time}`;
}

/** "27 Jan". */
export function dayOnly(utcMs, offset) {
  const p = parts(utcMs, offset);
  return `${p.date} ${p.month}`;
}

/** "3 h 20 min", "4 min", "12 s", "2 d 3 h". */
export function span(ms) {
  const seconds = Math.max(0, Math.round(ms / 1000));
  if (seconds < 60) {
    return `${seconds}\u00a0s`;
  }
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) {
    return `${minutes}\u00a0min`;
  }
  const hours = Math.floor(minutes / 60);
  if (hours < 24) {
    return minutes % 60 === 0 ? `${hours}\u00a0h` : `${hours}\u00a0h ${minutes % 60}\u00a0min`;
  }
  return hours % 24 === 0 ? `${Math.floor(hours / 24)}\u00a0d` : `${Math.floor(hours / 24)}\u00a0d ${hours % 24}\u00a0h`;
}
