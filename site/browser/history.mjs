// Undo and redo, and what of them is kept for the next visit.
import { byId, root } from "./page.mjs";
import { changedOwn, showsOwn, undoneOwn, visits } from "./own.mjs";

const past = []; // {link, own}, oldest first; the last one is the last good design on the page
const future = [];
const KEPT = "burnercalc-steps"; // of this tab, for a reload
const MOST = 100;
let moving = null; // the step that is being taken
let load = () => {};

export function undoable(design) {
  load = design.load;
  byId("undo").addEventListener("click", undo);
  byId("redo").addEventListener("click", redo);
  addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z" || event.composedPath()[0].matches?.("input")) return;
    event.preventDefault();
    if (event.shiftKey) redo();
    else undo();
  });
}

// `own` is false for a design that came by a link and that nobody here has changed; `loaded` for one that was not typed.
export function remember(link, own, loaded) {
  if (own && link !== past.at(-1)?.link) (loaded ? showsOwn : changedOwn)(link);
  if (!past.length) recall(link);
  if (!moving && past.at(-1)?.link !== link) {
    past.push({ link, own });
    future.length = 0;
  }
  steps();
}

// After a reload: the steps that led to the design on the page.
function recall(link) {
  try {
    const kept = JSON.parse(sessionStorage.getItem(KEPT));
    if (kept?.past.at(-1)?.link !== link) return;
    past.push(...kept.past);
    future.push(...kept.future);
  } catch { /* closed, or of another version */ }
}

const failed = () => root.dataset.state === "error" && past.length > 0; // what was typed is not on the page

// One after the other: each press is a step, however fast they come.
let turn = Promise.resolve();
const undo = () => { turn = turn.then(back, back); }, redo = () => { turn = turn.then(forth, forth); };

async function back() {
  if (failed()) await step(past.at(-1), () => {});
  else if (past.length > 1) {
    const [to, from] = past.slice(-2);
    if (!to.own && from.own) undoneOwn(past.findLast(({ link, own }) => own && link !== from.link)?.link ?? visits().find(({ link }) => link !== from.link)?.link);
    await step(to, () => future.push(past.pop()));
  }
}

async function forth() {
  if (future.length) await step(future.at(-1), () => past.push(future.pop()));
}

async function step(to, move) {
  moving = to;
  try {
    await load(to.link, to.own);
    move();
    if (to.own) changedOwn(to.link);
  } finally {
    moving = null;
    steps();
  }
}

// Which of the two can be taken.
export function steps() {
  try { sessionStorage.setItem(KEPT, JSON.stringify({ past: past.slice(-MOST), future: future.slice(-MOST) })); } catch { /* full or closed */ }
  byId("undo").disabled = past.length < 2 && !failed();
  byId("redo").disabled = !future.length;
}
