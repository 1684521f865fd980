// The page's thread: starts everything, hears the widgets, sends the newest settings to Python, and puts the answer
// into the page. It moves numbers and texts and never computes one.
import { all, byId, changedOnly, notice, root, state } from "./page.mjs";
import { ask, onStage, start } from "./python.mjs";
import { embed, enlarge, figures, onPort, showCharts, showDrawings, theme } from "./models.mjs";
import { clearRefusals, fillFields, focusSetting, listen, refuse, wireSettings } from "./settings.mjs";
import { showAnswers, showChecks, showTables, wireAnswers } from "./answers.mjs";
import { wireDesigns } from "./designs.mjs";
import { wireShare } from "./share.mjs";
import { wireWalk } from "./walk.mjs";
import { remember, undoable } from "./history.mjs";

let texts = {}; // what was typed, for the settings that differ from the example
let shown = null; // the newest reply that is on the page
let pages = null; // Bokeh documents by name
let asked = 0; // number of the newest solve

export const design = { texts: () => texts, shown: () => shown, change, load };

function change(key, text, settled = true) {
  return solve({ ...texts, [key]: text }, settled ? "" : key);
}

// A whole design from a link, a saved one or an example.
async function load(link) {
  const reply = await ask({ kind: "open", link });
  if (!reply.ok) return;
  notice(reply.ignored.length ? `Left out of this design: ${reply.ignored.map((error) => error.text).join(" ")}` : "");
  await solve(reply.settings);
}

// `typing` is the key of the field that is still being typed in.
async function solve(next, typing = "") {
  if (root.dataset.broken !== undefined) return;
  const mine = ++asked;
  texts = next;
  state("computing", "Computing\u2026");
  if (shown) ask({ kind: "face", settings: next }).then((quick) => { if (quick.ok && mine === asked) showQuick(quick); });
  const reply = await ask({ kind: "solve", settings: next, figures: figures() });
  if (reply.dropped || mine !== asked) return;
  if (!reply.ok) {
    refuse(reply.errors, typing);
    return state("error", "Not computed. The numbers are those of the last good settings.");
  }
  texts = reply.texts;
  show(reply);
  fillFields(reply, typing);
  if (!typing) remember(reply.link);
}

function showQuick(reply) {
  showAnswers(reply.answers);
  showDrawings(reply.drawings);
}

function show(reply) {
  shown = reply;
  delete root.dataset.shared;
  root.dataset.units = reply.units;
  clearRefusals();
  showAnswers(reply.answers);
  showChecks(reply);
  showTables(reply.tables);
  showDrawings(reply.drawings);
  showCharts(reply.charts);
  for (const place of all("[data-sentence]")) {
    const said = reply.charts[place.dataset.sentence];
    if (said) changedOnly(place, said.sentence);
  }
  history.replaceState(null, "", reply.link === "#v=1" ? location.pathname : reply.link);
  state("ready", "Ready. Works without a network.");
}

// --- start ----------------------------------------------------------------------------------------------------------

async function openChapter(chapter) {
  const name = chapter.id.replace("chapter-", "");
  if (!pages?.[name] || chapter.dataset.live !== undefined) return;
  chapter.dataset.live = "";
  for (const widget of await embed(pages[name])) listen(widget, change);
  if (shown) fillFields(shown, "");
}

function openAddress() {
  const link = location.hash || location.search;
  if (/[#?&]v=/.test(link)) return load(link);
  let kept = null;
  try { kept = localStorage.getItem("burnercalc-last"); } catch { /* storage is closed: begin with the example */ }
  return kept ? load(kept) : solve(texts);
}

function wireChapters() {
  const wide = matchMedia("(min-width: 64rem)");
  const chapters = all(".chapter");
  const spread = () => chapters.forEach((chapter, i) => {
    if (wide.matches) chapter.removeAttribute("name");
    else chapter.setAttribute("name", "chapter");
    chapter.open = wide.matches || i === 0;
  });
  for (const chapter of chapters) chapter.addEventListener("toggle", () => chapter.open && openChapter(chapter));
  for (const press of all(".next")) {
    press.addEventListener("click", () => {
      const next = byId(`chapter-${press.dataset.next}`);
      next.open = true;
      next.querySelector("summary").focus({ preventScroll: true });
      requestAnimationFrame(() => scrollBy(0, next.getBoundingClientRect().top - document.querySelector(".sight").getBoundingClientRect().bottom));
    });
  }
  wide.addEventListener("change", spread);
  spread();
}

function wireFigures() {
  const close = () => all("figure.large").forEach((figure) => toggle(figure));
  const toggle = (figure) => {
    const press = figure.querySelector(".enlarge");
    const large = figure.classList.toggle("large");
    press.textContent = large ? "Close" : "Enlarge";
    enlarge(press.dataset.figure, large);
    press.focus();
  };
  for (const press of all(".enlarge")) press.addEventListener("click", () => toggle(press.closest("figure")));
  addEventListener("keydown", (event) => { if (event.key === "Escape") close(); });
}

async function live() { // Bokeh's models, once the first paint is done
  pages = await (await fetch("./page.json")).json();
  await embed(pages.sight);
  onPort((words) => changedOnly(byId("port-words"), words));
  for (const chapter of all(".chapter[open]")) await openChapter(chapter);
  let waiting = 0;
  const seen = new IntersectionObserver((entries) => {
    for (const entry of entries) {
      if (!entry.isIntersecting) continue;
      seen.unobserve(entry.target);
      embed(pages[entry.target.dataset.lazy]).then(() => {
        clearTimeout(waiting);
        waiting = setTimeout(() => { if (shown) solve(texts); }, 60);
      });
    }
  }, { rootMargin: "300px" });
  for (const place of all("[data-lazy]")) seen.observe(place);
  if (shown) show(shown);
}

root.dataset.app = ""; // early.js looks for it
wireChapters();
wireFigures();
wireSettings(design);
wireAnswers(design, focusSetting);
wireDesigns(design);
wireShare(design);
wireWalk();
undoable(design);
addEventListener("hashchange", openAddress);
matchMedia("(prefers-color-scheme: dark)").addEventListener("change", theme);
matchMedia("(prefers-contrast: more)").addEventListener("change", theme);
let again = false; // Python broke off and is being started anew
onStage((stage, trouble) => {
  if (trouble) over(trouble);
  else if (stage === "again") {
    again = true;
    state("computing", "Python broke off and is starting again. Nothing is lost.");
  } else if (stage === "ready") {
    for (const part of all("[data-needs-python]")) part.disabled = false;
    if (again && shown) solve(texts);
    again = false;
    // Only now, so that keeping the site for later does not hold up the start.
    if ("serviceWorker" in navigator) navigator.serviceWorker.register("./sw.mjs").catch(() => {});
  }
});

function over(trouble) {
  delete root.dataset.shared;
  root.dataset.broken = "";
  if (shown) {
    state("error", "Python broke off. The numbers are those of the last good settings.");
    return notice(`The calculator broke off twice (${trouble}). Reload the page: the design is kept. If it breaks again, undo the last change.`);
  }
  state("error", "Python could not start. What you see is the example design; nothing here is computed.");
  notice(`This browser could not start the calculator (${trouble}). The page shows the example only: do not build from it. `
    + "A newer browser, or a reload with a network, may help.");
}

start();
live().then(openAddress, (error) => {
  if (root.dataset.broken !== undefined) return; // said already
  delete root.dataset.shared;
  state("error", "The page's drawings could not be loaded.");
  notice(`The page is not complete (${error.message}). Reload it with a network.`);
});
