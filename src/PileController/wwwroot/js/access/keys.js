import { h, put } from "../dom.js";
import * as api from "../api.js";
import { dayAndClock } from "../time.js";
import { asking, field, worded } from "./forms.js";
import * as say from "../words/access.js";

const scopesWords = (scopes) => scopes.map((one) => say.SCOPES[one] ?? one).join(", ");

/** Keys for scripts: make one, see it once, take it back. */
export function keysCards() {
  const rows = h("ul", {});
  const trouble = h("p", { class: "error", role: "alert" });
  const name = h("input", { type: "text", id: "key-name", maxlength: 40, autocomplete: "off", required: true });
  const scope = h("select", { id: "key-scope" }, ...Object.entries(say.SCOPES).map(([id, words]) => h("option", { value: id }, words)));
  const secret = h("input", { type: "text", id: "key-secret", readonly: true, spellcheck: "false", onfocus: () => secret.select() });
  const made = h("div", { class: "notice", "data-tone": "good", hidden: true }, field("key-secret", say.theKey, secret, say.theKeyAbout));

  const row = (key) => h("li", { class: "probe" },
    h("div", {}, h("h3", {}, key.name),
      h("p", { class: "state num" }, say.keyState(scopesWords(key.scopes), key.madeBy, key.usedUtcMs === null ? null : dayAndClock(key.usedUtcMs, key.offsetMinutes)))),
    h("span", {}),
    h("button", { type: "button", class: "quiet", "aria-label": say.takeBackOf(key.name), onclick: () => takeBack(key.name) }, say.takeBack));

  async function load() {
    try {
      const list = await api.keys();
      rows.replaceChildren(...(list.length === 0 ? [h("li", { class: "muted" }, say.noKey)] : list.map(row)));
    } catch (refusal) {
      put(trouble, worded(refusal));
    }
  }

  async function takeBack(which) {
    put(trouble, "");
    try {
      await api.takeKeyBack(which);
    } catch (refusal) {
      put(trouble, worded(refusal));
    }
    await load();
  }

  const form = asking(say.newKey, say.makeKey, async () => {
    const answer = await api.makeKey({ name: name.value.trim(), scopes: [scope.value] });
    secret.value = answer.token;
    made.hidden = false;
    secret.focus();
    name.value = "";
    await load();
  }, field("key-name", say.whatFor, name), field("key-scope", say.mayDo, scope), made);
  load();
  return [h("section", { class: "card" }, h("h2", {}, say.keys), trouble, rows), form];
}
