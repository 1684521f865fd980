// What comes out: numbers, checks with their cures, tables, and where each number comes from.
import { all, button, byId, changedOnly, make, measured, speak, worded } from "./page.mjs";
import { fetchPacked, tell, hush } from "./bars.mjs";
import { ask } from "./python.mjs";
import { jump } from "./jump.mjs";
import { explain as explainWords, explainLabel, termsOf } from "./glossary.mjs";
import { release } from "./settings.mjs";
import { isTicked, shopFor, tickCell } from "./shopping.mjs";

const FAULTS = ["caution", "stop"]; // more than good or a note
let design = null;
let spokenOf = null; // the worst verdict that was spoken last
let sources = null; // where each number comes from

export function wireAnswers(given) {
  design = given;
  for (const line of all("details.worst")) line.addEventListener("toggle", () => showCures(line));
  addEventListener("toggle", ({ target }) => { if (target.matches("details.answer[open]")) explain(target); }, true);
}

const isFault = (check) => FAULTS.includes(check.verdict);
const within = (reply, room) => reply?.checks.filter((check) => !room || check.room === room) ?? [];
const worstOf = (reply, room) => within(reply, room).find(isFault); // they come the worst first

export function showAnswers(answers) {
  for (const place of all("[data-answer], [data-echo]")) {
    const key = place.getAttribute("data-answer"), answer = answers[key ?? place.getAttribute("data-echo")];
    if (!answer) continue;
    if (key !== null) {
      if (place.getAttribute("data-value") !== String(answer.value)) place.setAttribute("data-value", answer.value);
      place.closest("details").hidden = Boolean(answer.idle);
    }
    changedOnly(place, (answer.brief && place.hasAttribute("data-brief")) ? answer.brief : answer.shown);
  }
  for (const place of all("[data-aim]")) {
    const { aim } = answers[place.getAttribute("data-aim")] ?? {};
    if (aim !== undefined) changedOnly(place, aim);
  }
  for (const open of all("details.answer[open]")) showInputs(open);
}

// The design's own sizes where they stand in a sentence.
export function showTexts(fields) {
  for (const place of all("[data-text]")) {
    changedOnly(place, worded(fields[place.dataset.text]));
  }
}

async function explain(answer) {
  sources ??= fetchPacked("./sources.bin", "where this number comes from").catch((error) => {
    sources = null;
    tell("sources", `Where this number comes from could not be loaded (${error.message}).`, ["Try again", () => { hush("sources"); explain(answer); }]);
  });
  const about = (await sources)?.[answer.dataset.about];
  if (!about || answer.querySelector("p")) return;
  answer.append(make("p", "", make("b", "about-value"), ...measured(about.meaning)), make("p", "", make("b", "", "Worked out as: "), ...measured(`${about.formula}.`)), make("ul", "inputs"),
    make("p", "", make("b", "", "Source: "), ...measured(`${about.source}. `), make("b", "", "How sure: "), about.trust, make("span", "weakest")));
  for (const place of all("p", answer)) explainWords(place);
  answer.querySelector("p").after(...explainLabel(about.label, answer));
  showInputs(answer);
}

// The settings and answers that went into a number, with their values.
async function showInputs(answer) {
  const list = answer.querySelector(".inputs");
  const known = await sources, reply = design.shown();
  if (!list || !known || !reply) return;
  const { brief, shown, weakest } = reply.answers[answer.dataset.about];
  changedOnly(answer.querySelector(".weakest"), weakest ? ` But no surer than ${known[weakest].label.toLowerCase()}, which goes into it: ${known[weakest].trust}` : "");
  changedOnly(answer.querySelector(".about-value"), brief ? `${shown.replace("\n", " ")}. ` : ""); // with its band
  list.replaceChildren(...known[answer.dataset.about].inputs.filter((key) => !(reply.fields[key] ?? reply.answers[key])?.idle).map((key) => {
    const field = reply.fields[key];
    const label = byId(`set-${key}`)?.dataset.label ?? known[key]?.label ?? key;
    const words = field ? worded(field) : reply.answers[key]?.shown ?? "";
    const item = make("li", "", `${label}: `, make("b", "", words));
    if (field) item.append(" ", button("change", () => jump(`set-${key}`), "small"));
    return item;
  }));
}

// While something is refused, or the calculator is broken, nothing on the page is called good: what stands there is of the
// last good design. A new answer takes it back.
let old = false;

