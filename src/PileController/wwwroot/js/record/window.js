// The stretch of time that is looked at: {from, to} in ms UTC. Pure.

const HOUR = 3600000;

/** The shortest and longest stretch. */
export const LEAST = HOUR / 4;
export const MOST = 400 * 24 * HOUR;

/** The same stretch within what there is; a stretch longer than that begins with it. */
export function within({ from, to }, limits) {
  const span = Math.min(Math.max(to - from, LEAST), MOST, Math.max(LEAST, limits.to - limits.from));
  const end = Math.min(Math.max(to, limits.from + span), limits.to);
  return { from: end - span, to: end };
}

/** Moved by a time; negative is earlier. */
export const moved = (window, ms, limits) => {
  const span = window.to - window.from;
  const from = Math.max(limits.from, Math.min(limits.to - span, window.from + ms));
  return within({ from, to: from + span }, limits);
};

/** Longer (factor above 1) or shorter, with the moment `at` staying where it is. */
export function zoomed(window, factor, at, limits) {
  const span = window.to - window.from;
  const next = Math.min(Math.max(span * factor, LEAST), MOST);
  const share = Math.min(Math.max((at - window.from) / span, 0), 1);
  const from = at - share * next;
  return within({ from, to: from + next }, limits);
}

const STEPS = [10, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10800, 21600, 43200, 86400];

/** Seconds a point should stand for, so that a stretch has about as many points as there are half pixels of room. */
export const stepFor = (span, points) => STEPS.find((one) => span / 1000 / one <= points) ?? STEPS.at(-1);
