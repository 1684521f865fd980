// The page's thread: starts everything, hears the widgets, sends the newest settings to Python, and puts the answer
// into the page. It moves numbers and texts and never computes one.
import { all, byId, changedOnly, notice, rest, root, state, today } from "./page.mjs";
import { ask, retry, start, stop } from "./python.mjs";
import { fetchPacked, hush, tell, waitFor, wireBars } from "./bars.mjs";
import { embed, embedFigure, enlarge, onDrawn, placeOf, showFigures, theme } from "./models.mjs";
import { go, layered, opensAddress, setAddress, turned, wireChapters } from "./chapters.mjs";
import { clearRefusals, fillField, fillFields, fillTyped, listen, refuse, wireField, wireSettings } from "./settings.mjs";
import { butThen, checksIn, showAnswers, showOld, showTexts, showVerdicts, tablesIn, wireAnswers } from "./answers.mjs";
import { jump } from "./jump.mjs";
import { wireDesigns } from "./designs.mjs";
import { showGrips, wireDrag } from "./drag.mjs";
import { showPorts, wirePorts } from "./ports.mjs";
import { wireShare } from "./share.mjs";
import { wireSearch } from "./search.mjs";
import { explain, wireGlossary } from "./glossary.mjs";
import { wireFind } from "./find.mjs";
import { offered } from "./have.mjs";
import { wireMend } from "./mend.mjs";
import { wireShopping } from "./shopping.mjs";
import { wirePrinted } from "./printed.mjs";
import { wireAsks } from "./asks.mjs";
import { wireTight } from "./tight.mjs";
import { wireWalk } from "./walk.mjs";
import { remember, steps, undoable } from "./history.mjs";
import { anotherDesign, EXAMPLE, isOwn, isPlain, keepTyped, lastOwn, typedBefore } from "./own.mjs";
import { keepSite, reload } from "./version.mjs";

let texts = {}; // what was typed, for the settings that differ from the example
let shown = null; // the newest reply that is on the page
let pages = null; // Bokeh's documents: widgets and figures, each by name
// Where the texts come from: the key of a field that is still being typed in; whether the design is one's own, not one that
// came by a link and that nobody here has changed; whether it was loaded, not typed. Kept, because a solve that is asked
// again for more figures may overtake the one that the change asked for.
let origin = { typing: "", own: true, loaded: true };
let held = false; // what is in the fields was stopped, or broke the calculator: not to be asked again unless changed
let asked = 0; // number of the newest solve
let awake = false; // the face is to be live
const wanted = new Set(["face"]); // figures that are in the page or near the window
const QUIET_MS = 10000; // after which the page is made wholly live, touched or not

export const design = { texts: () => texts, shown: () => shown, change, load, take };

let local = false; // the first design is asked for in the reader's measures, where the page was built in inches

// Units of a first visit: inches where people measure so.
function measures() {
  try { return ["US", "LR", "MM"].includes(new Intl.Locale(navigator.language).maximize().region) ? {} : { units: "mm" }; } catch { return {}; }
}

function change(key, text, settled = true) {
  if (local && !shown) texts = {}; // typed beside the inches that the page still shows
  local = false;
  return solve({ ...texts, [key]: text }, { typing: settled ? "" : key, own: true, loaded: false });
}

// A whole design that was worked out for this page, as one change; what is marked as mine stays so.
function take(settings) {
  const mine = [texts.mine, settings.mine].filter(Boolean).join(",");
  return solve({ ...settings, ...(mine ? { mine } : {}) }, { typing: "", own: true, loaded: false });
}

