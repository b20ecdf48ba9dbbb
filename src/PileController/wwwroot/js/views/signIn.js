import { h, put } from "../dom.js";
import * as api from "../api.js";
import * as session from "../session.js";
import { codeForm, passphraseForm } from "../access/forms.js";
import { keysCards } from "../access/keys.js";
import { journalCard } from "../access/journal.js";
import * as say from "../words/access.js";

const notice = (text) => h("p", { class: "notice" }, text);

const folded = (title, node) => h("details", { class: "card" }, h("summary", {}, title), node);

/** Sign in and out; keys for scripts; who came. */
export function signInView(back) {
  const body = h("div", { class: "now-grid" });
  const said = h("p", { role: "status" });
  const trouble = h("p", { class: "error", role: "alert" });
  let drawn = "";

  async function enter(call, form) {
    session.set(await call(form));
    back();
  }

  async function leave(call, words) {
    put(trouble, "");
    try {
      await call();
      session.set(await api.askSession());
      put(said, words);
    } catch (refusal) {
      put(trouble, refusal.message);
    }
  }

  const open = () => [
    h("section", { class: "card" }, h("h2", {}, say.noPassphrase),
      h("p", {}, say.noPassphraseAbout)),
    folded(say.setOneByCode, codeForm((form) => enter(api.setPassphrase, form))),
  ];

  const out = () => [
    passphraseForm((form) => enter(api.signIn, form)),
    folded(say.setByCode, codeForm((form) => enter(api.setPassphrase, form))),
  ];

  const inside = (state) => [
    h("section", { class: "card" }, h("h2", {}, say.signedInAs(state.name)),
      h("p", { class: "hint" }, say.endsByItself),
      h("div", { class: "row" },
        h("button", { type: "button", onclick: () => leave(api.signOut, say.signedOut) }, say.signOut),
        h("button", { type: "button", class: "quiet", onclick: () => leave(api.signOutEverywhere, say.signedOutEverywhere) }, say.signOutEverywhere))),
  ];

  function draw(state) {
    const next = JSON.stringify([state?.needsPassphrase, state?.signedIn, state?.name, state?.plain, state?.fault, state?.whyNot]);
    if (state === null || next === drawn) {
      return;
    }
    drawn = next;
    const cards = state.signedIn ? inside(state) : state.needsPassphrase ? out() : open();
    body.replaceChildren(...[
      state.plain ? notice(say.notEncrypted) : null,
      state.fault ? notice(say.nobodyCan(state.fault)) : null,
      state.signedIn && state.whyNot ? notice(state.whyNot) : null,
      ...cards,
      ...(state.signedIn && state.maySteer ? keysCards() : []),
      state.maySteer ? journalCard() : null,
    ].filter((one) => one !== null).map((one) => h("div", { class: "w12" }, one)));
  }

  const end = session.listen(draw);
  draw(session.current());
  return {
    nodes: [
      h("div", { class: "view-head" }, h("h1", {}, say.title),
        h("p", { class: "hint" }, say.about)),
      said, trouble, body,
    ],
    end,
  };
}
