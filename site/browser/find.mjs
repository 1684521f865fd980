// Find: a burner from what I have. The search runs aside; what it finds are designs like any other.
import { all, button, byId, facePicture, make, root } from "./page.mjs";
import { hush, tell } from "./bars.mjs";
import { openedFrom } from "./chapters.mjs";
import { askAside, stopAside, warm } from "./aside.mjs";
import { add, fill, mayBuy, name, wireHave, written } from "./have.mjs";
import { compare } from "./designs.mjs";
import { ask } from "./python.mjs";
import { tick } from "./shopping.mjs";
import { share } from "./share.mjs";
import { dotted, kept, mark, marked, release } from "./settings.mjs";
import { explain } from "./glossary.mjs";

const KEPT = "burnercalc-found"; // of this tab, for a reload
let design = null;
let running = false;
let first = null; // settings of the first good one, while better ones are looked for

// Once its form is in the page; it may be open by then.
export function wireFind(given) {
  design = given;
  wireHave(sayFoundFor);
  const opened = () => { hush("found"); warm(); sayAsked(); fill().then(recall); };
  for (const press of all("[data-open=find-box]")) press.addEventListener("click", opened);
  if (byId("find-box").open) opened();
  byId("find-form").addEventListener("submit", (event) => { event.preventDefault(); if (!running) find(); });
  byId("find-stop").addEventListener("click", stopAside);
}

const say = (words) => { byId("find-status").textContent = words; };

// The question, before it is asked: what the page has as chamber, work and fuel, and how much fire that takes.
async function sayAsked() {
  const reply = await ask({ kind: "asked", settings: design.texts() });
  if (!reply.ok) return;
  byId("find-asked").textContent = reply.asked.join(" ");
  sayFoundFor();
}

// What the designs below were looked for, where page or list asks something else by now.
function sayFoundFor() {
  const words = byId("found-for"), other = byId("found-other");
  if (!words) return;
  words.hidden = words.dataset.asked === byId("find-asked").textContent;
  other.hidden = other.dataset.list === written();
}

async function find(from = design.texts()) {
  const weights = Object.fromEntries(all("[data-weight]").map((field) => [field.dataset.weight, dotted(field.value.trim())]));
  name([]);
  nameWeights([]);
  hush("have");
  run(true);
  const list = written();
  byId("find-first").replaceChildren();
  first = null;
  // Sizes of what lay there are in the list itself; opening a found design has only marked them.
  const mine = kept().filter((key) => !marked().includes(key)).join(",");
  const reply = await askAside({ kind: "find", settings: { ...from, mine }, have: list, weights }, hear);
  run(false);
  byId("find-first").replaceChildren();
  if (reply.stopped) {
    if (first) showFirst("The first good one that was found; better ones were not looked for to the end.");
    if (!byId("find-box").open) tell("found", "The search for a burner was stopped.", ["Close", () => hush("found")]);
    return say("Stopped.");
  }
  if (!reply.ok) {
    const row = name(reply.errors.filter(({ setting }) => !weightOf(setting))), weight = nameWeights(reply.errors);
    offerToMove(reply.errors);
    return (row ?? weight)?.focus();
  }
  byId("have").open = false;
  reply.list = list;
  show(reply);
  say(`${counted(reply)}.`);
  const best = byId("find-list").querySelector("h3");
  best.scrollIntoView({ block: "nearest" });
  if (document.activeElement === byId("find-status")) best.focus({ preventScroll: true }); // on to what was found
  try { sessionStorage.setItem(KEPT, JSON.stringify({ build: root.dataset.build, reply })); } catch { /* full or closed */ }
  if (!byId("find-box").open) tell("found", `${reply.designs.length} burners are found.`, ["Show them", () => { hush("found"); byId("find-box").showModal(); }], ["Close", () => hush("found")]);
}

// Where a setting that is mine is at odds with the list: let it go, and look again.
function offerToMove(errors) {
  const held = kept().filter((key) => errors.some(({ setting }) => setting === key));
  if (!held.length) return;
  byId("find-status").append(" ", button("Mine no longer: look again", () => {
    release(held);
    find();
  }, "small"));
}

// After a reload: what was found before.
function recall() {
  if (running || byId("find-list").firstElementChild) return;
  try {
    const kept = JSON.parse(sessionStorage.getItem(KEPT));
    if (kept?.build !== root.dataset.build) return;
    show(kept.reply);
    byId("have").open = false;
    say(`${counted(kept.reply)} before the page was loaded anew.`);
  } catch { /* closed */ }
}