// A whole design from a link, a kept one or an example. One that is not one's own is opened beside it: what the next visit
// opens stays as it is until somebody changes something.
async function load(link, own = isOwn(link), what = "Shared design") {
  const reply = await ask({ kind: "open", link });
  if (reply.ended) return null; // over() has said it
  if (!reply.ok) {
    notice(`This design could not be opened (${reply.errors.map((error) => error.text).join(" ")}).`);
    return shown ? null : solve({}, NOBODYS);
  }
  const left = reply.ignored.map((error) => error.text).join(" "), version = Object.keys(reply.settings).length ? " of an earlier version" : "";
  notice(left && `Left out of this design: ${left}${reply.usable ? "" : ` What stands here is the plain example${version}.`}`);
  offered(reply.have);
  anotherDesign();
  sayWhose(own ? "" : reply.usable ? what : "The plain example");
  await solve(reply.settings, { typing: "", own, loaded: true });
}

let theirs = null; // {back}: a design that came from elsewhere and that nobody here has changed, and the link of one's own, or ""

// Say what came from elsewhere, and the way back to one's own where there is one.
function sayWhose(what) {
  const last = lastOwn(), back = isPlain(last) ? "" : last ?? ""; // now, as a change makes this one one's own too
  hush("own");
  theirs = what && (back || what !== "The plain example") ? { back } : null;
  const close = ["Close", () => { theirs = null; hush("own"); }];
  if (theirs) tell("own", back ? `${what}; yours is kept.` : `${what}.`, ...(back ? [["Back to mine", () => load(back, true)]] : []), close);
}

// A change makes it one's own: said till another chapter is opened, as nothing is to move under a thumb.
function sayMine() {
  const { back } = theirs;
  theirs = null;
  hush("own");
  tell("own", back ? "Yours now; the one before is kept." : "This one is yours now.", ...(back ? [["Open it", () => load(back, true)]] : []), ["Close", () => hush("own")]);
}

const NOBODYS = { typing: "", own: false, loaded: true };

async function solve(next, from = origin) {
  const { typing, own, loaded } = from;
  texts = next;
  origin = from;
  if (root.dataset.broken !== undefined) return;
  const number = ++asked;
  state("computing", "Computing\u2026");
  if (!loaded && !typing && theirs) sayMine();
  root.toggleAttribute("data-round", next.body_kind === "pipe"); // its face is as high as wide
  if (shown && own) keepTyped(shown.link, next); // a reload may come before the answer
  const before = shown && !loaded ? { before: shown.texts } : {}; // what follows from a change is Python's to say
  if (shown) ask({ kind: "face", settings: next, ...before, figures: places(["face"]) }).then((quick) => { if (quick.ok && number === asked) showQuick(quick); });
  const figures = [...wanted];
  const reply = await ask({ kind: "solve", settings: next, ...before, figures: places(figures), today: today() });
  await showing;
  if (reply.dropped || reply.ended || number !== asked) return;
  held = Boolean(reply.stopped || reply.broken);
  if (!reply.ok && root.dataset.shared !== undefined && Object.keys(next).length) { // never leave the page hidden for it
    notice(`This design could not be worked out (${reply.errors.map((error) => error.text).join(" ")}). The page shows the example.`);
    if (theirs) sayWhose("The plain example");
    return solve({}, NOBODYS);
  }
  if (!reply.ok) {
    refuse(reply.errors, typing);
    fillTyped(next, typing);
    if (held) keepTyped(); // what broke it off is not typed again by a reload
    else if (shown) keepTyped(shown.link, next);
    state("error", "Not computed: numbers of the last good settings.");
    drawLast();
    showOld(reply.stopped || reply.broken ? "Not judged: the calculator did not finish. All that stands here is of the last good design."
      : "Not judged: a setting is refused. All that stands here is of the last good design.");
    return steps();
  }
  awake ||= reply.link !== EXAMPLE;
  await liven(reply);
  if (number !== asked) return;
  texts = reply.texts;
  show(reply);
  fillFields(reply, typing);
  if (!typing) remember(reply.link, own, loaded);
  showing = showRest(reply, number);
  if (figures.length < wanted.size) solve(texts); // more have come near the window
}

