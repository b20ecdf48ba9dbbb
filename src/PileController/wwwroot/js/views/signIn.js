import { h, put } from "../dom.js";
import * as api from "../api.js";
import * as session from "../session.js";
import { codeForm, passphraseForm } from "../access/forms.js";
import { keysCards } from "../access/keys.js";
import { journalCard } from "../access/journal.js";

const PLAIN = "This connection is not encrypted. Whoever is on the same network can read the passphrase as you type it, and come in as you. Use https, or sign in at the machine itself.";

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
    h("section", { class: "card" }, h("h2", {}, "No passphrase is set"),
      h("p", {}, "Whoever is at this machine may change everything; no other machine is let in. The command PileController passphrase, given at the machine, sets one.")),
    folded("Set one here with a code", codeForm((form) => enter(api.setPassphrase, form))),
  ];

  const out = () => [
    passphraseForm((form) => enter(api.signIn, form)),
    folded("Set a passphrase with a code", codeForm((form) => enter(api.setPassphrase, form))),
  ];

  const inside = (state) => [
    h("section", { class: "card" }, h("h2", {}, `Signed in as ${state.name}`),
      h("p", { class: "hint" }, "It ends by itself after twelve hours without use."),
      h("div", { class: "row" },
        h("button", { type: "button", onclick: () => leave(api.signOut, "You are signed out.") }, "Sign out"),
        h("button", { type: "button", class: "quiet", onclick: () => leave(api.signOutEverywhere, "Everybody is signed out, everywhere. Keys for scripts still work until they are taken back.") }, "Sign out everywhere"))),
  ];

  function draw(state) {
    const next = JSON.stringify([state?.needsPassphrase, state?.signedIn, state?.name, state?.plain, state?.fault, state?.whyNot]);
    if (state === null || next === drawn) {
      return;
    }
    drawn = next;
    const cards = state.signedIn ? inside(state) : state.needsPassphrase ? out() : open();
    body.replaceChildren(...[
      state.plain ? notice(PLAIN) : null,
      state.fault ? notice(`Nobody can sign in: ${state.fault}`) : null,
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
      h("div", { class: "view-head" }, h("h1", {}, "Access"),
        h("p", { class: "hint" }, "Looking is open at this machine; every change needs somebody who is signed in, and is recorded with who and from where.")),
      said, trouble, body,
    ],
    end,
  };
}
