// Calls to the controller.

import * as session from "./session.js";
import * as say from "./words/frame.js";

/** Why a call was refused, in words for a person. */
export class Refusal extends Error {
  constructor(status, problem) {
    super(problem?.detail ?? problem?.title ?? say.answered(status));
    this.status = status;
    this.answer = problem;
    this.field = problem?.field ?? null;
    this.given = problem?.given ?? null;
    this.allowed = problem?.allowed ?? null;
  }
}

// Another page of this browser may have signed in anew: then the cookie is another, and so is what goes with a change.
async function renewed() {
  const before = session.token();
  const answer = await fetch("/api/session").then((response) => (response.ok ? response.json() : null), () => null);
  if (answer === null || (answer.token ?? null) === before) {
    return false;
  }
  session.set(answer);
  return session.token() !== null;
}

async function call(method, path, body, signal, again = false) {
  let response;
  const headers = body === undefined ? {} : { "Content-Type": "application/json" };
  if (method !== "GET" && session.token() !== null) {
    headers["X-Pile-Token"] = session.token();
  }
  try {
    response = await fetch(path, {
      method,
      headers,
      body: body === undefined ? undefined : JSON.stringify(body),
      signal,
    });
  } catch (fault) {
    if (signal?.aborted) {
      throw fault;
    }
    throw new Refusal(0, { detail: say.notReached });
  }
  const type = response.headers.get("Content-Type") ?? "";
  const answer = type.includes("json") ? await response.json() : null;
  if (!response.ok) {
    // Of the calls that sign in, 401 means that the passphrase was wrong.
    if (response.status === 401 && !path.startsWith("/api/session")) {
      session.lost();
    }
    if (response.status === 403 && method !== "GET" && !again && await renewed()) {
      return call(method, path, body, signal, true);
    }
    throw new Refusal(response.status, answer);
  }
  return answer;
}

const query = (path, fields) => {
  const given = Object.entries(fields).filter(([, value]) => value !== null && value !== undefined && value !== "");
  return given.length === 0 ? path : `${path}?${new URLSearchParams(given)}`;
};

/** Address of a series answer; also used for CSV links. */
export const samplesPath = (fields) => query("/api/samples", fields);

/** Address of the printable sheet for what is tried; its own questions do not push aside those of the page. */
export const sheetPath = (fields) => query("/api/plan/sheet", fields);

export const plan = (fields, signal) => call("GET", query("/api/plan", fields), undefined, signal);
export const ahead = () => call("GET", "/api/plan/ahead");
export const startAhead = (seasons) => call("POST", "/api/plan/ahead", { seasons });
export const endAhead = () => call("DELETE", "/api/plan/ahead");
/** What is said of the night ahead; null before the first statement. */
export const tonight = () => call("GET", "/api/tonight");
/** The last 24 hours in a few figures; null before the first tick. */
export const day = () => call("GET", "/api/day");
export const samples = (fields) => call("GET", samplesPath(fields));
export const decisions = (fields) => call("GET", query("/api/decisions", fields));
export const decision = (sequence) => call("GET", `/api/decisions/${sequence}`);
export const takeByHand = (body) => call("POST", "/api/hand", body);
export const giveBack = (actuator) => call("DELETE", query("/api/hand", { actuator }));
export const clearTrip = (id, who) => call("POST", `/api/trips/${encodeURIComponent(id)}/clear`, who === "" ? undefined : { who });
/** What stands, what is shelved, what happened lately. */
export const alarms = () => call("GET", "/api/alarms");
export const seeAlarm = (body) => call("POST", "/api/alarms/seen", body);
export const shelveAlarm = (body) => call("POST", "/api/alarms/shelve", body);
export const unshelveAlarm = (body) => call("POST", "/api/alarms/unshelve", body);
export const addFault = (body) => call("POST", "/api/faults", body);
export const removeFault = (fields) => call("DELETE", query("/api/faults", fields));
export const servicing = (on) => call(on ? "POST" : "DELETE", "/api/servicing");
/** The tests of the rig, the one that runs, and what was proven. */
export const commissioning = () => call("GET", "/api/commissioning");
export const beginTest = (body) => call("POST", "/api/commissioning", body);
export const answerTest = (body) => call("POST", "/api/commissioning/answer", body);
export const keepTest = (body) => call("POST", "/api/commissioning/keep", body);
export const endTest = () => call("DELETE", "/api/commissioning");
export const settings = () => call("GET", "/api/settings");
export const trySettings = (edit) => call("POST", "/api/settings/try", edit);
export const applySettings = (edit) => call("POST", "/api/settings", edit);
/** The grower's book, opened at a season or at the newest. */
export const ledger = (fields) => call("GET", query("/api/ledger", fields));
export const writeLedger = (what, body) => call("POST", `/api/ledger/${what}`, body);
export const reportPath = (fields) => query("/api/ledger/report", fields);

/** How this page stands with the controller. */
export const askSession = () => call("GET", "/api/session");
export const signIn = (body) => call("POST", "/api/session", body);
export const setPassphrase = (body) => call("POST", "/api/session/passphrase", body);
export const signOut = () => call("DELETE", "/api/session");
export const signOutEverywhere = () => call("DELETE", "/api/sessions");
export const keys = () => call("GET", "/api/tokens");
export const makeKey = (body) => call("POST", "/api/tokens", body);
export const takeKeyBack = (name) => call("DELETE", query("/api/tokens", { name }));
export const access = (fields) => call("GET", query("/api/access", fields));
