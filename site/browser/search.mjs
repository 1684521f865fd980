// Search: every setting, number and check by its name, by what else the trade calls it, or by a word of its sentence.
import { all, button, byId, changedOnly, make } from "./page.mjs";
import { fetchPacked } from "./bars.mjs";
import { jump } from "./jump.mjs";

const MOST = 30; // shown
let known = null;
let design = null;

export function wireSearch(given) {
  design = given;
  const box = byId("search-box"), field = byId("search-for");
  document.querySelector("[data-open=search-box]").addEventListener("click", open);
  field.addEventListener("input", show);
  field.addEventListener("keydown", (event) => { if (event.key === "Enter") box.querySelector("#search-found button")?.click(); });
  addEventListener("keydown", (event) => {
    if (event.key !== "/" || event.composedPath()[0].matches?.("input, select, textarea") || document.querySelector("dialog[open]")) return;
    event.preventDefault();
    box.showModal();
    open();
  });
}

async function open() {
  byId("search-for").select();
  known ??= await fetchPacked("./search.bin", "the search").catch(() => null);
  if (known) show();
  else changedOnly(byId("search-count"), "The search could not be loaded. Close it and try again.");
}

const parts = (text) => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

// How well an entry answers the words: 0 not at all, more for its name than for its other names, and those than its sentence.
function rank([, , , label, also, sentence], wanted) {
  const places = [parts(label), parts(also), parts(sentence)];
  let sum = 0;
  for (const word of wanted) {
    const at = places.findIndex((words) => words.some((each) => each.startsWith(word)));
    if (at < 0) return 0;
    sum += [9, 4, 1][at] + (at < 2 && places[at].includes(word) ? 3 : 0);
  }
  return sum + 1 / (1 + places[0].length);
}

function show() {
  const wanted = parts(byId("search-for").value);
  const found = (known && wanted.length ? known : []).map((entry) => [rank(entry, wanted), entry]).filter(([score]) => score);
  found.sort((a, b) => b[0] - a[0]);
  changedOnly(byId("search-count"), wanted.length && known ? `${found.length || "Nothing"} found` : "");
  byId("search-found").replaceChildren(...found.slice(0, MOST).map(([, entry]) => make("li", "", find(entry))));
}

function find([id, kind, room, label]) {
  const chapter = document.querySelector(`#chapters [data-go="${room}"] span:nth-child(2)`).textContent;
  const reply = design.shown(), [, key] = id.match(/^\w+?-(\w+)$/);
  const value = kind === "number" ? reply?.answers[key].shown.split("\n")[0] : kind === "setting" ? worded(reply?.fields[key]) : reply?.checks.find((check) => check.key === key)?.verdict;
  const press = button("", () => {
    all("dialog[open]").forEach((dialog) => dialog.close());
    if (kind === "tool") document.querySelector(`[data-open=${id}]`).click();
    else jump(id);
  }, "find");
  press.dataset.find = id;
  press.append(make("span", "", label, make("small", "", `${kind} in ${chapter}`)), make("b", "", (value ?? "").slice(0, 40)));
  return press;
}

const worded = (field) => (field ? `${field.text} ${field.unit}`.trim() : "");
