// The alarm book: what rings, since when, in which state, what to do, and what a person may do about it.

import { act, memory } from "./ask.js";
import { offer } from "./deed.js";
import { button, byId, fill, link, lower, make, moment, put, shape } from "./hands.js";
import { signedIn } from "./sign.js";
import { words } from "./words.js";

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
    ({ loudness: alarm.urgency, where: words.alarms.alarmAt(place(alarm)), text: `${alarm.what} ${alarm.toDo}`, key: `${alarm.id} ${alarm.state}` }));
  const blocked = outlets.filter(isBlocked).map((outlet) =>
    ({ loudness: "RINGING", where: outlet.name, text: blockage(outlet), key: `${outlet.name} blocked` }));
  return [...asking, ...blocked];
}

const isBlocked = (outlet) => outlet.failures > 0 && outlet.pending > 0;
const blockage = (outlet) => words.alarms.blocked(outlet.name, outlet.pending, outlet.lastError);

function place(alarm) {
  const tags = alarm.tags.length > 3 ? [...alarm.tags.slice(0, 3), words.alarms.more(alarm.tags.length - 3)] : alarm.tags;
  const board = alarm.board ? `${alarm.board}${alarm.channel === null || alarm.tags.length > 1 ? "" : ` ${alarm.channel}`}` : "";
  return [board, ...tags].filter(Boolean).join(", ") || words.needs.theRack;
}

function standing(alarm) {
  const parts = [words.alarms.state[alarm.state]];
  if (alarm.acknowledgedBy) {
    const unknown = alarm.state.endsWith("UNACKNOWLEDGED");
    parts[0] += unknown ? words.alarms.knewBefore(alarm.acknowledgedBy) : words.alarms.by(alarm.acknowledgedBy);
  }
  if (alarm.cover !== "NONE") {
    const until = alarm.coveredUntil ? words.alarms.until(moment(alarm.coveredUntil)) : "";
    parts.push(`${words.alarms.cover[alarm.cover]}${until}${words.alarms.by(alarm.coveredBy)}: ${alarm.coverReason}`);
  }
  if (!alarm.told) parts.push(words.alarms.forMorning);
  parts.push(words.alarms.since(moment(alarm.raisedAt)));
  if (alarm.simulated) parts.push(words.simulated);
  return parts.join(" \u00b7 ");
}

function target(alarm) {
  const where = place(alarm);
  return alarm.passageId === null || alarm.tags.length > 1 ? make("strong", "", where) : link(where, `#/passage/${alarm.passageId}`);
}

function step(alarm, name) {
  const who = { name: "by", label: words.acts.who, value: memory.get("who", ""), required: false, limits: { maxlength: 100 } };
  const reason = { name: "reason", label: words.acts.reason, limits: { maxlength: 1000 } };
  const minutes = { name: "minutes", label: words.acts.minutes, type: "number", value: 60, limits: { min: 1, max: 1440 } };
  const fields = { SHELVED: [minutes, reason], TAKEN_OUT_OF_SERVICE: [reason] }[name] ?? [];
  offer({
    title: words.alarms.step[name],
    means: `${place(alarm)}: ${alarm.what} ${words.alarms.stepMeans[name]}`,
    fields: [...fields, who],
    send: (given, once) => {
      memory.set("who", given.by);
      const body = { step: name, ...(given.by && { by: given.by }) };
      if (given.reason) body.reason = given.reason;
      if (given.minutes) body.minutes = Number(given.minutes);
      return act(`api/v1/alarms/${alarm.id}/steps`, body, { seen: alarm.sequence, once });
    },
  });
}

function steps(alarm) {
  const buttons = alarm.allowed.filter((name) => name in words.alarms.step).map((name) =>
    button(words.alarms.step[name], () => step(alarm, name)));
  return make("p", "buttons", ...(signedIn() ? buttons : [link(words.acts.signInFirst, "#/sign-in")]));
}

function loud(alarm) {
  const name = lower(alarm.urgency);
  return make("li", name, shape(name),
    make("p", "", `${name}: `, target(alarm), `: ${alarm.what}`),
    make("p", "to-do", alarm.toDo),
    make("p", "small", alarm.cause),
    make("p", "small", standing(alarm)),
    steps(alarm));
}

function quiet(alarm) {
  return make("li", "", make("p", "", `${lower(alarm.kind)}, `, target(alarm), `: ${standing(alarm)}`), steps(alarm));
}

function blocked(text) {
  return make("li", "ringing", shape("ringing"), make("p", "", `${words.attention.RINGING}: ${text}`));
}

export function showAlarms({ alarms, outlets }) {
  const asking = alarms.filter(asks);
  const known = alarms.filter((alarm) => !asks(alarm));
  const stuck = outlets.filter(isBlocked).map(blockage);
  byId("alarms").classList.toggle("calm", asking.length + stuck.length === 0);
  byId("no-alarm").hidden = alarms.length + stuck.length > 0;
  put(byId("no-alarm"), words.alarms.none);
  const may = signedIn();
  fill(byId("asking"), [...asking, ...stuck].map((each) => [each, may]), ([each]) => (typeof each === "string" ? blocked(each) : loud(each)));
  fill(byId("known"), known.map((each) => [each, may]), ([each]) => quiet(each));
  byId("known-title").hidden = known.length === 0;
}
