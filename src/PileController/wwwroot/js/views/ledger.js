import { h, put } from "../dom.js";
import * as api from "../api.js";
import { dayAndClock } from "../time.js";
import * as feed from "../feed.js";
import { full, system } from "../units.js";
import * as sums from "../ledger/sums.js";
import * as form from "../words/bookForms.js";
import * as say from "../words/ledger.js";
import { amount, bookForm, date, field, number, select, text } from "../ledger/forms.js";

const facts = (rows) => h("dl", { class: "facts" }, ...rows.flatMap(([name, value]) => [h("dt", {}, name), h("dd", {}, value)]));

const table = (title, first, list) => h("details", {}, h("summary", {}, title),
  h("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": title },
    h("table", {}, h("thead", {}, h("tr", {}, ...[first, ...sums.heads()].map((name, index) => h("th", { scope: "col", class: index > 0 ? "n" : null }, name)))),
      h("tbody", {}, ...[...list].reverse().map((sum) => h("tr", {}, h("th", { scope: "row" }, sum.span), ...sums.cells(sum).map((cell) => h("td", { class: "n" }, cell))))))));

const by = (hand) => say.by(hand.who, dayAndClock(hand.atUtcMilliseconds, feed.now()?.offsetMinutes ?? 0));

function entries(season) {
  const mass = (way) => season.masses.filter((one) => one.way === way).at(-1);
  const told = (one) => (one === undefined ? say.notEntered : say.massOf(full("mass", one.kilograms), one.known, one.how));
  return h("section", { class: "card" }, h("h2", {}, say.written),
    facts([[say.heapIn, told(mass("in"))], [say.heapOut, told(mass("out"))]]),
    season.parts.length === 0 ? null : h("ul", { class: "plain" }, ...season.parts.map((one) =>
      h("li", {}, say.partOf(one.count, one.name, one.reused, (one.count * one.priceEach).toFixed(2))))),
    season.notes.length === 0 ? null : h("ol", { class: "plain" }, ...[...season.notes].reverse().map((note) => h("li", {}, h("p", {}, note.text), h("p", { class: "hint" }, by(note.by))))));
}

function forms(page, done) {
  const open = page.season !== null && (page.season.closed ?? null) === null;
  const writes = (title, button, path, fields, extra) => bookForm(title, button, path, fields, extra, done);
  if (!open) {
    return [writes(form.openSeason, form.openIt, "season", { name: field(form.FIELDS.name, text(40)), heapBuilt: field(form.FIELDS.heapBuilt, date()) }, { act: "open" })];
  }
  return [
    writes(form.writeNote, form.writeIt, "notes", { text: field(form.FIELDS.text, text(500)) }, {}),
    writes(form.enterMass, form.enterIt, "mass", {
      way: field(form.whichWay, select(form.WAYS)),
      kilograms: field(system() === "metric" ? form.FIELDS.kilograms : form.pounds, number(), kilograms),
      known: field(form.FIELDS.how, select(form.KNOWN)),
      how: field(form.byWhat, text(200)),
    }, {}),
    writes(form.enterPart, form.enterIt, "parts", {
      name: field(form.FIELDS.name, text(40)),
      count: field(form.FIELDS.count, number("1"), amount),
      priceEach: field(form.FIELDS.priceEach, number(), amount),
      origin: field(form.whereFrom, select(form.ORIGINS)),
    }, {}),
    writes(form.closeSeason, form.closeIt, "season", { closedOn: field(form.FIELDS.closedOn, date()) }, { act: "close" }),
  ];
}

// The book keeps kilograms, whatever is typed.
const kilograms = (input) => (input.value === "" ? undefined : Number(input.value) * (system() === "metric" ? 1 : 0.45359237));

/** The grower's book: what a season came to and what was written into it. */
export function ledgerView() {
  const trouble = h("p", { class: "error", role: "alert" });
  const choice = h("select", { id: "ledger-season", onchange: () => load(choice.value) });
  const chooser = h("div", { class: "field", hidden: true }, h("label", { class: "head", for: "ledger-season" }, say.season), choice);
  const body = h("div", { class: "book" });
  const writing = h("div", { class: "book" });
  let page = null;
  let formsOf = null;

  // The forms stay, with what is typed into them, until another season or its end asks for others.
  function renderForms() {
    const key = `${page.season?.name}|${page.season?.closed?.on}`;
    if (key !== formsOf) {
      formsOf = key;
      writing.replaceChildren(...forms(page, (next) => { page = next; render(); }));
    }
  }

  function render() {
    const season = page.season;
    renderForms();
    chooser.hidden = page.seasons.length < 2;
    if (page.seasons.length > 0) {
      choice.replaceChildren(...page.seasons.map((name) => h("option", { value: name, selected: name === season?.name }, name)));
    }
    const closed = season?.closed ?? null;
    body.replaceChildren(
      h("section", { class: "card" },
        h("div", { class: "spread" }, h("h2", {}, season === null ? say.noSeason : closed === null ? say.seasonOpen(season.name, season.heapBuiltOn) : say.seasonClosed(season.name, season.heapBuiltOn, closed.on)),
          season === null ? null : h("a", { class: "button quiet", target: "_blank", rel: "noopener", href: api.reportPath({ season: season.name, units: system() }) }, say.report)),
        facts(sums.rows(page.total)),
        page.running === null ? null : h("p", { class: "hint" }, say.stillRuns(page.running))),
      page.money === null ? "" : h("section", { class: "card" }, h("h2", {}, say.money), facts(sums.moneyRows(page.money))),
      h("section", { class: "card" }, h("h2", {}, say.byDay), table(say.months, say.month, page.months), table(say.days, say.day, page.days)),
      season === null ? "" : entries(season),
      writing,
      h("section", { class: "card" }, h("h2", {}, say.howToRead), h("ul", { class: "plain hint" }, ...page.readThus.map((line) => h("li", {}, line)))));
  }

  async function load(season) {
    try {
      page = await api.ledger({ season });
      put(trouble, "");
      render();
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  load();
  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, say.title), h("p", { class: "hint" }, say.about)),
      trouble, chooser, body,
    ],
    unitsChanged: () => page !== null && render(),
  };
}
