// One passage: where it stands, what may be done, its trace, the numbers it is judged by, and what happened.

import { showActs } from "./acts.js";
import { ask } from "./ask.js";
import { found, showCell } from "./cell.js";
import { button, digits, fill, fresh, link, lower, make, moment, put, span, volts } from "./hands.js";
import { evidence } from "./over.js";
import { draw } from "./plot.js";
import { words } from "./words.js";

const HOUR_MILLIS = 3600000;
const REDRAW_MILLIS = 15000;
const TRACE_MILLIS = 20000;
let open = null;

function build(view, id) {
  const trace = make("section", "trace",
    make("h3", "", words.passage.trace),
    make("p", "buttons",
      button(words.passage.all, () => show({})),
      ...[24, 6, 1].map((hours) => button(words.passage.hours(hours), () => show({ last: hours * HOUR_MILLIS }))),
      button(words.passage.earlier, () => shift(-0.5)), button(words.passage.later, () => shift(0.5)),
      button(words.passage.nearer, () => zoom(0.5)), button(words.passage.farther, () => zoom(2))),
    make("div", "plot upper"), make("div", "plot lower"),
    make("p", "described"), make("p", "small", words.passage.hint));
  view.replaceChildren(
    make("p", "", link(words.back, "#/")),
    make("h2", "whose", words.passage.title("")),
    make("ol", "cells single", fresh("cell")),
    make("p", "gone"),
    make("section", "", make("h3", "", words.acts.title), make("div", "acts")),
    trace,
    make("section", "", make("h3", "", words.passage.numbers), make("div", "wide", make("table", "numbers",
      make("thead", "", make("tr", "", ...["what", "seen", "limit"].map((name) => make("th", "", words.passage[name])))), make("tbody")))),
    make("section", "", make("h3", "", words.passage.past), make("ol", "past")),
    make("p", "", evidence(id), " ", make("span", "small", words.passage.evidenceHint)));
  open = { id, view, window: {}, drawnAt: 0, plot: null, full: null, toX: null };
}

// ---- the trace ----

const wall = (board, millis) => Date.parse(board.lastScanAt) - (board.eventMillis - millis);

// A long trace takes its time; the rest of the page goes on meanwhile.
async function redraw(it, rack) {
  it.drawnAt = performance.now();
  const asked = it.window;
  const query = new URLSearchParams({ points: String(Math.min(4000, Math.max(800, 2 * it.view.clientWidth))) });
  if (it.window.last && it.last) query.set("from", String(it.last - it.window.last));
  if (it.window.from !== undefined) query.set("from", String(it.window.from));
  if (it.window.to !== undefined) query.set("to", String(it.window.to));
  const [trace, prediction] = await Promise.all([
    ask(`api/v1/passages/${it.id}/trace?${query}`, TRACE_MILLIS),
    it.full ? ask(`api/v1/passages/${it.id}/rest-prediction`, TRACE_MILLIS) : null]);
  it.prediction = prediction;
  if (open !== it || asked !== it.window) return;
  const upper = it.view.querySelector(".upper");
  if (trace.eventMillis.length < 2) {
    put(it.view.querySelector(".described"), words.passage.nothing);
    return;
  }
  it.shown = [trace.eventMillis[0], trace.eventMillis.at(-1)];
  if (!it.window.to) it.last = it.shown[1];
  const board = rack?.boards.find((one) => one.name === it.full?.passage.board);
  const isClock = Boolean(board && !board.simulated && board.lastScanAt);
  const opened = it.full?.passage.openedEventMillis ?? it.shown[0];
  const toX = isClock ? (millis) => wall(board, millis) / 1000 : (millis) => (millis - opened) / 1000;
  const toEvent = isClock ? (x) => x * 1000 - wall(board, 0) : (x) => x * 1000 + opened;
  it.plot?.destroy();
  it.plot = await draw([upper, it.view.querySelector(".lower")], {
    trace, past: it.full?.past ?? [], prediction: it.window.to || it.window.last ? null : prediction, toX, isClock,
    chosen: (from, to) => show({ from: Math.round(toEvent(from)), to: Math.round(toEvent(to)) }),
  });
  put(it.view.querySelector(".described"), described(trace, (millis) => (isClock ? moment(wall(board, millis)) : span((millis - opened) / 1000))));
}

