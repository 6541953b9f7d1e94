// Shows the rack: asks the service every second, stops asking while nobody looks, and looks stopped when it is.

import { needing, showAlarms, standsAbove } from "./alarms.js";
import { byId, clock, fill, fresh, lower, make, put, shape } from "./hands.js";

const EVERY_MILLIS = 1000;
const PATIENCE_MILLIS = 4000;
const PHASE = {
  CHECK_IN: "check-in",
  DRAIN: "drain",
  REST: "rest",
  TIE_OFF: "tie-off",
  RELEASED: "released",
  HELD: "held",
  WITHDRAWN: "withdrawn",
};
const STILL = { DRAIN: "to hold below the drain limit", REST: "to rest", TIE_OFF: "to watch" };
const ATTENTION = {
  NONE: "",
  ADVISORY: "advisory",
  WORK: "work",
  DECISION: "held",
  RINGING: "ringing",
  DANGER: "danger",
};
const LOUDNESS = Object.keys(ATTENTION);
const ROLE = { AMBIENT: "ambient", DUMMY: "dummy cell", WATCH: "watch", BANK: "resistor bank" };
const LINK = { WAITING: "Waiting for the board.", CONNECTED: "", REFUSED: "Refused.", LOST: "Connection lost." };
const ADVICE = {
  HOT: " Keep away and follow your emergency plan.",
  LOAD_HOT: " Do not touch the resistors.",
};
// What befalls a whole board is told once, however many cells are on it.
const OF_THE_BOARD = new Set(["SILENT", "CLOCK_ODD", "AMBIENT_HIGH"]);
// Shelves of the scale: volts at their ends, and where those stand in per cent of the width.
const SHELVES = [[-0.02, 0], [0, 4], [0.1, 34], [1, 67], [4.4, 100]];

const boards = new Map();
const cells = new Map();
let lastAnswer = 0;
let lastAnswerAt = null;
let whyNot = "";
let asking = false;
let told = new Set();

// ---- words and figures ----

function words({ kind, line }) {
  const named = line.toLowerCase().startsWith(lower(kind)) ? line : `${lower(kind)}: ${line}`;
  return named + (ADVICE[kind] ?? "");
}

function span(seconds) {
  if (seconds < 10) return `${seconds.toFixed(1)} s`;
  if (seconds < 60) return `${Math.floor(seconds)} s`;
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours < 48) return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
  return `${Math.floor(hours / 24)} days ${hours % 24} h`;
}

const degrees = (celsius) => (celsius === null ? "no temperature read" : `${celsius.toFixed(1)} °C`);
const digits = (number) => (Math.abs(number) < 1 ? 4 : 3);

function along(number) {
  const clamped = Math.min(Math.max(number, SHELVES[0][0]), SHELVES[SHELVES.length - 1][0]);
  const upper = Math.max(1, SHELVES.findIndex(([end]) => clamped <= end));
  const [[from, left], [to, right]] = [SHELVES[upper - 1], SHELVES[upper]];
  return left + ((clamped - from) / (to - from)) * (right - left);
}

// ---- one cell ----

const keyOf = (channel) => `${channel.board}-${channel.channel}`;

function cellFor(channel, board) {
  const key = keyOf(channel);
  if (!cells.has(key)) {
    const element = fresh("cell");
    element.id = `cell-${key}`;
    put(element.querySelector(".number"), String(channel.channel));
    element.querySelector("details").addEventListener("toggle", (event) => {
      if (event.target.open) recall(element);
    });
    board.querySelector(".cells").append(element);
    cells.set(key, element);
  }
  return cells.get(key);
}

