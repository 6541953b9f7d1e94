// Checking a cell in: its card first, which says whether it may go on the rack; then its channel and its load.

import { act, ask, key, memory, Refused } from "./ask.js";
import { values } from "./deed.js";
import { choiceField, numberField, photoField, refusal, textField } from "./form.js";
import { button, byId, fill, link, make, put, span } from "./hands.js";
import { signedIn } from "./sign.js";
import { words } from "./words.js";

const said = words.checkIn;
const ON_LABEL = ["chemistry", "cellsInSeries", "ratedAmpereHours", "origin"];
const ON_RACK = ["loadOhms", "loadTolerancePercent", "switched"];
const DAMAGED = new Set(["UNKNOWN", "SWOLLEN", "DENTED", "WET", "WARM"]);
const LARGE_AMPERE_HOURS = 5;
let keys = { card: key(), passage: key() };

const pairs = (map) => Object.entries(map);
const same = (names) => names.map((name) => [name, name]);
const number = (text) => (text === "" ? undefined : Number(text));
const setUp = (form, kept) => {
  for (const [name, value] of Object.entries(kept)) if (form.elements[name]) form.elements[name].value = value;
};

function complain(form, failure) {
  const place = form.querySelector(".refused");
  put(place, failure instanceof Refused ? `${failure.message} ${failure.advice}` : words.acts.unanswered);
  place.hidden = false;
}

function submits(form, send, name) {
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    form.querySelector(".refused").hidden = true;
    try {
      await send();
      keys[name] = key();
      document.dispatchEvent(new CustomEvent("done"));
    } catch (failure) {
      // What was refused is judged anew; what got no answer keeps its key, so that it is done once.
      if (failure instanceof Refused) keys[name] = key();
      complain(form, failure);
    }
  });
}

// ---- the card ----

function cardForm(taken) {
  const form = make("form", "card",
    make("h3", "", said.look), make("p", "caution", said.never),
    make("div", "fields",
      choiceField("condition", said.condition, [["", said.choose], ...pairs(said.conditions)]),
      choiceField("protectionBoard", said.protectionBoard, [["", said.choose], ...pairs(said.boards)]),
      textField("tag", said.tag, { most: 40 }),
      choiceField("chemistry", said.chemistry, pairs(said.chemistries)),
      numberField("cellsInSeries", said.cellsInSeries, { min: 1, max: 100, value: 1 }),
      numberField("ratedAmpereHours", said.ratedAmpereHours, { min: 0.01, max: 1000, required: true }),
      numberField("measuredVolts", said.measuredVolts, { min: -500, max: 500 }),
      textField("voltsExplained", said.voltsExplained),
      numberField("massBeforeGrams", said.mass, { min: 0.1, max: 100000 }),
      numberField("thicknessBeforeMillimetres", said.thickness, { min: 0.1, max: 1000 }),
      textField("origin", said.origin), textField("note", said.note), photoField("photo", said.photo)),
    refusal(),
    make("p", "buttons",
      Object.assign(make("button", "", said.takeIn), { type: "submit" }),
      button(said.again, () => setUp(form, memory.get("lastLabel", {})))));
  submits(form, () => takeIn(form, taken), "card");
  return form;
}

async function takeIn(form, taken) {
  const given = values(form);
  const body = { condition: given.condition, protectionBoard: given.protectionBoard, chemistry: given.chemistry };
  for (const name of ["tag", "voltsExplained", "origin", "note"]) if (given[name].trim()) body[name] = given[name].trim();
  for (const name of ["cellsInSeries", "ratedAmpereHours", "measuredVolts", "massBeforeGrams", "thicknessBeforeMillimetres"]) {
    body[name] = number(given[name]);
  }
  let card = await act("api/v1/intakes", body, { once: keys.card });
  memory.set("lastLabel", Object.fromEntries(ON_LABEL.map((name) => [name, given[name]])));
  let photoFailed = "";
  if (given.photo.size > 0) {
    try {
      card = await photograph(card, given.photo);
    } catch (failure) {
      photoFailed = failure.message;
    }
  }
  form.reset();
  setUp(form, memory.get("lastLabel", {}));
  taken(card, photoFailed);
}

async function photograph(card, photo) {
  const response = await fetch(`api/v1/intakes/${encodeURIComponent(card.tag)}/photo`, {
    method: "POST",
    headers: { "Content-Type": photo.type, "If-Match": `"${card.revisions.at(-1).number}"`, "Idempotency-Key": key() },
    body: photo,
  });
  const answer = await response.json();
  if (!response.ok) throw new Refused(response.status, answer);
  return answer;
}

// ---- what the card says ----

