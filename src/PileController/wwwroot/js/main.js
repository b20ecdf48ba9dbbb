import { h, s, put, mark } from "./dom.js";
import * as api from "./api.js";
import * as feed from "./feed.js";
import * as parking from "./parking.js";
import * as session from "./session.js";
import * as units from "./units.js";
import * as time from "./time.js";
import { MODES } from "./words.js";
import { nowView } from "./views/now.js";
import { historyView } from "./views/history.js";
import { decisionsView } from "./views/decisions.js";
import { handView } from "./views/hand.js";
import { tripsView } from "./views/trips.js";
import { rigView } from "./views/rig.js";
import { planView } from "./views/plan.js";
import { signInView } from "./views/signIn.js";

const ROUTES = [
  { id: "now", name: "Now", view: nowView, icon: "M4 19 Q12 1 20 19 Z M12 19v-5" },
  { id: "record", name: "Record", view: historyView, icon: "M3 20h18 M4 15l5-5 4 4 7-9" },
  { id: "decisions", name: "Decisions", view: decisionsView, icon: "M9 6h11 M9 12h11 M9 18h11 M4 6h.5 M4 12h.5 M4 18h.5" },
  { id: "hand", name: "By hand", view: handView, icon: "M6 4v16 M12 4v16 M18 4v16 M3.5 9h5 M9.5 15h5 M15.5 8h5" },
  { id: "trips", name: "Trips", view: tripsView, icon: "M12 4 21 20H3Z M12 10v4 M12 16.8v.4" },
  { id: "rig", name: "Rig", view: rigView, icon: "M12 3v10 M12 13a3.5 3.5 0 1 0 .01 0 M9 5h-3 M9 9h-3" },
  { id: "plan", name: "Plan", view: planView, icon: "M4 20h16V8l-5-5H4Z M15 3v5h5 M8 16h8 M8 12h5" },
];

// Reached by the button in the head, and by whatever is refused because nobody is signed in.
const SIGN_IN = { id: parking.SIGN_IN, name: "Sign in", view: () => signInView(back) };

const byId = (id) => document.getElementById(id);
const view = byId("view");
let current = null;
let shown = "";
let lastSaid = "";

function links() {
  for (const route of ROUTES) {
    const icon = s("svg", { viewBox: "0 0 24 24", "aria-hidden": "true" },
      s("path", { d: route.icon, fill: "none", stroke: "currentColor", "stroke-width": 2, "stroke-linecap": "round", "stroke-linejoin": "round" }));
    byId("views").append(h("a", { href: `#${route.id}`, "data-id": route.id }, icon, h("span", {}, route.name)));
  }
}

function back() {
  feed.open();
  location.hash = parking.leftAt() ?? ROUTES[0].id;
}

function show() {
  const id = location.hash.slice(1);
  const route = [...ROUTES, SIGN_IN].find((one) => one.id === id) ?? ROUTES[0];
  const first = current === null;
  parking.leave(current, shown, route.id);
  current = parking.enter(route.id, route.view);
  shown = route.id;
  view.replaceChildren(...current.nodes);
  document.title = `${route.name} · ${feed.now()?.holding ?? "Heap and house"}`;
  for (const link of byId("views").children) {
    mark(link, "aria-current", link.dataset.id === route.id ? "page" : null);
  }
  if (!first) {
    view.focus({ preventScroll: true });
    scrollTo(0, 0);
  }
  refresh();
}

function speedSentence(now) {
  const lead = `Demo: ${now.holding}, an invented holding.`;
  if (now.speed === 1) {
    return `${lead} Its clock runs as fast as yours.`;
  }
  return now.speed === 60 ? `${lead} One minute here is one hour there.` : `${lead} One minute here is ${time.span(now.speed * 60000)} there.`;
}

function head(now) {
  put(byId("holding"), now.holding);
  put(byId("clock"), time.dayAndClock(now.utcMs, now.offsetMinutes));
  byId("demo").hidden = !now.demo;
  put(byId("demo"), now.demo ? speedSentence(now) : "");
  const tripLink = byId("views").querySelector("[data-id=trips] span");
  put(tripLink, now.trips.length > 0 ? `Trips (${now.trips.length})` : "Trips");
  tripLink.classList.toggle("badge", now.trips.length > 0);
  const spoken = `${MODES[now.mode] ?? now.mode}. ${now.trips.length > 0 ? `${now.trips.length} tripped.` : ""}`;
  if (spoken !== lastSaid) {
    lastSaid = spoken;
    put(byId("say"), spoken);
  }
}

function linkState() {
  const silent = feed.silent();
  const seconds = Math.floor(feed.age());
  const state = feed.now() === null ? "waiting" : silent ? "silent" : "live";
  mark(byId("link-state"), "data-state", state);
  put(byId("link-state"), { waiting: "Waiting for news", silent: `No news for ${seconds} s`, live: "Live" }[state]);
  document.body.toggleAttribute("data-silent", silent);
  byId("stale").hidden = !silent;
  // Spoken once, not each second: the count stands in the head.
  put(byId("stale"), silent ? "No news from the controller. The numbers below are old. This page goes on trying to reach it." : "");
}

function refresh() {
  linkState();
  put(byId("units"), units.unit("temperature"));
  mark(byId("units"), "aria-label", `Units: ${units.system() === "metric" ? "°C, watts and litres" : "°F, BTU and gallons"}. Change`);
  const now = feed.now();
  if (now !== null) {
    units.offer(now.units);
    head(now);
    current?.update?.(now);
  }
}

function sessionButton(state) {
  const text = state === null || (state.needsPassphrase && !state.signedIn) ? "Sign in" : state.needsPassphrase ? "Signed in" : "Access";
  put(byId("session"), text);
  mark(byId("session"), "aria-label", state?.signedIn ? `Signed in as ${state.name}. Sign out, and more` : null);
}

const toSignIn = () => {
  location.hash = SIGN_IN.id;
};

async function askSession() {
  try {
    session.set(await api.askSession());
    if (!session.current().mayLook) {
      toSignIn();
    }
  } catch {
    // Out of reach: the head says so already.
  }
}

links();
session.listen(sessionButton);
session.whenWanted(toSignIn);
byId("session").addEventListener("click", toSignIn);
askSession();
byId("units").addEventListener("click", () => {
  units.toggle();
  current?.unitsChanged?.();
  refresh();
});
addEventListener("hashchange", () => {
  if (location.hash !== "#view") {
    show();
  }
});
show();
feed.listen(refresh);
feed.start();
