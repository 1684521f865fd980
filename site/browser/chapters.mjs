// Which chapter is open, and what lies over it: the bar at the foot, the browser's Back and Forward, and where a reload comes
// back to. Whatever lies over the page has an entry of its own in the browser's list: Back takes off what is on top.
import { all, byId, root } from "./page.mjs";

const PLACE = "burnercalc-place"; // early.js reads it before the first paint
let hear = () => {};
let visit = history.state?.visit ?? Date.now(); // the address that was opened: within one, Back and Forward never change the design

export const chapterOf = (part) => part.closest(".chapter").id.replace("chapter-", "");

// `given` hears the chapter that has been opened.
export function wireChapters(given) {
  hear = given;
  for (const press of all("[data-go]")) press.addEventListener("click", () => go(press.dataset.go));
  addEventListener("popstate", arrive);
  const watch = new MutationObserver(layered);
  for (const dialog of all("dialog")) watch.observe(dialog, { attributeFilter: ["open"] });
  write("replaceState");
  show(root.dataset.chapter);
}

const layers = () => all("dialog[open], figure.large");
let leaving = false; // entries of what was closed by its own button are being left
const waiting = []; // what is to be written once that is done

function write(how, link, over = layers().length) {
  if (leaving) return void waiting.push([how, link, over]);
  if (over) history.scrollRestoration = "manual"; // what is taken off moves nothing below it
  history[how]({ chapter: root.dataset.chapter, visit, over, top: layers()[over - 1]?.id }, "", link);
  history.scrollRestoration = over ? "manual" : "auto";
}

// Something was laid over the page or taken off.
export function layered() {
  const over = layers().length, were = history.state?.over ?? 0;
  if (leaving) return;
  for (let each = were + 1; each <= over; each += 1) write("pushState", undefined, each);
  if (over < were) {
    leaving = true;
    history.go(over - were);
  } else write("replaceState");
}

function arrive({ state }) {
  if (!leaving) {
    if (state?.visit !== visit) return;
    const over = state.over ?? 0, top = byId(state.top);
    for (const layer of layers().slice(over).reverse()) layer.matches("dialog") ? layer.close() : layer.querySelector(".enlarge").click();
    if (layers().length < over && top?.matches("[data-again]")) top.showModal(); // a list that something was opened from
    show(state.chapter);
  }
  leaving = false;
  for (const each of waiting.splice(0)) write(...each);
  layered();
}

// What a dialog opens takes the place of the page, not of the dialog: Back comes to the dialog again.
export const openedFrom = () => write("pushState", undefined, 0);

// Open a chapter at its head.
export function go(name) {
  if (!turnTo(name)) return scrollTo({ top: 0, behavior: "smooth" });
  scrollTo(0, 0);
  byId(`title-${name}`).focus({ preventScroll: true });
}

// Open a chapter and leave the window where it is; whether that was another one.
export function turnTo(name) {
  if (name === root.dataset.chapter) return false;
  show(name);
  write("pushState");
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
  write("replaceState", link);
}

// Whether the address has changed only because Back or Forward went to another chapter.
export const turned = () => history.state?.visit === visit;

export function opensAddress() {
  visit = history.state?.visit ?? Date.now();
  if (history.state) return show(history.state.chapter);
  if (root.dataset.chapter !== "start") show("start"); // a link that comes to an open page shows its answer first
  scrollTo(0, 0);
}