export function showOld(words) {
  old = true;
  for (const line of all("details.worst")) {
    line.dataset.verdict = "old";
    changedOnly(line.querySelector(".words"), words);
    showCures(line);
  }
  for (const press of all("#chapters [data-verdict]")) {
    press.dataset.verdict = "old";
    changedOnly(press.querySelector(".flag"), ": not judged");
  }
  for (const list of all(".checks")) list.inert = true; // their cures are of another design
  if (spokenOf !== "old") speak(words);
  spokenOf = "old";
}

// Designs that only just pass, as far as somebody has had that looked at: {link: how that is said}; of this tab.
const JUST = "burnercalc-just";
let just = {};
try { just = JSON.parse(sessionStorage.getItem(JUST)) ?? {}; } catch { /* closed */ }
const justOf = (reply) => just[reply.link.replace(/&mine=[^&]*/, "")];

export function passesJust(words) {
  const reply = design.shown();
  just = { ...Object.fromEntries(Object.entries(just).slice(1 - MOST_LOOKED)), [reply.link.replace(/&mine=[^&]*/, "")]: words };
  try { sessionStorage.setItem(JUST, JSON.stringify(just)); } catch { /* full or closed */ }
  if (!old) showVerdicts(reply);
}

const said = (worst, good = "") => (worst ? `${worst.verdict === "stop" ? "Stop" : "Caution"}: ${worst.text}` : good || "Good: no check asks for a change.");

// Each list by itself, so that taps get through between them.
export const checksIn = (reply) => all(".checks").map((list) => () => showList(list, reply));

function showList(list, reply) {
  list.inert = false;
  const good = list.dataset.show === "good";
  const mine = within(reply, list.dataset.room).filter((check) => (check.verdict === "good") === good);
  renew(list, mine);
  changedOnly(list.closest("details").querySelector(".count"), String(mine.length));
}

export function showVerdicts(reply) {
  old = false;
  for (const line of all("details.worst")) {
    const { room } = line.dataset, worst = worstOf(reply, room);
    line.dataset.verdict = worst?.verdict ?? "good";
    changedOnly(line.querySelector(".words"), said(worst, room ? "" : justOf(reply)));
    showCures(line);
    const press = document.querySelector(`#chapters [data-go="${room}"]`);
    if (!press) continue;
    press.dataset.verdict = line.dataset.verdict;
    const faults = within(reply, room).filter(isFault).length;
    changedOnly(press.querySelector(".flag"), faults ? `: ${faults} to look at` : ": good");
  }
  const worst = worstOf(reply);
  const words = said(worst, justOf(reply));
  const judged = worst ? `${worst.key} ${worst.verdict}` : justOf(reply) ?? "good";
  if (judged !== spokenOf && spokenOf !== null) speak(words); // another verdict, not another number
  spokenOf = judged;
}

// What can be done about the check that a line on top names, while the line is open.
function showCures(line) {
  const place = line.querySelector(".cures"), reply = design.shown();
  const worst = line.open && !old ? worstOf(reply, line.dataset.room) : null;
  const refused = old ? all("[data-refused]").map((each) => each.dataset.setting) : [];
  const words = JSON.stringify([line.open, old, refused, worst, reply?.texts.mine, reply && justOf(reply)]);
  if (place.dataset.words === words) return;
  place.dataset.words = words;
  place.replaceChildren();
  if (!line.open || !reply) return;
  if (old) return place.append(make("p", "row", ...refused.map((key) => button(`Go to ${byId(`set-${key}`).dataset.label.toLowerCase()}`, () => jump(`set-${key}`), "small"))));
  if (!worst) return place.append(make("p", "", !line.dataset.room && justOf(reply) ? "As drawn no check asks for a change. What is at fault in other shops: \u201cWhat if\u2026\u201d on Start." : "Nothing to cure. The first fire, done carefully, is the test."));
  const row = cureRow(worst, line.dataset.room || "start");
  place.append(row, ...termsOf(worst.text), make("p", "row", button("All about this check", () => jump(`check-${worst.key}`), "small")));
  row.querySelector(".look")?.click();
}

// Only what has changed is made anew, so that a finger or the focus on a button is not lost.
function renew(list, checks) {
  const words = JSON.stringify([checks, design.shown()?.texts.mine]);
  if (list.dataset.words === words) return;
  list.dataset.words = words;
  list.replaceChildren(...checks.map(checkItem));
}