function showCell(element, channel, passage, board) {
  const find = (selector) => element.querySelector(selector);
  element.dataset.passage = passage ? passage.id : "";
  element.dataset.eventMillis = board.eventMillis;
  element.classList.toggle("empty", !passage);
  put(find(".tag"), passage ? passage.tag : "not watched: nothing checked in");
  showVolts(element, channel);
  for (const part of [".way", ".watch", ".why", "details"]) find(part).hidden = !passage;
  find(".shore").hidden = !passage && channel.volts === null;
  put(find(".warmth"), warmth(channel));
  if (!passage) {
    fill(find(".seen"), [], () => null);
    return;
  }
  find(".way").querySelectorAll("li").forEach((step) => {
    if (step.textContent === PHASE[passage.phase]) step.setAttribute("aria-current", "step");
    else step.removeAttribute("aria-current");
  });
  put(find(".watch"), watch(channel, passage, board));
  const round = passage.round > 1 ? ` (drain number ${passage.round})` : "";
  const isToldBelow = passage.findings.some((finding) => finding.line === passage.reason);
  put(find(".why"), isToldBelow ? round.trim() : `${passage.reason}${round}`);
  put(find(".taken"), `${passage.ampereHours} Ah and ${passage.wattHours} Wh taken out so far.`);
  fill(find(".seen"), seen(passage), ([loudness, text]) =>
    make("li", loudness, shape(loudness), make("span", "", text)));
}

function showVolts(element, channel) {
  const known = channel.volts !== null;
  const find = (selector) => element.querySelector(selector);
  put(find(".figure"), known ? `${channel.volts.toFixed(digits(channel.volts))} V` : "no voltage read");
  put(find(".plus-minus"), known ? `± ${channel.expandedVolts.toFixed(digits(channel.volts))}` : "");
  for (const part of [".water", ".mark", ".doubt"]) find(part).hidden = !known;
  if (!known) return;
  const reach = (part, from, to) => {
    find(part).style.left = `${Math.min(from, to)}%`;
    find(part).style.width = `${Math.abs(to - from)}%`;
  };
  reach(".water", along(0), along(channel.volts));
  reach(".doubt", along(channel.volts - channel.expandedVolts), along(channel.volts + channel.expandedVolts));
  find(".mark").style.left = `${along(channel.volts)}%`;
}

function warmth(channel) {
  const parts = [];
  if (channel.overAmbientKelvin !== null) {
    const sign = channel.overAmbientKelvin < 0 ? "−" : "+";
    parts.push(`${sign}${Math.abs(channel.overAmbientKelvin).toFixed(1)} K over ambient`);
  }
  parts.push(degrees(channel.celsius));
  return parts.join(" · ");
}

function watch(channel, passage, board) {
  const parts = [channel.loadApplied ? "load on" : "load off"];
  if (passage.locked) parts.push("locked: it will not close by itself");
  if (STILL[passage.phase] && passage.remainingMillis > 0) {
    const inModel = board.simulated ? " (simulated time)" : "";
    parts.push(`${span(passage.remainingMillis / 1000)} still ${STILL[passage.phase]}${inModel}`);
  }
  return parts.join(" · ");
}

function seen(passage) {
  const entries = passage.findings.map((finding) =>
    [ATTENTION[finding.urgency], words(finding)]);
  for (const wait of passage.waitsFor) entries.push(["work", `waits for you: ${wait.words}`]);
  return entries;
}

async function recall(element) {
  const list = element.querySelector(".past");
  try {
    const passage = await ask(`api/v1/passages/${element.dataset.passage}`);
    const now = Number(element.dataset.eventMillis);
    list.replaceChildren(...passage.past.toReversed().map((past) =>
      make("li", "", `${span(Math.max(0, now - past.eventMillis) / 1000)} ago: ${happening(past)}`)));
  } catch (failure) {
    list.replaceChildren(make("li", "", `It cannot be shown now: ${failure.message}`));
  }
}

function happening(past) {
  const what = PHASE[past.what] ?? lower(past.what);
  if (past.kind === "CLEARED") return `${what} no longer stands`;
  return past.line ? `${what}: ${past.line}` : what;
}

// ---- one board ----

