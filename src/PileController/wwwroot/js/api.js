// Calls to the controller.

/** Why a call was refused, in words for a person. */
export class Refusal extends Error {
  constructor(status, problem) {
    super(problem?.detail ?? problem?.title ?? `The controller answered ${status}.`);
    this.status = status;
    this.field = problem?.field ?? null;
    this.given = problem?.given ?? null;
    this.allowed = problem?.allowed ?? null;
  }
}

async function call(method, path, body, signal) {
  let response;
  try {
    response = await fetch(path, {
      method,
      headers: body === undefined ? {} : { "Content-Type": "application/json" },
      body: body === undefined ? undefined : JSON.stringify(body),
      signal,
    });
  } catch (fault) {
    if (signal?.aborted) {
      throw fault;
    }
    throw new Refusal(0, { detail: "The controller cannot be reached." });
  }
  const type = response.headers.get("Content-Type") ?? "";
  const answer = type.includes("json") ? await response.json() : null;
  if (!response.ok) {
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
export const samples = (fields) => call("GET", samplesPath(fields));
export const decisions = (fields) => call("GET", query("/api/decisions", fields));
export const takeByHand = (body) => call("POST", "/api/hand", body);
export const giveBack = (actuator) => call("DELETE", query("/api/hand", { actuator }));
export const clearTrip = (id) => call("POST", `/api/trips/${encodeURIComponent(id)}/clear`);
/** What stands, what is shelved, what happened lately. */
export const alarms = () => call("GET", "/api/alarms");
export const seeAlarm = (body) => call("POST", "/api/alarms/seen", body);
export const shelveAlarm = (body) => call("POST", "/api/alarms/shelve", body);
export const unshelveAlarm = (body) => call("POST", "/api/alarms/unshelve", body);
export const addFault = (body) => call("POST", "/api/faults", body);
export const removeFault = (fields) => call("DELETE", query("/api/faults", fields));
export const servicing = (on) => call(on ? "POST" : "DELETE", "/api/servicing");
