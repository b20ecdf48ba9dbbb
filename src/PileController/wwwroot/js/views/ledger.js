import { h, put } from "../dom.js";
import * as api from "../api.js";
import { dayAndClock } from "../time.js";
import * as feed from "../feed.js";
import { full, system } from "../units.js";
import * as words from "../ledger/words.js";
import { amount, bookForm, date, field, number, select, text } from "../ledger/forms.js";

const facts = (rows) => h("dl", { class: "facts" }, ...rows.flatMap(([name, value]) => [h("dt", {}, name), h("dd", {}, value)]));

const table = (title, first, list) => h("details", {}, h("summary", {}, title),
  h("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": title },
    h("table", {}, h("thead", {}, h("tr", {}, ...[first, ...words.heads().slice(1)].map((name, index) => h("th", { scope: "col", class: index > 0 ? "n" : null }, name)))),
      h("tbody", {}, ...[...list].reverse().map((sum) => h("tr", {}, h("th", { scope: "row" }, sum.span), ...words.cells(sum).map((cell) => h("td", { class: "n" }, cell))))))));

const by = (hand) => `${hand.who}, ${dayAndClock(hand.atUtcMilliseconds, feed.now()?.offsetMinutes ?? 0)}`;

function entries(season) {
  const mass = (way) => season.masses.filter((one) => one.way === way).at(-1);
  const told = (one) => (one === undefined ? "not entered" : `${full("mass", one.kilograms)}, ${one.known}${one.how === null ? "" : `: ${one.how}`}`);
  return h("section", { class: "card" }, h("h2", {}, "Written in the book"),
    facts([["Heap in, wet", told(mass("in"))], ["Heap out", told(mass("out"))]]),
    season.parts.length === 0 ? null : h("ul", { class: "plain" }, ...season.parts.map((one) =>
      h("li", {}, `${one.count} × ${one.name}, ${one.reused ? "reused; new it would have cost" : "bought for"} ${(one.count * one.priceEach).toFixed(2)}`))),
    season.notes.length === 0 ? null : h("ol", { class: "plain" }, ...[...season.notes].reverse().map((note) => h("li", {}, h("p", {}, note.text), h("p", { class: "hint" }, by(note.by))))));
}

function forms(page, done) {
  const open = page.season !== null && (page.season.closed ?? null) === null;
  const form = (title, button, path, fields, extra) => bookForm(title, button, path, fields, extra, done);
  if (!open) {
    return [form("Open a season", "Open it", "season", { name: field("Name", text(40)), heapBuilt: field("Heap built on", date()) }, { act: "open" })];
  }
  return [
    form("Write a note", "Write it", "notes", { text: field("What", text(500)) }, {}),
    form("Enter the heap's mass", "Enter it", "mass", {
      way: field("Which way", select([["in", "in, when built"], ["out", "out, when taken down"]])),
      kilograms: field(system() === "metric" ? "Kilograms" : "Pounds", number(), kilograms),
      known: field("How it is known", select([["measured", "weighed"], ["guessed", "guessed"]])),
      how: field("By what", text(200)),
    }, {}),
    form("Enter a part", "Enter it", "parts", {
      name: field("Name", text(40)),
      count: field("How many", number("1"), amount),
      priceEach: field("Price of one", number(), amount),
      origin: field("Where from", select([["bought", "bought"], ["reused", "reused: price as new"]])),
    }, {}),
    form("Close the season", "Close it", "season", { closedOn: field("Last day", date()) }, { act: "close" }),
  ];
}

// The book keeps kilograms, whatever is typed.
const kilograms = (input) => (input.value === "" ? undefined : Number(input.value) * (system() === "metric" ? 1 : 0.45359237));

/** The grower's book: what a season came to and what was written into it. */
export function ledgerView() {
  const trouble = h("p", { class: "error", role: "alert" });
  const choice = h("select", { id: "ledger-season", onchange: () => load(choice.value) });
  const chooser = h("div", { class: "field", hidden: true }, h("label", { class: "head", for: "ledger-season" }, "Season"), choice);
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
        h("div", { class: "spread" }, h("h2", {}, season === null ? "All days so far; no season is open" : `${season.name}, ${closed === null ? `since ${season.heapBuiltOn}` : `${season.heapBuiltOn} to ${closed.on}, closed`}`),
          season === null ? null : h("a", { class: "button quiet", target: "_blank", rel: "noopener", href: api.reportPath({ season: season.name, units: system() }) }, "Report to print")),
        facts(words.rows(page.total)),
        page.running === null ? null : h("p", { class: "hint" }, `${page.running} still runs.`)),
      page.money === null ? "" : h("section", { class: "card" }, h("h2", {}, "Money"), facts(words.moneyRows(page.money))),
      h("section", { class: "card" }, h("h2", {}, "By day and month"), table("Months", "Month", page.months), table("Days", "Day", page.days)),
      season === null ? "" : entries(season),
      writing,
      h("section", { class: "card" }, h("h2", {}, "How to read it"), h("ul", { class: "plain hint" }, ...page.readThus.map((line) => h("li", {}, line)))));
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
      h("div", { class: "view-head" }, h("h1", {}, "Ledger"), h("p", { class: "hint" }, "What the heap gave, what it cost, and what you write down, season by season.")),
      trouble, chooser, body,
    ],
    unitsChanged: () => page !== null && render(),
  };
}
