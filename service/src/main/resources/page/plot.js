// Draws a trace: volts on a scale that shows 4 V and 0.02 V alike, degrees below it, with phases, findings, gaps and load.

import { words } from "./words.js";

// Volts are drawn as asinh(volts / this): straight below it, by decades above.
const FOOT_VOLTS = 0.02;
const VOLT_MARKS = [-0.1, 0, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 4];
const NAMES_PIXELS = 30;
const HOUR = 3600;
const STEPS = [0.05, 0.1, 0.25, 0.5, 1, 2, 3, 6, 12, 24, 48, 96].map((hours) => hours * HOUR);

let library = null;

async function uplot() {
  library ??= import("./uplot/uPlot.esm.js").then((module) => module.default);
  return library;
}

const colour = (name) => getComputedStyle(document.documentElement).getPropertyValue(`--${name}`).trim();

// The readings with a hole wherever nothing was read for longer than the thinning explains.
function columns(trace, toX) {
  const { eventMillis, volts, celsius, loadApplied } = trace;
  const span = eventMillis.at(-1) - eventMillis[0];
  const steps = eventMillis.slice(1).map((at, place) => at - eventMillis[place]).sort((one, other) => one - other);
  const usual = steps[Math.floor(steps.length / 2)] ?? 0;
  const hole = Math.max(8 * usual, (24 * span) / Math.max(1, eventMillis.length), 1);
  const drawn = { x: [], volts: [], celsius: [], load: [] };
  const add = (x, volt, degree, load) => {
    drawn.x.push(x);
    drawn.volts.push(volt);
    drawn.celsius.push(degree);
    drawn.load.push(load);
  };
  eventMillis.forEach((at, place) => {
    const before = eventMillis[place - 1];
    if (place > 0 && at - before > hole) add(toX((at + before) / 2), null, null, false);
    add(toX(at), volts[place], celsius[place], loadApplied[place]);
  });
  return drawn;
}

// A strip below the plot that is dark while the load is on.
function loadStrip(drawn) {
  return (plot) => {
    const { ctx, bbox } = plot;
    ctx.save();
    ctx.fillStyle = colour("faint");
    drawn.x.forEach((x, place) => {
      if (!drawn.load[place] || place + 1 >= drawn.x.length) return;
      const left = Math.max(bbox.left, plot.valToPos(x, "x", true));
      const right = Math.min(bbox.left + bbox.width, plot.valToPos(drawn.x[place + 1], "x", true));
      if (right > left) ctx.fillRect(left, bbox.top + bbox.height - 4 * devicePixelRatio, right - left + 1, 4 * devicePixelRatio);
    });
    ctx.restore();
  };
}

// Phases by a line where each begins and its name beside it; findings by a mark and their name.
function marks(past, toX) {
  return (plot) => {
    const { ctx, bbox } = plot;
    const size = 11 * devicePixelRatio;
    const free = { PHASE: -Infinity, RAISED: -Infinity };
    ctx.save();
    ctx.font = `${size}px system-ui, sans-serif`;
    ctx.textBaseline = "bottom";
    ctx.textAlign = "left";
    for (const it of past.filter((each) => each.kind !== "CLEARED")) {
      const x = plot.valToPos(toX(it.eventMillis), "x", true);
      if (x < bbox.left - 1 || x > bbox.left + bbox.width) continue;
      const isPhase = it.kind === "PHASE";
      ctx.strokeStyle = ctx.fillStyle = colour(isPhase ? "faint" : "ink");
      ctx.setLineDash(isPhase ? [] : [3 * devicePixelRatio, 3 * devicePixelRatio]);
      ctx.beginPath();
      ctx.moveTo(x, bbox.top);
      ctx.lineTo(x, bbox.top + bbox.height);
      ctx.stroke();
      const name = isPhase ? words.phase[it.what] : it.what.toLowerCase().replaceAll("_", " ");
      const width = ctx.measureText(name).width;
      if (x > free[it.kind] && x + width < bbox.left + bbox.width + size) {
        ctx.fillText(name, x, bbox.top - (isPhase ? 0 : size * 1.2) - 2 * devicePixelRatio);
        free[it.kind] = x + width + size;
      }
    }
    ctx.restore();
  };
}