function checkItem(check) {
  const sign = make("span", "sign");
  sign.setAttribute("aria-hidden", "true");
  const words = make("div", "", make("p", "", make("b", "", `${check.label}: ${check.verdict}. `), check.text));
  if (isFault(check)) words.append(cureRow(check, "list"));
  words.append(make("p", "source", `${check.source}.`));
  explainWords(words.firstChild);
  const item = make("li", "verdict", sign, words);
  item.id = `check-${check.key}`;
  item.dataset.check = check.key;
  item.dataset.verdict = check.verdict;
  return item;
}

const LOOK = "What would cure it?";
const entries = (texts) => JSON.stringify(Object.entries(texts).sort()); // a design is asked again for more figures, and its texts are made anew

// Rows in which cures were found, by design, check and place: undo brings them back as they were.
const looked = new Map();
const MOST_LOOKED = 20;

function keepLooked(row) {
  looked.delete(row.dataset.looked);
  looked.set(row.dataset.looked, row);
  if (looked.size > MOST_LOOKED) looked.delete(looked.keys().next().value);
}

let taken = null; // {row, top}: where on the screen the row stood whose cure was taken last

// The change made the page shorter, and undo makes it longer again: what was under the finger comes back there.
function broughtBack(row) {
  if (taken?.row === row) {
    const { top } = taken;
    taken = null;
    requestAnimationFrame(() => { if (row.offsetParent) scrollBy(0, row.getBoundingClientRect().top - top); });
  }
  return row;
}

function cureRow(check, place) {
  const name = JSON.stringify([design.shown()?.link, check, place]);
  if (looked.has(name)) return broughtBack(looked.get(name));
  const row = make("p", "row"), mine = (design.texts().mine ?? "").split(",");
  const changes = check.changes.filter((change) => !mine.includes(change.setting));
  row.dataset.looked = name;
  if (changes.length) row.append(button(LOOK, (event) => findCures({ ...check, changes }, event.target), "small look"), make("span", "help", "By hand:"));
  for (const change of changes.filter(({ alone }) => alone)) {
    const label = byId(`set-${change.setting}`)?.dataset.label ?? change.setting;
    const words = change.move === "choose" ? `${label}: another` : `${change.move === "raise" ? "Raise" : "Lower"} ${label.toLowerCase()}`;
    row.append(button(words, () => jump(`set-${change.setting}`), "small"));
  }
  const held = check.changes.map((change) => change.setting).filter((key) => mine.includes(key));
  if (held.length) row.append(make("span", "help", "Marked as mine, so not tried:"));
  for (const key of held) row.append(button(`${byId(`set-${key}`)?.dataset.label ?? key}: mine no longer`, () => release([key]), "small"));
  return row;
}

// Ask Python what the check would say with each setting further and further away; offer the nearest that is good.
async function findCures(check, pressed) {
  pressed.disabled = true;
  pressed.textContent = "Trying\u2026";
  const settings = design.texts(), about = entries(settings);
  const found = [];
  for (const change of check.changes) {
    const moves = change.move === "choose" ? [1, -1] : [change.move === "raise" ? 1 : -1];
    for (const way of moves) {
      const cure = await nearestGood(settings, check.key, change.setting, way);
      if (entries(design.texts()) !== about) return void Object.assign(pressed, { disabled: false, textContent: LOOK }); // of another design
      if (!cure) continue;
      const words = `${cure.stepped ? `Make ${cure.label.toLowerCase()} ${cure.shown}` : `${cure.label}: ${cure.shown}`}${butThen(cure.worsens, cure.later) || stays(cure.stays)}`;
      const stops = cure.worsens.filter((each) => each.verdict === "stop").length;
      const offer = button(words, () => {
        const row = offer.parentElement;
        taken = { row, top: row.getBoundingClientRect().top };
        design.change(change.setting, cure.text);
      }, stops ? "" : "cure");
      found.push({ offer, stops, worse: cure.worsens.length + (cure.later ? 0.5 : 0) });
    }
  }
  // All at once, so that none moves under a finger: what brings no stop, then what makes least else worse, stands first.
  found.sort((one, other) => one.stops - other.stops || one.worse - other.worse);
  const harmless = found.some(({ stops }) => !stops);
  // One fault for another goes round in circles: what takes several at once stands beside it.
  if (!found.some(({ worse }) => worse < 1)) pressed.before(button("Make it good", () => document.querySelector("[data-open=good-box]").click(), "cure"));
  // A caution is not cured by a stop while anything else cures it.
  pressed.before(...found.filter(({ stops }) => !stops || !harmless || check.verdict === "stop").map(({ offer }) => offer));
  keepLooked(pressed.parentElement);
  if (harmless) pressed.remove();
  else pressed.textContent = found.length ? "Each of these alone brings a stop, or a worse one" : "None of these alone cures it";
}

