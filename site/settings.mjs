// The settings: Panel's widgets with their step buttons, sliders and tape fractions, and what was refused.
import { all, byId, changedOnly, notice } from "./page.mjs";
import { ask } from "./python.mjs";
import { model } from "./models.mjs";

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
  const field = input(key);
  if (field?.matches("input")) field.inputMode = place(key).dataset.keypad;
}

// The texts of the fields follow the units; the field that is being typed in is left alone.
export function fillFields(reply, typing) {
  showWhen(reply.fields);
  for (const [key, field] of Object.entries(reply.fields)) {
    const slider = place(key)?.querySelector(".slide");
    if (slider && field.marks) {
      [slider.min, slider.max, slider.value] = field.marks;
      slider.setAttribute("aria-valuetext", `${field.text} ${field.unit}`);
    }
    const range = place(key)?.querySelector(".range");
    if (range) changedOnly(range, field.range);
    const parts = place(key)?.querySelector(".parts");
    if (parts) parts.hidden = reply.units !== "in";
    const widget = model(key);
    if (!widget || key === typing) continue;
    const title = place(key).dataset.label + (field.unit ? `, ${field.unit}` : "");
    filling.add(key);
    if (widget.title !== title) widget.title = title;
    if (widget.value !== field.text) widget.value = field.text;
    filling.delete(key);
  }
}

// What counts only under one choice of another setting is shown only then.
function showWhen(fields) {
  for (const at of all("[data-when]")) {
    const [key, value] = at.dataset.when.split("=");
    at.hidden = fields[key].text !== value;
  }
}

export function clearRefusals() {
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
    if (error.setting === typing) continue;
    const at = place(error.setting);
    if (!at) { loose.push(error.text); continue; }
    at.dataset.refused = "";
    const words = at.querySelector(".refused");
    words.textContent = error.text;
    words.hidden = false;
    input(error.setting)?.setAttribute("aria-invalid", "true");
    if (!at.closest(".chapter").open) loose.push(error.text);
  }
  notice(loose.join(" "));
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
  else if (bottom > innerHeight - 8) scrollBy(0, bottom - innerHeight + 8);
}

export function wireSettings(design) {
  followFocus();
  const send = async (request) => {
    const reply = await ask({ settings: design.texts(), ...request });
    if (reply.ok) await design.change(reply.key, reply.text);
    else refuse(reply.errors, "");
  };
  for (const at of all("[data-setting]")) {
    const key = at.dataset.setting;
    for (const press of all(".step", at)) press.addEventListener("click", () => send({ kind: "step", key, by: Number(press.dataset.by) }));
    for (const press of all(".word", at)) press.addEventListener("click", () => design.change(key, press.dataset.word));
    for (const press of all(".part", at)) press.addEventListener("click", () => send({ kind: "part", key, part: press.dataset.part }));
    at.querySelector(".slide")?.addEventListener("input", (event) => send({ kind: "slide", key, mark: Number(event.target.value) }));
  }
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

