// Paths of a series over the loaded stretch, drawn once in a frame of its own: moving and zooming only move the frame.

/** Width of that frame. */
export const FRAME = 10000;

const across = (from, to) => (at) => (((at - from) / (to - from)) * FRAME).toFixed(2);

/** A line through the means; a gap in the data is a gap in the line. */
export function linePath(points, { from, to }, y) {
  const x = across(from, to);
  let pen = "M";
  const text = [];
  for (const [at, , mean] of points) {
    if (mean === null) {
      pen = "M";
    } else {
      text.push(pen, x(at), " ", y(mean).toFixed(1));
      pen = "L";
    }
  }
  return text.join("");
}

/** The band from least to most, where they differ. */
export function bandPath(points, { from, to }, y) {
  const x = across(from, to);
  const text = [];
  let run = [];
  const close = () => {
    if (run.length > 1) {
      text.push("M", run.map(([at, , , most]) => `${x(at)} ${y(most).toFixed(1)}`).join("L"),
        "L", run.reverse().map(([at, least]) => `${x(at)} ${y(least).toFixed(1)}`).join("L"), "Z");
    }
    run = [];
  };
  for (const point of points) {
    if (point[2] === null) {
      close();
    } else {
      run.push(point);
    }
  }
  close();
  return text.join("");
}

/** Index of the point nearest to a moment, or -1 when there is none. */
export function nearestIndex(points, at) {
  let low = 0;
  let high = points.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (points[middle][0] <= at) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return points.length === 0 ? -1 : Math.abs(points[high][0] - at) < Math.abs(points[low][0] - at) ? high : low;
}
