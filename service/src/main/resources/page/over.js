// What is over: released and withdrawn cells, and their evidence.

import { ask } from "./ask.js";
import { button, link, make, moment } from "./hands.js";
import { words } from "./words.js";

export const evidence = (id) => Object.assign(link(words.over.evidence, `api/v1/passages/${id}/bundle`), { download: "" });

function row(passage) {
  return make("tr", "",
    make("th", "", link(passage.tag, `#/passage/${passage.id}`)),
    make("td", "", words.phase[passage.phase]),
    make("td", "", passage.openedAt ? words.over.opened(moment(passage.openedAt)) : ""),
    make("td", "", passage.reason),
    make("td", "", evidence(passage.id)));
}

export async function showOver(view) {
  if (view.firstElementChild) return;
  const body = make("tbody");
  const older = button(words.over.older, () => more(older.dataset.before));
  const none = make("p", "", words.over.none);
  async function more(before) {
    const page = await ask(`api/v1/passages/closed?limit=50${before ? `&before=${before}` : ""}`);
    body.append(...page.passages.map(row));
    older.dataset.before = page.next ?? "";
    older.hidden = !page.next;
    none.hidden = body.childElementCount > 0;
  }
  await more("");
  view.replaceChildren(make("section", "",
    make("h2", "", words.over.title), none, make("div", "wide", make("table", "", body)), make("p", "buttons", older)));
}
