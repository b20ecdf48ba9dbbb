// What the record says of the last 24 hours, summed from buckets of a minute.

const HOUR = 3600000;

/** The series the sum is made of. */
export const DAY_SERIES = ["house", "waterDraw", "airDraw", "pumpDuty"];

/** The span and step to ask for; 1440 points a series. */
export const daySpan = (now) => ({ from: now.utcMs - 24 * HOUR, to: now.utcMs + 1, step: "1 min" });

const kWh = (points, stepMs) =>
  points.reduce((sum, [, , mean]) => sum + (mean === null ? 0 : (mean * stepMs) / 3.6e9), 0);

// A gap tells nothing: a pump found running after one has not been seen to start.
function starts(points) {
  let count = 0;
  let before = null;
  for (const [, , , most] of points) {
    const runs = most === null ? null : most > 0;
    count += Number(runs === true && before === false);
    before = runs;
  }
  return count;
}

/** Coldest house air and when, time below the minimum, heat drawn, starts of the pump, and time without a record. */
export function sumDay(answer, minimumC) {
  const series = Object.fromEntries(answer.series.map((one) => [one.name, one.points]));
  const stepMs = answer.stepSeconds * 1000;
  const known = series.house.filter(([, least]) => least !== null);
  const coldest = known.reduce((best, point) => (best === null || point[1] < best[1] ? point : best), null);
  const told = series.pumpDuty.filter(([, , mean]) => mean !== null).length;
  return {
    coldestC: coldest === null ? null : coldest[1],
    coldestUtcMs: coldest === null ? null : coldest[0],
    belowMs: known.filter(([, , mean]) => mean < minimumC).length * stepMs,
    waterKWh: told === 0 ? null : kWh(series.waterDraw, stepMs),
    airKWh: told === 0 ? null : kWh(series.airDraw, stepMs),
    starts: told === 0 ? null : starts(series.pumpDuty),
    untoldMs: (Math.ceil(answer.toUtcMs / stepMs) - Math.floor(answer.fromUtcMs / stepMs) - told) * stepMs,
  };
}
