// Signing in and out, keys for scripts, and who came.

export const title = "Access";
export const about = "Looking is open at this machine; every change needs somebody who is signed in, and is recorded with who and from where.";
export const notEncrypted = "This connection is not encrypted. Whoever is on the same network can read the passphrase as you type it, and come in as you. Use https, or sign in at the machine itself.";
export const nobodyCan = (fault) => `Nobody can sign in: ${fault}`;

export const noPassphrase = "No passphrase is set";
export const noPassphraseAbout = "Whoever is at this machine may change everything; no other machine is let in. The command PileController passphrase, given at the machine, sets one.";
export const setOneByCode = "Set one here with a code";
export const setByCode = "Set a passphrase with a code";

export const signedInAs = (name) => `Signed in as ${name}`;
export const endsByItself = "It ends by itself after twelve hours without use.";
export const signIn = "Sign in";
export const signOut = "Sign out";
export const signedOut = "You are signed out.";
export const signOutEverywhere = "Sign out everywhere";
export const signedOutEverywhere = "Everybody is signed out, everywhere. Keys for scripts still work until they are taken back.";

export const passphrase = "Passphrase";
export const code = "Code";
/** The fields by the names they have in a refusal. */
export const FIELDS = { passphrase, code, name: "Name", scopes: "What it may do" };
export const codeAbout = "The command PileController passphrase --code, given at the machine, tells one that works once within 15 minutes.";
export const newPassphrase = "New passphrase";
export const newPassphraseAbout = "10 characters or more; several words that do not belong together serve well. Whoever is signed in now is signed out.";
export const onceMore = "New passphrase once more";
export const notTheSame = "The two passphrases are not the same.";
export const setIt = "Set the passphrase";

export const SCOPES = { look: "Look", forecast: "Hand over forecasts", steer: "Steer" };
export const keys = "Keys for scripts";
export const noKey = "There is no key.";
export const keyState = (scopes, madeBy, used) => `${scopes}; made by ${madeBy}, ${used === null ? "not used yet" : `used ${used}`}`;
export const takeBack = "Take back";
export const takeBackOf = (name) => `Take back the key ${name}`;
export const newKey = "New key for a script";
export const makeKey = "Make a key";
export const whatFor = "What it is for";
export const mayDo = FIELDS.scopes;
export const theKey = "The new key";
export const theKeyAbout = "It is shown this once. A script sends it as Authorization: Bearer and the key.";

export const whoCame = "Who came, and what they did";
export const call = (who, from, what) => `${who === null ? "" : `${who}, `}${from}: ${what}`;
export const nothingYet = "Nothing yet.";
export const done = "done";
export const refused = "refused";
export const wanted = (what, times) => `${what}${times > 1 ? `, ${times} times` : ""}`;

/** What a call means, for the journal. */
export const CALLS = {
  "POST /api/session": "sign in",
  "POST /api/session/passphrase": "set the passphrase",
  "DELETE /api/session": "sign out",
  "DELETE /api/sessions": "sign out everywhere",
  "POST /api/tokens": "make a key",
  "DELETE /api/tokens": "take a key back",
  "POST /api/hand": "take by hand",
  "DELETE /api/hand": "give back",
  "POST /api/trips/{id}/clear": "clear a trip",
  "POST /api/servicing": "lock all outputs off",
  "DELETE /api/servicing": "end servicing",
  "POST /api/alarms/seen": "say that an alarm was seen",
  "POST /api/alarms/shelve": "put an alarm on the shelf",
  "POST /api/alarms/unshelve": "take an alarm off the shelf",
  "POST /api/settings/try": "ask what other settings would do",
  "POST /api/settings": "change settings",
  "POST /api/commissioning": "begin a test",
  "POST /api/commissioning/answer": "answer a test",
  "POST /api/commissioning/keep": "keep what a test found",
  "DELETE /api/commissioning": "give a test up",
  "POST /api/ledger/notes": "write a note",
  "POST /api/ledger/parts": "enter a part",
  "POST /api/ledger/mass": "enter a mass",
  "POST /api/ledger/season": "open or close a season",
  "POST /api/plan/ahead": "run seasons ahead",
  "DELETE /api/plan/ahead": "give the seasons ahead up",
  "POST /api/forecast": "hand over a forecast",
  "POST /api/faults": "break the demo's rig",
  "DELETE /api/faults": "mend the demo's rig",
};