const weightOf = (setting) => setting.startsWith("weight ") && all("[data-weight]").find((field) => `weight ${field.dataset.weight}` === setting);

// Say below each weight what is wrong with it, and what would do.
function nameWeights(errors) {
  let worst = null;
  all("#weights .refused").forEach((words) => words.remove());
  for (const field of all("[data-weight]")) field.removeAttribute("aria-invalid");
  for (const { setting, rule, nearest } of errors) {
    const field = weightOf(setting);
    if (!field) continue;
    worst ??= field;
    byId("weights").open = true;
    field.setAttribute("aria-invalid", "true");
    const words = make("p", "refused", `It ${rule}. `, button(`Take ${nearest}`, () => { field.value = nearest; words.remove(); field.removeAttribute("aria-invalid"); field.focus(); }, "small"));
    field.parentElement.after(words);
  }
  return worst;
}

function run(on) {
  const go = byId("find-go"), stop = byId("find-stop"), held = document.activeElement === (on ? go : stop);
  running = on;
  stop.hidden = !on;
  if (held) (on ? stop : byId("find-status")).focus(); // what is gone or dead cannot hold it
  go.disabled = on;
  byId("find-run").hidden = !on;
  byId("find-list").hidden = on; // it comes back where nothing else is found
  byId("find-bar").removeAttribute("value");
  byId("find-count").textContent = "Starting a second calculator\u2026";
  if (on) byId("find-run").scrollIntoView({ block: "end" });
}

function hear({ done, most, first: good, so_far: soFar }) {
  if (good) {
    first = good.settings;
    return showFirst("A first good one is found; better ones are looked for.");
  }
  byId("find-bar").max = most;
  byId("find-bar").value = done;
  byId("find-count").textContent = `${done} of about ${most} looked at; ${soFar}`;
}

function showFirst(words) {
  const settings = first;
  byId("find-first").replaceChildren(make("p", "row", words, button("Open it", () => open(settings), "small")));
}

function open(settings, mine = [], got = []) {
  openedFrom();
  byId("find-box").close();
  tick(got);
  const sizes = mine.filter((key) => !kept().includes(key));
  mark([...marked(), ...sizes]);
  design.take({ ...settings, mine: mine.join(",") });
  hush("marked");
  if (!sizes.length) return;
  const leave = () => hush("marked");
  tell("marked", "Sizes of what you have are marked as mine now: no cure moves them.", ["Mine no longer", () => { release(sizes); leave(); }], ["Close", leave]);
}

// Look again, with sold sizes of these kinds, or with these entries on the list; without any, with sold sizes of all.
// From the design that the purchase was tried with, so that nothing worse is found, as long as the page asks the same.
function buy(kinds, adds = [], from = undefined) {
  if (adds.length) add(adds);
  else mayBuy(kinds, true);
  find(byId("found-for").hidden ? from : undefined);
}

// The way to a purchase: its kinds may be bought from now on, or what is no kind that is sold is put on the list.
function buying(kinds, adds, from) {
  if (!adds.length && !mayBuy(kinds)) return [];
  return [button(adds.length ? "Put it on my list, and look again" : "Let it be bought, and look again", () => buy(kinds, adds, from), "small")];
}

