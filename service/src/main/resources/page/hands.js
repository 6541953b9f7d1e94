// Small hands for the document, and forms of times and figures.

import { words } from "./words.js";

export const byId = (id) => document.getElementById(id);
export const lower = (name) => name.toLowerCase().replaceAll("_", " ");
export const clock = (when) => new Date(when).toLocaleTimeString();

export function put(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

export function fresh(template) {
  const element = byId(template).content.firstElementChild.cloneNode(true);
  speak(element);
  return element;
}

export function make(tag, className, ...children) {
  const element = document.createElement(tag);
  if (className) element.className = className;
  element.append(...children);
  return element;
}

export function link(text, href) {
  return Object.assign(make("a", "", text), { href });
}

export function button(text, press) {
  const made = make("button", "", text);
  made.type = "button";
  made.addEventListener("click", press);
  return made;
}

export function shape(name) {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  const use = document.createElementNS("http://www.w3.org/2000/svg", "use");
  use.setAttribute("href", `#shape-${name}`);
  svg.setAttribute("class", "shape");
  svg.setAttribute("aria-hidden", "true");
  svg.append(use);
  return svg;
}

// Makes a list anew only when what it says has changed: focus and reading position stay where they are.
export function fill(list, entries, build) {
  const key = JSON.stringify(entries);
  if (list.dataset.key === key) return;
  list.dataset.key = key;
  list.replaceChildren(...entries.map(build));
}

// Puts its words into every element that names them, as data-say="plan.title".
export function speak(root) {
  const named = [...root.querySelectorAll("[data-say]")];
  if (root.dataset?.say) named.push(root);
  for (const element of named) put(element, spoken(element.dataset.say));
  // What style sheets write before or behind it once it is old.
  for (const element of root.querySelectorAll("[data-old]")) {
    element.dataset[element.dataset.old] = { was: words.live.was, last: words.live.onlyLast }[element.dataset.old];
  }
  for (const element of root.querySelectorAll("[data-label]")) element.setAttribute("aria-label", spoken(element.dataset.label));
}

function spoken(path) {
  return path.split(".").reduce((at, key) => at[key], words);
}

export function span(seconds) {
  if (seconds < 10) return `${seconds.toFixed(1)} s`;
  if (seconds < 60) return `${Math.floor(seconds)} s`;
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours < 48) return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
  return `${Math.floor(hours / 24)} days ${hours % 24} h`;
}

// The time, and the day too where it is another one.
export function moment(at) {
  const then = new Date(at);
  const today = then.toDateString() === new Date().toDateString();
  return today ? clock(at) : `${then.toLocaleDateString(undefined, { weekday: "short", day: "numeric", month: "short" })} ${clock(at)}`;
}

export const degrees = (celsius) => (celsius === null ? words.rack.noCelsius : `${celsius.toFixed(1)} °C`);
export const digits = (number) => (Math.abs(number) < 1 ? 4 : 3);
export const volts = (number) => `${number.toFixed(digits(number))} V`;
