// What may be done to a passage now, each behind one question.

import { act } from "./ask.js";
import { offer } from "./deed.js";
import { button, fill, link, make } from "./hands.js";
import { signedIn } from "./sign.js";
import { words } from "./words.js";

const number = (name, label, min, max, value, step = "any") => ({ name, label, type: "number", value, limits: { min, max, step } });

function post(passage, part, body, once) {
  return act(`api/v1/passages/${passage.id}/${part}`, body, { seen: passage.sequence, once });
}

function actDeed(passage, name) {
  const means = [words.acts.means[name]];
  if (name === "PUT_ON" || name === "TAKE_OFF") means.push(passage.switched ? words.acts.bySwitch : words.acts.byHand);
  const spark = { name: "spark", label: words.acts.spark, options: [["false", words.acts.sparkNo], ["true", words.acts.sparkYes]] };
  return {
    title: `${words.acts.act[name]}: ${passage.tag}`,
    go: words.acts.act[name],
    means: means.join(" "),
    fields: name === "TIE_OFF" ? [spark] : [],
    send: (given, once) => post(passage, "acts", { act: name, ...(given.spark && { spark: given.spark === "true" }) }, once),
  };
}

const METER = {
  wish: "ASK_METER",
  name: words.acts.meter,
  means: words.acts.meterMeans,
  fields: () => [number("volts", words.acts.volts, -100, 100)],
  send: (passage, given, once) => post(passage, "meter-readings", { volts: Number(given.volts) }, once),
};

const OTHERS = [
  METER,
  {
    name: words.acts.announce,
    means: words.acts.announceMeans,
    fields: () => [
      { name: "kind", label: words.acts.kind, options: Object.entries(words.acts.work), value: "HAND_WORK" },
      number("minutes", words.acts.minutes, 1, 60, 10, 1),
    ],
    send: (passage, given, once) => post(passage, "announcements", { kind: given.kind, minutes: Number(given.minutes) }, once),
  },
  {
    name: words.acts.move,
    means: words.acts.moveMeans,
    fields: () => [number("channel", words.acts.channel, 0, 63, undefined, 1)],
    send: (passage, given, once) => post(passage, "moves", { channel: Number(given.channel) }, once),
  },
  {
    name: words.acts.load,
    means: words.acts.loadMeans,
    fields: () => [
      number("ohms", words.acts.ohms, 0.01, 100000),
      { name: "switched", label: words.acts.switched, options: [["true", words.acts.yes], ["false", words.acts.no]] },
    ],
    send: (passage, given, once) => post(passage, "loads", { ohms: Number(given.ohms), switched: given.switched === "true" }, once),
  },
  {
    name: words.acts.blink,
    means: words.acts.blinkMeans,
    fields: () => [number("seconds", words.acts.seconds, 1, 255, 20, 1)],
    send: (passage, given, once) => post(passage, "blinks", { seconds: Number(given.seconds) }, once),
  },
];

function other(passage, deed) {
  offer({
    title: `${deed.name}: ${passage.tag}`,
    go: deed.name,
    means: deed.means,
    fields: deed.fields(),
    send: (given, once) => deed.send(passage, given, once),
  });
}

// full: a passage as the service tells it in full.
export function showActs(element, full) {
  const { passage } = full;
  element.dataset.sequence = passage.sequence;
  const allowed = full.allowed.filter((name) => name !== "SPARK");
  fill(element, [[passage.id, passage.sequence, allowed, passage.waitsFor, signedIn()]], () => {
    if (!signedIn()) return make("p", "buttons", link(words.acts.signInFirst, "#/sign-in"));
    const acts = allowed.map((name) => button(words.acts.act[name], () => offer(actDeed(passage, name))));
    const isAsked = passage.waitsFor.some((wait) => wait.wish === METER.wish);
    if (isAsked) acts.unshift(button(METER.name, () => other(passage, METER)));
    const others = OTHERS.filter((deed) => !(isAsked && deed === METER)).map((deed) => button(deed.name, () => other(passage, deed)));
    const more = make("details", "", make("summary", "", words.acts.more), make("p", "buttons", ...others));
    return make("div", "", acts.length ? make("p", "buttons", ...acts) : make("p", "small", words.acts.nothing), more);
  });
}
