// The newest tick, how old it is in true time, and whether it still counts as news.

// What the page brought with it. Its age counts from when the page was asked for, since nobody knows how long it travelled.
const told = document.getElementById("told");
let latest = told === null ? null : JSON.parse(told.textContent);
let receivedAt = performance.getEntriesByType("navigation")[0]?.requestStart ?? 0;
let source = null;
let refused = () => {};
const listeners = new Set();

/** The newest tick, or null. */
export const now = () => latest;

/** True seconds since the newest tick was told. */
export const age = () => (latest === null ? Infinity : latest.newsAgeSeconds + (performance.now() - receivedAt) / 1000);

/** True seconds after which numbers no longer count as live. */
export const patience = () => (latest === null ? 4 : Math.max(4, (2.5 * latest.tickSeconds) / latest.speed));

/** True when the controller has been silent for too long. */
export const silent = () => latest !== null && age() > patience();

/** Calls back at each tick and once a second. */
export function listen(callback) {
  listeners.add(callback);
  return () => listeners.delete(callback);
}

function tell() {
  for (const callback of listeners) {
    callback(latest);
  }
}

/** Says what is to be done when the controller refuses the stream: perhaps nobody is signed in any more. */
export function whenRefused(callback) {
  refused = callback;
}

/** Opens the stream, also anew: for whoever has just been let in. */
export function open() {
  source?.close();
  source = new EventSource("/api/stream");
  // A browser that cannot reach it tries on by itself; one that was answered gives up.
  source.addEventListener("error", ({ target }) => target.readyState === EventSource.CLOSED && refused());
  source.addEventListener("now", (event) => {
    latest = JSON.parse(event.data);
    receivedAt = performance.now();
    tell();
  });
}

/** Opens the stream, and opens it anew when the browser has given up on it or nothing comes through. */
export function start() {
  open();
  let lastTry = performance.now();
  setInterval(() => {
    const closed = source.readyState === EventSource.CLOSED;
    const mute = age() > patience() * 2;
    if ((closed || mute) && performance.now() - lastTry > 5000) {
      lastTry = performance.now();
      open();
    }
    tell();
  }, 1000);
}
