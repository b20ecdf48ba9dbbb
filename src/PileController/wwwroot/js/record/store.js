import * as api from "../api.js";
import { stepFor } from "./window.js";

// Finer than any chart can show; all digits of the means would double what is sent.
const DIGITS = 3;

// A moment is sent once for all series that have it. A point is [utcMs, least, mean, most].
function byName(series) {
  let moments = [];
  return new Map(series.map(({ name, utcMs, least, mean, most }) => {
    moments = utcMs ?? moments;
    return [name, { points: moments.map((at, index) => [at, least[index], mean[index], most[index]]) }];
  }));
}

/**
 * Holds the series of what is looked at and of as much again on both sides, so that moving shows what is there already
 * while more is fetched. One question at a time; the newest wish wins.
 */
export function store(told, failed) {
  let have = null;
  let wish = null;
  let asking = false;
  let fell = false;

  const covers = ({ names, window, step, fresh }) => have !== null && !fresh && have.names === names
    && have.from <= window.from && have.to >= window.to && have.step <= step && have.step * 4 >= step;

  async function fetchNext() {
    const mine = wish;
    wish = null;
    asking = true;
    const span = mine.window.to - mine.window.from;
    const from = Math.max(mine.limits.from, Math.floor(mine.window.from - span));
    const to = Math.min(mine.limits.to + 1, Math.ceil(mine.window.to + span));
    try {
      const answer = await api.samples({ channel: mine.names, from, to, step: `${mine.step}s`, format: "columns", digits: DIGITS });
      have = { names: mine.names, step: mine.step, from, to, series: byName(answer.series) };
      fell = false;
      told(have);
    } catch (refusal) {
      fell = true;
      failed(refusal);
    }
    asking = false;
    if (wish !== null && !covers(wish)) {
      fetchNext();
    }
  }

  return {
    /** Wants a stretch of some series; `fresh` asks again even for what is there. */
    want(names, window, limits, points, fresh = false) {
      const asked = { names: names.join(), window, limits, step: stepFor(window.to - window.from, points), fresh };
      if (!covers(asked)) {
        wish = asked;
        if (!asking) {
          fetchNext();
        }
      }
    },
    /** Whether the last question went unanswered. */
    failed: () => fell,
  };
}
