// One question before anything is done: what it means, what is needed for it, and the answer of the service.

import { key } from "./ask.js";
import { byId, make, put } from "./hands.js";
import { words } from "./words.js";

let running = null;

function field(spec, place) {
  const id = `deed-${place}`;
  const label = Object.assign(make("label", "", spec.label), { htmlFor: id });
  if (spec.options) {
    const list = make("fieldset", "", make("legend", "", spec.label));
    spec.options.forEach(([value, text], at) => {
      const input = Object.assign(make("input", ""), { type: "radio", name: spec.name, value, id: `${id}-${at}`, required: true });
      input.checked = spec.value === value;
      list.append(make("p", "choice", input, Object.assign(make("label", "", text), { htmlFor: input.id })));
    });
    return list;
  }
  const input = Object.assign(make("input", ""), { id, name: spec.name, type: spec.type ?? "text", required: spec.required ?? true });
  for (const [name, limit] of Object.entries(spec.limits ?? {})) input.setAttribute(name, limit);
  if (spec.value !== undefined) input.value = spec.value;
  return make("p", "", label, input);
}

// deed: { title, means, fields: [{ name, label, type, limits, options, value }], go, send(values, once) }
export function offer(deed) {
  const once = key();
  running = { deed, once };
  put(byId("deed-title"), deed.title);
  put(byId("deed-means"), deed.means ?? "");
  byId("deed-fields").replaceChildren(...(deed.fields ?? []).map(field));
  put(byId("deed-go"), deed.go ?? deed.title);
  byId("deed-go").disabled = false;
  refuse("");
  byId("deed").showModal();
}

function refuse(why) {
  put(byId("deed-refused"), why);
  byId("deed-refused").hidden = !why;
}

export function values(form) {
  return Object.fromEntries(new FormData(form));
}

async function go(event) {
  event.preventDefault();
  const { deed, once } = running;
  byId("deed-go").disabled = true;
  try {
    const receipt = await deed.send(values(event.target), once);
    byId("deed").close();
    put(byId("said"), words.acts.done(deed.title) + (receipt?.onDisk === false ? ` ${words.acts.notOnDisk}` : ""));
    document.dispatchEvent(new CustomEvent("done"));
  } catch (failure) {
    refuse(failure.status ? `${failure.message} ${failure.advice}` : words.acts.unanswered);
    // What was refused is judged anew; what got no answer keeps its key, so that it is done once.
    if (failure.status) running.once = key();
    document.dispatchEvent(new CustomEvent("done"));
  } finally {
    byId("deed-go").disabled = false;
  }
}

export function beAsked() {
  byId("deed").querySelector("form").addEventListener("submit", go);
  byId("deed-leave").addEventListener("click", () => byId("deed").close());
}
