import { h, put, mark } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { timeChart } from "../charts/timeChart.js";
import { gestures } from "../record/gestures.js";
import { decisionMarks } from "../record/marks.js";
import { picker } from "../record/picker.js";
import { chosenCharts, USUAL } from "../record/series.js";
import { store } from "../record/store.js";
import * as windows from "../record/window.js";
import { dayAndClock, span } from "../time.js";
import { system } from "../units.js";
import * as say from "../words/record.js";

const HOUR = 3600000;
const DAY = 24 * HOUR;
const RENEW_MS = 15000;

const SPANS = [[say.SPANS.sixHours, 6 * HOUR], [say.SPANS.day, DAY], [say.SPANS.threeDays, 3 * DAY], [say.SPANS.fortnight, 14 * DAY], [say.SPANS.season, 240 * DAY]];

/** The record: any channels together, over hours or a season. */
export function recordView() {
  const trouble = h("p", { class: "error", role: "alert" });
  const seenText = h("p", { class: "num", role: "status" });
  const holder = h("div", { class: "charts" });
  const spanButtons = SPANS.map(([name, ms]) => h("button", { type: "button", class: "quiet", onclick: () => seen !== null && choose(ms) }, name));
  const tools = [[say.TOOLS.earlier, () => page(-0.5)], [say.TOOLS.later, () => page(0.5)], [say.TOOLS.closer, () => zoom(0.5)], [say.TOOLS.wider, () => zoom(2)], [say.TOOLS.newest, () => newest()]]
    .map(([name, act]) => h("button", { type: "button", class: "quiet", onclick: () => seen !== null && act() }, name));
  const marks = decisionMarks((list) => charts.forEach((chart) => chart.mark(list)));
  const pick = picker((list) => { build(list.length === 0 ? USUAL : chosenCharts(list)); ask(true); });
  const data = store((have) => { put(trouble, ""); const now = feed.now(); charts.forEach((chart) => chart.set(have, now, seen, csv(chart))); }, (refusal) => put(trouble, refusal.message));
  let charts = [];
  let limits = null;
  let seen = null;
  let chosen = DAY;
  let follows = true;
  let cursor = null;
  let frame = 0;
  let askedAt = -Infinity;
  let settling = 0;

  const names = () => [...new Set(charts.flatMap((chart) => chart.names))];
  const room = () => Math.max(120, Math.ceil((charts[0]?.room() ?? 300) / 2) * 2);
  const csv = (chart) => api.samplesPath({ channel: chart.names.join(), from: Math.floor(seen.from), to: Math.ceil(seen.to) + 1, step: `${windows.stepFor(seen.to - seen.from, room())}s`, format: "csv", units: system() });

  function build(definitions) {
    watch.disconnect();
    charts = definitions.map(timeChart);
    holder.replaceChildren(...charts.map((chart) => chart.node));
    charts.forEach((chart) => {
      gestures(chart, () => seen, act(chart));
      watch.observe(chart.stage);
    });
    marks.tell();
  }

  function ask(fresh) {
    if (seen !== null) {
      askedAt = fresh ? performance.now() : askedAt;
      data.want(names(), seen, limits, room(), fresh);
    }
  }

  // One drawing a frame, however many events come.
  function redraw() {
    frame ||= requestAnimationFrame(() => {
      frame = 0;
      charts.forEach((chart) => { chart.look(seen); chart.point(cursor); });
      tellSeen();
    });
  }

  function tellSeen() {
    const offset = feed.now().offsetMinutes;
    put(seenText, say.seen(dayAndClock(seen.from, offset), dayAndClock(seen.to, offset), span(seen.to - seen.from)));
    spanButtons.forEach((button, index) => mark(button, "aria-pressed", String(SPANS[index][1] === chosen)));
  }

  function go(next, asChosen = null) {
    seen = next;
    chosen = asChosen;
    follows = next.to >= limits.to - 1;
    redraw();
    ask(false);
    clearTimeout(settling);
    settling = setTimeout(settled, 250);
  }

  function settled() {
    charts.forEach((chart) => chart.settle(csv(chart)));
    marks.want(seen);
  }

  const choose = (ms) => go(windows.within({ from: limits.to - ms, to: limits.to }, limits), ms);
  const page = (share) => go(windows.moved(seen, share * (seen.to - seen.from), limits));
  const zoom = (factor) => go(windows.zoomed(seen, factor, cursor ?? (follows ? seen.to : (seen.from + seen.to) / 2), limits));
  const newest = () => go(windows.moved(seen, limits.to - seen.to, limits), chosen);

  function point(moment) {
    cursor = moment;
    redraw();
  }

  const act = (chart) => ({
    moveBy: (ms) => go(windows.moved(seen, ms, limits)),
    zoomBy: (factor, at) => go(windows.zoomed(seen, factor, at, limits)),
    zoomHere: zoom,
    pageBy: page,
    pointAt: point,
    settled,
    stepBy(points) {
      const moments = chart.moments();
      const index = cursor === null ? (points < 0 ? moments.length : moments.length - 1 - points) : moments.findIndex((one) => one >= cursor);
      const next = Math.max(0, Math.min(moments.length - 1, (index < 0 ? moments.length - 1 : index) + points));
      pointNow(moments[next] ?? null);
    },
    toEnd(first) {
      pointNow(chart.moments().at(first ? 0 : -1) ?? null);
    },
  });

  // A key's answer is read out at once, not at the next frame.
  function pointNow(moment) {
    cursor = moment;
    charts.forEach((chart) => chart.point(cursor));
  }

  async function begin(now) {
    limits = { from: now.utcMs - windows.MOST, to: now.utcMs };
    const answer = await api.samples({ channel: "house", from: limits.from, to: now.utcMs + 1, step: "1 d" });
    const first = answer.series[0].points.find((one) => one[2] !== null);
    limits.from = Math.min(first?.[0] ?? now.utcMs, now.utcMs - windows.LEAST);
    choose(DAY);
    ask(true);
  }

  const watch = new ResizeObserver(() => charts.forEach((chart) => chart.resized()));
  let beginning = null;
  build(USUAL);
  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, say.title),
        h("p", { class: "hint" }, say.about)),
      h("div", { class: "row", role: "group", "aria-label": say.howLong }, ...spanButtons),
      h("div", { class: "row", role: "group", "aria-label": say.moveAndZoom }, ...tools),
      seenText, pick.node, trouble, holder, marks.node,
    ],
    update(now) {
      pick.offer(now);
      if (limits === null) {
        beginning ??= begin(now).catch((refusal) => { beginning = null; limits = null; put(trouble, refusal.message); });
        return;
      }
      if (seen !== null && performance.now() - askedAt > RENEW_MS) {
        const behind = now.utcMs - limits.to;
        limits.to = now.utcMs;
        if (follows) {
          go(windows.moved(seen, behind, limits), chosen);
        }
        if (follows || data.failed()) {
          ask(true);
        }
      }
    },
    unitsChanged: () => seen !== null && settled(),
    end: () => { watch.disconnect(); clearTimeout(settling); cancelAnimationFrame(frame); },
  };
}
