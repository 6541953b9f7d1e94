// When somebody must be there, tonight and in the coming days.

import { ask } from "./ask.js";
import { fill, link, make, moment, put } from "./hands.js";
import { words } from "./words.js";

function group(errand, now) {
  if (errand.waitsAlready && !errand.canWait) return words.plan.now;
  const due = new Date(errand.dueAt ?? now);
  if (due <= now) return words.plan.now;
  const day = (when) => new Date(when).toDateString();
  if (day(due) === day(now)) return due.getHours() >= 18 ? words.plan.tonight : words.plan.today;
  return day(due) === day(new Date(now.getTime() + 86400000)) ? words.plan.tomorrow
    : due.toLocaleDateString(undefined, { weekday: "long", day: "numeric", month: "long" });
}

function line(errand) {
  const wait = errand.canWait ? words.plan.canWait : words.plan.cannotWait;
  return make("li", errand.canWait ? "errand" : "errand work",
    make("p", "", link(`${errand.tag} (${errand.board} ${errand.channel})`, `#/passage/${errand.passageId}`), ` ${errand.words}`),
    make("p", "small", [errand.dueAt && words.plan.at(moment(errand.dueAt)), wait, errand.why].filter(Boolean).join(" · ")));
}

export async function showPlan(view) {
  const plan = await ask("api/v1/plan");
  if (!view.firstElementChild) {
    view.replaceChildren(make("section", "",
      make("h2", "", words.plan.title), make("p", "summary"), make("div", "days"), make("p", "small", words.plan.lower)));
  }
  const now = new Date(plan.at);
  const days = new Map();
  for (const errand of plan.errands) {
    const name = group(errand, now);
    days.set(name, [...(days.get(name) ?? []), errand]);
  }
  put(view.querySelector(".summary"), plan.errands.length === 0 ? words.plan.nobody : words.plan.night(plan.beforeMorning));
  fill(view.querySelector(".days"), [...days], ([name, errands]) =>
    make("div", "", make("h3", "", name), make("ol", "", ...errands.map(line))));
}
