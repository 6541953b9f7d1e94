// One cell: what is on its channel, where it stands and what it waits for. The same on the rack and on its own view.

import { degrees, digits, fill, link, lower, make, put, shape, span, volts } from "./hands.js";
import { words } from "./words.js";

// Shelves of the scale: volts at their ends, and where those stand in per cent of the width.
const SHELVES = [[-0.02, 0], [0, 4], [0.1, 34], [1, 67], [4.4, 100]];

function along(number) {
  const clamped = Math.min(Math.max(number, SHELVES[0][0]), SHELVES[SHELVES.length - 1][0]);
  const upper = Math.max(1, SHELVES.findIndex(([end]) => clamped <= end));
  const [[from, left], [to, right]] = [SHELVES[upper - 1], SHELVES[upper]];
  return left + ((clamped - from) / (to - from)) * (right - left);
}

// A finding in a line that names it.
export function found({ kind, line }) {
  const named = line.toLowerCase().startsWith(lower(kind)) ? line : `${lower(kind)}: ${line}`;
  return named + (words.advice[kind] ?? "");
}

export function showCell(element, channel, passage, board) {
  const find = (selector) => element.querySelector(selector);
  element.classList.toggle("empty", !passage);
  put(find(".number"), String(channel.channel));
  fill(find(".tag"), [passage ? [passage.tag, passage.id] : [words.rack.empty]], ([tag, id]) =>
    (id ? link(tag, `#/passage/${id}`) : document.createTextNode(tag)));
  showVolts(element, channel);
  for (const part of [".way", ".watch", ".why"]) find(part).hidden = !passage;
  find(".shore").hidden = !passage && channel.volts === null;
  put(find(".warmth"), warmth(channel));
  if (!passage) {
    fill(find(".seen"), [], () => null);
    return;
  }
  find(".way").querySelectorAll("li").forEach((step) => {
    if (step.textContent === words.phase[passage.phase]) step.setAttribute("aria-current", "step");
    else step.removeAttribute("aria-current");
  });
  put(find(".watch"), watch(channel, passage, board));
  const round = passage.round > 1 ? words.rack.drainNumber(passage.round) : "";
  const isToldBelow = passage.findings.some((finding) => finding.line === passage.reason);
  put(find(".why"), isToldBelow ? round : [passage.reason, round && `(${round})`].filter(Boolean).join(" "));
  fill(find(".seen"), seen(passage), ([loudness, text]) => make("li", loudness, shape(loudness), make("span", "", text)));
}

function showVolts(element, channel) {
  const known = channel.volts !== null;
  const find = (selector) => element.querySelector(selector);
  put(find(".figure"), known ? volts(channel.volts) : words.rack.noVolts);
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
    const size = Math.abs(channel.overAmbientKelvin).toFixed(1);
    const sign = size === "0.0" ? "" : channel.overAmbientKelvin < 0 ? "−" : "+";
    parts.push(words.rack.overAmbient(`${sign}${size}`));
  }
  parts.push(degrees(channel.celsius));
  return parts.join(" · ");
}

function watch(channel, passage, board) {
  const parts = [channel.loadApplied ? words.rack.loadOn : words.rack.loadOff];
  if (passage.locked) parts.push(words.rack.locked);
  const what = words.still[passage.phase];
  if (what && passage.remainingMillis > 0) {
    parts.push(words.rack.stillTo(span(passage.remainingMillis / 1000), what, board.simulated));
  }
  return parts.join(" · ");
}

function seen(passage) {
  const entries = passage.findings.map((finding) => [words.attention[finding.urgency], found(finding)]);
  for (const wait of passage.waitsFor) entries.push(["work", words.rack.waitsForYou(wait.words)]);
  return entries;
}
