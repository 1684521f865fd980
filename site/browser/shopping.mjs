// The shopping list and the tools beside it: what is at hand is ticked and kept on this device; Python says what is left.
import { all, byId, changedOnly, make } from "./page.mjs";
import { ask } from "./python.mjs";

const KEPT = "burnercalc-got";
let design = null;
const names = { shopping: [], tools: [] }; // of the rows on the page, by table

export function wireShopping(given) {
  design = given;
  addEventListener("storage", ({ key }) => { if (key === KEPT) tickAll(); });
}

export const isTicked = (table) => table in names;
const nameOf = ([item, sold]) => `${item}, ${sold}`;

export function got() {
  try { return JSON.parse(localStorage.getItem(KEPT)) ?? []; } catch { return []; }
}

const rowOf = (kept) => kept.replace(/^\d+ of /, ""); // of which that many are there, not all

// What is at hand for a design that was found, as if ticked by hand.
export function tick(found) {
  const rows = found.map(rowOf);
  try { localStorage.setItem(KEPT, JSON.stringify([...got().filter((kept) => !rows.includes(rowOf(kept))), ...found])); } catch { return; }
  tickAll();
}

// A row's first cell, which can be ticked.
export function tickCell(row) {
  const box = make("input"), name = nameOf(row);
  box.type = "checkbox";
  box.value = name;
  box.checked = got().includes(name);
  box.addEventListener("change", () => keep(name, box.checked));
  return make("td", "", make("label", "tick", box, ` ${row[0]}`));
}

function keep(name, is) {
  const others = got().filter((other) => other !== name);
  try { localStorage.setItem(KEPT, JSON.stringify(is ? [...others, name] : others)); } catch {
    return changedOnly(byId("left-words"), "This browser does not let the page keep what is ticked.");
  }
  sayLeft();
}

function tickAll() {
  const kept = got();
  for (const box of all(".tick input")) box.checked = kept.includes(box.value);
  sayLeft();
}

// After a new list, and after each tick.
export function shopFor(table, rows) {
  names[table] = rows.map(nameOf);
  sayLeft();
}

async function sayLeft() {
  const listed = Object.values(names).flat();
  const ticked = got().filter((kept) => listed.includes(kept) || listed.includes(rowOf(kept)));
  if (!ticked.length) return changedOnly(byId("left-words"), "Tick what you have: it is left out of the sum and of the sheet under Paper.");
  const reply = await ask({ kind: "left", settings: design.shown().texts, got: ticked });
  if (reply.ok) changedOnly(byId("left-words"), reply.words);
}
