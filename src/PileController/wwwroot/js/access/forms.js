import { h, put } from "../dom.js";
import * as say from "../words/access.js";
import { notAllowed, yourName } from "../words/shared.js";
import { nameInput, remember } from "../who.js";

/** Why something was refused, with the field's name as the page has it. */
export const worded = (refusal) => (say.FIELDS[refusal.field] === undefined
  ? refusal.message
  : notAllowed(say.FIELDS[refusal.field], refusal.given, refusal.allowed));

/** A label over an input. */
export const field = (id, label, input, hint) =>
  h("div", { class: "field" }, h("label", { class: "head", for: id }, label), input, hint ? h("p", { class: "hint" }, hint) : null);

const userName = (id) => nameInput({ id, autocomplete: "username" });

/** A form that says what went wrong, and keeps its button still while it asks. Without a title it stands in something that has one. */
export function asking(title, button, send, ...fields) {
  const trouble = h("p", { class: "error", role: "alert" });
  const go = h("button", { type: "submit", class: "wide" }, button);
  return h("form", {
    class: title === null ? null : "card",
    novalidate: true,
    onsubmit: async (event) => {
      event.preventDefault();
      put(trouble, "");
      go.disabled = true;
      try {
        await send();
      } catch (refusal) {
        put(trouble, worded(refusal));
      } finally {
        go.disabled = false;
      }
    },
  }, title === null ? null : h("h2", {}, title), ...fields, trouble, go);
}

/** Name and passphrase. */
export function passphraseForm(signIn) {
  const name = userName("sign-in-name");
  const passphrase = h("input", { type: "password", id: "sign-in-passphrase", maxlength: 200, autocomplete: "current-password", required: true });
  return asking(say.signIn, say.signIn, async () => {
    remember(name.value.trim());
    try {
      await signIn({ passphrase: passphrase.value, ...(name.value.trim() === "" ? {} : { name: name.value.trim() }) });
    } catch (refusal) {
      passphrase.value = "";
      passphrase.focus();
      throw refusal;
    }
  },
  field("sign-in-name", yourName, name),
  field("sign-in-passphrase", say.passphrase, passphrase));
}

/** A new passphrase, by a code from the machine. */
export function codeForm(set) {
  const name = userName("code-name");
  const code = h("input", { type: "text", id: "code-code", maxlength: 40, autocomplete: "one-time-code", autocapitalize: "characters", spellcheck: "false", required: true });
  const passphrase = h("input", { type: "password", id: "code-passphrase", maxlength: 200, autocomplete: "new-password", required: true });
  const again = h("input", { type: "password", id: "code-again", maxlength: 200, autocomplete: "new-password", required: true });
  return asking(null, say.setIt, async () => {
    if (passphrase.value !== again.value) {
      throw new Error(say.notTheSame);
    }
    await set({ code: code.value, passphrase: passphrase.value, ...(name.value.trim() === "" ? {} : { name: name.value.trim() }) });
  },
  field("code-code", say.code, code, say.codeAbout),
  field("code-name", yourName, name),
  field("code-passphrase", say.newPassphrase, passphrase, say.newPassphraseAbout),
  field("code-again", say.onceMore, again));
}