// What it leaves as it was, the worst two by name.
const stays = (labels) => (labels.length ? `; still to cure: ${labels.slice(0, 2).join(", ")}${labels.length > 2 ? ` and ${labels.length - 2} more` : ""}` : "");

// What a change does to the other checks, where it does harm: the worst two by name.
export function butThen(worsens, later = "") {
  const named = worsens.slice(0, 2).map((each) => `${each.label.toLowerCase()}: ${each.still ? "a worse " : ""}${each.verdict}`);
  if (worsens.length > 2) named.push(`and ${worsens.length - 2} more`);
  if (later) named.push(`less fire than the ${later} that heats it up in time`);
  return named.length ? `, but then ${named.join(", ")}` : "";
}

async function nearestGood(settings, check, key, way) {
  const attempt = (by, whole) => ask({ kind: "try", settings, key, check, by: by * way, whole });
  const good = (reply) => reply.ok && reply.text && !isFault(reply);
  let low = 0;
  let high = 1;
  let best = await attempt(high);
  while (!good(best)) {
    if (!best.ok || best.end || high >= 256) return null;
    low = high;
    high *= 2;
    best = await attempt(high);
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    const reply = await attempt(middle);
    if (good(reply)) { best = reply; high = middle; } else low = middle;
  }
  const edge = await attempt(high, true), at = await withMargin(attempt, good, high, best);
  const further = at === high ? edge : await attempt(at, true);
  best = good(further) && harm(further) <= harm(edge) ? further : edge;
  if (best === further && best.stepped && best.faults) { // one step more may cure what else was wrong
    const more = await attempt(at + 1, true);
    if (good(more) && harm(more) <= harm(best) && more.faults < best.faults) best = more;
  }
  return good(best) ? best : null;
}

// A stop that a cure brings weighs more than any number of cautions.
const harm = (cure) => cure.worsens.reduce((sum, each) => sum + (each.verdict === "stop" ? 1000 : 1), 0);

const FURTHER = 8; // tries beyond the nearest that is good

// The nearest that is good stands at the edge of what is good: go on to the middle where the other edge is near, or to a
// margin; where there is none to be had, one stride from the edge. It is not taken where it harms other checks more.
async function withMargin(attempt, good, nearest, best) {
  if (!best.stepped || best.ample) return nearest;
  const stride = Math.ceil(nearest / FURTHER);
  let last = nearest;
  for (let further = 0; further < FURTHER; further += 1) {
    const reply = await attempt(last + stride);
    if (!good(reply)) return Math.ceil((nearest + last) / 2);
    if (reply.end) break;
    last += stride;
    if (reply.ample) return last;
  }
  return Math.min(last, nearest + stride);
}

const tabled = new WeakMap(); // the rows of each table, as text

// Each table by itself, so that taps get through between them.
export const tablesIn = (tables) => all("[data-table]").map((place) => () => showTable(place, tables[place.dataset.table]));

function showTable(place, table) {
  if (!table) return;
  const body = place.querySelector("tbody"), name = place.dataset.table;
  changedOnly(place.querySelector("caption"), table.caption ?? table.title);
  const title = document.querySelector(`[data-title="${name}"]`); // of a fold that holds this table alone
  if (title) changedOnly(title, table.title);
  const words = JSON.stringify(table.rows);
  if (tabled.get(place) === words) return;
  tabled.set(place, words);
  const shop = isTicked(name), cards = Boolean(place.querySelector("td[data-name]"));
  body.replaceChildren(...table.rows.map((row) => make("tr", "", ...row.map((cell, at) => {
    const place = shop && !at ? tickCell(row) : explainWords(make("td", "", cell));
    if (cards) place.dataset.name = table.columns[at];
    return place;
  }))));
  if (shop) shopFor(name, table.rows);
}
