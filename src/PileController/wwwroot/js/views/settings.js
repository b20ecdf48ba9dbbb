import { h, put, mark } from "../dom.js";
import * as api from "../api.js";
import { dayAndClock } from "../time.js";
import { chosenFor, inUnits, tidy, together } from "../units.js";
import * as say from "../words/settings.js";
import { yourName } from "../words/shared.js";
import { nameInput, remember } from "../who.js";
import * as feed from "../feed.js";

/** A value as a person reads and writes it: text without its quotes. */
const shown = (value) => (value === null ? "none" : typeof value === "string" ? tidy(value) : JSON.stringify(value));

const beside = (text, own) => (own === null || own === text ? text : say.inOwnUnits(text, own));

// A value that is read only, with what it is in the chosen units beside it.
const read = (value) => beside(shown(value), typeof value === "string" ? chosenFor(value) : null);

const range = (allowed) => beside(allowed, inUnits(allowed));

// What was typed, in the form the setting has now: a flag, a number, none, or a text with its unit.
function typed(text, now) {
  const given = text.trim();
  if (typeof now === "boolean") {
    return given === "true";
  }
  if (given === "none" && now !== "none") {
    return null;
  }
  return (typeof now === "number" || now === null) && given !== "" && Number.isFinite(Number(given)) ? Number(given) : given;
}

const words = (allowed) => (/^one of ("[^"]+"(, )?)+$/.test(allowed) ? [...allowed.matchAll(/"([^"]+)"/g)].map((one) => one[1]) : null);

function entry(setting, id, changed) {
  const list = typeof setting.value === "boolean" ? ["true", "false"] : words(setting.allowed);
  const field = list === null
    ? h("input", { type: "text", id, autocomplete: "off", spellcheck: "false", value: shown(setting.value), "aria-describedby": `${id}-about ${id}-wrong`, oninput: changed })
    : h("select", { id, "aria-describedby": `${id}-about ${id}-wrong`, onchange: changed },
      ...list.map((one) => h("option", { value: one, selected: one === shown(setting.value) }, typeof setting.value === "boolean" ? (one === "true" ? say.yes : say.no) : one)));
  return field;
}

function row(setting, changed, back) {
  const id = `set-${setting.path.replaceAll(".", "-")}`;
  const wrong = h("p", { class: "error", id: `${id}-wrong`, role: "alert" });
  const about = h("p", { class: "hint", id: `${id}-about` });
  const own = h("p", { class: "hint num" });
  const filed = h("span", {});
  const fixed = setting.inTheFile !== null;
  const long = shown(setting.value).length > 60;
  const field = fixed ? (long ? null : h("p", { class: "num" }, shown(setting.value))) : entry(setting, id, changed);
  const state = setting.changed
    ? h("p", { class: "hint" }, filed,
      h("button", { type: "button", class: "quiet", onclick: () => back(setting.path) }, say.backToFile))
    : null;
  const node = h("div", { class: "setting", "data-path": setting.path, "data-changed": setting.changed },
    fixed ? h("p", { class: "head" }, h("span", { class: "path" }, setting.path)) : h("label", { class: "head", for: id }, h("span", { class: "path" }, setting.path)),
    about, field, own,
    fixed ? h("p", { class: "hint" }, say.inFileOnly(setting.inTheFile)) : null, wrong, state);
  function inOwn() {
    const mine = typeof setting.value === "string" ? chosenFor(setting.value) : null;
    put(own, mine === null ? "" : say.asOwn(mine));
    own.hidden = mine === null;
    put(about, together(`${say.allowed(setting.doc, range(setting.allowed))}${setting.mayGo === null ? "" : say.onlyOneWay(setting.mayGo, read(setting.file))}`));
    put(filed, say.changedHere(read(setting.file)));
  }
  inOwn();
  return {
    node,
    inOwn,
    path: setting.path,
    text: `${setting.path} ${setting.doc}`.toLowerCase(),
    fixed,
    value: () => (fixed || field.value === shown(setting.value) ? undefined : typed(field.value, setting.value)),
    say: (text) => {
      put(wrong, text);
      if (!fixed) {
        mark(field, "aria-invalid", text === "" ? null : "true");
      }
    },
  };
}

const change = (one) => h("tr", {}, h("th", { scope: "row", class: "path" }, one.path), h("td", {}, read(one.was)), h("td", {}, read(one.is)));

function differences(list) {
  return h("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": say.wouldChange },
    h("table", {}, h("thead", {}, h("tr", {}, ...say.COLUMNS.map((name) => h("th", { scope: "col" }, name)))),
      h("tbody", {}, ...list.map((one) => change(one)))));
}

const past = (one, offset) => h("li", {}, say.past(dayAndClock(one.utcMs, offset), one.path, read(one.was), read(one.is), one.who, one.from));

