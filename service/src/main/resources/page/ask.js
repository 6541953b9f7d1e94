// Asks the service, and acts on it as whoever is signed in.

export const PATIENCE_MILLIS = 4000;
const ACT_MILLIS = 10000;

export class Refused extends Error {
  constructor(status, problem) {
    super(problem?.detail ?? problem?.title ?? `${status}`);
    this.status = status;
    this.advice = problem?.advice ?? "";
  }
}

async function read(response) {
  const answer = response.status === 204 ? null : await response.json().catch(() => null);
  if (!response.ok) throw new Refused(response.status, answer);
  return answer;
}

export async function ask(path, patienceMillis = PATIENCE_MILLIS) {
  return read(await fetch(path, { cache: "no-store", signal: AbortSignal.timeout(patienceMillis) }));
}

// A key for one request, the same however often it is sent.
export function key() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

// seen: the sequence of what the person saw; undefined where there is nothing to have seen.
export async function act(path, body, { seen, once, method = "POST" } = {}) {
  const headers = { "Content-Type": "application/json" };
  if (once) headers["Idempotency-Key"] = once;
  if (seen !== undefined) headers["If-Match"] = `"${seen}"`;
  const response = await fetch(path, {
    method, headers, body: body === undefined ? undefined : JSON.stringify(body), signal: AbortSignal.timeout(ACT_MILLIS),
  });
  return read(response);
}

// Things that are remembered on this device only.
export const memory = {
  get: (name, otherwise) => {
    try {
      return JSON.parse(localStorage.getItem(`ebbwatch.${name}`)) ?? otherwise;
    } catch {
      return otherwise;
    }
  },
  set: (name, what) => {
    try {
      localStorage.setItem(`ebbwatch.${name}`, JSON.stringify(what));
    } catch {
      // A browser that keeps nothing: then nothing is remembered.
    }
  },
};
