// Fields of a form, each with its label.

import { make } from "./hands.js";

let number = 0;

function labelled(label, input, name) {
  number += 1;
  input.name = name;
  input.id = `field-${number}`;
  return make("p", "", Object.assign(make("label", "", label), { htmlFor: input.id }), input);
}

export function textField(name, label, { most = 1000, required = false } = {}) {
  return labelled(label, Object.assign(make("input", ""), { type: "text", maxLength: most, required, autocomplete: "off" }), name);
}

export function numberField(name, label, { min, max, value = "", required = false } = {}) {
  const input = Object.assign(make("input", ""), { type: "number", value, required });
  Object.entries({ min, max, step: "any", inputmode: "decimal" }).forEach(([limit, its]) => input.setAttribute(limit, its));
  return labelled(label, input, name);
}

export function choiceField(name, label, options) {
  const select = Object.assign(make("select", ""), { required: true });
  select.append(...options.map(([value, text]) => Object.assign(make("option", "", text), { value })));
  return labelled(label, select, name);
}

export function photoField(name, label) {
  const input = Object.assign(make("input", ""), { type: "file", accept: "image/jpeg,image/png" });
  input.setAttribute("capture", "environment");
  return labelled(label, input, name);
}

export function refusal() {
  return Object.assign(make("p", "refused"), { role: "alert", hidden: true });
}
