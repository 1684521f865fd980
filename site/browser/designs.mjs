// Designs kept on this device, by name, each as its link: the one format that every later version opens.
import { explain } from "./glossary.mjs";
import { all, button, byId, facePicture, make, notice, saveFile } from "./page.mjs";
import { notTaken } from "./settings.mjs";
import { visits } from "./own.mjs";
import { ask } from "./python.mjs";
import { got } from "./shopping.mjs";
import { del, entries, get, set, update } from "./vendor/idb-keyval/index.js";

const FILE_KIND = "burnercalc designs";
const FILE_VERSION = 1;
let design = null;
let loose = []; // records of a file that could not be kept
let lost = null; // {key, record, over} of the last one deleted, or with `over` overwritten: one step back

const tabs = new BroadcastChannel("burnercalc-designs"); // a list that is open in another tab is made anew

export function wireDesigns(given) {
  design = given;
  tabs.onmessage = () => { if (byId("designs-box").open) list(); };
  byId("designs").addEventListener("click", () => { byId("designs-box").showModal(); list(); });
  byId("keep").addEventListener("submit", (event) => { event.preventDefault(); keep(byId("keep-name").value.trim() || when(Date.now(), "medium")); });
  byId("export").addEventListener("click", exportAll);
  byId("import").addEventListener("change", (event) => importFile(event.target));
  byId("undelete").addEventListener("click", undelete);
  byId("designs-box").addEventListener("click", ({ target }) => {
    if (!target.dataset.example) return;
    design.load(target.dataset.example, undefined, "An example");
    byId("designs-box").close();
  });
}

const say = (words) => { byId("designs-status").textContent = words; };

const PATIENCE_MS = 5000;

// What storage answers; one that does not must not keep the page waiting.
function answered(work) {
  let clock = 0;
  const late = new Promise((_, refuse) => { clock = setTimeout(() => refuse(new Error("no answer")), PATIENCE_MS); });
  return Promise.race([work, late]).finally(() => clearTimeout(clock));
}

const store = (key, record) => made(() => set(key, record));

// Whether a change of what is kept was made; if not, why not is said.
async function made(change) {
  try {
    await answered(change());
    tabs.postMessage("");
    return true;
  } catch (error) {
    say(error?.name === "QuotaExceededError" ? "This device's storage is full: export to a file instead, or delete a design."
      : "This browser does not let the page keep anything: export to a file instead.");
    return false;
  }
}

// Two tabs may keep a design at the same moment.
const newKey = () => `design-${Date.now()}-${Math.random().toString(36).slice(2, 8)}`;

// A day and its time, which names a design that nobody named.
const when = (at, timeStyle) => new Date(at).toLocaleString([], { dateStyle: "medium", timeStyle });

async function keep(name) {
  const link = design.shown()?.link;
  if (!link) return say("Wait until the design is computed.");
  const thumb = await ask({ kind: "thumb", settings: design.texts() });
  const known = (await kept()).find(([, record]) => record.name === name);
  const key = known?.[0] ?? newKey();
  if (await store(key, { v: 1, name, link, thumb: thumb.svg ?? "" })) {
    if (known) offerBack({ key, record: known[1], over: link });
    say(`${name} is ${known ? "overwritten with what is on the page" : "kept on this device"}. ${notTaken()}`.trim());
    byId("keep-name").value = "";
  }
  list();
}

async function kept() {
  try {
    return (await answered(entries())).filter(([key]) => String(key).startsWith("design-")).sort((a, b) => (a[0] < b[0] ? 1 : -1));
  } catch {
    say("This browser does not let the page keep anything: export to a file instead.");
    return [];
  }
}

// A line of a list: what it looks like, and what can be done with it besides opening and comparing.
function line(record, name, ...more) {
  const image = make("img", "thumb");
  image.alt = "";
  if (record.thumb) image.src = facePicture(record.thumb);
  return make("li", "design", ...("thumb" in record ? [image] : []), make("b", "", name), make("span", "row",
    button("Open", () => { design.load(record.link, true); byId("designs-box").close(); }, "small"),
    button("Compare", () => compare({ ...record, name: record.name ?? name }), "small"), ...more));
}

async function list() {
  const rows = (await kept()).map(([key, record]) => line(record, record.name,
    button("Rename", () => rename(key, record), "small"),
    button("Duplicate", async () => { await store(newKey(), { ...record, name: `${record.name} copy` }); list(); }, "small"),
    button("Delete", () => remove(key, record), "small")));
  rows.push(...loose.map((record) => line(record, `${record.name} (not kept)`)));
  byId("design-list").replaceChildren(...rows);
  byId("no-designs").hidden = rows.length > 0;
  listVisits();
}

// What was on the page at other visits, in this tab or another one, and has no name.
function listVisits() {
  const rows = visits().filter(({ link }) => link !== design.shown()?.link).map(({ at, link }) => line({ link }, when(at, "short")));
  byId("visit-list").replaceChildren(...rows);
  byId("visits").hidden = !rows.length;
}