// A drawing that comes near the window while something is refused is of the last good design too, not of the example.
async function drawLast() {
  const names = [...wanted].filter((name) => byId(`figure-${name}`).dataset.live === undefined), number = asked;
  if (!shown || !names.length) return;
  const reply = await ask({ kind: "solve", settings: shown.texts, figures: places(names), today: today() });
  if (reply.ok && number === asked) await liven(reply);
}

let faceAt = ""; // the place that the face was last drawn for

function places(names) {
  faceAt = placeOf("face").join();
  return Object.fromEntries(names.map((name) => [name, byId(`figure-${name}`).matches(".drawing-box") ? placeOf(name) : null]));
}

// Lay drawings out anew whose place has changed.
async function redraw(names = all(".drawing-box[data-live]").map((figure) => figure.id.replace("figure-", ""))) {
  const number = asked;
  if (!shown || held) return;
  const reply = await ask({ kind: "draw", settings: texts, figures: places(names) });
  if (!reply.ok || number !== asked) return;
  showFigures(reply);
}

function showQuick(reply) {
  showAnswers(reply.answers);
  showFigures(reply);
}

// What a change or a job moved besides, all of it for who asks; it goes with the next tap.
function sayBrought({ brought: words, moved }, ...more) {
  if (!words) return;
  let short = false;
  const which = () => { short = !short; tell("brought", short ? words : [words, ...moved].join("\n")); };
  tell("brought", words, ...(moved?.length ? [["Which", which]] : []), ...more, ["Undo", () => byId("undo").click()]);
  short = true;
}

// Numbers, verdicts and drawings at once.
function show(reply) {
  if (reply.brought || shown?.link !== reply.link) hush("brought");
  byId("take-sizes").hidden = !reply.offer;
  changedOnly(byId("take-sizes"), reply.offer?.[0] ?? "");
  shown = reply;
  keepTyped();
  delete root.dataset.shared;
  root.dataset.units = reply.units;
  root.toggleAttribute("data-other", reply.link !== EXAMPLE); // a picture that the page was built with is not of it
  root.toggleAttribute("data-signed", Boolean(reply.fields.money_sign.text)); // money says whose it is
  clearRefusals();
  showAnswers(reply.answers);
  showTexts(reply.fields);
  showVerdicts(reply);
  for (const press of all("[data-job]")) press.setAttribute("aria-pressed", String(press.dataset.job === reply.job));
  byId("fit").hidden = !reply.fit.settings;
  byId("fit-words").hidden = !reply.fit.words;
  changedOnly(byId("fit-words"), reply.fit.words ?? "");
  changedOnly(byId("high-fire"), reply.high);
  showFigures(reply);
}

let showing = Promise.resolve(); // till all of the answer on the page is there

// What follows of it, in steps that taps get through between.
async function showRest(reply, number) {
  for (const step of [...checksIn(reply), ...tablesIn(reply.tables), () => describe(reply), () => setAddress(reply.link === EXAMPLE ? location.pathname : reply.link)]) {
    await rest();
    step();
  }
  if (number !== asked) return;
  sayBrought(reply); // last, as it looks what of the page it would cover
  state("ready", navigator.serviceWorker?.controller ? "Ready. Works without a network." : "Ready.");
}

function describe(reply) {
  for (const place of all("[data-described]")) {
    const drawing = reply.drawings[place.dataset.described];
    if (drawing || reply.link !== EXAMPLE) changedOnly(place, drawing?.description ?? ""); // of one that is not drawn yet nothing is known
    explain(place);
  }
  for (const place of all("[data-sentence]")) {
    const said = reply.charts[place.dataset.sentence];
    if (said || reply.link !== EXAMPLE) changedOnly(place, said?.sentence ?? "");
    explain(place);
  }
}

// --- start ----------------------------------------------------------------------------------------------------------

