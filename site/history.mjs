// Undo and redo, and the last design kept for the next visit.
import { byId } from "./page.mjs";

const past = []; // links, oldest first; the last one is the design on the page
const future = [];
let moving = false;
let load = () => {};

export function undoable(design) {
  load = design.load;
  byId("undo").addEventListener("click", () => go(past, future));
  byId("redo").addEventListener("click", () => go(future, past));
  addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z" || event.composedPath()[0].matches?.("input")) return;
    event.preventDefault();
    if (event.shiftKey) go(future, past);
    else go(past, future);
  });
}

export function remember(link) {
  try { localStorage.setItem("burnercalc-last", link); } catch { /* full or closed: the address bar still holds it */ }
  if (!moving && past.at(-1) !== link) {
    past.push(link);
    future.length = 0;
  }
  buttons();
}

async function go(from, to) {
  if (moving || (from === past ? past.length < 2 : !future.length)) return;
  moving = true;
  const link = from === past ? past.at(-2) : future.at(-1);
  to.push(from.pop());
  await load(link);
  moving = false;
  buttons();
}

function buttons() {
  byId("undo").disabled = past.length < 2;
  byId("redo").disabled = !future.length;
}
