// Small tools of the page's own parts.
export const root = document.documentElement;

// The build stamps each module and the page with its name and has each module ask this: a host that is being given a new
// version must not make one page of two.
export function ofBuild(build) {
  if (root.dataset.build === build) return;
  root.dataset.mixed = ""; // early.js says it
  throw new Error("of another build than the page");
}

export const byId = (id) => document.getElementById(id);
export const all = (selector, within = document) => [...within.querySelectorAll(selector)];

export function state(name, words) {
  root.dataset.state = name;
  changedOnly(byId("status"), words);
}

export function notice(words) {
  byId("notice-text").textContent = words;
  byId("notice-offers").replaceChildren();
  byId("notice").hidden = !words;
}

export function changedOnly(place, words) {
  if (place.textContent !== words) place.textContent = words;
}

const STEP_MS = 5; // so that a step stays under 50 ms on a phone four times slower
let rested = 0;

// Between two steps of long work: let taps, scrolling and painting through when the work has gone on for long enough.
export async function rest() {
  if (performance.now() - rested < STEP_MS) return;
  await new Promise((resolve) => { setTimeout(resolve); });
  rested = performance.now();
}

// Of `[1 in|25 mm]` in a text the page shows what stands in the measures that are chosen.
export const measured = (text) => text.split(/\[([^|[\]]*)\|([^|[\]]*)\]/).map((part, i) => (i % 3 ? make("span", i % 3 === 1 ? "inches" : "metric", part) : part));

// An element with a class, texts and children.
export function make(tag, className, ...inside) {
  const made = document.createElement(tag);
  if (className) made.className = className;
  made.append(...inside);
  return made;
}

export function button(words, press, className = "") {
  const made = make("button", className, words);
  made.type = "button";
  made.addEventListener("click", press);
  return made;
}

let speaking = 0;
export function speak(words) { // to a screen reader, once the typing has come to rest
  clearTimeout(speaking);
  speaking = setTimeout(() => { byId("spoken").textContent = words; }, 900);
}

export const today = () => { // here, as 2026-11-28
  const now = new Date();
  return new Date(now - 60000 * now.getTimezoneOffset()).toISOString().slice(0, 10);
};

export const address = () => location.href.split("#")[0].split("?")[0];

export function saveFile(name, type, data) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([data], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

export const picture = (svg) => `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;

// A face as a small picture, in the colours of steel, refractory and ports.
export function facePicture(svg) {
  const colour = (name) => getComputedStyle(root).getPropertyValue(name).trim();
  const filled = [["body", "--steel"], ["window", "--castable"], ["port", "--flow-even"]].reduce((text, [layer, name]) => text.replaceAll(`class="${layer}" fill="none"`, `class="${layer}" fill="${colour(name)}"`), svg);
  return picture(filled.replaceAll('stroke="#000000"', `stroke="${colour("--ink")}"`));
}

// What a setting says, in words; a word such as auto has no unit.
export const worded = ({ text, unit, shown }) => shown ?? (/\d/.test(text) ? `${text} ${unit}`.trim() : text || "none");
