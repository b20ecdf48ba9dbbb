import { h, put } from "../dom.js";
import * as api from "../api.js";
import { dayAndClock } from "../time.js";
import { asking, field, worded } from "./forms.js";

const SCOPES = { look: "Look", forecast: "Hand over forecasts", steer: "Steer" };
const offset = () => -new Date().getTimezoneOffset();
const scopesWords = (scopes) => scopes.map((one) => SCOPES[one] ?? one).join(", ");

/** Keys for scripts: make one, see it once, take it back. */
export function keysCards() {
  const rows = h("ul", {});
  const trouble = h("p", { class: "error", role: "alert" });
  const name = h("input", { type: "text", id: "key-name", maxlength: 40, autocomplete: "off", required: true });
  const scope = h("select", { id: "key-scope" }, ...Object.entries(SCOPES).map(([id, words]) => h("option", { value: id }, words)));
  const secret = h("input", { type: "text", id: "key-secret", readonly: true, spellcheck: "false", onfocus: () => secret.select() });
  const made = h("div", { class: "notice", "data-tone": "good", hidden: true }, field("key-secret", "The new key", secret, "It is shown this once. A script sends it as Authorization: Bearer and the key."));

  const row = (key) => h("li", { class: "probe" },
    h("div", {}, h("h3", {}, key.name),
      h("p", { class: "state num" }, `${scopesWords(key.scopes)}; made by ${key.madeBy}, ${key.usedUtcMs === null ? "not used yet" : `used ${dayAndClock(key.usedUtcMs, offset())}`}`)),
    h("span", {}),
    h("button", { type: "button", class: "quiet", "aria-label": `Take back the key ${key.name}`, onclick: () => takeBack(key.name) }, "Take back"));

  async function load() {
    try {
      const list = await api.keys();
      rows.replaceChildren(...(list.length === 0 ? [h("li", { class: "muted" }, "There is no key.")] : list.map(row)));
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

  const form = asking("New key for a script", "Make a key", async () => {
    const answer = await api.makeKey({ name: name.value.trim(), scopes: [scope.value] });
    secret.value = answer.token;
    made.hidden = false;
    secret.focus();
    name.value = "";
    await load();
  }, field("key-name", "What it is for", name), field("key-scope", "What it may do", scope), made);
  load();
  return [h("section", { class: "card" }, h("h2", {}, "Keys for scripts"), trouble, rows), form];
}
