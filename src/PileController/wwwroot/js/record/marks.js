import { h, put } from "../dom.js";
import * as api from "../api.js";
import * as feed from "../feed.js";
import { dayAndClock } from "../time.js";
import { inUnits, together } from "../units.js";
import { KINDS } from "../words/decisions.js";
import { MODES } from "../words/names.js";
import * as say from "../words/record.js";

const SHOWN = ["mode", "trip", "clear", "hand", "probe", "warning", "start"];
const MOST = 300;
const TONES = { trip: "bad", warning: "warn", probe: "warn" };

const toneOf = (kinds) => kinds.map((kind) => TONES[kind]).find((tone) => tone !== undefined) ?? "plain";

/** The decisions of the stretch that is seen: marks for the charts and a list beneath them. */
export function decisionMarks(told) {
  const list = h("ol", { class: "plain" });
  const summary = h("summary", {});
  const node = h("details", { class: "card", hidden: true }, summary, list);
  let turn = 0;
  let marks = [];

  return {
    node,
    tell: () => told(marks),
    async want({ from, to }) {
      const mine = ++turn;
      try {
        const answer = await api.decisions({ from: Math.floor(from), to: Math.ceil(to) + 1, kind: SHOWN.join(), limit: MOST });
        if (mine !== turn) {
          return;
        }
        const offset = feed.now()?.offsetMinutes ?? 0;
        marks = answer.decisions.map((line) => ({ at: line.utcMs, tone: toneOf(line.kinds), text: say.decided(MODES[line.mode] ?? line.mode, together(inUnits(line.why, true))) }));
        told(marks);
        node.hidden = false;
        put(summary, answer.more ? say.newestDecisions(MOST) : say.decisions(marks.length));
        list.replaceChildren(...answer.decisions.map((line) => h("li", {},
          h("p", { class: "hint num" }, `${dayAndClock(line.utcMs, offset)} · ${line.kinds.map((kind) => KINDS[kind] ?? kind).join(", ")}`),
          h("p", {}, h("a", { class: "line-link", href: `#decisions/${line.sequence}` }, MODES[line.mode] ?? line.mode), `: ${together(inUnits(line.why, true))}`))));
      } catch {
        // The charts tell of a controller that cannot be reached; marks alone are not worth a second message.
        node.hidden = true;
      }
    },
  };
}
