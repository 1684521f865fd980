// One's own designs on this device that have no name: the last one, which the next visit opens, and one more for each
// visit in which something was changed. Each visit writes under a key of its own, so no tab writes over another's.
import { hush, tell } from "./bars.mjs";

const LAST = "burnercalc-last"; // early.js reads both, and every version writes this one
const HERE = "burnercalc-here"; // of this tab
const VISITS = "burnercalc-visit-";
const MOST = 20;
export const EXAMPLE = "#v=2"; // link of the design that the page was built with
export const isPlain = (link) => [EXAMPLE, `${EXAMPLE}&units=mm`].includes(link); // what a first visit opens, which need not be kept
const TYPED = "burnercalc-typed"; // of this tab: all that stands in the fields while one of them is refused
let visit = "";
let unkept = false; // said once a visit

const read = (store, key) => { try { return store().getItem(key); } catch { return null; } };
const write = (store, key, text) => { try { store().setItem(key, text); return true; } catch { return false; /* full or closed: the address bar still holds it */ } };
const local = () => localStorage;
const session = () => sessionStorage;

export const lastOwn = () => read(session, HERE) ?? read(local, LAST);

// [{key, at, link}], the newest first.
export function visits() {
  let keys = [];
  try { keys = Object.keys(localStorage).filter((key) => key.startsWith(VISITS)); } catch { /* closed */ }
  return keys.map((key) => {
    const [at, link] = (read(local, key) ?? "").split(" ");
    return { key, at: Number(at), link };
  }).filter(({ link }) => link && !isPlain(link)).sort((a, b) => b.at - a.at);
}

// What is typed beside the design that the page shows, for a reload; nothing once all of it is taken.
export function keepTyped(link, texts) {
  if (texts) write(session, TYPED, JSON.stringify({ link, texts }));
  else try { sessionStorage.removeItem(TYPED); } catch { /* closed */ }
}

export function typedBefore() {
  try { return JSON.parse(read(session, TYPED)); } catch { return null; }
}

export const isOwn = (link) => [read(session, HERE), read(local, LAST)].includes(link) || visits().some((each) => each.link === link);

// From here on changes are kept apart from what was kept before.
export function anotherDesign() {
  visit = `${VISITS}${Date.now()}-${Math.random().toString(36).slice(2, 8)}`;
}

// The page shows one's own design: the next visit opens it.
export function showsOwn(link) {
  const last = read(local, LAST);
  if (last && last !== link && !isPlain(last) && !visits().some((each) => each.link === last)) { // of a version that kept no visits
    write(local, `${VISITS}${Date.now()}-last`, `${Date.now()} ${last}`);
  }
  write(session, HERE, link);
  write(local, LAST, link);
}

// What one had changed of a design that came from elsewhere is undone: the next visit opens one's own of before, if any.
export function undoneOwn(link) {
  if (link) return showsOwn(link);
  for (const [store, key] of [[session, HERE], [local, LAST]]) try { store().removeItem(key); } catch { /* closed */ }
}

export function changedOwn(link) {
  showsOwn(link);
  if (!visit) anotherDesign();
  if (write(local, visit, `${Date.now()} ${link}`) && read(local, LAST) === link) hush("unkept");
  else if (!unkept) {
    unkept = true;
    tell("unkept", "This browser does not keep your design for the next visit: share its link, or export it.", ["Close", () => hush("unkept")]);
  }
  for (const { key } of visits().slice(MOST)) localStorage.removeItem(key);
}