/** All settings: read them, change what may be changed, and see what that means before it applies. */
export function settingsView() {
  const trouble = h("p", { class: "error", role: "alert" });
  const said = h("p", { role: "status" });
  const notice = h("div", { class: "notice", hidden: true });
  const search = h("input", { type: "search", id: "setting-search", autocomplete: "off", oninput: sift });
  const sections = h("div", { class: "sections" });
  const preview = h("div", { class: "preview" });
  const made = h("ul", { class: "plain small" });
  const who = nameInput({ id: "settings-who" });
  const look = h("button", { type: "button", onclick: () => tryIt() }, say.look);
  const apply = h("button", { type: "button", hidden: true, onclick: () => applyIt() }, say.apply);
  const drop = h("button", { type: "button", class: "quiet", onclick: () => { reset = []; load(); } }, say.drop);
  let rows = [];
  let reset = [];
  let answer = null;
  let awaited = null;
  // What the look that stands has found.
  let found = [];

  const edit = () => ({ set: Object.fromEntries(rows.filter((one) => one.value() !== undefined && !reset.includes(one.path)).map((one) => [one.path, one.value()])), reset });

  // What is typed after "Back to the file's" counts again.
  function typedAt(path) {
    reset = reset.filter((one) => one !== path);
    touched();
  }

  // Whatever is typed makes an older look at it stale.
  function touched() {
    apply.hidden = true;
    preview.replaceChildren();
    put(said, "");
  }

  function back(path) {
    reset = [...reset.filter((one) => one !== path), path];
    tryIt();
  }

  function sift() {
    const wanted = search.value.trim().toLowerCase();
    for (const section of sections.children) {
      const inside = [...section.querySelectorAll(".setting")];
      inside.forEach((node) => { node.hidden = wanted !== "" && !rows.find((one) => one.node === node).text.includes(wanted); });
      section.hidden = inside.every((node) => node.hidden);
      section.open = wanted !== "" && !section.hidden;
    }
  }

  function build() {
    rows = answer.settings.map((one) => row(one, () => typedAt(one.path), back));
    const names = [...new Set(rows.map((one) => one.path.split(".")[0]))];
    sections.replaceChildren(...names.map((name) => {
      const inside = rows.filter((one) => one.path.split(".")[0] === name);
      const count = answer.settings.filter((one) => one.changed && one.path.split(".")[0] === name).length;
      return h("details", { class: "card" },
        h("summary", {}, say.section(say.SECTIONS[name] ?? name, count)), ...inside.map((one) => one.node));
    }));
    sift();
    tellMade();
    notice.hidden = answer.trouble === null;
    put(notice, answer.trouble ?? "");
  }

  function tellMade() {
    const offset = feed.now()?.offsetMinutes ?? 0;
    made.replaceChildren(...(answer.changes.length === 0 ? [h("li", {}, say.noneYet)] : answer.changes.map((one) => past(one, offset))));
  }

  async function load() {
    try {
      answer = await api.settings();
      put(trouble, "");
      touched();
      build();
      return true;
    } catch (refusal) {
      put(trouble, refusal.message);
      return false;
    }
  }

  function tell(outcome) {
    rows.forEach((one) => one.say(outcome.faults.filter((fault) => fault.path === one.path).map((fault) => together(say.wrongValue(fault.given, fault.allowed))).join(" ")));
    const others = outcome.faults.filter((fault) => !rows.some((one) => one.path === fault.path));
    put(trouble, outcome.faults.length === 0 ? "" : say.wrong(outcome.faults.length, others.map((fault) => fault.sentence).join(" ")));
    const first = rows.find((one) => outcome.faults.some((fault) => fault.path === one.path));
    if (first !== undefined) {
      first.node.closest("details").open = true;
      first.node.scrollIntoView({ block: "center" });
    }
  }

  async function tryIt() {
    touched();
    try {
      const outcome = await api.trySettings(edit());
      tell(outcome);
      if (outcome.faults.length > 0) {
        return;
      }
      if (outcome.differences.length === 0) {
        put(said, say.nothingChanges);
        return;
      }
      found = outcome.differences;
      preview.replaceChildren(differences(found), h("p", { class: "hint" }, say.restart));
      apply.hidden = false;
      apply.focus();
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  async function applyIt() {
    remember(who.value.trim());
    try {
      const outcome = await api.applySettings({ ...edit(), base: answer.fingerprint, who: who.value.trim() });
      awaited = outcome.fingerprint;
      touched();
      put(said, say.written);
    } catch (refusal) {
      if (refusal.answer?.faults !== undefined) {
        tell(refusal.answer);
        return;
      }
      put(trouble, refusal.field === "who" ? say.noName : refusal.message);
    }
  }

  load();
  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, say.title), h("p", { class: "hint" }, say.about)),
      notice,
      h("div", { class: "field" }, h("label", { class: "head", for: "setting-search" }, say.find), search),
      sections,
      h("section", { class: "card settle", "aria-label": say.change },
        h("div", { class: "field" }, h("label", { class: "head", for: "settings-who" }, yourName), who),
        h("div", { class: "row" }, look, drop), trouble, preview, apply, said),
      h("section", { class: "card" }, h("h2", {}, say.changesMade), made),
    ],
    unitsChanged() {
      rows.forEach((one) => one.inOwn());
      preview.querySelector(".scroll")?.replaceWith(differences(found));
      if (answer !== null) {
        tellMade();
      }
    },
    async update() {
      if (awaited === null || feed.silent()) {
        return;
      }
      const wanted = awaited;
      awaited = null;
      reset = [];
      if (!(await load())) {
        awaited = wanted;
        return;
      }
      if (answer.waiting) {
        awaited = wanted;
        put(said, say.written);
      } else {
        put(said, answer.fingerprint === wanted ? say.inForce : say.otherInForce);
      }
    },
  };
}
