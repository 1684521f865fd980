// Drag a line of the face: the body's edge, the lip, the outer row of ports. Python says which lines there are, where they
// stand and what a place means; this only tells it where the finger is. The step buttons do the same without a pointer.
import { byId } from "./page.mjs";
import { ask } from "./python.mjs";
import { keepView, model } from "./models.mjs";

const REACH_PX = 16; // how near to a line a finger must be
const STILL_PX = 6; // what is no drag yet but a tap
let design = null;
let grips = [];
let held = null; // {key, axis, screen, from, moved, text}: the line that is held
let asking = false, last = null;

export function takeGrips(drawings) {
  if (drawings.face?.grips) grips = drawings.face.grips;
}

// Where a pointer is on the face [mm].
function placeOf({ clientX, clientY }) {
  const box = byId("live-face").getBoundingClientRect(), x = model("face-x"), y = model("face-y");
  const scale = (x.end - x.start) / box.width;
  return { x: x.start + (clientX - box.left) * scale, y: y.end - (clientY - box.top) * scale, scale };
}

// The line under the pointer. A finger on the small face moves only what goes sideways: up and down it scrolls the page.
function gripAt(event) {
  const at = placeOf(event), large = byId("figure-face").classList.contains("large");
  const near = grips.filter(([, screen]) => large || event.pointerType === "mouse" || screen === "x")
    .map((grip) => ({ grip, off: Math.abs(Math.abs(at[grip[1]]) - grip[3]) / at.scale }))
    .filter(({ grip, off }) => off < REACH_PX && within(at, grip[1])).sort((a, b) => a.off - b.off)[0];
  return near?.grip;
}

// Beside a line is as good as on it, but not beyond its ends.
function within(at, screen) {
  const other = screen === "x" ? "y" : "x";
  const ends = grips.filter((grip) => grip[1] === other).map((grip) => grip[3]);
  return !ends.length || Math.abs(at[other]) <= Math.max(...ends) + REACH_PX * at.scale;
}

function down(event) {
  const grip = event.isPrimary && event.button === 0 && model("face-x") && design.shown() && gripAt(event);
  if (!grip) return;
  const [key, screen, axis] = grip;
  held = { key, screen, axis, from: [event.clientX, event.clientY], moved: false, text: null };
}

function move(event) {
  if (!held) return;
  event.stopPropagation(); // Bokeh would move the picture
  held.moved ||= Math.hypot(event.clientX - held.from[0], event.clientY - held.from[1]) > STILL_PX;
  if (!held.moved) return;
  keepView(true);
  last = placeOf(event)[held.screen];
  follow(held);
}

// Ask what the newest place means, one question at a time; the page follows as while somebody types.
async function follow(mine) {
  if (asking) return;
  asking = true;
  while (last !== null) {
    const at = last;
    last = null;
    const reply = await ask({ kind: "drag", settings: design.texts(), key: mine.key, axis: mine.axis, at });
    if (reply.ok && reply.text !== mine.text) {
      mine.text = reply.text;
      design.change(mine.key, reply.text, false);
    }
  }
  asking = false;
  if (!mine.over) return;
  keepView(false);
  if (mine.text !== null) design.change(mine.key, mine.text); // one step to undo
}

function up(event) {
  const mine = held;
  held = null;
  if (!mine?.moved) return;
  event.stopPropagation();
  mine.over = true;
  follow(mine);
}

export function wireDrag(given) {
  design = given;
  const place = byId("live-face");
  place.addEventListener("pointerdown", down, true);
  for (const [name, hear] of [["pointermove", move], ["pointerup", up], ["pointercancel", up]]) addEventListener(name, hear, true);
  place.addEventListener("pointermove", (event) => { // say with the mouse what can be dragged
    if (event.pointerType === "mouse" && !held && model("face-x")) place.dataset.grip = gripAt(event)?.[1] ?? "";
  }, true);
}