async function rename(key, record) {
  const name = prompt("New name", record.name)?.trim();
  if (name) await made(() => update(key, (now) => ({ ...(now ?? record), name }))); // another tab may have changed it
  list();
}

async function remove(key, record) {
  let now = record;
  if (!await made(async () => { now = await get(key) ?? record; await del(key); })) return;
  offerBack({ key, record: now });
  say(`${record.name} is deleted.`);
  list();
}

// A button that brings back what was deleted or overwritten last.
function offerBack(given) {
  lost = given ?? null;
  byId("undelete").hidden = !lost;
  if (lost) byId("undelete").textContent = lost.over ? `Undo: bring the earlier ${lost.record.name} back` : `Undo: bring ${lost.record.name} back`;
}

async function undelete() {
  const { key, record, over } = lost ?? {};
  if (key && !await made(() => update(key, (now) => (!now || now.link === over ? record : now)))) return; // another tab may have changed it
  offerBack();
  say("");
  list();
}

async function exportAll() {
  const designs = [...(await kept()).map(([, record]) => record), ...loose].map(({ name, link }) => ({ name, link }));
  const now = design.shown()?.link;
  if (now) designs.unshift({ name: "On the page", link: now });
  saveFile("burner-designs.json", "application/json", JSON.stringify({ kind: FILE_KIND, version: FILE_VERSION, designs }, null, 1));
}

async function importFile(input) {
  const [file] = input.files;
  if (!file) return;
  let found = null;
  try { found = JSON.parse(await file.text()); } catch { /* said below */ }
  input.value = "";
  if (found?.kind !== FILE_KIND || !Array.isArray(found.designs)) return say(`${file.name} is not a file of burner designs.`);
  if (found.version !== FILE_VERSION) return say(`${file.name} is in a form that this page does not know (version ${found.version}). A newer page may: reload it.`);
  let left = 0;
  let count = 0;
  loose = [];
  for (const [at, entry] of found.designs.entries()) {
    if (at % 10 === 9) say(`${at + 1} of ${found.designs.length} looked at.`);
    const { name, link } = entry ?? {};
    const reply = typeof link === "string" && /[#?&]v=/.test(link) ? await ask({ kind: "open", link }) : {};
    if (!reply.ok || reply.ignored.some(({ setting }) => setting === "link")) { left += 1; continue; }
    left += reply.ignored.length;
    const thumb = await ask({ kind: "thumb", settings: reply.settings });
    const record = { v: 1, name: (typeof name === "string" && name.trim().slice(0, 80)) || "Unnamed", link, thumb: thumb.svg ?? "" };
    if (!loose.length && await store(newKey(), record)) count += 1; // what storage refuses once it refuses again
    else loose.push(record);
  }
  await list();
  say(`Kept on this device: ${count}.` + (loose.length ? ` Not kept: ${loose.length}, as this browser does not let the page keep more. They stand below until the page is closed: keep the file.` : "")
    + (left ? ` Not understood in the file, and left out when opened: ${left}.` : ""));
}

const FEW_SETTINGS = 6; // are shown, more are folded

// `than`: what it is compared with, where that is not the page's own.
export async function compare(record, than = { name: "On the page", settings: design.texts(), got: got() }) {
  const other = await ask({ kind: "open", link: record.link });
  const reply = await ask({ kind: "compare", settings: than.settings, other: other.settings, got: than.got, other_got: record.got ?? got() });
  if (!reply.ok) return say(reply.errors.map((error) => error.text).join(" "));
  const rows = (items) => items.map((item) => make("tr", "", explain(make("th", "", item.label)), explain(make("td", "", item.mine)), explain(make("td", "", item.other))));
  for (const head of all("#compare-than, #compare-box .than")) head.textContent = than.name;
  for (const head of all("#compare-name, #compare-box .other")) head.textContent = record.name;
  const faces = reply.faces.map((svg, i) => {
    const image = make("img", "face-of");
    image.src = facePicture(svg);
    image.alt = `Face: ${i ? record.name : than.name}`;
    return make("td", "", image);
  });
  byId("compare-faces").replaceChildren(make("tr", "", make("th", "", "Face"), ...faces));
  byId("compare-checks").replaceChildren(...reply.checks.map((check) => {
    const better = check.better < 0; // the kept one
    const mark = (verdict, good) => {
      const cell = make("td", "", make("span", "verdict-word", verdict), good ? " \u2713 better" : " worse");
      cell.dataset.verdict = good ? "good" : verdict;
      return cell;
    };
    return make("tr", "", explain(make("th", "", check.label)), mark(check.mine, !better), mark(check.other, better));
  }));
  byId("compare-answers").replaceChildren(...rows([{ label: "Worst verdict", mine: reply.worst[0], other: reply.worst[1] }, ...reply.answers]));
  for (const [name, items] of [["settings", reply.settings], ["others", reply.others]]) {
    const body = byId(`compare-${name}`), fold = body.closest("details");
    body.replaceChildren(...rows(items));
    fold.querySelector(".count").textContent = items.length;
    fold.hidden = !items.length;
    fold.open = name === "settings" && items.length <= FEW_SETTINGS;
  }
  byId("compare-box").showModal();
  notice("");
}
