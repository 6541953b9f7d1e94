// Sound and notices on this device, where a person switched them on. Outlets are what wakes people; this is beside them.

import { memory } from "./ask.js";
import { byId, put } from "./hands.js";
import { words } from "./words.js";

const TONES = [880, 660, 880, 660];
const TONE_SECONDS = 0.28;
let on = memory.get("loud", false);
let sound = null;

function show() {
  put(byId("loud"), on ? words.alarms.loudOn : words.alarms.loudOff);
  byId("loud").setAttribute("aria-pressed", String(on));
  const blocked = on && "Notification" in window && Notification.permission === "denied";
  put(byId("loud-caution"), [on ? words.alarms.loudCaution : "", blocked ? words.alarms.blockedNotices : ""].filter(Boolean).join(" "));
}

// A browser lets a page sound only after a person has pressed something on it.
async function press() {
  on = !on;
  memory.set("loud", on);
  if (on) {
    sound ??= new AudioContext();
    await sound.resume();
    if ("Notification" in window && Notification.permission === "default") await Notification.requestPermission();
    tones();
  }
  show();
}

function tones() {
  if (sound?.state !== "running") return;
  TONES.forEach((hertz, place) => {
    const tone = sound.createOscillator();
    const gain = sound.createGain();
    const at = sound.currentTime + place * TONE_SECONDS;
    tone.frequency.value = hertz;
    gain.gain.setValueAtTime(0.25, at);
    gain.gain.linearRampToValueAtTime(0, at + TONE_SECONDS);
    tone.connect(gain).connect(sound.destination);
    tone.start(at);
    tone.stop(at + TONE_SECONDS);
  });
}

export function ring(lines) {
  if (!on) return;
  tones();
  if ("Notification" in window && Notification.permission === "granted") {
    try {
      new Notification(words.name, { body: lines.join("\n"), icon: "mark.svg", tag: "ebbwatch", renotify: true });
    } catch {
      // Some phones allow notices from workers only; the tones were played.
    }
  }
}

export function beLoud() {
  byId("loud").addEventListener("click", press);
  show();
}
