// Keeps the view that was left to sign in, with all that was typed into it, until the person comes back to it.

export const SIGN_IN = "sign-in";

let parked = null;

/** Leaves a view for another: it ends, unless it is left to sign in. */
export function leave(view, id, next) {
  if (view === null) {
    return;
  }
  if (next === SIGN_IN && id !== SIGN_IN) {
    parked = { id, view };
  } else {
    view.end?.();
  }
}

/** Enters a view: the parked one as it was left, else a new one. */
export function enter(id, make) {
  if (parked !== null && id !== SIGN_IN) {
    const left = parked;
    parked = null;
    if (left.id === id) {
      return left.view;
    }
    left.view.end?.();
  }
  return make();
}

/** Where the person was before signing in; null when nowhere. */
export const leftAt = () => parked?.id ?? null;
