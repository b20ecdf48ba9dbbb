import { h, s, mark } from "../dom.js";

/**
 * A cursor over a chart for pointer and keyboard: arrows by one point, page keys by ten, home and end; leaving
 * or Escape lets go. It tells screen readers what stands at the cursor as a slider does.
 */
export function cursor(name, plot, moved) {
  const line = s("line", { class: "cursor", visibility: "hidden" });
  let times = [];
  let x = null;
  let index = null;

  function go(next) {
    index = next === null || times.length === 0 ? null : Math.max(0, Math.min(times.length - 1, next));
    mark(line, "visibility", index === null ? "hidden" : "visible");
    if (index !== null) {
      mark(line, "x1", x(times[index]));
      mark(line, "x2", x(times[index]));
    }
    if (times.length > 0) {
      moved(index);
    }
  }

  function nearest(event) {
    const box = plot.getBoundingClientRect();
    const at = ((event.clientX - box.left) / box.width) * plot.viewBox.baseVal.width;
    let best = 0;
    times.forEach((time, number) => {
      if (Math.abs(x(time) - at) < Math.abs(x(times[best]) - at)) {
        best = number;
      }
    });
    return best;
  }

  const KEYS = {
    ArrowLeft: () => (index ?? times.length) - 1,
    ArrowRight: () => (index ?? times.length - 2) + 1,
    PageUp: () => (index ?? times.length) - 10,
    PageDown: () => (index ?? times.length - 11) + 10,
    Home: () => 0,
    End: () => times.length - 1,
    Escape: () => null,
  };

  const node = h("div", {
    class: "chart-plot",
    role: "slider",
    tabindex: 0,
    "aria-label": name,
    "aria-valuemin": 0,
    "aria-valuemax": 0,
    "aria-valuenow": 0,
    onpointermove: (event) => times.length > 0 && go(nearest(event)),
    onpointerdown: (event) => times.length > 0 && go(nearest(event)),
    onpointerleave: () => go(null),
    onblur: () => go(null),
    onkeydown: (event) => {
      if (KEYS[event.key] !== undefined) {
        event.preventDefault();
        go(KEYS[event.key]());
      }
    },
  }, plot);

  return {
    node,
    scale(newTimes, newX, edge, high) {
      times = newTimes;
      x = newX;
      mark(line, "y1", edge.top);
      mark(line, "y2", high - edge.bottom);
      plot.append(line);
      go(index);
    },
    say(at, total, text) {
      mark(node, "aria-valuemax", Math.max(0, total - 1));
      mark(node, "aria-valuenow", Math.max(0, at));
      mark(node, "aria-valuetext", text);
    },
  };
}
