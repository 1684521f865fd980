// The settings: Panel's widgets with their step buttons, sliders and tape fractions, and what was refused.
import { all, button, byId, changedOnly, make, notice, root } from "./page.mjs";
import { chapterOf } from "./chapters.mjs";
import { ask } from "./python.mjs";
import { model } from "./models.mjs";
import { explain, explainLabel } from "./glossary.mjs";
import { fillLayers, wireLayers } from "./layers.mjs";

let design = null;
const filling = new Set(); // keys of widgets that the page itself is filling

const place = (key) => byId(`set-${key}`);
export const fieldOf = (key) => byId(`root-${key}`)?.firstElementChild?.shadowRoot?.querySelector("input, select");

// A browser may name no language at all ("C"), which Intl refuses.
function language() {
  try { return Intl.getCanonicalLocales(navigator.language); } catch { return []; }
}

let comma = null; // asked of the browser when somebody types, for it takes a while
const hasComma = () => (comma ??= new Intl.NumberFormat(language()).formatToParts(0.5).some(({ type, value }) => type === "decimal" && value === ","));
const LISTS = ["lengths", "offers", "days", "lining", "fuel_blend", "blower_curve"]; // where a comma parts entries

const THOUSANDS = /(?<!\d)[1-9]\d{0,2},\d{3}(?!\d)/;

const POINTED = /^[1-9]\d{0,2}(?:\.\d{3})+(?:,\d+)?(?![\d.,/])[^.,]*$/; // 1.500, 1.500,5 m

