import { h, s, mark } from "../dom.js";
import { FRAME } from "./paths.js";
import { timeTicks } from "./scale.js";

// How many times the stretch that is seen it is wide.
const TIMES = 3;

/**
 * What of a chart moves along with time. It is drawn for the stretch that is seen and as much on both sides; while the
 * stretch only moves, the browser shifts what it has painted, and paints again when it grows, shrinks or leaves that.
 */
export function pane(high, edge) {
  const frame = s("g", {});
  const uprights = s("g", {});
  const marks = s("g", {});
  const sheet = s("svg", { "aria-hidden": "true", height: high }, uprights, frame, marks);
  const node = h("div", { class: "chart-pane" }, sheet);
  node.style.left = `${edge.left}px`;
  node.style.right = `${edge.right}px`;
  let drawn = null;

  function draw(window, data, room, decisions, most) {
    const span = window.to - window.from;
    const from = window.from - (TIMES - 1) / 2 * span;
    const to = from + TIMES * span;
    const place = (at) => (at - from) / span * room;
    drawn = { from, to, span, room };
    sheet.style.width = `${TIMES * room}px`;
    mark(frame, "transform", `matrix(${(place(data.to) - place(data.from)) / FRAME} 0 0 1 ${place(data.from)} 0)`);
    uprights.replaceChildren(...timeTicks(from, to, data.offset, TIMES * most).map((tick) =>
      s("line", { class: "grid", x1: place(tick.at), x2: place(tick.at), y1: edge.top, y2: high - edge.bottom })));
    marks.replaceChildren(...decisions.filter((one) => one.at >= from && one.at <= to).map((one) =>
      s("path", { class: `decision-mark m-${one.tone}`, d: `M${place(one.at).toFixed(1)} ${high - edge.bottom + 1}l5 9h-10z` })));
  }

  const holds = (window, room) => drawn !== null && drawn.room === room && window.from >= drawn.from && window.to <= drawn.to
    && Math.abs(window.to - window.from - drawn.span) < drawn.span * 1e-9;

  return {
    node,
    frame,
    /** Told that what is on it has changed. */
    renew() {
      drawn = null;
    },
    /** Shows a stretch, `room` pixels wide, with at most so many uprights. */
    look(window, data, room, decisions, most) {
      if (!holds(window, room)) {
        draw(window, data, room, decisions, most);
      }
      // Between two of the screen's dots all lines would blur.
      const dots = devicePixelRatio;
      const left = Math.round((drawn.from - window.from) / drawn.span * room * dots) / dots;
      sheet.style.transform = `translateX(${left}px)`;
    },
  };
}
