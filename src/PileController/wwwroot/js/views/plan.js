import { h, put, mark } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { full, system } from "../units.js";
import { NOTHING, apply, fieldsOf } from "../plan/changes.js";
import { tries } from "../plan/tries.js";
import { litMean } from "../plan/season.js";
import { giveCard } from "../plan/give.js";
import { compareCard } from "../plan/compare.js";
import { aheadCard } from "../plan/ahead.js";
import { weekCharts } from "../plan/weeks.js";
import { placesCard } from "../plan/places.js";
import { airCard } from "../plan/air.js";
import { houseCard } from "../plan/house.js";
import { loopCard, stuffCard } from "../plan/build.js";
import { adviceCard, cautionsCard, wordsCard } from "../plan/advice.js";
import { trialDrawing } from "../drawings/trial.js";
import * as say from "../words/plan.js";
import { notAllowed } from "../words/shared.js";

// Long enough that a slider in motion asks now and then, short enough to be answered within the second.
const REST_MS = 120;
// Where the controller was busy or out of reach, not where a value was refused.
const AGAIN_MS = 3000;
const LATER = [0, 503];

/** Know before you build: what the heap gives as built and as tried. */
export function planView() {
  const page = String(Math.random()).slice(2);
  const give = giveCard();
  const drawing = trialDrawing();
  const compare = compareCard();
  const weeks = weekCharts();
  const ahead = aheadCard();
  const advice = adviceCard();
  const parts = [
    advice,
    wordsCard(say.claims, (sketch) => sketch.claims, say.noClaims),
    placesCard(), airCard(), houseCard(), loopCard(), stuffCard(), cautionsCard(),
  ];
  const state = h("p", { class: "plan-state", role: "status" });
  const trouble = h("p", { class: "error", role: "alert" });
  const controls = tries((next) => change(next), state);
  const sheet = h("a", { class: "button", target: "_blank", rel: "noopener" }, say.sheetOpen);
  const figures = h("div", { class: "plan-figures", hidden: true }, compare.node, advice.node, weeks.node, ...parts.slice(1).map((one) => one.node));
  const top = h("div", { class: "plan-figures" }, give.node);
  let tried = NOTHING;
  let built = null;
  let base = null;
  let plan = null;
  let asking = null;
  let timer = 0;

  function picture() {
    if (built !== null) {
      drawing.set(built, apply(built, tried), plan === null ? null : litMean(plan, "activeZoneC"));
    }
  }

  function show() {
    give.set(plan);
    compare.set(base, plan);
    weeks.set(plan, feed.now());
    parts.forEach((one) => one.set(plan));
    picture();
  }

  function link() {
    if (built !== null) {
      mark(sheet, "href", api.sheetPath({ ...fieldsOf(built, tried), page: `${page}sheet`, units: system() }));
    }
  }

  function old(is) {
    mark(top, "data-old", is);
    mark(figures, "data-old", is);
    mark(figures, "aria-busy", is ? "true" : null);
  }

  function change(next) {
    tried = next;
    picture();
    old(plan !== null ? "" : null);
    put(trouble, "");
    put(state, say.reckoning);
    link();
    asking?.abort();
    clearTimeout(timer);
    timer = setTimeout(ask, REST_MS);
  }

  function done() {
    const more = base === null || plan.changed.length === 0 ? null : plan.sketch.coil.meanDrawnWatts - base.sketch.coil.meanDrawnWatts;
    const beside = more === null ? say.asBuilt : (more >= 0 ? say.moreThanBuilt : say.lessThanBuilt)(full("power", Math.abs(more)));
    put(state, say.mean(full("power", plan.sketch.coil.meanDrawnWatts), beside));
  }

  async function ask() {
    const mine = new AbortController();
    asking = mine;
    try {
      const answer = await api.plan({ ...fieldsOf(built, tried), page }, mine.signal);
      if (mine !== asking) {
        return;
      }
      put(trouble, "");
      plan = answer;
      base = answer.changed.length === 0 ? answer : base;
      controls.set(built, answer.limits);
      figures.hidden = false;
      show();
      old(null);
      done();
    } catch (refusal) {
      if (mine === asking && !mine.signal.aborted) {
        if (LATER.includes(refusal.status)) {
          timer = setTimeout(ask, AGAIN_MS);
        } else {
          put(state, "");
        }
        put(trouble, refusal.field === null || refusal.field === undefined ? refusal.message
          : notAllowed(say.FIELDS[refusal.field] ?? refusal.field, refusal.given, refusal.allowed));
      }
    }
  }

  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, say.title),
        h("p", { class: "hint" }, say.about)),
      trouble,
      h("div", { class: "now-grid" },
        top,
        h("section", { class: "card w7" }, h("h2", {}, say.drawing), drawing.node),
        controls.node, figures, ahead.node,
        h("section", { class: "card w12" }, h("h2", {}, say.sheet),
          h("p", { class: "hint" }, say.sheetAbout),
          h("div", { class: "row" }, sheet))),
    ],
    update(now) {
      if (built === null) {
        built = now.heap;
        change(NOTHING);
      }
    },
    unitsChanged() {
      controls.redraw();
      ahead.redraw();
      link();
      if (plan !== null) {
        show();
        done();
      }
    },
    end() {
      ahead.end();
      asking?.abort();
      clearTimeout(timer);
      weeks.end();
    },
  };
}
