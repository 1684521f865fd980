// The settings: Panel's widgets with their step buttons, sliders and tape fractions, and what was refused.
import { all, button, byId, changedOnly, make, notice } from "./page.mjs";
import { ask } from "./python.mjs";
import { model } from "./models.mjs";

let design = null;
const filling = new Set(); // keys of widgets that the page itself is filling

const place = (key) => byId(`set-${key}`);
const input = (key) => byId(`root-${key}`)?.firstElementChild?.shadowRoot?.querySelector("input, select");

// Hear one widget: at once when the field is left, after a pause while it is typed in.
export function listen(widget, change) {
  const key = widget.name;
  let pause = 0;
  widget.properties.value.change.connect(() => {
    clearTimeout(pause);
    if (!filling.has(key)) change(key, widget.value);
  });
  widget.properties.value_input?.change.connect(() => {
    clearTimeout(pause);
    if (filling.has(key) || widget.value_input === widget.value) return;
    pause = setTimeout(() => change(key, widget.value_input, false), 350);
  });
}

export function setKeypad(key) {
  const field = input(key);
  if (field?.matches("input")) field.inputMode = place(key).dataset.keypad;
}

// The texts of the fields follow the units; the field that is being typed in is left alone.
export function fillFields(reply, typing) {
  showWhen(reply.fields);
  for (const key of Object.keys(reply.fields)) fillField(key, reply, typing);
}

export function fillField(key, reply, typing) {
  const at = place(key), field = reply.fields[key];
  if (!at) return;
  if (at.dataset.active !== undefined) makeFinger(at); // it was in hand before Python answered
  fillFinger(at, reply);
  const range = at.querySelector(".range");
  if (range) changedOnly(range, field.range);
  const title = at.dataset.label + (field.unit ? `, ${field.unit}` : "");
  const still = at.querySelector(".still");
  if (still) still.replaceChildren(`${title}: `, make("b", "", field.text));
  const widget = model(key);
  if (!widget || key === typing) return;
  filling.add(key);
  if (widget.title !== title) widget.title = title;
  if (widget.value !== field.text) widget.value = field.text;
  filling.delete(key);
}

const PARTS = ["0", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];

// For a thumb in a glove: a slider over the whole range, and for a length the fractions of a tape. Made when the setting
// is first taken in hand.
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
  at.querySelector(".field").after(finger);
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

// What counts only under one choice of another setting is shown only then.
function showWhen(fields) {
  for (const at of all("[data-when]")) {
    const [key, value] = at.dataset.when.split("=");
    at.hidden = fields[key].text !== value;
  }
}

let said = ""; // what of a refusal stands in the notice

export function clearRefusals() {
  if (said && byId("notice-text").textContent === said) notice("");
  for (const refused of all("[data-refused]")) {
    delete refused.dataset.refused;
    refused.querySelector(".refused").hidden = true;
    input(refused.dataset.setting)?.removeAttribute("aria-invalid");
  }
}

// While a field is typed in, half a number is no mistake yet: only the others are marked.
export function refuse(errors, typing) {
  clearRefusals();
  const loose = [];
  for (const error of errors) {
    if (typing && error.setting === typing) continue;
    const at = place(error.setting);
    if (!at) { loose.push(error.text); continue; }
    at.dataset.refused = "";
    const words = at.querySelector(".refused");
    words.textContent = error.text;
    words.hidden = false;
    input(error.setting)?.setAttribute("aria-invalid", "true");
    if (!at.closest(".chapter").open) loose.push(error.text);
  }
  said = loose.join(" ");
  notice(said);
}

// The setting in hand shows its slider and fractions. The one left folds them away once the finger is up, so that
// nothing moves between press and release; then the page is scrolled by as much as what is in hand has moved.
function followFocus() {
  let active = null;
  let pressed = Promise.resolve();
  addEventListener("pointerdown", () => {
    pressed = new Promise((resolve) => {
      for (const end of ["pointerup", "pointercancel"]) addEventListener(end, () => setTimeout(resolve), { once: true });
    });
  }, true);
  addEventListener("focusin", async ({ target }) => {
    const at = target.closest("[data-setting]");
    if (!at || at === active) return;
    const left = active;
    active = at;
    at.dataset.active = "";
    makeFinger(at);
    await pressed;
    if (at !== active) return;
    const before = at.getBoundingClientRect().top;
    if (left) delete left.dataset.active;
    scrollBy(0, at.getBoundingClientRect().top - before);
    uncover(target);
  });
}

// Scroll what has the focus out from under what always stays in sight.
function uncover(target) {
  const sight = document.querySelector(".sight");
  const covered = sight.offsetWidth > innerWidth / 2 && getComputedStyle(sight).position === "sticky" ? sight.getBoundingClientRect().bottom : 0;
  const { top, bottom } = target.getBoundingClientRect();
  if (top < covered + 8) scrollBy(0, top - covered - 8);
  const foot = innerHeight - byId("bars").offsetHeight;
  if (top >= covered + 8 && bottom > foot - 8) scrollBy(0, bottom - foot + 8);
}

export function wireSettings(given) {
  design = given;
  followFocus();
  for (const at of all("[data-setting]")) {
    const key = at.dataset.setting;
    for (const press of all(".step", at)) press.addEventListener("click", () => send({ kind: "step", key, by: Number(press.dataset.by) }));
    for (const press of all(".word", at)) press.addEventListener("click", () => design.change(key, press.dataset.word));
  }
}

// A move that Python works out: a step, a mark of a slider, a fraction.
async function send(request) {
  const reply = await ask({ settings: design.texts(), ...request });
  if (reply.ok) await design.change(reply.key, reply.text);
  else refuse(reply.errors, "");
}

// Bring a setting into view, open its chapter, and mark it.
export function focusSetting(key) {
  const at = place(key);
  if (!at) return;
  at.closest(".chapter").open = true;
  at.closest("details.more")?.setAttribute("open", "");
  requestAnimationFrame(() => {
    at.scrollIntoView({ block: "center" });
    at.dataset.marked = "";
    setTimeout(() => { delete at.dataset.marked; }, 5000);
    (input(key) ?? at.querySelector("button"))?.focus({ preventScroll: true });
  });
}

