// Brings a setting, an answer or a check into view: opens its chapter and its folds, and marks it.
import { byId } from "./page.mjs";
import { chapterOf, turnTo } from "./chapters.mjs";
import { fieldOf } from "./settings.mjs";

export function jump(id) {
  const at = byId(id);
  if (!at) return;
  turnTo(chapterOf(at));
  for (let fold = at.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
  requestAnimationFrame(() => {
    at.scrollIntoView({ block: "center" });
    at.dataset.marked = "";
    setTimeout(() => { delete at.dataset.marked; }, 5000);
    const stop = at.dataset.setting ? fieldOf(at.dataset.setting) ?? at.querySelector("button") : at.matches("[tabindex]") ? at : at.querySelector("summary, button");
    stop?.focus({ preventScroll: true });
  });
}
