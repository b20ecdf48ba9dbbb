// Who is signed in on this page. The token lives in memory alone; after a reload the cookie fetches it again.

let state = null;
let wanted = () => {};
const listeners = new Set();

/** What the controller said of this page last, or null before it has. */
export const current = () => state;

/** What goes with every change; null without a session. */
export const token = () => state?.token ?? null;

/** Takes in what the controller says of this page. */
export function set(next) {
  state = next;
  for (const callback of listeners) {
    callback(state);
  }
}

/** Calls back whenever it changes. */
export function listen(callback) {
  listeners.add(callback);
  return () => listeners.delete(callback);
}

/** Says what is to be done when a call was refused because nobody is signed in. */
export function whenWanted(callback) {
  wanted = callback;
}

/** A call was refused because nobody is signed in, or no longer. */
export function lost() {
  if (state !== null) {
    set({ ...state, signedIn: false, name: null, token: null, maySteer: false });
  }
  wanted();
}
