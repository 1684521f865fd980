// Handles on the face: the body's edges, the lip, the outer row of ports. Python says where they stand and what a place
// means; this only tells it where the finger is. The arrow keys in the setting's field do the same without a pointer.
import { byId, changedOnly, make } from "./page.mjs";
import { ask } from "./python.mjs";
import { keepView, model } from "./models.mjs";

let design = null;
let grips = []; // Python's, of the face that is drawn
let held = null; // {grip, frame, at, text, over}: the handle that is held, where the face stood, the place not asked about yet, the text it came to
const box = make("div", "grips");
let heard = false; // fingers and zoom

export function wireDrag(given) {
  design = given;
}

// The face has been drawn.
export function showGrips(drawing) {
  grips = drawing.grips;
  if (box.children.length !== grips.length) box.replaceChildren(...grips.map(() => make("span")));
  [...box.children].forEach((handle, i) => { handle.dataset.screen = grips[i].screen; handle.dataset.key = grips[i].key; });
  if (!box.isConnected) byId("live-face").append(box); // the drawing that is put into the page clears its place once
  if (!heard) {
    heard = true;
    box.addEventListener("pointerdown", down);
    box.addEventListener("pointermove", move);
    for (const end of ["pointerup", "pointercancel"]) box.addEventListener(end, up);
    for (const name of ["face-x", "face-y"]) model(name).properties.end.change.connect(placeGrips);
  }
  placeGrips();
}

// Put the handles where their lines stand now: an enlarged face is moved and zoomed.
function placeGrips() {
  const x = model("face-x"), y = model("face-y");
  grips.forEach((grip, i) => {
    box.children[i].style.left = `${100 * (grip.x - x.start) / (x.end - x.start)}%`;
    box.children[i].style.top = `${100 * (y.end - grip.y) / (y.end - y.start)}%`;
  });
}

function down(event) {
  const grip = grips[[...box.children].indexOf(event.target)];
  if (!grip || !event.isPrimary || event.button !== 0 || held || !design.shown()) return;
  held = { grip, frame: box.getBoundingClientRect(), at: null, text: null, over: false, asking: false };
  event.target.setPointerCapture(event.pointerId);
  stay();
}

// A verdict above that takes a line more moves the face: the page goes after it, so that it stays under the finger.
function stay() {
  if (!held) return;
  const moved = box.getBoundingClientRect().top - held.frame.top;
  if (Math.abs(moved) >= 1 && !box.closest(".large")) scrollBy({ top: moved, behavior: "instant" });
  requestAnimationFrame(stay);
}

function move(event) {
  if (!held || held.over) return;
  const { left, top, width, height } = held.frame, x = model("face-x"), y = model("face-y");
  held.at = held.grip.screen === "x" ? x.start + (event.clientX - left) / width * (x.end - x.start) : y.end - (event.clientY - top) / height * (y.end - y.start);
  keepView(true);
  follow(held);
}

// Ask what the newest place means, one question at a time; the page follows as while somebody types.
async function follow(mine) {
  if (mine.asking) return;
  mine.asking = true;
  while (mine.at !== null) {
    const { at, grip: { key, axis } } = mine;
    mine.at = null;
    const reply = await ask({ kind: "drag", settings: design.texts(), key, axis, at });
    if (!reply.ok) continue;
    changedOnly(byId("port-words"), reply.words);
    if (reply.text === mine.text) continue;
    mine.text = reply.text;
    design.change(key, reply.text, false);
  }
  mine.asking = false;
  if (!mine.over) return;
  held = null;
  keepView(false);
  if (mine.text !== null) design.change(mine.grip.key, mine.text); // one step to undo
}

function up() {
  if (!held || held.over) return;
  held.over = true;
  follow(held);
}
