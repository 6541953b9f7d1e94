// Small hands for the document, and words for times and names.

export const byId = (id) => document.getElementById(id);
export const lower = (name) => name.toLowerCase().replaceAll("_", " ");
export const clock = (when) => new Date(when).toLocaleTimeString();

export function put(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

export function fresh(template) {
  return byId(template).content.firstElementChild.cloneNode(true);
}

export function make(tag, className, ...children) {
  const element = document.createElement(tag);
  if (className) element.className = className;
  element.append(...children);
  return element;
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
