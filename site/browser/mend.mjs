// Make it good, and what if: asked about the design on the page, aside, and only when somebody wants to know.
import { all, byId, make } from "./page.mjs";
import { askAside, stopAside } from "./aside.mjs";
import { explain } from "./glossary.mjs";

let design = null;
let about = ""; // link of the design that was asked about
let after = null; // its mended settings

export function wireMend(given) {
  design = given;
  wire("good", "Trying changes\u2026", showGood);
  wire("shops", "Building it in 100 shops like yours\u2026", showShops);
  byId("good-take").addEventListener("click", take);
}

function wire(kind, words, show) {
  const box = byId(`${kind}-box`), status = byId(`${kind}-status`);
  let asking = false;
  const run = async () => {
    const link = design.shown()?.link;
    byId(`${kind}-found`).replaceChildren();
    byId("good-take").hidden = true;
    if (!link) return void (status.textContent = "Wait until the design is computed.");
    status.textContent = words;
    asking = true;
    const reply = await askAside({ kind, settings: design.texts() });
    asking = false;
    about = link;
    if (reply.stopped) return;
    status.textContent = reply.ok ? "" : reply.errors.map((error) => error.text).join(" ");
    if (reply.ok) show(reply, status);
  };
  for (const press of all(`[data-open=${kind}-box]`)) press.addEventListener("click", run);
  box.addEventListener("close", () => { if (asking) stopAside(); });
}

const listed = (rows) => make("ul", "changes", ...rows.map(([head, words, ...more]) => make("li", "", make("b", "", `${head}: `), words, ...more)));

const lines = (words) => make("ul", "", ...words.map((line) => make("li", "", line)));

function showGood(reply, status) {
  const { changes, mended, left } = reply;
  status.textContent = reply.head;
  const parts = [];
  if (changes.length) parts.push(make("h3", "", "What changes"), listed(changes.map(({ label, before, after: then, says }) => [label, `from ${before} to ${then}`, lines(says)])));
  const verdicts = [...mended, ...left].map(({ check, label, verdict }) => [label, `${verdict} now, then ${reply.after[check] ?? "gone"}`]);
  if (verdicts.length) parts.push(make("h3", "", "What the checks say"), listed(verdicts));
  for (const { check, label, text } of left) {
    parts.push(make("p", "help", make("b", "", `${label}: `), text));
    if (reply.tried[check].length) parts.push(make("p", "help", "What was tried:"), make("ul", "help", ...reply.tried[check].map((words) => make("li", "", words))));
  }
  byId("good-found").replaceChildren(...parts);
  all(".help", byId("good-found")).forEach(explain);
  after = reply.settings;
  byId("good-take").hidden = !changes.length;
}

function take() {
  if (design.shown()?.link !== about) return;
  byId("good-box").close();
  design.take(after);
}

const NUMBERS = { "rate through the jet": "Fire", "spread between ports": "Port to port", turndown: "Turndown", "blower against its need": "Blower against its need" };

function showShops({ sample, tornado }) {
  const parts = [make("p", "", make("b", "", sample.head))];
  if (sample.worse.length) {
    parts.push(make("p", "", `${sample.worst}, the worst first:`), make("ul", "faults", ...sample.worse.map(({ verdict, shops, text }) => {
      const sign = make("span", "sign"), item = make("li", "verdict", sign, make("p", "", make("b", "", `${verdict === "stop" ? "Stop" : "Caution"} in ${shops}; one of them: `), text));
      sign.setAttribute("aria-hidden", "true");
      item.dataset.verdict = verdict;
      return item;
    })));
  }
  for (const number of new Set(tornado.map((each) => each.number))) {
    const swings = tornado.filter((each) => each.number === number), [, asSet] = swings[0].texts;
    parts.push(make("h3", "", `${NUMBERS[number]}: ${asSet}`), swingRows(swings));
  }
  byId("shops-found").replaceChildren(...parts);
  explain(byId("shops-found"));
}

// Bars from the low to the high end, on one scale; what moves the number most comes first.
function swingRows(swings) {
  const ends = swings.flatMap(({ low, as_set: set, high }) => [low, set, high]).filter((value) => value !== null);
  const least = Math.min(...ends), reach = Math.max(...ends) - least || 1;
  return make("ul", "swings", ...swings.filter(({ texts }) => new Set(texts).size > 1).map(({ over, low, as_set: set, high, texts }) => {
    const bar = make("span", "swing"), known = [low, set, high].filter((value) => value !== null);
    bar.style.setProperty("--from", (Math.min(...known) - least) / reach);
    bar.style.setProperty("--to", (Math.max(...known) - least) / reach);
    bar.setAttribute("aria-hidden", "true");
    return make("li", "", make("span", "", over), make("span", "", `between ${texts[0]} and ${texts[2]}`), bar);
  }));
}
