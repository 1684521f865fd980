// Make it good, and what if: asked about the design on the page, aside, and only when somebody wants to know.
import { all, button, byId, make } from "./page.mjs";
import { tell } from "./bars.mjs";
import { askAside, stopAside } from "./aside.mjs";
import { passesJust } from "./answers.mjs";
import { explain } from "./glossary.mjs";
import { kept, release } from "./settings.mjs";

let design = null;
let about = ""; // link of the design that was asked about
let after = null; // its mended settings
let told = ""; // what is told of them once they are taken
let just = ""; // that they only just pass

export function wireMend(given) {
  design = given;
  wire("good", "Trying changes\u2026", showGood);
  wire("shops", "Building it in shops like yours\u2026", showShops);
  byId("good-take").addEventListener("click", take);
}

function wire(kind, words, show) {
  const box = byId(`${kind}-box`), status = byId(`${kind}-status`), found = byId(`${kind}-found`);
  const bar = make("progress"), stop = button("Stop", () => (asking ? stopAside() : run()));
  let asking = false;
  bar.setAttribute("aria-label", words);
  found.tabIndex = -1;
  status.after(make("div", "run", bar, stop));
  const turn = (on, again = false) => {
    asking = on;
    bar.hidden = !on;
    stop.textContent = on ? "Stop" : "Start again";
    if (!on && !again && document.activeElement === stop) found.focus(); // what is gone cannot hold it
    stop.hidden = !on && !again;
  };
  turn(false);
  const hear = ({ done, most, so_far: at }) => {
    bar.max = most;
    bar.value = done;
    status.textContent = at ? `${done} looked at, ${most} at most: ${at}.` : `${words} ${done} of ${most}`;
  };
  const run = async () => {
    const link = design.shown()?.link;
    found.replaceChildren();
    byId("good-take").hidden = true;
    if (!link) return void (status.textContent = "Wait until the design is computed.");
    status.textContent = words;
    bar.removeAttribute("value");
    turn(true);
    const reply = await askAside({ kind, settings: design.texts() }, hear);
    turn(false, reply.stopped);
    about = link;
    status.textContent = reply.ok ? "" : reply.stopped ? "Stopped." : reply.errors.map((error) => error.text).join(" ");
    if (reply.ok) show(reply, status, run);
  };
  for (const press of all(`[data-open=${kind}-box]`)) press.addEventListener("click", run);
  box.addEventListener("close", () => { if (asking) stopAside(); });
}

const listed = (rows) => make("ul", "changes", ...rows.map(([head, words, ...more]) => make("li", "", make("b", "", `${head}: `), words, ...more)));

const lines = (words) => make("ul", "", ...words.map((line) => make("li", "", line)));

// A change that does not suit: that setting is mine as it stands, and the rest is tried again.
const leave = (key, label, again) => {
  const press = button("Mine: leave it", async () => {
    await design.change("mine", [...kept(), key].join(","));
    again();
  }, "small");
  press.setAttribute("aria-label", `Mine: leave it: ${label}`);
  return press;
};

function showGood(reply, status, again) {
  const { changes, mended, worse, left } = reply;
  status.textContent = reply.head;
  const parts = [];
  const add = (head, rows) => { if (rows.length) parts.push(make("h3", "", head), listed(rows)); };
  add("What changes", changes.map(({ setting, label, before, after: then, says }) => [label, `from ${before} to ${then}`, lines(says), leave(setting, label, again)]));
  if (reply.held) parts.push(make("p", "", reply.held));
  add("What that mends", mended.map(({ label, verdict, then }) => [label, `${verdict} now, then ${then}`]));
  add("What gets worse", worse.map(({ label, was, then }) => [label, `${was} now, then ${then}`]));
  add("What stays", left.map(({ check, label, verdict }) => [label, `${reply.before[check] ?? "none"} now, then ${verdict}`]));
  for (const { check, label, text } of left) {
    parts.push(make("p", "help", make("b", "", `${label}: `), text));
    if (reply.tried[check].length) parts.push(make("p", "help", "What was tried:"), make("ul", "help", ...reply.tried[check].map((words) => make("li", "", words))));
  }
  if (reply.in_way.length) {
    parts.push(make("p", "row", reply.in_way_said, button("Mine no longer: try again", async () => {
      await release(reply.in_way);
      again();
    }, "small")));
  }
  byId("good-found").replaceChildren(...parts);
  all(".help", byId("good-found")).forEach(explain);
  after = reply.settings;
  just = reply.just;
  told = `${changes.length} setting${changes.length > 1 ? "s" : ""} changed. ${reply.held || reply.head}`;
  byId("good-take").hidden = !changes.length;
}

// What it holds is told once more where it stands, as the page itself says only good.
async function take() {
  if (design.shown()?.link !== about) return;
  const words = told, passes = just;
  byId("good-box").close();
  await design.take(after);
  if (passes) passesJust(passes);
  tell("brought", words, ["Undo", () => byId("undo").click()]);
}

const NUMBERS = { "fire at its gas pressure": "Fire at the gas pressure told", "spread between ports": "Port to port", turndown: "Turndown", "blower against its need": "Blower against its need" };

function showShops({ sample, tornado }) {
  if (sample.just && design.shown()?.link === about) passesJust(sample.just);
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
    const rows = swingRows(swings);
    parts.push(make("h3", "", `${NUMBERS[number]}: ${asSet}`), rows.children.length ? rows : make("p", "help", "None of these moves it by what can be read."));
  }
  byId("shops-found").replaceChildren(...parts);
  explain(byId("shops-found"));
}

// Bars from the low to the high end, on one scale; what moves the number most comes first.
function swingRows(swings) {
  const ends = swings.flatMap(({ low, as_set: set, high }) => [low, set, high]).filter((value) => value !== null);
  const least = Math.min(...ends), reach = Math.max(...ends) - least || 1;
  return make("ul", "swings", ...swings.filter(({ texts }) => new Set(texts).size > 1).map(({ over, low, as_set: set, high, texts }) => {
    const [first, last] = low > high ? [texts[2], texts[0]] : [texts[0], texts[2]];
    const bar = make("span", "swing"), known = [low, set, high].filter((value) => value !== null);
    bar.style.setProperty("--from", (Math.min(...known) - least) / reach);
    bar.style.setProperty("--to", (Math.max(...known) - least) / reach);
    bar.setAttribute("aria-hidden", "true");
    return make("li", "", make("span", "", over), make("span", "", `from ${first} to ${last}`), bar);
  }));
}
