// The lining as rows, one a layer, the one at the fire first: an editor of the one text that Python reads and writes.
import { all, byId, root } from "./page.mjs";

const KEY = "lining", MOST = 6; // layers that Python takes
let move = null, dotted = null; // send the rows to Python, which makes the text of them; read a decimal comma

const home = () => byId(`set-${KEY}`);
const rows = () => all(".layer", home());
const parts = (row) => [row.querySelector("select"), row.querySelector("input"), row.querySelector(".up"), row.querySelector(".out")];

// What stands in the rows, each with the place that it had when it was filled.
const written = () => rows().map((row) => [parts(row)[0].value, dotted(parts(row)[1].value), Number(row.dataset.was)]);

function wire(row) {
  const [material, thickness, up, out] = parts(row), { value } = material;
  material.replaceChildren(...byId("layer").content.cloneNode(true).querySelectorAll("option")); // the page was built with one
  material.value = value;
  material.addEventListener("change", () => move(written()));
  thickness.addEventListener("input", () => { thickness.dataset.typing = ""; });
  thickness.addEventListener("change", () => { delete thickness.dataset.typing; move(written()); });
  row.addEventListener("keydown", (event) => { // two stops a layer for the keyboard: what its buttons do is on keys
    const press = event.altKey && event.key === "ArrowUp" ? up : event.target === material && event.key === "Delete" ? out : null;
    if (!press) return;
    event.preventDefault();
    if (!press.disabled) press.click();
  });
  up.addEventListener("click", async () => {
    const next = written(), at = rows().indexOf(row);
    next.splice(at - 1, 2, next[at], next[at - 1]);
    await move(next);
    focus(at - 1, up);
  });
  out.addEventListener("click", async () => {
    const next = written(), at = rows().indexOf(row);
    next.splice(at, 1);
    await move(next);
    focus(Math.min(at, rows().length - 1), out);
  });
}

// The button that was pressed, in the row where it is now; where it is dead, or keys did it, the row's list.
function focus(at, pressed) {
  const found = parts(rows()[at]), same = found.find((part) => part.className === pressed.className);
  (same.disabled || document.activeElement !== pressed ? found[0] : same).focus();
}

export function fillLayers({ layers, layer_unit: unit }) {
  const list = home().querySelector(".layers");
  home().querySelector(".unit").textContent = `fire side first, ${unit}`;
  while (rows().length > layers.length) rows().at(-1).remove();
  while (rows().length < layers.length) {
    list.append(byId("layer").content.firstElementChild.cloneNode(true));
    wire(rows().at(-1));
  }
  rows().forEach((row, at) => {
    const [material, thickness, up, out] = parts(row), name = `Layer ${at + 1}`;
    row.dataset.was = at;
    for (const option of all("option[data-metric]", row)) option.textContent = option.dataset[root.dataset.units === "mm" ? "metric" : "inches"];
    material.value = layers[at][0];
    if (thickness.dataset.typing === undefined) thickness.value = layers[at][1];
    for (const part of [material, thickness]) part.disabled = false;
    up.disabled = at === 0;
    out.disabled = layers.length === 1;
    material.ariaLabel = `${name}: material`;
    thickness.ariaLabel = `${name}: thickness, ${unit}`;
    up.ariaLabel = `${name}: nearer to the fire`;
    out.ariaLabel = `${name}: remove`;
  });
  home().querySelector(".add").disabled = layers.length >= MOST;
}

export function wireLayers(send, decimal) {
  dotted = decimal;
  move = (next) => send(KEY, next);
  rows().forEach(wire);
  home().querySelector(".add").addEventListener("click", async () => {
    await move([...written(), ["", "", null]]);
    parts(rows().at(-1))[0].focus();
  });
}
