// Ports of the face: one that is tapped says where it is and what flows through it; "Drilled" marks it. Which ports
// are drilled is kept on this device under the name of the face's holes, so it belongs to every design with these holes.
import { byId, changedOnly } from "./page.mjs";
import { model } from "./models.mjs";

const KEPT = "burnercalc-drilled";
const MOST = 30; // faces that marks are kept of
const REACH_PX = 16; // how far beside a port a finger may be
let holes = ""; // the name of the face that is drawn
let ports = []; // rows of its ports among the circles
let chosen = null; // which of them is looked at
let drilled = new Set();
let cleared = null; // what was marked before Clear
let kept = true; // whether this browser keeps it

const read = () => { try { return JSON.parse(localStorage.getItem(KEPT)) ?? {}; } catch { return {}; } };

function keep() {
  const { [holes]: _, ...others } = read();
  const faces = Object.entries(others).slice(-MOST + 1);
  if (drilled.size) faces.push([holes, [...drilled]]);
  try { localStorage.setItem(KEPT, JSON.stringify(Object.fromEntries(faces))); kept = true; } catch { kept = false; }
}

export function wirePorts() {
  byId("live-face").addEventListener("click", tap);
  const press = byId("drilled");
  press.addEventListener("click", () => {
    mark(chosen ?? 0);
    const next = ports.findIndex((_, i) => !drilled.has(i));
    if (drilled.has(chosen ?? 0) && next >= 0) chosen = next;
    show();
  });
  press.addEventListener("keydown", (event) => {
    const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (!by) return;
    event.preventDefault();
    chosen = ((chosen ?? -1) + by + ports.length) % ports.length;
    show();
  });
  byId("undrill").addEventListener("click", () => {
    [drilled, cleared] = cleared ? [new Set(cleared), null] : [new Set(), [...drilled]];
    keep();
    show();
  });
}

// The face has been drawn, perhaps another one than before.
export function showPorts(drawing) {
  ports = drawing.circles.words.flatMap((words, i) => (words ? [i] : []));
  if (drawing.holes !== holes) {
    holes = drawing.holes;
    chosen = cleared = null;
    const marks = read()[holes];
    drilled = new Set(Array.isArray(marks) ? marks.filter((each) => each in ports) : []);
    changedOnly(byId("port-words"), "");
  }
  show();
}

function mark(port) {
  if (!drilled.delete(port)) drilled.add(port);
  cleared = null;
  keep();
}

const scaleOf = () => (model("face-x").end - model("face-x").start) / (byId("live-face").clientWidth || 300); // mm a px

// The port under a finger, or nearest beside it.
function tap({ clientX, clientY }) {
  const box = byId("live-face").getBoundingClientRect(), x = model("face-x"), y = model("face-y"), source = model("face-circles");
  if (!source || !ports.length) return;
  const scale = scaleOf(), { data } = source;
  const away = ports.map((i) => Math.hypot(data.x[i] - x.start - (clientX - box.left) * scale, y.end - data.y[i] - (clientY - box.top) * scale) - data.r[i]);
  const near = away.indexOf(Math.min(...away));
  if (away[near] > REACH_PX * scale) return;
  chosen = near;
  show();
}

function show() {
  const source = model("face-circles"), { data } = source, rows = [...drilled].map((port) => ports[port]);
  source.selected.indices = chosen === null ? [] : [ports[chosen]];
  model("done-face").size = { value: Math.min(12, Math.max(6, 1.3 * (data.r[ports[0]] ?? 0) / scaleOf())) };
  model("face-drilled").data = { x: rows.map((i) => data.x[i]), y: rows.map((i) => data.y[i]) };
  if (chosen !== null) changedOnly(byId("port-words"), data.words[ports[chosen]]);
  byId("drilling").hidden = chosen === null && !drilled.size && !cleared;
  byId("drilled").setAttribute("aria-pressed", String(drilled.has(chosen)));
  changedOnly(byId("drilled-count"), `${drilled.size} of ${ports.length} drilled${kept ? "" : "; this browser keeps no marks"}`);
  byId("undrill").hidden = !drilled.size && !cleared;
  changedOnly(byId("undrill"), cleared ? "Bring back" : "Clear");
}
