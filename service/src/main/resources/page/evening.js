// The evening check: what is proven before the rack is left, what is not, and what to do about it.

import { act, ask, key, memory } from "./ask.js";
import { offer } from "./deed.js";
import { button, fill, link, make, moment, shape } from "./hands.js";
import { signedIn } from "./sign.js";
import { words } from "./words.js";

const SHAPE = { FAILED: "ringing", NOT_PROVEN: "work" };
const ORDER = ["FAILED", "NOT_PROVEN", "PASSED"];

function start() {
  offer({
    title: words.evening.title,
    go: words.evening.go,
    means: words.evening.means,
    fields: [
      { name: "touchMinutes", label: words.evening.minutes, type: "number", value: 10, limits: { min: 0, max: 30, step: 1 } },
      { name: "by", label: words.acts.who, value: memory.get("who", ""), required: false, limits: { maxlength: 100 } },
    ],
    send: (given, once) => {
      memory.set("who", given.by);
      return act("api/v1/evening-checks", { touchMinutes: Number(given.touchMinutes), ...(given.by && { by: given.by }) }, { once });
    },
  });
}

const step = (check, body) => () =>
  act(`api/v1/evening-checks/${check.id}/steps`, body, { once: key() }).finally(() => document.dispatchEvent(new CustomEvent("done")));

function point(it) {
  const mark = SHAPE[it.proof];
  const parts = [make("p", "", `${words.evening.matter[it.matter]} ${it.about}: ${words.evening.proof[it.proof]}`)];
  parts.push(make("p", "small", it.seen));
  if (it.toDo) parts.push(make("p", "to-do", it.toDo));
  return make("li", mark ?? "proven", ...(mark ? [shape(mark)] : []), make("div", "", ...parts));
}

function check(it) {
  const state = { RUNNING: words.evening.running, ENDED: words.evening.over, BROKEN_OFF: words.evening.brokenOff }[it.state];
  const points = it.points.toSorted((one, other) => ORDER.indexOf(one.proof) - ORDER.indexOf(other.proof));
  const made = make("div", "check",
    make("h3", "", `${moment(it.startedAt)}, ${it.by}: ${state}, ${words.evening.proof[it.verdict]}`),
    ...it.awaits.map((what) => make("p", "small", words.evening.awaits(what))));
  if (it.state === "RUNNING" && signedIn()) {
    const outlets = it.points.filter((one) => one.matter === "OUTLET" && one.proof !== "PASSED" && one.about);
    made.append(make("p", "buttons",
      ...outlets.map((one) => button(words.evening.arrived(one.about), step(it, { step: "HEARD", outlet: one.about }))),
      button(words.evening.end, step(it, { step: "FINISHED" }))));
  }
  made.append(make("ol", "points", ...points.map(point)));
  return made;
}

export async function showEvening(view) {
  const { checks } = await ask("api/v1/evening-checks");
  if (!view.firstElementChild) {
    view.replaceChildren(make("section", "",
      make("h2", "", words.evening.title), make("p", "", words.evening.means), make("div", "way-in"), make("div", "checks"),
      make("p", "caution", words.evening.promise)));
  }
  fill(view.querySelector(".way-in"), [signedIn()], (may) =>
    make("p", "buttons", may ? button(words.evening.go, start) : link(words.acts.signInFirst, "#/sign-in")));
  const shown = checks.length ? checks : [null];
  fill(view.querySelector(".checks"), shown.map((it) => [it, signedIn()]), ([it]) => (it ? check(it) : make("p", "", words.evening.none)));
}