// Where a resting cell is expected at the end of its rest: a bar from the lowest to the highest, and a dotted way to its middle.
function expected(prediction, drawn, toX) {
  return (plot) => {
    const last = drawn.x.findLastIndex((x, place) => drawn.volts[place] !== null);
    if (!prediction || last < 0) return;
    const { ctx } = plot;
    const x = plot.valToPos(toX(prediction.eventMillis), "x", true);
    const y = (volt) => plot.valToPos(volt, "y", true);
    ctx.save();
    ctx.strokeStyle = colour("faint");
    ctx.lineWidth = 2 * devicePixelRatio;
    ctx.beginPath();
    ctx.moveTo(x, y(prediction.lowestVolts));
    ctx.lineTo(x, y(prediction.highestVolts));
    ctx.stroke();
    ctx.setLineDash([2 * devicePixelRatio, 4 * devicePixelRatio]);
    ctx.beginPath();
    ctx.moveTo(plot.valToPos(drawn.x[last], "x", true), y(drawn.volts[last]));
    ctx.lineTo(x, y(prediction.medianVolts));
    ctx.stroke();
    ctx.restore();
  };
}

function axis(label, more) {
  return { label, stroke: colour("ink"), grid: { stroke: colour("line"), width: 1 }, ticks: { stroke: colour("line") }, size: 56, labelSize: 20, ...more };
}

/**
 * Draws into two elements.
 * trace and prediction: as the service gives them; past: what happened; toX: event time to seconds; isClock: whether those are Unix time;
 * chosen(fromX, toX): a part was chosen.
 */
export async function draw([upper, lower], { trace, past, prediction, toX, isClock, chosen }) {
  const UPlot = await uplot();
  const drawn = columns(trace, toX);
  const end = prediction ? toX(prediction.eventMillis) : drawn.x.at(-1);
  const shared = (element, height, ...more) => ({
    width: Math.max(240, element.clientWidth),
    height,
    legend: { show: false },
    padding: [NAMES_PIXELS, null, null, null],
    cursor: { drag: { x: true, y: false, setScale: false }, sync: { key: "trace", setSeries: false } },
    select: { show: true },
    hooks: {
      drawClear: [loadStrip(drawn)],
      draw: [marks(past, toX), ...more],
      setSelect: [(plot) => {
        if (plot.select.width < 4) return;
        chosen(plot.posToVal(plot.select.left, "x"), plot.posToVal(plot.select.left + plot.select.width, "x"));
      }],
    },
  });
  const hours = { incrs: STEPS, values: (plot, splits) => splits.map((seconds) => `${+(seconds / HOUR).toFixed(2)}`), label: words.passage.event };
  const time = axis(isClock ? undefined : words.passage.event, isClock ? {} : hours);
  const scaleX = { time: isClock, range: (plot, first, last) => [first, Math.max(last, end)] };
  const points = { show: false };
  upper.replaceChildren();
  lower.replaceChildren();
  const plots = [
    new UPlot({
      ...shared(upper, 280, expected(prediction, drawn, toX)),
      scales: { x: scaleX, y: { distr: 4, asinh: FOOT_VOLTS, range: (plot, low, high) => [Math.min(-0.005, low), Math.max(0.5, high * 1.25)] } },
      axes: [{ ...time, size: isClock ? 40 : 44 }, axis(words.passage.voltage, {
        splits: (plot) => VOLT_MARKS.filter((mark) => mark >= plot.scales.y.min && mark <= plot.scales.y.max),
        values: (plot, splits) => splits.map((volt) => `${volt}`),
        filter: (plot, splits) => splits,
      })],
      series: [{}, { stroke: colour("ink"), width: 1.4, points, spanGaps: false }],
    }, [drawn.x, drawn.volts], upper),
    new UPlot({
      ...shared(lower, 180),
      scales: { x: scaleX, y: { range: (plot, low, high) => [Math.floor((low ?? 20) - 1), Math.ceil((high ?? 25) + 1)] } },
      axes: [{ ...time, size: isClock ? 40 : 44 }, axis(words.passage.temperature)],
      series: [{}, { stroke: colour("ink"), width: 1.4, points, spanGaps: false }],
    }, [drawn.x, drawn.celsius], lower),
  ];
  return {
    resize: () => plots.forEach((plot) => plot.setSize({ width: Math.max(240, plot.root.parentElement.clientWidth), height: plot.height })),
    destroy: () => plots.forEach((plot) => plot.destroy()),
  };
}
