// Hand, wheel and keys on a chart: moves and zooms the stretch that is seen, and the cursor.

const TAP = 6;

/**
 * `act` has moveBy(ms), zoomBy(factor, at), pointAt(moment or null), stepBy(points), toEnd(first), settled().
 * One finger or the mouse drags, two fingers pinch, the wheel with Ctrl zooms and with Shift moves.
 */
export function gestures(chart, seen, deeds) {
  // Before the first data there is nothing to move.
  const act = Object.fromEntries(Object.entries(deeds).map(([name, deed]) => [name, (...given) => (seen() === null ? undefined : deed(...given))]));
  const stage = chart.stage;
  const held = new Map();
  let dragged = false;

  const msPerPixel = () => (seen() === null ? 0 : (seen().to - seen().from) / chart.room());
  const spread = () => {
    const [one, other] = [...held.values()];
    return { wide: Math.max(20, Math.abs(one - other)), middle: (one + other) / 2 };
  };

  stage.addEventListener("pointerdown", (event) => {
    stage.setPointerCapture(event.pointerId);
    held.set(event.pointerId, event.clientX);
    dragged = held.size > 1;
  });
  stage.addEventListener("pointermove", (event) => {
    const before = held.get(event.pointerId);
    if (before === undefined) {
      if (seen() !== null) {
        act.pointAt(chart.momentAt(event.clientX));
      }
      return;
    }
    if (held.size === 2) {
      const was = spread();
      held.set(event.pointerId, event.clientX);
      const is = spread();
      act.moveBy((was.middle - is.middle) * msPerPixel());
      act.zoomBy(was.wide / is.wide, chart.momentAt(is.middle));
    } else if (dragged || Math.abs(event.clientX - before) > TAP) {
      dragged = true;
      act.moveBy((before - event.clientX) * msPerPixel());
      held.set(event.pointerId, event.clientX);
    }
  });
  const letGo = (event) => {
    if (!held.delete(event.pointerId)) {
      return;
    }
    if (!dragged) {
      if (seen() !== null) {
        act.pointAt(chart.momentAt(event.clientX));
      }
    } else if (held.size === 0) {
      act.settled();
    }
  };
  stage.addEventListener("pointerup", letGo);
  stage.addEventListener("pointercancel", letGo);
  stage.addEventListener("pointerleave", () => held.size === 0 && act.pointAt(null));
  stage.addEventListener("blur", () => act.pointAt(null));
  stage.addEventListener("wheel", (event) => {
    const sideways = event.shiftKey ? event.deltaY || event.deltaX : Math.abs(event.deltaX) > Math.abs(event.deltaY) ? event.deltaX : 0;
    if (event.ctrlKey || event.metaKey) {
      event.preventDefault();
      act.zoomBy(Math.exp(event.deltaY / 300), chart.momentAt(event.clientX));
    } else if (sideways !== 0) {
      event.preventDefault();
      act.moveBy(sideways * msPerPixel());
    }
  }, { passive: false });

  const KEYS = {
    ArrowLeft: (event) => (event.shiftKey ? act.pageBy(-0.25) : act.stepBy(-1)),
    ArrowRight: (event) => (event.shiftKey ? act.pageBy(0.25) : act.stepBy(1)),
    PageUp: () => act.stepBy(-10),
    PageDown: () => act.stepBy(10),
    Home: () => act.toEnd(true),
    End: () => act.toEnd(false),
    "+": () => act.zoomHere(0.5),
    "-": () => act.zoomHere(2),
    Escape: () => act.pointAt(null),
  };
  stage.addEventListener("keydown", (event) => {
    if (KEYS[event.key] !== undefined && !event.ctrlKey && !event.altKey && !event.metaKey) {
      event.preventDefault();
      KEYS[event.key](event);
    }
  });
}
