// Shows the alarm book: what rings, since when, in which state, and what to do. Acting on it is done over REST.

import { byId, clock, fill, lower, make, put, shape } from "./hands.js";

const STATE = {
  NORMAL: "over",
  UNACKNOWLEDGED: "stands; nobody has acknowledged it",
  ACKNOWLEDGED: "stands; acknowledged",
  RETURNED_UNACKNOWLEDGED: "gone; nobody has acknowledged it",
  LATCHED_UNACKNOWLEDGED: "gone; to be acknowledged, then reset by whoever has looked",
  LATCHED_ACKNOWLEDGED: "gone; to be reset by whoever has looked; acknowledged",
};
const COVER = {
  NONE: "",
  SHELVED: "shelved",
  OUT_OF_SERVICE: "out of service",
};
const ACTIVE = new Set(["UNACKNOWLEDGED", "ACKNOWLEDGED"]);

const asks = (alarm) => alarm.cover === "NONE" && alarm.state !== "ACKNOWLEDGED";

// Whether an alarm, known to a person or not, says already that this stands on that passage.
export function standsAbove(alarms, kind, passage) {
  return alarms.some((alarm) => alarm.kind === kind && ACTIVE.has(alarm.state)
    && (alarm.passageId === passage.id || (alarm.board === passage.board && alarm.tags.includes(passage.tag))));
}

// What asks for a person in the book: alarms nobody knows of or that are to be reset, and ways out that are blocked.
export function needing({ alarms, outlets }) {
  const asking = alarms.filter(asks).map((alarm) =>
    ({ loudness: alarm.urgency, where: `alarm, ${place(alarm)}`, text: `${alarm.what} ${alarm.toDo}`, key: `${alarm.id} ${alarm.state}` }));
  const blocked = outlets.filter(isBlocked).map((outlet) =>
    ({ loudness: "RINGING", where: outlet.name, text: blockage(outlet), key: `${outlet.name} blocked` }));
  return [...asking, ...blocked];
}

const isBlocked = (outlet) => outlet.failures > 0 && outlet.pending > 0;

function blockage(outlet) {
  const wait = outlet.pending === 1 ? "1 message waits" : `${outlet.pending} messages wait`;
  return `Alarms do not get out by the outlet ${outlet.name}: ${wait}. ${outlet.lastError}.`;
}

function place(alarm) {
  const many = alarm.tags.length > 3 ? [...alarm.tags.slice(0, 3), `${alarm.tags.length - 3} more`] : alarm.tags;
  const board = alarm.board ? `${alarm.board}${alarm.channel === null || alarm.tags.length > 1 ? "" : ` ${alarm.channel}`}` : "";
  return [board, ...many].filter(Boolean).join(", ") || "the rack";
}

function since(at) {
  const then = new Date(at);
  const today = then.toDateString() === new Date().toDateString();
  return today ? clock(at) : `${then.toLocaleDateString()} ${clock(at)}`;
}

function standing(alarm) {
  const parts = [STATE[alarm.state]];
  if (alarm.acknowledgedBy) parts[0] += alarm.state.endsWith("UNACKNOWLEDGED") ? ` (${alarm.acknowledgedBy} knew before)` : ` by ${alarm.acknowledgedBy}`;
  if (alarm.cover !== "NONE") {
    const until = alarm.coveredUntil ? ` until ${since(alarm.coveredUntil)}` : "";
    parts.push(`${COVER[alarm.cover]}${until} by ${alarm.coveredBy}: ${alarm.coverReason}`);
  }
  if (!alarm.told) parts.push("to ring in the morning");
  parts.push(`since ${since(alarm.raisedAt)}`);
  if (alarm.simulated) parts.push("simulated");
  return parts.join(" \u00b7 ");
}

function target(alarm) {
  const where = place(alarm);
  return alarm.channel === null || alarm.tags.length > 1
    ? make("strong", "", where)
    : Object.assign(make("a", "", where), { href: `#cell-${alarm.board}-${alarm.channel}` });
}

function loud(alarm) {
  const name = lower(alarm.urgency);
  return make("li", name, shape(name),
    make("p", "", `${name}: `, target(alarm), `: ${alarm.what}`),
    make("p", "to-do", alarm.toDo),
    make("p", "small", alarm.cause),
    make("p", "small", standing(alarm)));
}

function quiet(alarm) {
  return make("li", "", make("span", "", `${lower(alarm.kind)}, `, target(alarm), `: ${standing(alarm)}`));
}

function blocked(text) {
  return make("li", "ringing", shape("ringing"), make("p", "", `ringing: ${text}`));
}

export function showAlarms({ alarms, outlets }) {
  const asking = alarms.filter(asks);
  const known = alarms.filter((alarm) => !asks(alarm));
  const stuck = outlets.filter(isBlocked).map(blockage);
  byId("alarms").classList.toggle("calm", asking.length + stuck.length === 0);
  byId("no-alarm").hidden = alarms.length + stuck.length > 0;
  put(byId("no-alarm"), "No alarm.");
  fill(byId("asking"), [...asking, ...stuck], (each) => (typeof each === "string" ? blocked(each) : loud(each)));
  fill(byId("known"), known, quiet);
  byId("known-title").hidden = known.length === 0;
}