// Make the widgets live that can be seen in a chapter or a fold that has just been opened.
async function enliven(part) {
  if (!pages) return;
  for (const place of all("[data-setting]", part)) {
    if (place.dataset.live !== undefined || place.closest("details:not([open])")) continue;
    place.dataset.live = "";
    await embed(pages.widgets[place.dataset.setting], (made) => { // before it is painted, so that nothing typed is lost, and nothing jumps
      made.stylesheets = [pages.style];
      listen(made, change);
      if (shown) fillField(made.name, shown);
      if (root.dataset.state === "error") fillTyped(texts, origin.typing);
    });
    wireField(place.dataset.setting);
  }
}

// A version, or a setting that somebody typed; not what a messenger hangs on.
function holdsDesign(part) {
  return [...new URLSearchParams(part.slice(1)).keys()].some((key) => key === "v" || document.querySelector(`[data-setting="${CSS.escape(key)}"]`));
}

async function openAddress() {
  opensAddress();
  const left = typedBefore(), link = [location.hash, location.search].find(holdsDesign), kept = lastOwn();
  const place = named();
  const odd = link || place ? "" : location.hash.slice(0, 60);
  local = !link && !kept && !Object.keys(texts).length;
  await (link ? load(link) : kept ? load(kept, true) : solve(local ? measures() : texts));
  if (odd) {
    notice(`What the address holds after # is no design: ${odd}. What stands here is ${kept ? "your last one" : "the example"}.`);
  }
  if (left && left.link === shown?.link) await solve(left.texts, { typing: "", own: true, loaded: false }); // a field was refused
  if (place) openPlace(place);
  openTapped();
}

// Id of the chapter, number, setting or check that the address names after its #.
function named() {
  const name = location.hash.slice(1);
  return [`chapter-${name}`, name].find((id) => byId(id)?.closest(".chapter"));
}

const openPlace = (id) => (byId(id).matches(".chapter") ? go(id.replace("chapter-", "")) : jump(id));

// A fire that was set beside what the chamber needs: one tap has it follow, and what that does to the face and the rest is said.
function wireFit() {
  byId("fit").addEventListener("click", async () => {
    if (!shown?.fit.settings) return;
    const { ok, worsens } = await ask({ kind: "fit", settings: texts });
    await take({ ...texts, ...shown.fit.settings });
    await showing; // what it moved besides is said first, and the worse in its place
    if (ok && worsens.length) {
      tell("brought", `The fire follows the chamber${butThen(worsens)}.`,
        ["Make it good", () => document.querySelector("[data-open=good-box]").click()], ["Undo", () => byId("undo").click()]);
    }
  });
}

// What somebody came to do: a design to start from, one's own from then on, beside what was there before.
function wireJobs() {
  for (const press of all("[data-job]")) press.addEventListener("click", () => openJob(press.dataset.job));
  root.dataset.jobs = ""; // early.js hears them until now
  openTapped();
}

const TAPPED = "burnercalc-job"; // of this tab: a job that is not on the page yet, for a reload
let tapped = "";

// Before the first design is on the page it waits for that, as what somebody has stays.
async function openJob(key, from = null) { // `from`: the texts that it is begun from anew, with nothing marked as mine
  tapped = key;
  try { sessionStorage.setItem(TAPPED, key); } catch { /* closed */ }
  if (!shown) return tell("job", `${byId(`job-${key}`).textContent}: opens as soon as the calculator has started.`, ["Close", leaveJob]);
  const before = from ?? shown.texts;
  const reply = await ask({ kind: "job", settings: before, job: key, release: Boolean(from) });
  if (tapped !== key || reply.ended) return;
  if (!reply.ok) return leaveJob();
  await load(reply.link, true);
  if (tapped === key) leaveJob();
  if (shown?.link === reply.link) sayBrought(reply, ...(reply.kept ? [["Mine no longer", () => openJob(key, before)]] : []));
}

