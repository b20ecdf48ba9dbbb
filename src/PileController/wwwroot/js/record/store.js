import * as api from "../api.js";
import { stepFor } from "./window.js";

// Finer than any channel is measured and any chart can show; all digits of the means would double what is sent.
const DIGITS = 4;

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
      const answer = await api.samples({ channel: mine.names, from, to, step: `${mine.step}s`, digits: DIGITS });
      have = { names: mine.names, step: mine.step, from, to, series: new Map(answer.series.map((one) => [one.name, one])) };
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
