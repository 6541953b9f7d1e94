// Signing in and out. The token is shown once; from then on a cookie says who this browser is, and no script can read it.

import { act, ask } from "./ask.js";
import { button, byId, make, moment, put } from "./hands.js";
import { values } from "./deed.js";
import { words } from "./words.js";

let session = { signedIn: false, until: null };

export const signedIn = () => session.signedIn;

function know(answer) {
  session = answer;
  put(byId("sign"), session.signedIn ? words.nav.signedIn : words.nav.signIn);
  document.dispatchEvent(new CustomEvent("done"));
}

export async function lookWhoIsHere() {
  know(await ask("api/v1/session"));
}

export function showSign(view) {
  const title = make("h2", "", session.signedIn ? words.nav.signedIn : words.sign.title);
  const failed = Object.assign(make("p", "refused"), { role: "alert", hidden: true });
  const fail = (failure) => {
    put(failed, failure.status ? `${failure.message} ${failure.advice}` : words.acts.unanswered);
    failed.hidden = false;
  };
  if (session.signedIn) {
    const out = button(words.sign.out, () =>
      act("api/v1/session", undefined, { method: "DELETE" }).then(know).then(() => showSign(view)).catch(fail));
    view.replaceChildren(make("section", "", title, make("p", "", words.sign.until(moment(session.until))), make("p", "buttons", out), failed));
    return;
  }
  const user = Object.assign(make("input", ""), { type: "text", autocomplete: "username", value: words.sign.user, hidden: true, readOnly: true });
  const token = Object.assign(make("input", ""), {
    type: "password", name: "token", id: "token", required: true, autocomplete: "current-password", maxLength: 200,
  });
  const go = Object.assign(make("button", "", words.sign.go), { type: "submit" });
  const form = make("form", "", user,
    make("p", "", Object.assign(make("label", "", words.sign.token), { htmlFor: "token" }), token), make("p", "buttons", go), failed);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    act("api/v1/session", { token: values(form).token }).then(know).then(() => { location.hash = "#/"; }).catch(fail);
  });
  view.replaceChildren(make("section", "", title, make("p", "", words.sign.means), form));
}