function leaveJob() {
  tapped = "";
  try { sessionStorage.removeItem(TAPPED); } catch { /* closed */ }
  hush("job");
}

// What was tapped before the page could answer.
function openTapped() {
  try { tapped ||= sessionStorage.getItem(TAPPED) ?? ""; } catch { /* closed */ }
  if (tapped && byId(`job-${tapped}`)) openJob(tapped);
}

function wireFigures() {
  const close = () => all("figure.large").forEach((figure) => toggle(figure));
  const toggle = (figure) => {
    const press = figure.querySelector(".enlarge");
    const large = figure.classList.toggle("large");
    press.textContent = large ? "Close" : "Enlarge";
    enlarge(press.dataset.figure, large);
    if (press.closest(".drawing-box")) redraw([press.dataset.figure]);
    press.focus();
    layered();
  };
  byId("job").addEventListener("click", ({ target }) => { if (target.matches(".enlarge")) toggle(target.closest("figure")); });
  addEventListener("keydown", (event) => { if (event.key === "Escape") close(); });
  let wide = innerWidth, pause = 0;
  addEventListener("resize", () => {
    clearTimeout(pause);
    if (innerWidth === wide) return; // a phone's bars come and go
    pause = setTimeout(() => { wide = innerWidth; redraw(); }, 300);
  });
}

// What stands in folds and the other chapters' pictures: not in the page's file, so that the first paint is soon.
async function fill(later) {
  for (const place of all("template[data-later]")) {
    place.innerHTML = later[place.dataset.later];
    place.replaceWith(place.content);
    await rest();
  }
  // At a desk there is room for numbers.
  if (matchMedia("(min-width: 75rem)").matches) for (const fold of all('.side [data-near="bench"]')) fold.open = true;
}

let able = false; // Python is ready

function enable() {
  if (able && pages) for (const waits of all("[data-needs-python]")) waits.disabled = false;
}

