// Brings a setting, an answer or a check into view: opens its chapter and its folds, and marks it.
import { byId } from "./page.mjs";
import { chapterOf, turnTo } from "./chapters.mjs";
import { fieldOf } from "./settings.mjs";

// `place`: its id, or itself.
export function jump(place) {
  const at = place.nodeType ? place : byId(place);
  if (!at) return;
  turnTo(chapterOf(at));
  for (let fold = at.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
  requestAnimationFrame(() => {
    at.scrollIntoView({ block: "center" });
    const covered = document.querySelector(".top").getBoundingClientRect().bottom + 8 - at.getBoundingClientRect().top;
    if (covered > 0 && at.offsetHeight > innerHeight / 2) scrollBy({ top: -covered, behavior: "instant" }); // a long one is read from its head
    at.dataset.marked = "";
    setTimeout(() => { delete at.dataset.marked; }, 5000);
    const stop = at.dataset.setting ? fieldOf(at.dataset.setting) ?? at.querySelector("button") : at.querySelector(":scope > summary") ?? at;
    if (stop === at && !at.matches("[tabindex], button")) at.tabIndex = -1;
    stop?.focus({ preventScroll: true });
  });
}
