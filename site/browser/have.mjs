// What I have: a list kept on this device, in the form of the command line's `--have` file, and shown as rows.
import { all, button, byId, make, root, saveFile } from "./page.mjs";
import { hush, tell } from "./bars.mjs";
import { ask } from "./python.mjs";

const KEPT = "burnercalc-have";
const touched = new Set(); // kinds whose "can buy" somebody has set
let filled = ""; // the list that the rows show

const rows = () => all("#have .have");
const fieldOf = (row) => row.querySelector("input:not([type=checkbox])");
const buyOf = (row) => row.querySelector("[type=checkbox]");
let unkept = null; // the list as it stands where this browser does not let the page keep it
const read = () => { try { return unkept ?? localStorage.getItem(KEPT) ?? ""; } catch { return ""; } };

export const haveText = read;

let hear = () => {}; // told whenever the rows show another list

export function wireHave(given) {
  hear = given;
  for (const row of rows()) {
    fieldOf(row).addEventListener("input", () => { follow(row); keep(); hush("have"); });
    buyOf(row)?.addEventListener("change", () => { touched.add(row.dataset.kind); keep(); hush("have"); });
  }
  byId("have-export").addEventListener("click", () => saveFile("what-i-have.txt", "text/plain", written()));
  byId("have-import").addEventListener("change", (event) => openFile(event.target));
  byId("have-clear").addEventListener("click", () => replace(""));
  addEventListener("storage", ({ key }) => { if (key === KEPT) fill(); }); // another tab has changed it
}

// What lies there need not be bought, unless somebody says so.
function follow(row) {
  for (const other of groupOf(row)) if (buyOf(other) && !touched.has(other.dataset.kind)) buyOf(other).checked = unsaid(other);
}

const groupOf = (row) => rows().filter((other) => row.dataset.group.split(" ").includes(other.dataset.kind));
const unsaid = (row) => buyOf(row).defaultChecked && !groupOf(row).some((other) => fieldOf(other).value.trim());

// Whether a kind has sold sizes that may be bought; with `on` these kinds, or all, are from now on.
export function mayBuy(kinds, on = false) {
  const asked = rows().filter((row) => buyOf(row) && (kinds === undefined || kinds.includes(row.dataset.kind)));
  for (const row of on ? asked : []) {
    buyOf(row).checked = true;
    touched.add(row.dataset.kind);
  }
  if (on) keep();
  return asked.length > 0;
}

// More entries: [kind, entry].
export function add(entries) {
  for (const [kind, entry] of entries) {
    const row = rows().find((one) => one.dataset.kind === kind), field = fieldOf(row);
    field.value = field.value.trim() ? `${field.value.trim()}; ${entry}` : entry;
    follow(row);
  }
  keep();
}

export function written() {
  const lines = rows().map((row) => [row.dataset.kind, fieldOf(row).value.trim()]).filter(([, text]) => text);
  const buy = rows().filter((row) => buyOf(row)?.checked).map((row) => row.dataset.kind);
  const mine = lines.filter(([kind]) => kind === "mine"), things = lines.filter(([kind]) => kind !== "mine");
  return [...things, ["buy", buy.join(", ") || "none"], ...mine].map(([kind, text]) => `${kind}: ${text}\n`).join("");
}

const keep = () => store(written());

function store(text) {
  filled = text;
  hear();
  try {
    localStorage.setItem(KEPT, text);
    unkept = null;
  } catch {
    unkept = text;
    byId("find-status").textContent = "This browser does not let the page keep the list: save it to a file.";
  }
}

// Put the list that is kept into the rows; another tab or a link may have changed it.
export async function fill() {
  const text = read();
  if (text !== filled && (text || filled)) await put(text);
}

async function put(text) {
  const reply = await ask({ kind: "have", text, units: root.dataset.units });
  if (!reply.ok) return false;
  const bought = (reply.rows.buy ?? "").toLowerCase().split(/[\s,;]+/);
  touched.clear();
  for (const row of rows()) fieldOf(row).value = reply.rows[row.dataset.kind] ?? "";
  for (const row of rows().filter(buyOf)) {
    const { kind } = row.dataset, says = bought.includes(kind) || bought.includes("all");
    if (reply.rows.buy !== undefined && says !== unsaid(row)) touched.add(kind); // somebody has set it
    buyOf(row).checked = touched.has(kind) ? says : unsaid(row);
  }
  filled = text;
  name(text ? reply.errors : []);
  hear();
  return true;
}

// Say beside each row what is wrong with it; gives back what belongs to no row.
export function name(errors) {
  const loose = [];
  for (const row of rows()) {
    const said = errors.filter(({ setting }) => setting === row.dataset.kind);
    const words = row.querySelector(".refused");
    words.replaceChildren(...said.flatMap((error) => [make("span", "", `${error.text} `), ...offers(row, error)]));
    words.hidden = !said.length;
    fieldOf(row).toggleAttribute("aria-invalid", said.length > 0);
  }
  const kinds = rows().map((row) => row.dataset.kind);
  for (const { setting, text } of errors) if (!kinds.includes(setting)) loose.push(text);
  byId("find-status").textContent = loose.join(" ");
  const first = rows().find((row) => !row.querySelector(".refused").hidden);
  if (first) byId("have").open = true;
  return first ? fieldOf(first) : null;
}

const entries = (row) => fieldOf(row).value.split(";").map((entry) => entry.trim());

// The nearest that works, in place of an entry of the row that does not.
function offers(row, { value, nearest, offer }) {
  if (!nearest || !entries(row).includes(value)) return [];
  return [button(`Take ${offer}`, async () => {
    fieldOf(row).value = entries(row).map((entry) => (entry === value ? nearest : entry)).join("; ");
    keep();
    const reply = await ask({ kind: "have", text: written(), units: root.dataset.units });
    if (reply.ok) name(reply.errors);
    fieldOf(row).focus();
  }, "small")];
}

// A file that is no list, or that holds what cannot be read, leaves the list that is there.
async function openFile(input) {
  const [file] = input.files;
  if (!file) return;
  const text = await file.text();
  input.value = "";
  const { ok, rows: brought, errors } = await ask({ kind: "have", text, units: root.dataset.units });
  const said = errors?.map((error) => error.text) ?? [];
  if (!ok || !Object.keys(brought).length) return answer(`${file.name} is no list of what somebody has: ${said[0] ?? "nothing stands in it."} Yours stays as it is.`);
  if (!said.length || !read()) return replace(text);
  answer([`In ${file.name} ${said.length === 1 ? "is a fault" : `are ${said.length} faults`}, so yours stays as it is.`, ...said].join("\n"), ["Use it all the same", () => replace(text)]);
}

// What is said of the list last, until somebody goes on with it.
function answer(words, ...presses) {
  hush("have");
  tell("have", words, ...presses, ["Close", () => hush("have")]);
}

// Another list in place of this one, which can be brought back.
async function replace(text) {
  const before = read();
  if (!await put(text)) return;
  keep();
  answer("The list is replaced.", ["Bring mine back", async () => { await put(before); store(before); hush("have"); }]);
}

// A list that came with a link: taken where there is none, else offered.
export function offered(text) {
  if (!text || text === read()) return;
  const take = async () => { hush("offered"); if (read()) await replace(text); else { await put(text); keep(); } };
  if (!read()) take();
  else tell("offered", "This link brings a list of what somebody has.", ["Use that list", take], ["Keep mine", () => hush("offered")]);
}