async function live() { // Bokeh's models, once the first paint is done
  const page = await fetchPacked("./page.bin", "the fields and drawings");
  if (page.build !== root.dataset.build) return mixed();
  await fill(page.later);
  wireFind(design);
  wireGlossary(page.glossary);
  pages = page; // only now may anything be made live
  enable();
  await enliven(byId(`chapter-${root.dataset.chapter}`));
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
  wanting = setTimeout(() => { if (shown) (held ? drawLast : solve)(texts); }, 60);
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

const AGAIN = "It broke off and starts again. Nothing is lost.";
let before = null; // how the page stood when it broke off
let redo = false; // it is started again because somebody said so, after nothing more was asked
let arrived = () => {};

const calculator = {
  stage(name, build) {
    arrived();
    if (build !== undefined && build !== root.dataset.build) mixed();
    else arrived = waitFor("calculator", `the calculator: up to ${root.dataset.megabytes} MB at a first visit, nothing at a later one`, ["Try again", startAgain]);
  },
  ready() {
    arrived();
    able = true;
    enable();
    if (before && byId("status").textContent === AGAIN) state(...before);
    before = null;
    if (redo) refill();
    setTimeout(wake, QUIET_MS);
    // Only now, so that keeping the site for later does not hold up the start.
    keepSite();
  },
  again() {
    before = [root.dataset.state, byId("status").textContent];
    state("computing", AGAIN);
  },
  slow: (seconds) => tell("slow", `Still computing after ${seconds} s.`, ["Stop", stop]),
  quick: () => hush("slow"),
  over(trouble) {
    arrived();
    hush("job");
    delete root.dataset.shared;
    root.dataset.broken = "";
    tell("calculator", "The calculator does not run.", ["Start it again", startAgain]);
    if (shown) {
      keepTyped();
      state("error", "It broke off: numbers of the last good settings.");
      showing.then(() => showOld("Not judged: the calculator broke off. All that stands here is of the last good design."));
      return notice(`The calculator broke off (${trouble}). Start it again, or reload the page: the design is kept. If it breaks again, undo the last change.`);
    }
    state("error", "The calculator could not start: an example only.");
    notice((navigator.onLine === false ? `There is no network, so the calculator could not be loaded (${trouble}). ` : `This browser could not start the calculator (${trouble}). `)
      + "The page shows the example only: do not build from it. A newer browser, or another try with a network, may help.");
  },
};

function startAgain() {
  redo ||= root.dataset.broken !== undefined;
  if (redo) {
    delete root.dataset.broken;
    notice("");
    state("computing", "The calculator is starting again.");
  }
  retry();
}

function refill() {
  redo = false;
  if (shown || Object.keys(texts).length) solve(texts);
  else openAddress();
}

// Page and scripts of two versions, fetched while a new one was being put in place: nothing may be computed.
function mixed() {
  delete root.dataset.shared;
  root.dataset.broken = "";
  state("error", "The page is made of two versions.");
  notice("A new version of this page came while it was loading. Reload the page; do not build from what it shows now.");
  tell("version", "Reload for the new version.", ["Reload", globalThis.fetchAnew]);
}

async function begin() {
  byId("late-scripts").remove();
  for (const touch of ["pointerdown", "pointermove", "keydown", "scroll"]) addEventListener(touch, wake, { once: true, passive: true });
  wireBars();
  // What has changed beside is said only till somebody goes on; undo is on top for good. Not as a finger comes down: nothing moves under it.
  addEventListener("click", ({ target }) => target.closest?.("#bars") || hush("brought"), { capture: true });
  byId("take-sizes").addEventListener("click", () => change(...shown.offer.slice(1)));
  wireChapters((part) => {
    if (!theirs?.back) hush("own"); // said, and no way leads from it
    if (shown && placeOf("face").join() !== faceAt) redraw(["face"]); // it stands elsewhere, and smaller or larger
    return enliven(part);
  });
  for (const fold of all("details.more")) fold.addEventListener("toggle", () => fold.open && enliven(fold));
  wireFigures();
  onDrawn("face", (drawing) => { showGrips(drawing); showPorts(drawing); });
  await rest();
  wireDrag(design);
  wirePorts();
  wireSettings(design);
  wireAnswers(design);
  await rest();
  wireDesigns(design);
  wireShare(design);
  wireSearch(design);
  wireMend(design);
  wireShopping(design);
  wireJobs();
  wireFit();
  wireAsks(design);
  wirePrinted();
  wireTight();
  wireWalk();
  undoable(design);
  await rest();
  const shownAddress = () => setAddress(!shown || shown.link === EXAMPLE ? location.pathname : shown.link);
  addEventListener("hashchange", () => {
    if (turned()) return shownAddress();
    const place = named();
    if (place && shown) { // the design stays
      shownAddress();
      return openPlace(place);
    }
    for (const dialog of all("dialog[open]")) dialog.close(); // what it says is of the design before
    return openAddress();
  });
  addEventListener("online", () => { if (root.dataset.broken !== undefined && !shown) startAgain(); });
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", theme);
  matchMedia("(prefers-contrast: more)").addEventListener("change", theme);
  if (root.dataset.shared !== undefined) changedOnly(byId("status"), "The calculator is starting.");
  start(calculator);
  live().then(() => openAddress(), (error) => {
    if (root.dataset.broken !== undefined) return; // said already
    delete root.dataset.shared;
    state("error", "The drawings could not be loaded.");
    notice(`The page is not complete (${error.message}). Reload it with a network.`);
    tell("page", `${navigator.onLine === false ? "There is no network, and a" : "A"} part of the page is missing.`, ["Reload", reload]);
  });
}

// Without it no packed file can be read: early.js says that the browser is too old.
if (globalThis.DecompressionStream) {
  root.dataset.app = ""; // early.js looks for it
  if (root.dataset.framed === undefined) rest().then(begin); // never inside another site's page
}
