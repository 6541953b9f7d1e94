// What is over: released and withdrawn cells, their evidence, and handing them over.

import { ask } from "./ask.js";
import { button, link, make, moment } from "./hands.js";
import { words } from "./words.js";

const MOST = 50;

// Sealed bundles with a covering sheet and labels, in one file.
const papers = (ids) => `api/v1/hand-over?${ids.map((id) => `passage=${id}`).join("&")}`;

export const evidence = (id) => Object.assign(link(words.over.evidence, papers([id])), { download: "hand-over.zip" });

function row(passage, chosen) {
  const box = Object.assign(make("input", ""), { type: "checkbox", value: passage.id });
  box.setAttribute("aria-label", words.over.choose(passage.tag));
  box.addEventListener("change", chosen);
  return make("tr", "",
    make("td", "", box),
    make("th", "", link(passage.tag, `#/passage/${passage.id}`)),
    make("td", "", words.phase[passage.phase]),
    make("td", "", passage.openedAt ? words.over.opened(moment(passage.openedAt)) : ""),
    make("td", "", passage.reason),
    make("td", "", evidence(passage.id)));
}

export async function showOver(view) {
  if (view.firstElementChild) return;
  const body = make("tbody");
  const all = Object.assign(link("", "#/over"), { download: "hand-over.zip" });
  const chosen = () => {
    const ids = [...body.querySelectorAll("input:checked")].slice(0, MOST).map((box) => box.value);
    all.hidden = ids.length === 0;
    all.textContent = words.over.handOver(ids.length);
    all.href = papers(ids);
  };
  const older = button(words.over.older, () => more(older.dataset.before));
  const none = make("p", "", words.over.none);
  async function more(before) {
    const page = await ask(`api/v1/passages/closed?limit=50${before ? `&before=${before}` : ""}`);
    body.append(...page.passages.map((passage) => row(passage, chosen)));
    older.dataset.before = page.next ?? "";
    older.hidden = !page.next;
    none.hidden = body.childElementCount > 0;
  }
  await more("");
  chosen();
  view.replaceChildren(make("section", "",
    make("h2", "", words.over.title), none, make("p", "small", words.over.means),
    make("div", "wide", make("table", "", body)), make("p", "buttons", all, older)));
}