function verdict(card, photoFailed) {
  const may = card.verdict === "ADMITTED";
  return make("section", may ? "verdict" : "verdict ringing",
    make("h3", "", said.verdict[card.verdict](card.tag)),
    ...card.objections.flatMap((objection) => [make("p", "", objection.why), make("p", "to-do", objection.toDo)]),
    ...card.cautions.map((caution) => make("p", "caution", caution)),
    ...(photoFailed ? [make("p", "refused", photoFailed)] : []));
}

// ---- the rack ----

function procedureFor(card) {
  if (DAMAGED.has(card.condition)) return "damaged";
  if (card.chemistry === "lfp") return "lfp";
  return card.ratedAmpereHours >= LARGE_AMPERE_HOURS ? "large" : "careful";
}

function rackForm({ tag, card }) {
  const sized = make("div", "sized");
  const form = make("form", "on-rack",
    make("h3", "", said.onRack(tag)),
    make("div", "fields",
      choiceField("channel", said.channel, []),
      numberField("loadOhms", said.loadOhms, { min: 0.01, max: 100000, required: true }),
      numberField("loadTolerancePercent", said.loadTolerancePercent, { min: 0, max: 20, value: 5, required: true }),
      choiceField("switched", said.switched, [["true", said.byBoard], ["false", said.byHand]]),
      choiceField("procedure", said.procedure, same(["careful", "strict", "lfp", "large", "damaged"]))),
    make("p", "buttons", button(said.size, () => size(card, form, sized))), sized,
    refusal(),
    make("p", "buttons", Object.assign(make("button", "", said.go), { type: "submit" })));
  setUp(form, { ...memory.get("lastLoad", {}), procedure: procedureFor(card) });
  submits(form, () => putOn(tag, card, form), "passage");
  return form;
}

async function size(card, form, sized) {
  const query = new URLSearchParams({
    volts: card.measuredVolts, ampereHours: card.ratedAmpereHours, chemistry: card.chemistry, condition: card.condition,
    protectionBoard: card.protectionBoard,
  });
  try {
    const load = await ask(`api/v1/sizing?${query}`);
    form.elements.loadOhms.value = load.ohms;
    sized.replaceChildren(
      make("p", "", load.load),
      make("p", "small", load.landmarks.map((mark) => `${mark.volts} V: ${span(mark.hours * 3600)}`).join(" · ")),
      ...load.cautions.map((caution) => make("p", "caution", caution)));
  } catch (failure) {
    complain(form, failure);
  }
}

async function putOn(tag, card, form) {
  const given = values(form);
  const [board, channel] = JSON.parse(given.channel);
  await act("api/v1/passages", {
    board, channel, tag, chemistry: card.chemistry, procedure: given.procedure, ratedAmpereHours: card.ratedAmpereHours,
    loadOhms: Number(given.loadOhms), loadTolerancePercent: Number(given.loadTolerancePercent), switched: given.switched === "true",
  }, { once: keys.passage });
  memory.set("lastLoad", Object.fromEntries(ON_RACK.map((name) => [name, given[name]])));
  form.replaceWith(make("p", "", said.done(tag)));
  put(byId("said"), said.done(tag));
}

// ---- the view ----

export function showCheckIn(view, rack) {
  if (!view.firstElementChild) {
    view.replaceChildren(make("section", "", make("h2", "", said.title), make("div", "taken"), make("div", "way-in")));
  }
  const taken = (card, photoFailed) => {
    const single = card.card.cellsInSeries === 1;
    const next = card.verdict === "ADMITTED" && single ? [rackForm(card)] : [];
    const string = card.verdict === "ADMITTED" && !single ? [make("p", "", said.string)] : [];
    view.querySelector(".taken").replaceChildren(verdict(card, photoFailed), ...next, ...string);
    put(byId("said"), said.verdict[card.verdict](card.tag));
    view.scrollIntoView();
  };
  fill(view.querySelector(".way-in"), [signedIn()], (may) =>
    (may ? cardForm(taken) : make("p", "buttons", link(words.acts.signInFirst, "#/sign-in"))));
  const channels = view.querySelector("select[name=channel]");
  if (channels && rack) offerChannels(channels, rack);
}

function offerChannels(channels, rack) {
  const free = rack.channels.filter((channel) => channel.role === "CELL" && !channel.passageId);
  const chosen = channels.value;
  const places = free.length ? free.map((channel) => [channel.board, channel.channel]) : [null];
  fill(channels, places, (place) =>
    Object.assign(make("option", "", place ? place.join(" ") : said.full), { value: place ? JSON.stringify(place) : "" }));
  if ([...channels.options].some((option) => option.value === chosen)) channels.value = chosen;
}