function described(trace, when) {
  const bounds = (row, places) => {
    const read = row.filter((one) => one !== null);
    return [Math.min(...read), Math.max(...read)].map((one) => (Number.isFinite(one) ? one.toFixed(places) : "?"));
  };
  return words.passage.described(when(trace.eventMillis[0]), when(trace.eventMillis.at(-1)), ...bounds(trace.volts, 3), ...bounds(trace.celsius, 1));
}

function show(part) {
  open.window = part;
  open.drawnAt = 0;
  open.drawing = false;
  document.dispatchEvent(new CustomEvent("done"));
}

function shift(share) {
  const [from, to] = open.shown ?? [0, 0];
  const by = Math.round((to - from) * share);
  show({ from: from + by, to: to + by });
}

function zoom(factor) {
  const [from, to] = open.shown ?? [0, 0];
  const half = Math.max(5000, ((to - from) * factor) / 2);
  show({ from: Math.round((from + to) / 2 - half), to: Math.round((from + to) / 2 + half) });
}

// ---- what stands beside it ----

function happening(past) {
  const what = words.phase[past.what] ?? lower(past.what);
  if (past.kind === "CLEARED") return words.passage.cleared(what);
  return past.line ? `${what}: ${past.line}` : what;
}

function row(what, seen, limit) {
  return make("tr", "", make("th", "", what), make("td", "", seen), make("td", "", limit));
}

const figure = (number, unit) => (number === null ? "" : `${+number.toPrecision(4)} ${unit}`);

function numbers(full, channel, prediction) {
  const rows = [];
  const { passage, limits } = full;
  if (channel?.volts != null) rows.push([words.passage.voltsNow, `${volts(channel.volts)} ± ${channel.expandedVolts.toFixed(digits(channel.volts))}`, ""]);
  rows.push([words.passage.drainLimit, "", words.passage.below(limits.drainVolts, span(limits.holdMillis / 1000))]);
  rows.push([words.passage.restLimit, "", words.passage.below(limits.restVolts, span(limits.restMillis / 1000))]);
  rows.push([words.passage.soak, "", span(limits.soakMillis / 1000)]);
  if (prediction) {
    const { medianVolts, lowestVolts, highestVolts } = prediction;
    rows.push([words.passage.forecast, words.passage.forecastIs(...[medianVolts, lowestVolts, highestVolts].map((one) => one.toFixed(3))), ""]);
  }
  rows.push([words.passage.charge, words.rack.taken(figure(passage.ampereHours, "Ah"), figure(passage.wattHours, "Wh")), ""]);
  for (const finding of passage.findings) {
    rows.push([found(finding), figure(finding.seen, finding.unit), figure(finding.limit, finding.unit)]);
  }
  return rows;
}

export async function showPassage(view, id, rack) {
  if (open?.id !== id || !view.firstElementChild) {
    open?.plot?.destroy();
    build(view, id);
  }
  const it = open;
  try {
    it.full = await ask(`api/v1/passages/${id}`);
  } catch (failure) {
    if (failure.status !== 404) throw failure;
    it.full = null;
  }
  if (open !== it) return;
  const { full } = it;
  const passage = full?.passage;
  const channel = rack?.channels.find((one) => passage && one.board === passage.board && one.channel === passage.channel);
  const board = rack?.boards.find((one) => passage && one.name === passage.board);
  view.querySelector(".single").hidden = !passage || !channel;
  if (passage) put(view.querySelector(".whose"), words.passage.title(passage.tag));
  put(view.querySelector(".gone"), passage ? "" : words.passage.gone);
  if (passage && channel) showCell(view.querySelector(".single > .cell"), channel, passage, board);
  if (full) {
    showActs(view.querySelector(".acts"), full);
    fill(view.querySelector(".numbers > tbody"), numbers(full, channel, it.prediction), ([what, seen, limit]) => row(what, seen, limit));
    fill(view.querySelector(".past"), full.past.toReversed(), (past) =>
      make("li", "", `${words.passage.ago(span(Math.max(0, (board?.eventMillis ?? past.eventMillis) - past.eventMillis) / 1000))}: ${happening(past)}`));
  }
  const isOld = performance.now() - it.drawnAt > REDRAW_MILLIS;
  if (it.drawing || !(it.drawnAt === 0 || (isOld && it.window.to === undefined))) return;
  it.drawing = true;
  redraw(it, rack)
    .catch((failure) => put(view.querySelector(".described"), words.live.viewFailed(failure.message)))
    .finally(() => { it.drawing = false; });
}

export function resizePassage() {
  open?.plot?.resize();
}
