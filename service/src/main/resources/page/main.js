// The page: asks the service every second, shows the view that its address names, and looks stopped when the answers stop.

import { ask, memory, PATIENCE_MILLIS, Refused } from "./ask.js";
import { showAlarms } from "./alarms.js";
import { showCheckIn } from "./checkin.js";
import { beAsked } from "./deed.js";
import { showEvening } from "./evening.js";
import { byId, clock, make, put, speak } from "./hands.js";
import { beLoud } from "./loud.js";
import { showNeeds } from "./needs.js";
import { showOver } from "./over.js";
import { resizePassage, showPassage } from "./passage.js";
import { showPlan } from "./plan.js";
import { showRack } from "./rack.js";
import { lookWhoIsHere, showSign } from "./sign.js";
import { words } from "./words.js";

const EVERY_MILLIS = 1000;
const VIEWS = {
  rack: () => {},
  passage: (view, rack, id) => showPassage(view, id, rack),
  plan: showPlan,
  "check-in": showCheckIn,
  evening: showEvening,
  over: showOver,
  "sign-in": (view) => view.firstElementChild || showSign(view),
};

let lastAnswer = 0;
let lastAnswerAt = null;
let whyNot = "";
let asking = false;
let wanted = false;
let view = null;

function place() {
  const [name, id] = location.hash.replace(/^#\//, "").split("/");
  return location.hash.startsWith("#/") && name in VIEWS ? { name, id } : { name: "rack", id: undefined };
}

// An address that names no view, such as that of a skip link, changes nothing.
function go() {
  if (location.hash && !location.hash.startsWith("#/")) return;
  const { name } = place();
  const changed = view !== null && view !== name;
  view = name;
  for (const each of Object.keys(VIEWS)) byId(`view-${each}`).hidden = each !== name;
  for (const each of document.querySelectorAll("nav [data-view]")) {
    if (each.dataset.view === name) each.setAttribute("aria-current", "page");
    else each.removeAttribute("aria-current");
  }
  if (name === "sign-in" || name === "over") byId(`view-${name}`).replaceChildren();
  if (changed) {
    byId("contents").focus({ preventScroll: true });
    scrollTo(0, 0);
  }
  tick();
}

function showLiveness() {
  if (document.hidden) return;
  const waited = Math.max(performance.now() - lastAnswer, Date.now() - lastAnswerAt);
  const stopped = lastAnswerAt === null ? performance.now() > PATIENCE_MILLIS : waited > PATIENCE_MILLIS;
  const wasStopped = document.body.classList.contains("stopped");
  document.body.classList.toggle("stopped", stopped);
  byId("stopped").hidden = !stopped;
  if (!stopped) {
    if (lastAnswerAt !== null) put(byId("live"), words.live.live(clock(lastAnswerAt)));
    if (wasStopped) put(byId("said"), words.live.back);
    return;
  }
  document.title = words.live.title;
  put(byId("live"), words.live.not);
  const since = lastAnswerAt === null ? words.live.sinceOpened : words.live.since(clock(lastAnswerAt));
  put(byId("stopped"), `${words.live.stopped(since)} ${whyNot}`);
}

// A view that cannot be shown says so; the rack beside it is live all the same.
async function showView(rack) {
  const { name, id } = place();
  if (name !== view) return;
  try {
    await VIEWS[name](byId(`view-${name}`), rack, id);
    byId("view-failed").hidden = true;
  } catch (failure) {
    console.warn(failure);
    put(byId("view-failed"), words.live.viewFailed(failure.message));
    byId("view-failed").hidden = false;
  }
}

async function tick() {
  wanted = true;
  if (asking || document.hidden) return;
  asking = true;
  try {
    while (wanted) {
      wanted = false;
      const [rack, book] = await Promise.all([ask("api/v1/rack"), ask("api/v1/alarms")]);
      whyNot = words.live.broken;
      showRack(rack);
      showAlarms(book);
      showNeeds(rack, book, view);
      whyNot = "";
      lastAnswer = performance.now();
      lastAnswerAt = Date.now();
      document.body.classList.remove("waiting");
      await showView(rack);
    }
  } catch (failure) {
    console.warn(failure);
    if (failure instanceof Refused) whyNot = failure.message;
  } finally {
    asking = false;
  }
  showLiveness();
}

function showFirst() {
  byId("first").hidden = memory.get("understood", false);
  byId("first-lines").replaceChildren(...words.first.lines.map((line) => make("li", "", line)));
  byId("first-done").addEventListener("click", () => {
    memory.set("understood", true);
    byId("first").hidden = true;
    byId("contents").focus();
  });
}

speak(document.body);
showFirst();
beAsked();
beLoud();
addEventListener("hashchange", go);
addEventListener("resize", resizePassage);
// Something was done: what is shown is asked for anew at once.
document.addEventListener("done", () => tick());
// What was shown before the page was hidden is old until the next answer is there.
document.addEventListener("visibilitychange", () => {
  document.body.classList.add("waiting");
  tick();
});
setInterval(tick, EVERY_MILLIS);
setInterval(showLiveness, EVERY_MILLIS);
lookWhoIsHere().catch((failure) => console.warn(failure));
go();
