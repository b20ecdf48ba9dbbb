import { h, put } from "../dom.js";

const NAME = "who";
// The fields by the names they have on this page.
const FIELDS = { passphrase: "Passphrase", code: "Code", name: "Name", scopes: "What it may do" };

/** Why something was refused, with the field's name as the page has it. */
export const worded = (refusal) => (FIELDS[refusal.field] === undefined
  ? refusal.message
  : `${FIELDS[refusal.field]}: ${refusal.given} is not allowed. Allowed: ${refusal.allowed}.`);

/** A label over an input. */
export const field = (id, label, input, hint) =>
  h("div", { class: "field" }, h("label", { class: "head", for: id }, label), input, hint ? h("p", { class: "hint" }, hint) : null);

const nameInput = (id) => h("input", { type: "text", id, maxlength: 40, autocomplete: "username", value: localStorage.getItem(NAME) ?? "" });

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
  const name = nameInput("sign-in-name");
  const passphrase = h("input", { type: "password", id: "sign-in-passphrase", maxlength: 200, autocomplete: "current-password", required: true });
  return asking("Sign in", "Sign in", async () => {
    localStorage.setItem(NAME, name.value.trim());
    try {
      await signIn({ passphrase: passphrase.value, ...(name.value.trim() === "" ? {} : { name: name.value.trim() }) });
    } catch (refusal) {
      passphrase.value = "";
      passphrase.focus();
      throw refusal;
    }
  },
  field("sign-in-name", "Your name, for the record", name),
  field("sign-in-passphrase", "Passphrase", passphrase));
}

/** A new passphrase, by a code from the machine. */
export function codeForm(set) {
  const name = nameInput("code-name");
  const code = h("input", { type: "text", id: "code-code", maxlength: 40, autocomplete: "one-time-code", autocapitalize: "characters", spellcheck: "false", required: true });
  const passphrase = h("input", { type: "password", id: "code-passphrase", maxlength: 200, autocomplete: "new-password", required: true });
  const again = h("input", { type: "password", id: "code-again", maxlength: 200, autocomplete: "new-password", required: true });
  return asking(null, "Set the passphrase", async () => {
    if (passphrase.value !== again.value) {
      throw new Error("The two passphrases are not the same.");
    }
    await set({ code: code.value, passphrase: passphrase.value, ...(name.value.trim() === "" ? {} : { name: name.value.trim() }) });
  },
  field("code-code", "Code", code, "The command PileController passphrase --code, given at the machine, tells one that works once within 15 minutes."),
  field("code-name", "Your name, for the record", name),
  field("code-passphrase", "New passphrase", passphrase, "10 characters or more; several words that do not belong together serve well. Whoever is signed in now is signed out."),
  field("code-again", "New passphrase once more", again));
}
