// Search: what can be set, read, looked at or printed, by its name, by what else people call it, or by its sentence.
import { all, button, byId, changedOnly, make, root, worded } from "./page.mjs";
import { fetchPacked } from "./bars.mjs";
import { show as showTerm, wordEntries } from "./glossary.mjs";
import { jump } from "./jump.mjs";
import { ready, search } from "./rank.mjs";

const MOST = 30; // shown
let known = null;
let design = null;

export function wireSearch(given) {
  design = given;
  const box = byId("search-box"), field = byId("search-for");
  document.querySelector("[data-open=search-box]").addEventListener("click", open);
  field.addEventListener("input", show);
  field.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    event.preventDefault(); // the dialog gives focus back to its button, which the same key would press again
    box.querySelector("#search-found button")?.click();
  });
  addEventListener("keydown", (event) => {
    if (event.key !== "/" || event.composedPath()[0].matches?.("input, select, textarea") || document.querySelector("dialog[open]")) return;
    event.preventDefault();
    box.showModal();
    open();
  });
}

async function open() {
  byId("search-for").select();
  known ??= await fetchPacked("./search.bin", "the search").then((entries) => ready([...entries, ...wordEntries()])).catch(() => null);
  if (known) show();
  else changedOnly(byId("search-count"), "The search could not be loaded. Close it and try again.");
}

function show() {
  const typed = byId("search-for").value.trim();
  const answers = design.shown()?.answers ?? {};
  const hits = known ? search(typed, known).filter(([id]) => !answers[id.replace("answer-", "")]?.idle) : [];
  changedOnly(byId("search-count"), typed && known ? (hits.length ? `${hits.length} found` : "Nothing found. Try one word: a part, a size, or what goes wrong.") : "");
  byId("search-found").replaceChildren(...hits.slice(0, MOST).map((entry) => make("li", "", find(entry))));
}

function find([id, kind, room, label, , meaning]) {
  if (kind === "word") return found(id, label, meaning, "", ({ currentTarget }) => showTerm(currentTarget));
  const chapter = room ? document.querySelector(`#chapters [data-go="${room}"] span:nth-child(2)`).textContent : "Paper";
  const reply = design.shown(), [, part, key] = id.match(/^(\w+?)-(.+)$/);
  const value = { number: () => reply?.answers[key].shown.split("\n")[0], setting: () => reply?.fields[key] && worded(reply.fields[key]), check: () => reply?.checks.find((check) => check.key === key)?.verdict }[kind]?.();
  const money = root.dataset.signed === undefined && document.querySelector(`#${id} > summary .unsigned`)?.textContent; // whose it is
  return found(id, label, `${kind} in ${chapter}${money || ""}`, value ?? "", () => {
    all("dialog[open]").forEach((dialog) => dialog.close());
    if (kind === "tool") document.querySelector(`[data-open=${id}]`).click();
    else if (part === "paper") openPaper(key);
    else jump(part === "part" ? rowOf("gas_train", 2, label) : part === "sign" ? rowOf("trouble", 0, label) : id);
  });
}

// The row that is named so: a part of the gas and air train, a sign of trouble; the table where it has no such row.
function rowOf(name, cell, label) {
  const table = byId(`table-${name}`);
  return all("tbody tr", table).find((row) => row.cells[cell].textContent.toLowerCase().includes(label.toLowerCase())) ?? table;
}

function found(id, label, words, value, press) {
  const made = button("", press, "find");
  made.dataset.find = id;
  made.append(make("span", "", label, make("small", "", words)), make("b", "", value.length > 40 ? `${value.slice(0, 40).replace(/[\s,]+\S*$/, "")}\u2026` : value));
  return made;
}

function openPaper(key) {
  byId("paper-box").showModal();
  const press = all("#paper-box [data-file]").find((each) => each.dataset.file.startsWith(`${key}-`));
  press.closest("details").open = true;
  press.focus();
  press.scrollIntoView({ block: "center" });
}
