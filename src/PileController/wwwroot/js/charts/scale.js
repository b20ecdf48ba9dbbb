import { parts, clock, dayOnly, momentOf, offsetAt } from "../time.js";

/** Round values for an axis: about `wanted` of them from `least` to `most`. */
export function ticks(least, most, wanted = 4) {
  const rough = (most - least || 1) / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 2.5, 5, 10].map((one) => one * power).find((one) => one >= rough);
  const list = [];
  for (let at = Math.ceil(least / step - 1e-9) * step; at <= most + step * 1e-9; at += step) {
    list.push(Math.abs(at) < step * 1e-9 ? 0 : at);
  }
  return list;
}

/** Limits with a little air above and below, out to round values. */
export function limits(least, most) {
  const span = most - least || 1;
  const marks = ticks(least - span * 0.04, most + span * 0.04);
  const step = marks.length > 1 ? marks[1] - marks[0] : span;
  return [Math.floor(least / step) * step, Math.ceil(most / step) * step];
}

/** Times for the axis: every few hours within two days, days beyond. */
export function timeTicks(from, to, offset, wanted) {
  const hour = 3600000;
  const step = [hour, 2 * hour, 3 * hour, 6 * hour, 12 * hour, 24 * hour, 48 * hour, 96 * hour, 168 * hour, 336 * hour, 672 * hour].find((one) => (to - from) / one <= wanted) ?? 1344 * hour;
  const list = [];
  let last = -Infinity;
  for (let local = Math.ceil((from + offsetAt(from, offset) * 60000) / step) * step; momentOf(local, offset) <= to; local += step) {
    const at = momentOf(local, offset);
    // An hour that the clocks leave out has no mark of its own.
    if (at > last) {
      const midnight = parts(at, offset).hour === 0;
      list.push({ at, text: step >= 24 * hour || midnight ? dayOnly(at, offset) : clock(at, offset) });
      last = at;
    }
  }
  return list;
}

/** A straight map from one range to another. */
export const linear = (from, to, low, high) => (value) => low + ((value - from) / (to - from || 1)) * (high - low);
