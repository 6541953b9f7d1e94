// What needs a person beyond the alarms, and telling it to whoever does not look.

import { needing, standsAbove } from "./alarms.js";
import { found } from "./cell.js";
import { byId, fill, link, make, put, shape } from "./hands.js";
import { ring } from "./loud.js";
import { staleness } from "./rack.js";
import { words } from "./words.js";

const LOUDNESS = Object.keys(words.attention);
// What befalls a whole board is told once, however many cells are on it.
const OF_THE_BOARD = new Set(["SILENT", "CLOCK_ODD", "AMBIENT_HIGH"]);
let told = new Set();

// What the alarms say is not said again.
function needs(rack, alarms) {
  const list = [];
  if (rack.boards.length === 0) {
    list.push({ loudness: "RINGING", where: words.needs.theRack, target: "", text: words.needs.noBoard, key: "no board" });
  }
  for (const line of rack.unwatched) {
    list.push({ loudness: "RINGING", where: words.needs.theRackFile, target: "", text: line, key: line });
  }
  const stale = rack.boards.filter((board) => board.stale);
  for (const board of stale) {
    list.push({ loudness: "RINGING", where: words.needs.board(board.name), target: "", text: staleness(board), key: `${board.name} stale` });
  }
  const shared = new Map();
  const isStale = new Set(stale.map((board) => board.name));
  for (const passage of rack.passages) list.push(...ofPassage(passage, alarms, isStale, shared));
  for (const [key, { finding, board, count }] of shared) {
    const text = `${found(finding)} (${words.needs.cells(count)})`;
    list.push({ loudness: finding.urgency, where: words.needs.board(board), target: "", text, key });
  }
  return together(list).sort((one, other) => LOUDNESS.indexOf(other.loudness) - LOUDNESS.indexOf(one.loudness));
}

// What can wait and is the same at many cells stands in one line.
function together(list) {
  const work = new Map();
  for (const need of list.filter((it) => it.loudness === "WORK")) work.set(need.text, [...(work.get(need.text) ?? []), need]);
  const shown = new Set();
  return list.flatMap((need) => {
    const same = need.loudness === "WORK" ? work.get(need.text) : [];
    if (same.length < 2) return [need];
    if (shown.has(need.text)) return [];
    shown.add(need.text);
    return [{ ...need, where: words.needs.cells(same.length), target: "", places: same, key: same.map((it) => it.key).join() }];
  });
}

function ofPassage(passage, alarms, isStale, shared) {
  const where = `${passage.board} ${passage.channel}, ${passage.tag}`;
  const target = passage.id;
  const open = passage.findings.filter((finding) => !standsAbove(alarms, finding.kind, passage));
  const own = passage.findings.filter((finding) => finding.urgency !== "ADVISORY" && !OF_THE_BOARD.has(finding.kind));
  const list = own.filter((finding) => open.includes(finding)).map((finding) =>
    ({ loudness: finding.urgency, where, target, text: found(finding), key: `${passage.id} ${finding.kind}` }));
  for (const finding of open.filter((it) => OF_THE_BOARD.has(it.kind) && !(it.kind === "SILENT" && isStale.has(passage.board)))) {
    const key = `${passage.board} ${finding.kind}`;
    shared.set(key, { finding, board: passage.board, count: (shared.get(key)?.count ?? 0) + 1 });
  }
  if (passage.phase === "HELD" && own.length === 0 && !standsAbove(alarms, "HELD", passage)) {
    list.push({ loudness: "DECISION", where, target, text: passage.reason, key: `${passage.id} held` });
  }
  for (const wait of passage.waitsFor) {
    list.push({ loudness: "WORK", where, target, text: wait.words, key: `${passage.id} ${wait.wish}` });
  }
  return list;
}

const say = (need) => `${words.attention[need.loudness]}: ${need.where}: ${need.text}`;

export function showNeeds(rack, book, view) {
  const list = needs(rack, book.alarms);
  const alarms = needing(book);
  const calm = alarms.length === 0 ? words.needs.calm(rack.passages.length) : words.needs.nothingMore;
  put(byId("nobody"), list.length === 0 ? calm : "");
  byId("nobody").hidden = list.length > 0;
  fill(byId("needed"), list, ({ loudness, where, target, text, places }) => {
    const name = words.attention[loudness] === "held" ? "decision" : words.attention[loudness];
    const place = target ? link(where, `#/passage/${target}`) : make("strong", "", where);
    return make("li", name, shape(name), make("p", "", `${words.attention[loudness]}: `, place), make("span", "", text),
      ...(places ? [make("p", "places", ...places.map((it) => link(it.where, `#/passage/${it.target}`)))] : []));
  });
  const all = [...alarms, ...list];
  tell(all);
  strip(all, view);
  document.title = all.length === 0 ? words.name : `${words.needs.forAPerson(all.length)} · ${words.name}`;
}

function tell(all) {
  const news = all.filter((need) => !told.has(need.key));
  told = new Set(all.map((need) => need.key));
  const danger = news.filter((need) => need.loudness === "DANGER");
  if (danger.length) put(byId("shouted"), danger.map(say).join(" "));
  const others = news.filter((need) => need.loudness !== "DANGER");
  if (others.length) put(byId("said"), others.map(say).join(" "));
  const loud = news.filter((need) => need.loudness === "DANGER" || need.loudness === "RINGING");
  if (loud.length) ring(loud.map(say));
}

// On every other view one line says that somebody is needed.
function strip(all, view) {
  const loud = all.filter((need) => need.loudness === "DANGER" || need.loudness === "RINGING");
  byId("strip").hidden = view === "rack" || loud.length === 0;
  if (loud.length === 0) return;
  byId("strip").className = words.attention[loud[0].loudness];
  put(byId("strip").firstElementChild, words.needs.strip(all.length, say(loud[0])));
}