function showBoard(board, channels, passages) {
  if (!boards.has(board.name)) {
    const element = fresh("board");
    boards.set(board.name, element);
    byId("boards").append(element);
  }
  const element = boards.get(board.name);
  element.classList.toggle("stale", board.stale);
  put(element.querySelector("h2"), `Board ${board.name}`);
  const facts = [board.serialNumber || "serial number not known yet"];
  if (board.simulated) facts.push(`simulated, ${board.speed} times as fast as life`);
  facts.push(board.ambientCelsius === null ? "no ambient temperature" : `ambient ${board.ambientCelsius.toFixed(1)} °C`);
  if (board.contactsClosed.length) facts.push(`contacts closed: ${board.contactsClosed.join(", ")}`);
  put(element.querySelector(".facts"), facts.join(" · "));
  put(element.querySelector(".age"), board.stale ? "" : `last scan ${span(board.ageSeconds)} ago`);
  const old = element.querySelector(".old");
  old.hidden = !board.stale;
  put(old, `${staleness(board)} What stands here is old${board.lastScanAt ? ` by ${span(board.ageSeconds)}` : ""}.`);
  const others = [];
  for (const channel of channels) {
    if (channel.role === "CELL") showCell(cellFor(channel, element), channel, passages.get(channel.passageId), board);
    else others.push(`${ROLE[channel.role]} (channel ${channel.channel}) ${degrees(channel.celsius)}`);
  }
  put(element.querySelector(".rest"), others.join(" · "));
}

function staleness(board) {
  const since = board.lastScanAt === null ? "Nothing heard from this board yet." : `No scan since ${clock(board.lastScanAt)}.`;
  return [since, LINK[board.link], board.detail].filter(Boolean).join(" ");
}

// ---- what needs a person ----

// What the alarms above say is not said again.
function needs(rack, alarms) {
  const list = [];
  if (rack.boards.length === 0) {
    list.push({ loudness: "RINGING", where: "the rack", target: "", text: "No board is named. Nothing is watched.", key: "no board" });
  }
  for (const line of rack.unwatched) {
    list.push({ loudness: "RINGING", where: "the rack file", target: "", text: line, key: line });
  }
  const shared = new Map();
  const stale = rack.boards.filter((board) => board.stale);
  for (const board of stale) {
    list.push({ loudness: "RINGING", where: `board ${board.name}`, target: "", text: staleness(board), key: `${board.name} stale` });
  }
  for (const passage of rack.passages) {
    const where = `${passage.board} ${passage.channel}, ${passage.tag}`;
    const target = `cell-${passage.board}-${passage.channel}`;
    const own = passage.findings.filter((finding) => finding.urgency !== "ADVISORY" && !OF_THE_BOARD.has(finding.kind));
    for (const finding of own.filter((it) => !standsAbove(alarms, it.kind, passage))) {
      list.push({ loudness: finding.urgency, where, target, text: words(finding), key: `${passage.id} ${finding.kind}` });
    }
    const known = stale.some((board) => board.name === passage.board);
    for (const finding of passage.findings.filter((it) => OF_THE_BOARD.has(it.kind) && !(known && it.kind === "SILENT") && !standsAbove(alarms, it.kind, passage))) {
      const key = `${passage.board} ${finding.kind}`;
      shared.set(key, { finding, board: passage.board, count: (shared.get(key)?.count ?? 0) + 1 });
    }
    if (passage.phase === "HELD" && own.length === 0 && !standsAbove(alarms, "HELD", passage)) {
      list.push({ loudness: "DECISION", where, target, text: passage.reason, key: `${passage.id} held` });
    }
    for (const wait of passage.waitsFor) {
      list.push({ loudness: "WORK", where, target, text: wait.words, key: `${passage.id} ${wait.wish}` });
    }
  }
  for (const [key, { finding, board, count }] of shared) {
    const cellsOfIt = count === 1 ? "1 cell" : `${count} cells`;
    list.push({ loudness: finding.urgency, where: `board ${board}`, target: "", text: `${words(finding)} (${cellsOfIt})`, key });
  }
  return list.sort((one, other) => LOUDNESS.indexOf(other.loudness) - LOUDNESS.indexOf(one.loudness));
}