// `1,05` as 1.05, where it cannot part thousands or the reader's language writes it so; anything else that holds a comma
// stays, to be refused. `1.500` of a reader whose language writes 1,5 may be thousands: as 1,500 Python asks which.
export function dotted(text) {
  if (POINTED.test(text) && hasComma()) return /,|\..*\./.test(text) ? text.replaceAll(".", "").replace(",", ".") : text.replace(".", ",");
  return /^[^.,]*\d,\d[^.,]*$/.test(text) && (!THOUSANDS.test(text) || hasComma()) ? text.replace(",", ".") : text;
}
const BARE = /^[^a-z"']*\d[^a-z"']*$/i;

// The unit beside a pressure of gas turns with supply and size, so a bare number goes with the one that stood there.
function read(key, text) {
  const { kind } = place(key).dataset;
  if (LISTS.includes(kind)) return kind !== "days" && !text.includes(".") && hasComma() ? text.replace(/(\d),(?=\d)/g, "$1.") : text;
  return dotted(text) + (kind === "gas_pressure" && BARE.test(text) ? ` ${place(key).querySelector(".unit").textContent}` : "");
}

// Hear one widget: at once when the field is left, after a pause while it is typed in.
export function listen(widget, change) {
  const key = widget.name;
  let pause = 0, half = false; // what was being typed has been sent: taken back to what stood there, it is sent again
  widget.properties.value.change.connect(() => {
    clearTimeout(pause);
    half = false;
    if (!filling.has(key)) change(key, read(key, widget.value));
  });
  widget.properties.value_input?.change.connect(() => {
    clearTimeout(pause);
    if (filling.has(key) || (widget.value_input === widget.value && !half)) return;
    pause = setTimeout(() => change(key, read(key, widget.value_input), !(half = widget.value_input !== widget.value)), 350);
  });
}

// What Bokeh's field does not know: which keys a phone offers, and that the arrow keys step a number.
export function wireField(key) {
  const field = fieldOf(key), at = place(key);
  if (!field?.matches("input")) return;
  field.inputMode = at.dataset.keypad;
  if (!at.querySelector(".step")) return;
  field.addEventListener("keydown", (event) => {
    const by = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (!by) return;
    event.preventDefault();
    send({ kind: "step", key, by });
  });
}

// The texts of the fields follow the units; the field that is being typed in is left alone.
export function fillFields(reply, typing) {
  showWhen(reply.fields);
  if (lent.length) showLent(reply.texts);
  showMine(reply.texts.mine ?? "");
  for (const key of Object.keys(reply.fields)) fillField(key, reply, typing);
}

// What was typed last is set too: Bokeh does not tell of the same text typed again. What is being typed beside is left alone.
function put(key, widget, text) {
  if (widget.value === text) return;
  filling.add(key);
  widget.value = text;
  if (widget.properties.value_input) widget.value_input = text;
  filling.delete(key);
}

export function fillField(key, reply, typing) {
  const at = place(key), field = reply.fields[key];
  if (!at) return;
  if (!at.querySelector(".about").hidden) makeFinger(at); // it was asked for before Python answered
  fillFinger(at, reply);
  if (field.layers) fillLayers(field);
  const range = at.querySelector(".range");
  if (range) changedOnly(range, field.range);
  const title = at.dataset.label + (field.unit ? `, ${field.unit}` : "");
  const still = at.querySelector(".still");
  if (still) changedOnly(still, at.matches(".choice") ? "" : field.text); // a choice has its words in the widget only
  if (!field.layers && key !== typing) changedOnly(at.querySelector(".unit"), field.unit);
  const widget = model(key);
  if (!widget || key === typing) return;
  if (widget.title !== title) widget.title = title;
  put(key, widget, field.text);
}

// What was typed and is not on the page yet, because a field is refused: each keeps its own text.
export function fillTyped(texts, typing) {
  const good = design.shown()?.texts;
  for (const key of good ? Object.keys(texts) : []) {
    const widget = model(key);
    if (!widget || key === typing || texts[key] === good[key] || read(key, widget.value) === texts[key]) continue;
    put(key, widget, texts[key]);
  }
}

const PARTS = ["0", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];

// For a thumb in a glove: a slider over the whole range, and for a length the fractions of a tape. Made when they are
// first asked for.
function makeFinger(at) {
  const key = at.dataset.setting, field = design.shown()?.fields[key];
  if (!field || at.querySelector(".finger")) return;
  const finger = make("div", "finger");
  if (field.marks) {
    const slider = make("input", "slide");
    slider.type = "range";
    slider.ariaLabel = `${at.dataset.label}, slider`;
    slider.addEventListener("input", () => send({ kind: "slide", key, mark: Number(slider.value) }));
    finger.append(slider);
  }
  if (at.dataset.length !== undefined) {
    const parts = make("div", "parts", ...PARTS.map((part) => {
      const press = button(part, () => send({ kind: "part", key, part }), "part");
      press.dataset.part = part;
      press.tabIndex = -1;
      return press;
    }));
    parts.role = "group";
    parts.ariaLabel = `${at.dataset.label}, fraction of an inch`;
    finger.append(parts);
  }
  if (!finger.hasChildNodes()) return;
  at.querySelector(".about").prepend(finger);
  fillFinger(at, design.shown());
}

function fillFinger(at, reply) {
  const slider = at.querySelector(".slide"), parts = at.querySelector(".parts"), field = reply.fields[at.dataset.setting];
  if (slider && field.marks) {
    [slider.min, slider.max, slider.value] = field.marks;
    slider.setAttribute("aria-valuetext", `${field.text} ${field.unit}`);
  }
  if (parts) parts.hidden = reply.units !== "in";
}

// Settings that no search and no cure may move, marked so.
function showMine(mine) {
  const kept = mine.split(",");
  for (const at of all("[data-setting]")) {
    const is = kept.includes(at.dataset.setting);
    at.toggleAttribute("data-mine", is);
    at.querySelector(".mine").setAttribute("aria-pressed", String(is));
  }
}

export const kept = () => (design.texts().mine ?? "").split(",").filter(Boolean);

function toggleMine(key) {
  mark(marked().filter((other) => other !== key));
  design.change("mine", (kept().includes(key) ? kept().filter((other) => other !== key) : [...kept(), key]).join(","));
}

// Mine no longer, so that a cure may move them.
export const release = (keys) => design.change("mine", kept().filter((key) => !keys.includes(key)).join(","));

// Of what is mine what nobody marked: sizes of what lay there, when a found design was opened in this tab.
const MARKED = "burnercalc-marked";
export const marked = () => { try { return (sessionStorage.getItem(MARKED) ?? "").split(",").filter(Boolean); } catch { return []; } };
export const mark = (keys) => { try { sessionStorage.setItem(MARKED, [...new Set(keys)].join(",")); } catch { /* closed */ } };

// What counts only under some choices of another setting is shown only then.
function showWhen(fields) {
  for (const at of all("[data-setting]")) at.hidden = Boolean(fields[at.dataset.setting].idle);
  for (const list of all(".more > .settings")) { // nothing is headed or counted that is not shown
    let head = null, shown = 0;
    if (list.querySelector(":scope > template")) continue; // not filled yet
    for (const row of list.children) {
      if (row.matches("h4")) (head = row).hidden = true;
      else if (!row.hidden) {
        shown += 1;
        if (head) head.hidden = false;
      }
    }
    changedOnly(list.parentElement.querySelector(".count"), String(shown));
  }
}

// A blower by its kind: Python says what is typical, and that is put into its settings. Its name stands there whenever
// they are as they were put, after an undo too.
let lent = [];

async function lend({ target: { value: of } }) {
  const reply = of ? await ask({ kind: "blower", settings: design.texts(), of }) : null;
  if (reply && !reply.ok) return refuse(reply.errors, "");
  if (reply) await design.take({ ...design.texts(), ...reply.texts });
  const { texts } = design.shown();
  lent = lent.filter((one) => !stands(one, texts));
  if (reply) lent.push({ of, words: reply.words, texts: Object.keys(reply.texts).map((key) => [key, texts[key]]) });
  showLent(texts);
}

const short = (text) => text?.replaceAll(" ", ""); // as an undo brings it, from a link

const stands = (one, texts) => one.texts.every(([key, text]) => short(texts[key]) === short(text));

function showLent(texts) {
  const now = lent.find((one) => stands(one, texts));
  byId("blower-words").hidden = !now;
  changedOnly(byId("blower-words"), now?.words ?? "");
  byId("blower-kinds").value = now?.of ?? "";
}

let said = ""; // what of a refusal stands in the notice

export function clearRefusals() {
  if (said && byId("notice-text").textContent === said) notice("");
  for (const refused of all("[data-refused]")) {
    delete refused.dataset.refused;
    refused.querySelector(".refused").hidden = true;
    fieldOf(refused.dataset.setting)?.removeAttribute("aria-invalid");
  }
}

// A button for each value that works instead; more than one where the text may be read in two ways.
const offers = ({ setting, nearest, offer }) => (nearest ? nearest.split(" or ") : []).flatMap((text, at) => [" ", button(`Take ${offer.split(" or ")[at]}`, () => design.change(setting, text), "small")]);

// While a field is typed in, half a number is no mistake yet: only the others are marked.
export function refuse(errors, typing) {
  clearRefusals();
  const loose = [];
  for (const error of errors) {
    if (typing && error.setting === typing) continue;
    const at = place(error.setting);
    if (!at) { loose.push(error); continue; }
    at.dataset.refused = "";
    const words = at.querySelector(".refused");
    words.replaceChildren(error.text, ...offers(error));
    words.hidden = false;
    fieldOf(error.setting)?.setAttribute("aria-invalid", "true");
    if (chapterOf(at) !== root.dataset.chapter || at.closest("details:not([open])")) loose.push(error);
  }
  said = loose.map(({ text }) => text).join(" ");
  notice(said);
  const [first] = all(".chapter [data-refused]").filter((at) => at.getClientRects().length);
  if (first && !typing && (first.contains(document.activeElement) || document.activeElement === document.body)) clear(first);
  byId("notice-offers").replaceChildren(...loose.filter(({ setting }) => place(setting)).flatMap(offers));
}

// A tap on the name shows what the setting means, its range, slider and fractions; another takes them away.
function unfold(at) {
  const press = at.querySelector(".name"), about = at.querySelector(".about");
  about.hidden = !about.hidden;
  press.setAttribute("aria-expanded", String(!about.hidden));
  if (about.hidden) return;
  for (const other of all(".trio .name[aria-expanded=true]")) if (other !== press && at.closest(".trio")) other.click(); // they would lie on each other
  makeFinger(at);
  if (about.dataset.explained !== undefined) return;
  about.dataset.explained = "";
  all(".help", about).forEach(explain);
  const choices = all("option", fieldOf(at.dataset.setting) ?? at).map(({ textContent }) => textContent);
  about.querySelector(".help")?.after(...explainLabel([at.dataset.label, ...choices].join("; "), about));
}

// A field of a setting that is entered has its whole text selected, so that typing takes its place; a second tap places
// the caret, at the end where the browser lets the selection stand. A tap puts the caret only after the focus, so it is
// heard too.
let entered = null; // by the tap that is under way
let held = null; // by the tap before

function enter(event) {
  const [field] = event.composedPath();
  entered = field.matches?.("input:is([type=text], :not([type]))") && event.target.closest("[data-setting]") ? field : null;
  entered?.select();
}

function tapped(event) {
  const [field] = event.composedPath(), end = field.value?.length;
  const whole = field.selectionStart === 0 && field.selectionEnd === end;
  if (field === entered && field.selectionStart === field.selectionEnd) field.setSelectionRange(0, end);
  else if (!entered && field === held && whole && event.detail === 1 && event.pointerType === "touch") field.setSelectionRange(end, end);
  held = entered;
  entered = null;
}

// Scroll what has the focus, or a refusal with its offers, out from under what always stays in sight.
const uncover = ({ target }) => !target.closest("header, nav, dialog, #bars") && clear(target);

function clear(target) {
  const covers = ["header.top", "#chapters"].map((name) => document.querySelector(name).getBoundingClientRect());
  const above = Math.max(0, ...covers.filter(({ top }) => top < innerHeight / 2).map(({ bottom }) => bottom)) + 8;
  const below = Math.min(innerHeight, ...covers.filter(({ top }) => top > innerHeight / 2).map(({ top }) => top)) - byId("bars").offsetHeight - 8;
  const { top, bottom } = target.getBoundingClientRect();
  if (bottom - top > below - above || top < above) scrollBy(0, top - above);
  else if (bottom > below) scrollBy(0, bottom - below);
}

export function wireSettings(given) {
  design = given;
  addEventListener("focusin", uncover);
  addEventListener("focusin", enter);
  addEventListener("click", tapped);
  wireLayers((key, rows) => { // the rows are those of the last good text, whatever is in the field
    const { [key]: typed, ...others } = design.texts(), good = design.shown()?.texts[key];
    return send({ kind: "layers", key, rows, settings: good === undefined ? others : { ...others, [key]: good } });
  }, dotted);
  byId("blower-kinds").addEventListener("change", lend);
  byId("job").addEventListener("click", pressed);
}

// A button of a setting; heard here, because most settings come into the page after the first paint.
function pressed({ target }) {
  const press = target.closest("button"), at = press?.closest("[data-setting]");
  if (!at) return;
  const key = at.dataset.setting;
  if (press.matches(".step")) send({ kind: "step", key, by: Number(press.dataset.by) });
  else if (press.matches(".name")) unfold(at);
  else if (press.matches(".mine")) toggleMine(key);
  else if (press.matches(".word")) design.change(key, press.dataset.word);
}

// What is typed and refused, and so in no link, no kept design and no file: said where one is made.
export function notTaken(words = "Without what is refused") {
  const names = [...all("[data-refused]")].map((at) => at.querySelector(".name").textContent);
  return names.length ? `${words}: ${names.join(", ")}.` : "";
}

// The texts with the last good one of each other field that is refused, which is not to hold this one up.
function besideRefused(key) {
  const settings = { ...design.texts() }, good = design.shown()?.texts ?? {};
  for (const { dataset: { setting } } of all("[data-refused]")) {
    if (setting === key) continue;
    delete settings[setting];
    if (setting in good) settings[setting] = good[setting];
  }
  return settings;
}

// A move that Python works out: a step, a mark of a slider, a fraction.
async function send(request) {
  const reply = await ask({ settings: besideRefused(request.key), ...request });
  if (reply.ok) await design.change(reply.key, reply.text);
  else refuse(reply.errors, "");
}
