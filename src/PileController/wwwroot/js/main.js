import { h, s, put, mark } from "./dom.js";
import * as api from "./api.js";
import * as feed from "./feed.js";
import * as parking from "./parking.js";
import * as scheme from "./scheme.js";
import * as session from "./session.js";
import * as units from "./units.js";
import * as time from "./time.js";
import * as say from "./words/frame.js";
import { MODES, PRIORITIES } from "./words/names.js";
import { nowView } from "./views/now.js";

// Each view is fetched when it is first looked at, so that the first one stands soon on a weak link.
// On a phone the first five stand at the thumb and the others behind "More"; on a wide screen all stand in a row.
const ROUTES = [
  { id: "now", name: say.NAMES.now, load: () => nowView, icon: "M4 19 Q12 1 20 19 Z M12 19v-5" },
  { id: "record", name: say.NAMES.record, load: () => import("./views/record.js").then((module) => module.recordView), icon: "M3 20h18 M4 15l5-5 4 4 7-9" },
  { id: "hand", name: say.NAMES.hand, load: () => import("./views/hand.js").then((module) => module.handView), icon: "M6 4v16 M12 4v16 M18 4v16 M3.5 9h5 M9.5 15h5 M15.5 8h5" },
  { id: "trips", name: say.NAMES.trips, load: () => import("./views/trips.js").then((module) => module.tripsView), icon: "M12 4 21 20H3Z M12 10v4 M12 16.8v.4" },
  { id: "decisions", name: say.NAMES.decisions, about: say.ABOUT.decisions, load: () => import("./views/decisions.js").then((module) => module.decisionsView), minor: true, icon: "M9 6h11 M9 12h11 M9 18h11 M4 6h.5 M4 12h.5 M4 18h.5" },
  { id: "ledger", name: say.NAMES.ledger, about: say.ABOUT.ledger, load: () => import("./views/ledger.js").then((module) => module.ledgerView), minor: true, icon: "M5 3h14v18H5Z M9 8h6 M9 12h6 M9 16h3" },
  { id: "rig", name: say.NAMES.rig, about: say.ABOUT.rig, load: () => import("./views/rig.js").then((module) => module.rigView), minor: true, icon: "M12 3v10 M12 13a3.5 3.5 0 1 0 .01 0 M9 5h-3 M9 9h-3" },
  { id: "plan", name: say.NAMES.plan, about: say.ABOUT.plan, load: () => import("./views/plan.js").then((module) => module.planView), minor: true, icon: "M4 20h16V8l-5-5H4Z M15 3v5h5 M8 16h8 M8 12h5" },
  { id: "settings", name: say.NAMES.settings, about: say.ABOUT.settings, load: () => import("./views/settings.js").then((module) => module.settingsView), minor: true, icon: "M4 7h9 M17 7h3 M4 17h3 M11 17h9 M15 4.5v5 M9 14.5v5" },
  { id: "more", name: say.NAMES.more, load: () => import("./views/more.js").then((module) => () => module.moreView(ROUTES.filter((route) => route.minor))), icon: "M5 12h.5 M12 12h.5 M19 12h.5" },
];

// Reached from the rig, to which it belongs.
const COMMISSION = { id: "commission", name: say.NAMES.commission, parent: "rig", load: () => import("./views/commission.js").then((module) => module.commissionView) };

// Reached by the button in the head, and by whatever is refused because nobody is signed in.
const SIGN_IN = { id: parking.SIGN_IN, name: say.NAMES.signIn, load: () => import("./views/signIn.js").then((module) => () => module.signInView(back)) };

// The mark on the link to the alarms tells the worst priority by its shape: octagon, triangle, circle.
const WORST = { high: "M8 2.5h8L21.5 8v8L16 21.5H8L2.5 16V8Z M12 7v6.5 M12 16.4v.8", medium: ROUTES.find((one) => one.id === "trips").icon, low: "M12 3a9 9 0 1 0 .01 0 M12 8v5 M12 16v.5" };

const byId = (id) => document.getElementById(id);
const view = byId("view");
let current = null;
let turn = 0;
let shown = "";
let lastSaid = "";

function links() {
  for (const route of ROUTES) {
    const icon = s("svg", { viewBox: "0 0 24 24", "aria-hidden": "true" },
      s("path", { d: route.icon, fill: "none", stroke: "currentColor", "stroke-width": 2, "stroke-linecap": "round", "stroke-linejoin": "round" }));
    byId("views").append(h("a", { href: `#${route.id}`, "data-id": route.id, "data-minor": route.minor }, icon, h("span", {}, route.name)));
  }
}

