import { h, put } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { worded } from "../refusal.js";
import { liveFigures, outcomeList, sheetList, stepCard, testCard } from "../rig/tests.js";
import { nameInput, remember } from "../who.js";
import * as say from "../words/commission.js";

/** Lead through the tests of a rig: find, calibrate, prove; and keep what was found. */
export function commissionView() {
  const trouble = h("p", { class: "error", role: "alert" });
  const said = h("p", { role: "status" });
  const who = nameInput({ id: "commission-who" });
  const running = h("div", { class: "book", "aria-live": "polite" });
  const figures = liveFigures();
  const live = h("section", { class: "card", hidden: true }, h("h2", {}, say.now), figures.node);
  const tests = h("div", { class: "sections" });
  const sheet = h("div", {});
  const choose = h("section", {}, h("h2", {}, say.tests), tests);
  const adoption = h("div", { class: "plain" });
  let shown = "";
  let step = null;
  let asking = false;
  let looked = -Infinity;
  let offered = false;

  async function act(call, done = "") {
    put(trouble, "");
    put(said, "");
    remember(who.value.trim());
    try {
      show(await call());
      put(said, done);
    } catch (refusal) {
      put(trouble, worded(refusal, say.FIELDS));
    }
  }

  const begin = (test, probes) => act(() => api.beginTest({ test, probes, who: who.value.trim() }));
  const keep = () => act(() => api.keepTest({ who: who.value.trim() }), say.kept);
  const end = () => act(() => api.endTest());

  async function tryLine(line) {
    adoption.replaceChildren();
    put(trouble, "");
    try {
      const set = { [line.path]: JSON.parse(line.json) };
      const { fingerprint } = await api.settings();
      const outcome = await api.trySettings({ set, reset: [] });
      const first = outcome.faults[0];
      if (first !== undefined) {
        put(trouble, first.sentence);
        return;
      }
      const change = outcome.differences[0];
      adoption.replaceChildren(h("p", {}, change === undefined ? say.noChange : say.change(change.path, JSON.stringify(change.was), JSON.stringify(change.is))),
        change === undefined ? null : h("p", { class: "hint" }, say.stops),
        change === undefined ? null : h("div", { class: "row" }, h("button", { type: "button", onclick: () => adopt(set, fingerprint) }, say.takeOver)));
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  async function adopt(set, base) {
    remember(who.value.trim());
    try {
      await api.applySettings({ set, reset: [], base, who: who.value.trim() });
      adoption.replaceChildren();
      put(said, say.written);
    } catch (refusal) {
      put(trouble, worded(refusal, say.FIELDS));
    }
  }

  function over(run) {
    return h("section", { class: "card", "data-over": run.test },
      h("h2", {}, say.found(run.title)), outcomeList(run.outcomes, tryLine), adoption,
      h("div", { class: "row" },
        run.kept ? null : h("button", { type: "button", onclick: keep }, say.keep),
        h("button", { type: "button", class: "quiet", onclick: end }, run.kept ? say.done : say.putAway)));
  }

  function show(answer) {
    const run = answer.run ?? null;
    // Redrawn only when the step changes, so that what is being typed stays.
    const key = run === null ? "" : `${run.test} ${run.step} ${run.awaits} ${run.ended} ${run.kept}`;
    live.hidden = run === null || run.ended;
    choose.hidden = run !== null;
    if (key !== shown) {
      shown = key;
      adoption.replaceChildren();
      step = run === null || run.ended ? null : stepCard(run, (body) => act(() => api.answerTest(body)), end);
      const had = running.contains(document.activeElement);
      running.replaceChildren(...(run === null ? [] : [step?.node ?? over(run)]));
      if (had) {
        (running.querySelector("input,button") ?? who).focus();
      }
    }
    step?.set(run);
    if (!offered) {
      offered = true;
      const names = feed.now()?.readings ?? [];
      const probes = answer.probes.map((probe) => ({ ...probe, name: names.find((one) => one.channel === probe.channel)?.name ?? probe.channel }));
      tests.replaceChildren(...answer.tests.map((test) => testCard(test, probes, begin)));
    }
    sheet.replaceChildren(answer.sheetFault === null || answer.sheetFault === undefined
      ? sheetList(answer.sheet, feed.now()?.offsetMinutes ?? 0)
      : h("p", { class: "error" }, answer.sheetFault));
  }

  async function look() {
    if (asking) {
      return;
    }
    asking = true;
    try {
      show(await api.commissioning());
    } catch (refusal) {
      put(trouble, refusal.message);
    } finally {
      asking = false;
    }
  }

  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, say.title),
        h("p", { class: "hint" }, say.about)),
      h("section", { class: "card" }, h("div", { class: "field" }, h("label", { class: "head", for: "commission-who" }, say.yourName), who)),
      trouble, said, running, live, choose,
      h("section", { class: "card" }, h("h2", {}, say.sheet), sheet,
        h("div", { class: "row" }, h("a", { class: "button quiet", href: "/api/commissioning/sheet", target: "_blank", rel: "noopener" }, say.sheetToPrint), h("a", { class: "button quiet", href: "#rig" }, say.backToRig))),
    ],
    unitsChanged() {
      shown = "";
      look();
    },
    update(now) {
      figures.set(now);
      // Ticks of the demo come faster than a page needs to look.
      if (performance.now() - looked > 400) {
        looked = performance.now();
        look();
      }
    },
  };
}
