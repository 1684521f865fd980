// The walk through the job, found under Help.
import { all, byId } from "./page.mjs";

export function wireWalk() {
  const steps = () => all(".walk-step"); // they come later
  let at = 0;
  const show = (next) => {
    at = next;
    steps().forEach((step, i) => { step.hidden = i !== at; });
    byId("walk-count").textContent = `${at + 1} of ${steps().length}`;
    byId("walk-back").disabled = at === 0;
    byId("walk-next").textContent = at === steps().length - 1 ? "Start" : "Next";
  };
  const done = () => byId("walk").close();
  byId("walk-back").addEventListener("click", () => show(at - 1));
  byId("walk-next").addEventListener("click", () => (at === steps().length - 1 ? done() : show(at + 1)));
  byId("walk-skip").addEventListener("click", done);
  byId("walk-again").addEventListener("click", () => { byId("help-box").close(); show(0); byId("walk").showModal(); });
}
