// Which chapter is open: the bar at the foot, the browser's Back and Forward, and where a reload comes back to.
import { all, byId, root } from "./page.mjs";

const PLACE = "burnercalc-place"; // early.js reads it before the first paint
let hear = () => {};
let visit = history.state?.visit ?? Date.now(); // the address that was opened: within one, Back and Forward never change the design

export const chapterOf = (part) => part.closest(".chapter").id.replace("chapter-", "");

// `given` hears the chapter that has been opened.
export function wireChapters(given) {
  hear = given;
  for (const press of all("[data-go]")) press.addEventListener("click", () => go(press.dataset.go));
  addEventListener("popstate", ({ state }) => { if (state?.visit === visit) show(state.chapter); });
  history.replaceState({ chapter: root.dataset.chapter, visit }, "");
  show(root.dataset.chapter);
}

// Open a chapter at its head.
export function go(name) {
  if (!turnTo(name)) return scrollTo({ top: 0, behavior: "smooth" });
  scrollTo(0, 0);
  byId(`title-${name}`).focus({ preventScroll: true });
}

// Open a chapter and leave the window where it is; whether that was another one.
export function turnTo(name) {
  if (name === root.dataset.chapter) return false;
  history.pushState({ chapter: name, visit }, "");
  show(name);
  return true;
}

function show(name) {
  root.dataset.chapter = name;
  try { sessionStorage.setItem(PLACE, name); } catch { /* closed: a reload opens the first screen */ }
  document.querySelector("#chapters [aria-current]")?.removeAttribute("aria-current");
  document.querySelector(`#chapters [data-go="${name}"]`).setAttribute("aria-current", "true");
  for (const place of all(`#chapter-${name} .guest`)) if (!place.firstElementChild && getComputedStyle(place).display !== "none") place.append(byId(place.dataset.guest)); // what two chapters show
  hear(byId(`chapter-${name}`));
}

// The address bar names the design; the entry in the browser's list also names the chapter.
export function setAddress(link) {
  history.replaceState({ chapter: root.dataset.chapter, visit }, "", link);
}

// Whether the address has changed only because Back or Forward went to another chapter.
export const turned = () => history.state?.visit === visit;

export function opensAddress() {
  visit = history.state?.visit ?? Date.now();
  if (history.state) show(history.state.chapter);
}