function back() {
  feed.open();
  // Who has gone on meanwhile, since the head said so sooner, is not called back.
  if (location.hash.slice(1) === SIGN_IN.id) {
    location.hash = parking.leftAt() ?? ROUTES[0].id;
  }
}

async function show() {
  const hash = location.hash.slice(1);
  const [id, ...rest] = hash.split("/");
  const route = [...ROUTES, COMMISSION, SIGN_IN].find((one) => one.id === id) ?? ROUTES[0];
  const mine = ++turn;
  if (current === null && route !== ROUTES[0]) {
    // What the controller wrote there is of another view, and would grow old under a head that says "live".
    view.replaceChildren();
  }
  let make;
  try {
    make = await route.load();
  } catch {
    make = () => ({ nodes: [h("h1", {}, route.name), h("p", { class: "error", role: "alert" }, say.notFetched)] });
  }
  if (mine !== turn) {
    return;
  }
  const first = current === null;
  parking.leave(current, shown, hash);
  current = parking.enter(hash, () => make(...rest));
  shown = hash;
  view.replaceChildren(...current.nodes);
  document.title = `${route.name} · ${feed.now()?.holding ?? say.noHolding}`;
  for (const link of byId("views").children) {
    const parent = (link.dataset.id === "more" && (route.minor === true || route.parent !== undefined)) || link.dataset.id === route.parent;
    mark(link, "aria-current", link.dataset.id === route.id ? "page" : parent ? "true" : null);
  }
  if (!first) {
    view.focus({ preventScroll: true });
    scrollTo(0, 0);
  }
  refresh();
}

function speedSentence(now) {
  if (now.speed === 1) {
    return say.demoAsFast(now.holding);
  }
  return now.speed === 60 ? say.demoAnHour(now.holding) : say.demoFaster(now.holding, time.span(now.speed * 60000));
}

function head(now) {
  time.tellBy(now.zone);
  put(byId("holding"), now.holding);
  put(byId("clock"), time.dayAndClock(now.utcMs, now.offsetMinutes));
  put(byId("demo"), now.demo ? speedSentence(now) : "");
  const tripLink = byId("views").querySelector("[data-id=trips] span");
  // A trip is told here at once; its alarm follows within a tick.
  const asking = Math.max(now.alarms.unseen, now.trips.length);
  put(tripLink, asking > 0 ? say.alarmsAsking(asking) : say.NAMES.trips);
  tripLink.classList.toggle("badge", asking > 0);
  mark(tripLink.parentNode.querySelector("path"), "d", WORST[now.trips.length > 0 ? "high" : now.alarms.worst] ?? WORST.medium);
  const worst = now.alarms.worst === null ? null : PRIORITIES[now.alarms.worst];
  mark(tripLink.parentNode, "title", asking > 0 ? say.toBeSeen(asking, worst) : null);
  const spoken = say.spoken(MODES[now.mode] ?? now.mode, now.trips.length, now.alarms.unseen, worst);
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
  put(byId("link-state"), say.LINK[state](seconds));
  document.body.toggleAttribute("data-silent", silent);
  byId("stale").hidden = !silent;
  // Spoken once, not each second: the count stands in the head.
  put(byId("stale"), silent ? say.stale : "");
}

function refresh() {
  linkState();
  put(byId("units"), units.unit("temperature"));
  mark(byId("units"), "aria-label", say.UNITS[units.system()]);
  const now = feed.now();
  if (now !== null) {
    units.offer(now.units);
    head(now);
    current?.update?.(now);
  }
}

function schemeButton() {
  mark(byId("scheme"), "aria-label", say.SCHEMES[scheme.scheme()]);
  const halves = scheme.halves();
  byId("scheme").querySelectorAll("path").forEach((path, at) => mark(path, "fill", halves[at]));
}

function sessionLink(state) {
  const text = state === null || (state.needsPassphrase && !state.signedIn) ? say.NAMES.signIn : state.needsPassphrase ? say.signedIn : say.access;
  put(byId("session"), text);
  mark(byId("session"), "aria-label", state?.signedIn ? say.signedInAs(state.name) : null);
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
session.listen(sessionLink);
session.whenWanted(toSignIn);
feed.whenRefused(askSession);
askSession();
byId("units").addEventListener("click", () => {
  units.toggle();
  current?.unitsChanged?.();
  refresh();
});
byId("scheme").addEventListener("click", () => {
  scheme.next();
  schemeButton();
});
schemeButton();
addEventListener("hashchange", () => {
  if (location.hash !== "#view") {
    show();
  }
});
show();
feed.listen(refresh);
feed.start();
