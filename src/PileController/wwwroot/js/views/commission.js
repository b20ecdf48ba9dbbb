import { h, put } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { worded } from "../refusal.js";
import { liveFigures, outcomeList, sheetList, stepCard, testCard } from "../rig/tests.js";

const NAME = "who";
const FIELDS = { who: "Your name", figure: "Your answer", text: "Your answer" };

/** Lead through the tests of a rig: find, calibrate, prove; and keep what was found. */
export function commissionView() {
  const trouble = h("p", { class: "error", role: "alert" });
  const said = h("p", { role: "status" });
  const who = h("input", { type: "text", id: "commission-who", maxlength: 40, autocomplete: "name", value: localStorage.getItem(NAME) ?? "" });
  const running = h("div", { class: "book", "aria-live": "polite" });
  const figures = liveFigures();
  const live = h("section", { class: "card", hidden: true }, h("h2", {}, "Now"), figures.node);
  const tests = h("div", { class: "sections" });
  const sheet = h("div", {});
  const choose = h("section", {}, h("h2", {}, "Tests, in their order"), tests);
  const adoption = h("div", { class: "plain" });
  let shown = "";
  let step = null;
  let asking = false;
  let looked = -Infinity;
  let offered = false;

  async function act(call, done = "") {
    put(trouble, "");
    put(said, "");
    localStorage.setItem(NAME, who.value.trim());
    try {
      show(await call());
      put(said, done);
    } catch (refusal) {
      put(trouble, worded(refusal, FIELDS));
    }
  }

  const begin = (test, probes) => act(() => api.beginTest({ test, probes, who: who.value.trim() }));
  const keep = () => act(() => api.keepTest({ who: who.value.trim() }), "Kept on the sheet.");
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
      adoption.replaceChildren(h("p", {}, change === undefined ? "Nothing would change: the settings say so already." : `${change.path}: ${JSON.stringify(change.was)} becomes ${JSON.stringify(change.is)}.`),
        change === undefined ? null : h("p", { class: "hint" }, "The controller stops for a second or two with its outputs safe, and goes on with it. Keep the result on the sheet first."),
        change === undefined ? null : h("div", { class: "row" }, h("button", { type: "button", onclick: () => adopt(set, fingerprint) }, "Take it over")));
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  async function adopt(set, base) {
    localStorage.setItem(NAME, who.value.trim());
    try {
      await api.applySettings({ set, reset: [], base, who: who.value.trim() });
      adoption.replaceChildren();
      put(said, "Written. The controller is starting with it.");
    } catch (refusal) {
      put(trouble, worded(refusal, FIELDS));
    }
  }

  function over(run) {
    return h("section", { class: "card", "data-over": run.test },
      h("h2", {}, `${run.title}: what was found`), outcomeList(run.outcomes, tryLine), adoption,
      h("div", { class: "row" },
        run.kept ? null : h("button", { type: "button", onclick: keep }, "Keep on the sheet"),
        h("button", { type: "button", class: "quiet", onclick: end }, run.kept ? "Done" : "Put away")));
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
        (running.querySelector("input, button") ?? who).focus();
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
      h("div", { class: "view-head" }, h("h1", {}, "Commission"),
        h("p", { class: "hint" }, "The controller leads, you do the work. Nothing moves before its button says so; interlocks outrank every test, and what is held ends by itself.")),
      h("section", { class: "card" }, h("div", { class: "field" }, h("label", { class: "head", for: "commission-who" }, "Your name, for the record and the sheet"), who)),
      trouble, said, running, live, choose,
      h("section", { class: "card" }, h("h2", {}, "The sheet"), sheet,
        h("div", { class: "row" }, h("a", { class: "button quiet", href: "/api/commissioning/sheet", target: "_blank", rel: "noopener" }, "The sheet, to print"), h("a", { class: "button quiet", href: "#rig" }, "Back to the rig"))),
    ],
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