function showNeeds(rack, book) {
  const list = needs(rack, book.alarms);
  const alarms = needing(book);
  const cellsNow = rack.passages.length === 1 ? "1 cell" : `${rack.passages.length} cells`;
  const calm = alarms.length === 0 ? `Nobody is needed now. ${cellsNow} on the way.` : "Nothing beyond the alarms above.";
  put(byId("nobody"), list.length === 0 ? calm : "");
  byId("nobody").hidden = list.length > 0;
  fill(byId("needed"), list, ({ loudness, where, target, text }) => {
    const name = ATTENTION[loudness] === "held" ? "decision" : ATTENTION[loudness];
    const place = target ? Object.assign(make("a", "", where), { href: `#${target}` }) : make("strong", "", where);
    return make("li", name, shape(name), make("p", "", `${ATTENTION[loudness]}: `, place), make("span", "", text));
  });
  const all = [...alarms, ...list];
  const now = new Set(all.map((need) => need.key));
  const news = all.filter((need) => !told.has(need.key));
  told = now;
  const say = (need) => `${ATTENTION[need.loudness]}: ${need.where}: ${need.text}`;
  const danger = news.filter((need) => need.loudness === "DANGER");
  if (danger.length) put(byId("shouted"), danger.map(say).join(" "));
  const others = news.filter((need) => need.loudness !== "DANGER");
  if (others.length) put(byId("said"), others.map(say).join(" "));
  document.title = all.length === 0 ? "Ebbwatch" : `${all.length} for a person · Ebbwatch`;
}

// ---- the rack ----

function forget(shown, key, element) {
  element.remove();
  shown.delete(key);
}

function show(rack, book) {
  const passages = new Map(rack.passages.map((passage) => [passage.id, passage]));
  for (const board of rack.boards) {
    showBoard(board, rack.channels.filter((channel) => channel.board === board.name), passages);
  }
  for (const [name, element] of boards) {
    if (!rack.boards.some((board) => board.name === name)) forget(boards, name, element);
  }
  const present = new Set(rack.channels.map(keyOf));
  for (const [key, element] of cells) {
    if (!present.has(key)) forget(cells, key, element);
  }
  showAlarms(book);
  showNeeds(rack, book);
  const models = rack.boards.filter((board) => board.simulated).map((board) => board.name);
  byId("simulated").hidden = !rack.simulated;
  put(byId("simulated-what"), `board ${models.join(", ")}: no real cell is there`);
  put(byId("over"), `${rack.released} released and ${rack.withdrawn} withdrawn so far.`);
}

function showLiveness() {
  if (document.hidden) return;
  const waited = Math.max(performance.now() - lastAnswer, Date.now() - lastAnswerAt);
  const stopped = lastAnswerAt === null ? performance.now() > PATIENCE_MILLIS : waited > PATIENCE_MILLIS;
  document.body.classList.toggle("stopped", stopped);
  byId("stopped").hidden = !stopped;
  if (!stopped) {
    if (lastAnswerAt !== null) put(byId("live"), `Live: the service answered at ${clock(lastAnswerAt)}.`);
    return;
  }
  document.title = "STOPPED · Ebbwatch";
  put(byId("live"), "Not live.");
  const since = lastAnswerAt === null ? "since this page was opened" : `since ${clock(lastAnswerAt)}`;
  const advice = "Nothing below is the present: go and look at the rack itself.";
  put(byId("stopped"), `Stopped. No answer from the service ${since}. ${advice} ${whyNot}`);
}

class Refused extends Error {}

async function ask(path) {
  const response = await fetch(path, { cache: "no-store", signal: AbortSignal.timeout(PATIENCE_MILLIS) });
  const answer = await response.json();
  if (!response.ok) throw new Refused(answer.detail);
  return answer;
}

async function tick() {
  if (asking || document.hidden) return;
  asking = true;
  try {
    const [rack, book] = await Promise.all([ask("api/v1/rack"), ask("api/v1/alarms")]);
    whyNot = "This page failed at showing the answer.";
    show(rack, book);
    whyNot = "";
    lastAnswer = performance.now();
    lastAnswerAt = Date.now();
    document.body.classList.remove("waiting");
  } catch (failure) {
    console.warn(failure);
    if (failure instanceof Refused) whyNot = failure.message;
  } finally {
    asking = false;
  }
  showLiveness();
}

// What was shown before the page was hidden is old until the next answer is there.
document.addEventListener("visibilitychange", () => {
  document.body.classList.add("waiting");
  tick();
});
setInterval(tick, EVERY_MILLIS);
setInterval(showLiveness, EVERY_MILLIS);
tick();