function show(reply) {
  const { designs, given, opens, complete, counts } = reply, way = reply.in_the_way.filter((one) => !one.given);
  const head = reply.on_screen ? [make("p", "caution", reply.on_screen)] : [];
  // What stops every one of them comes before what could be bought: there is one thing to do first.
  if (given.length) head.push(make("p", stops(given) ? "caution" : "", stops(given) ? make("b", "", "No burner cures this, so it comes first: ") : "What no burner changes, and what every design below has too:"), faults(given));
  if (way.length) {
    head.push(make("p", "caution", make("b", "", complete ? "None fits without a fault. " : "None of those looked at fits without a fault; another may. "), "In the way of the least wrong one, the worst first:"), faults(way));
    if (opens) {
      head.push(make("p", "", `${opens.head} `, make("b", "", opens.buy), opens.price ? ` (${opens.said})` : "", `.${opens.does} To spend in all then: ${opens.to_spend}.`));
      head.push(make("p", "row", ...buying(opens.kinds, opens.adds, opens.settings), button("Open that design", () => open(opens.settings), "small")));
      if (opens.left.length) head.push(make("p", "", "Left in that design, which need not be the best with it:"), faults(opens.left));
      if (opens.whole) head.push(make("p", "row", make("span", "", "The smallest found that leaves no fault of the burner: ", make("b", "", opens.whole), "."), ...buying(opens.whole_kinds, opens.whole_adds, opens.whole_settings), button("Open the design without a fault of its own", () => open(opens.whole_settings), "small")));
    } else head.push(make("p", "row", reply.no_purchase, button("Let all be bought, and look again", () => buy(), "small")));
  }
  const proven = complete ? "Every design that this shop allows was looked at or ruled out" : reply.missed;
  const best = { name: designs[0].best_in[0], settings: designs[0].settings, got: designs[0].got };
  const ranked = make("details", "more", make("summary", "", "How they are ranked"), make("p", "source", reply.score.words));
  const asked = make("p", "help", `Found ${reply.asked[0][0].toLowerCase()}${reply.asked.join(" ").slice(1)}`);
  asked.id = "found-for";
  asked.dataset.asked = reply.asked.join(" ");
  const other = make("p", "caution", "Found from another list than the one above. Press Find burners for yours.");
  other.id = "found-other";
  other.dataset.list = reply.list;
  byId("find-list").replaceChildren(other, asked, ...head, ...designs.map((one, at) => card(one, at ? best : null, !at && way.length > 0)), ...(reply.few ? [make("p", "", reply.few)] : []),
    make("p", "source", `${proven}: ${counts.judged} of ${counts.most} steps judged, ${counts.solved} design${counts.solved === 1 ? "" : "s"} worked out whole.`), ranked);
  sayFoundFor();
  explain(byId("find-list"));
}

const counted = (reply) => `${reply.designs.length} found${reply.in_the_way.length ? ", none without a fault" : ""}`;

const stops = (list) => list.some(({ verdict }) => verdict === "stop");
const faults = (list) => make("ul", "faults", ...list.map(({ label, verdict, text }) => {
  const sign = make("span", "sign"), item = make("li", "verdict", sign, make("p", "", make("b", "", `${label}: ${verdict}. `), text));
  sign.setAttribute("aria-hidden", "true");
  item.dataset.verdict = verdict;
  return item;
}));

const capital = (words) => words[0].toUpperCase() + words.slice(1);

// `best`: what it may be put beside; `told`: its faults stand above.
function card(found, best, told) {
  const heading = capital(found.title);
  const record = { name: capital(found.best_in[0]), link: found.link, got: found.got };
  const image = make("img", "face");
  image.alt = "";
  image.src = facePicture(found.svg);
  const numbers = make("dl", "four");
  for (const { label, text } of Object.values(found.numbers)) numbers.append(make("div", "", make("dt", "", label), make("dd", "", text)));
  const line = (head, words) => (words ? [make("p", "", make("b", "", `${head}: `), words)] : []);
  const bought = make("ul", "", ...found.buy.map(({ said }) => make("li", "", said)));
  const folded = make("details", "more", make("summary", "", "What to buy"),
    ...(found.dearest ? [make("p", "help", found.dearest)] : []), bought,
    ...(found.train.length ? [make("details", "more", make("summary", "", "The gas and air train, part by part"), make("ul", "", ...found.train.map((part) => make("li", "", part))))] : []));
  const word = make("p", "", make("b", "", capital(found.verdict_said)));
  const head = make("h3", "", heading);
  head.tabIndex = -1;
  return make("article", "found", head, word, image, numbers, make("p", "help", `${found.sizes}.`), make("p", "help", `${capital(found.feed)}.`),
    ...line("To spend", found.says[0].replace(" to spend", "")), ...line("Against your list", found.untold_said), folded,
    ...line("It has", found.says.slice(1).join("; ")),
    ...line("Gives up", found.gives_up.join("; ")), ...line("Limited by", found.not_good.length ? "" : found.limited_by),
    ...(told ? line("In the way", "what is told above") : found.not_good.length ? [faults(found.not_good)] : []),
    make("p", "row", button("Open", () => open(found.settings, found.mine, found.got), "main"),
      button("Compare", () => compare(record), "small"),
      ...(best ? [button("Beside the first", () => compare(record, { ...best, name: capital(best.name) }), "small")] : []),
      button("Share", () => share(found.settings, found.link), "small")));
}
