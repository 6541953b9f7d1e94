// Checking a cell in: what keeps it off the rack first, then what is asked for every cell, quick for a whole box.

import { act, key, memory } from "./ask.js";
import { values } from "./deed.js";
import { button, byId, fill, link, make, put } from "./hands.js";
import { signedIn } from "./sign.js";
import { words } from "./words.js";

const CHEMISTRIES = ["nmc", "nca", "lco", "lmo", "lfp"];
const PROCEDURES = ["careful", "strict", "lfp", "large", "damaged"];
const KEPT = ["chemistry", "ratedAmpereHours", "loadOhms", "loadTolerancePercent", "switched", "procedure"];
let once = key();

function labelled(name, input) {
  input.name = name;
  input.id = `check-in-${name}`;
  input.required = true;
  return make("p", "", Object.assign(make("label", "", words.checkIn[name]), { htmlFor: input.id }), input);
}

function number(name, min, max, value = "") {
  const input = Object.assign(make("input", ""), { type: "number", value });
  Object.entries({ min, max, step: "any", inputmode: "decimal" }).forEach(([limit, its]) => input.setAttribute(limit, its));
  return labelled(name, input);
}

function select(name, options) {
  const chosen = make("select", "");
  chosen.append(...options.map(([value, text]) => Object.assign(make("option", "", text), { value })));
  return labelled(name, chosen);
}

const same = (names) => names.map((name) => [name, name]);

function form() {
  const tag = Object.assign(make("input", ""), { type: "text", maxLength: 40, autocomplete: "off", spellcheck: false });
  const seen = Object.assign(make("input", ""), { type: "checkbox", id: "check-in-seen", name: "seen", required: true });
  const made = make("form", "",
    make("h3", "", words.checkIn.before),
    make("p", "caution", words.checkIn.never),
    make("p", "caution", words.checkIn.board),
    make("p", "choice", seen, Object.assign(make("label", "", words.checkIn.seen), { htmlFor: seen.id })),
    make("div", "fields",
      select("channel", []), labelled("tag", tag), select("chemistry", same(CHEMISTRIES)),
      number("ratedAmpereHours", 0.01, 1000), number("loadOhms", 0.01, 100000), number("loadTolerancePercent", 0, 20, 5),
      select("switched", [["true", words.checkIn.byBoard], ["false", words.checkIn.byHand]]),
      select("procedure", same(PROCEDURES))),
    Object.assign(make("p", "refused"), { role: "alert", hidden: true }),
    make("p", "buttons",
      Object.assign(make("button", "", words.checkIn.go), { type: "submit" }),
      button(words.checkIn.again, () => again(made))));
  made.addEventListener("submit", (event) => send(event, made));
  return made;
}

function again(made) {
  for (const [name, value] of Object.entries(memory.get("lastCell", {}))) {
    if (made.elements[name]) made.elements[name].value = value;
  }
  made.elements.tag.focus();
}

async function send(event, made) {
  event.preventDefault();
  const given = values(made);
  const [board, channel] = JSON.parse(given.channel);
  const body = {
    board, channel, tag: given.tag.trim(), chemistry: given.chemistry, procedure: given.procedure,
    ratedAmpereHours: Number(given.ratedAmpereHours), loadOhms: Number(given.loadOhms),
    loadTolerancePercent: Number(given.loadTolerancePercent), switched: given.switched === "true",
  };
  const refused = made.querySelector(".refused");
  try {
    await act("api/v1/passages", body, { once });
    memory.set("lastCell", Object.fromEntries(KEPT.map((name) => [name, given[name]])));
    once = key();
    made.elements.tag.value = "";
    made.elements.seen.checked = false;
    refused.hidden = true;
    put(byId("said"), words.checkIn.done(body.tag));
    document.dispatchEvent(new CustomEvent("done"));
  } catch (failure) {
    if (failure.status) once = key();
    put(refused, failure.status ? `${failure.message} ${failure.advice}` : words.acts.unanswered);
    refused.hidden = false;
  }
}

export function showCheckIn(view, rack) {
  if (!view.firstElementChild) {
    view.replaceChildren(make("section", "", make("h2", "", words.checkIn.title), make("div", "way-in")));
  }
  fill(view.querySelector(".way-in"), [signedIn()], (may) => (may ? form() : make("p", "", link(words.acts.signInFirst, "#/sign-in"))));
  const channels = view.querySelector("select[name=channel]");
  if (!channels || !rack) return;
  const free = rack.channels.filter((channel) => channel.role === "CELL" && !channel.passageId);
  const chosen = channels.value;
  fill(channels, free.map((channel) => [channel.board, channel.channel]), (place) =>
    Object.assign(make("option", "", place.join(" ")), { value: JSON.stringify(place) }));
  if ([...channels.options].some((option) => option.value === chosen)) channels.value = chosen;
  if (free.length === 0) channels.replaceChildren(make("option", "", words.checkIn.full));
}
