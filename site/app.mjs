// The page's thread: starts everything, hears the widgets, sends the newest settings to Python, and puts the answer
// into the page. It moves numbers and texts and never computes one.
import { all, byId, changedOnly, notice, root, state } from "./page.mjs";
import { ask, start } from "./python.mjs";
import { embed, embedFigure, enlarge, onPort, showFigures, theme } from "./models.mjs";
import { clearRefusals, fillField, fillFields, focusSetting, listen, refuse, wireSettings } from "./settings.mjs";
import { showAnswers, showChecks, showTables, wireAnswers } from "./answers.mjs";
import { wireDesigns } from "./designs.mjs";
import { wireShare } from "./share.mjs";
import { wireWalk } from "./walk.mjs";
import { remember, undoable } from "./history.mjs";

let texts = {}; // what was typed, for the settings that differ from the example
let shown = null; // the newest reply that is on the page
let pages = null; // Bokeh's documents: the widgets of each chapter, and figures by name
let asked = 0; // number of the newest solve
let awake = false; // the face is to be live
const wanted = new Set(["face"]); // figures that are in the page or near the window
const QUIET_MS = 10000; // after which the page is made wholly live, touched or not
const EXAMPLE = "#v=1"; // link of the design that the page was built with

export const design = { texts: () => texts, shown: () => shown, change, load };

function change(key, text, settled = true) {
  return solve({ ...texts, [key]: text }, settled ? "" : key);
}

// A whole design from a link, a saved one or an example.
async function load(link) {
  const reply = await ask({ kind: "open", link });
  if (reply.ended) return null; // over() has said it
  if (!reply.ok) {
    notice(`This design could not be opened (${reply.errors.map((error) => error.text).join(" ")}).`);
    return shown ? null : solve({});
  }
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
  const figures = [...wanted];
  const reply = await ask({ kind: "solve", settings: next, figures });
  if (reply.dropped || reply.ended || mine !== asked) return;
  if (!reply.ok && root.dataset.shared !== undefined && Object.keys(next).length) { // never leave the page hidden for it
    notice(`This design could not be worked out (${reply.errors.map((error) => error.text).join(" ")}). The page shows the example.`);
    return solve({});
  }
  if (!reply.ok) {
    refuse(reply.errors, typing);
    return state("error", "Not computed. The numbers are those of the last good settings.");
  }
  awake ||= reply.link !== EXAMPLE;
  await liven(reply);
  if (mine !== asked) return;
  texts = reply.texts;
  show(reply);
  fillFields(reply, typing);
  if (!typing) remember(reply.link);
  if (figures.length < wanted.size) solve(texts, typing); // more have come near the window
}

function showQuick(reply) {
  showAnswers(reply.answers);
  showFigures(reply);
}

function show(reply) {
  shown = reply;
  delete root.dataset.shared;
  root.dataset.units = reply.units;
  clearRefusals();
  showAnswers(reply.answers);
  showChecks(reply);
  showTables(reply.tables);
  showFigures(reply);
  for (const place of all("[data-sentence]")) {
    const said = reply.charts[place.dataset.sentence];
    if (said) changedOnly(place, said.sentence);
  }
  history.replaceState(null, "", reply.link === EXAMPLE ? location.pathname : reply.link);
  state("ready", "Ready. Works without a network.");
}

// --- start ----------------------------------------------------------------------------------------------------------

async function openChapter(chapter) {
  const name = chapter.id.replace("chapter-", "");
  if (!pages || chapter.dataset.live !== undefined) return;
  chapter.dataset.live = "";
  for (const page of pages.widgets[name]) {
    const widget = await embed(page);
    listen(widget, change);
    if (shown) fillField(widget.name, shown); // before it is painted
  }
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
  for (const chapter of all(".chapter[open]")) await openChapter(chapter);
  const seen = new IntersectionObserver((entries) => {
    for (const { isIntersecting, target } of entries) {
      if (!isIntersecting) continue;
      seen.unobserve(target);
      want(target.dataset.lazy);
    }
  }, { rootMargin: "300px" });
  for (const place of all("[data-lazy]")) seen.observe(place);
}

let wanting = 0;
function want(name) { // a figure that has come near the window
  wanted.add(name);
  if (!shown && root.dataset.shared === undefined) embedFigure(name, pages.figures[name]); // the example's
  clearTimeout(wanting);
  wanting = setTimeout(() => { if (shown) solve(texts); }, 60);
}

// Make the wanted figures live with a reply's data.
async function liven({ drawings, charts }) {
  for (const [name, data] of Object.entries({ ...drawings, ...charts })) {
    if (!wanted.has(name) || (name === "face" && !awake)) continue;
    await embedFigure(name, pages.figures[name], data).catch((error) => {
      byId(`figure-${name}`).hidden = true; // its picture is the example's
      notice(`A drawing could not be made (${error.message}). The numbers are right; reload the page for the drawing.`);
    });
  }
}

// The face's picture is the example's face until a design differs from it or somebody touches the page: a slow phone
// has enough to do with starting Python.
function wake() {
  if (awake) return;
  awake = true;
  if (shown) liven(shown);
}

root.dataset.app = ""; // early.js looks for it
for (const touch of ["pointerdown", "pointermove", "keydown", "scroll"]) addEventListener(touch, wake, { once: true, passive: true });
wireChapters();
wireFigures();
onPort((words) => changedOnly(byId("port-words"), words));
wireSettings(design);
wireAnswers(design, focusSetting);
wireDesigns(design);
wireShare(design);
wireWalk();
undoable(design);
addEventListener("hashchange", openAddress);
matchMedia("(prefers-color-scheme: dark)").addEventListener("change", theme);
matchMedia("(prefers-contrast: more)").addEventListener("change", theme);
const AGAIN = "The calculator broke off and is starting again. Nothing is lost.";
let before = null; // how the page stood when it broke off

function again() {
  before = [root.dataset.state, byId("status").textContent];
  state("computing", AGAIN);
}

function ready() {
  for (const part of all("[data-needs-python]")) part.disabled = false;
  if (before && byId("status").textContent === AGAIN) state(...before);
  before = null;
  setTimeout(wake, QUIET_MS);
  // Only now, so that keeping the site for later does not hold up the start.
  if ("serviceWorker" in navigator) navigator.serviceWorker.register("./sw.mjs").catch(() => {});
}

function over(trouble) {
  delete root.dataset.shared;
  root.dataset.broken = "";
  if (shown) {
    state("error", "The calculator broke off. The numbers are those of the last good settings.");
    return notice(`The calculator broke off (${trouble}). Reload the page: the design is kept. If it breaks again, undo the last change.`);
  }
  state("error", "The calculator could not start. What you see is the example design; nothing here is computed.");
  notice(`This browser could not start the calculator (${trouble}). The page shows the example only: do not build from it. `
    + "A newer browser, or a reload with a network, may help.");
}

if (root.dataset.shared !== undefined) changedOnly(byId("status"), "The calculator is starting.");
start({ ready, again, over });
live().then(openAddress, (error) => {
  if (root.dataset.broken !== undefined) return; // said already
  delete root.dataset.shared;
  state("error", "The page's drawings could not be loaded.");
  notice(`The page is not complete (${error.message}). Reload it with a network.`);
});
