// Long work, in a second worker beside the page's own: that one goes on answering. Asked for when it is first needed;
// stopping ends it, and the next question starts another.
import { root } from "./page.mjs";

let worker = null;
let asked = 0;
let waiting = null; // {id, resolve, hear} of the one question that is asked

// Ask as `ask` of python.mjs does; `hear` is told how far it has come.
export function askAside(request, hear = () => {}) {
  stopAside();
  worker ??= launch();
  return new Promise((resolve) => {
    waiting = { id: ++asked, resolve, hear };
    worker.postMessage({ id: asked, ...request });
  });
}

// Start it, as it will soon be asked.
export function warm() {
  worker ??= launch();
}

// Give up what is asked; its answer says that it was stopped.
export function stopAside() {
  if (!waiting) return;
  worker.terminate();
  worker = null;
  answer({ ok: false, stopped: true, errors: [] });
}

function answer(reply) {
  const { resolve } = waiting;
  waiting = null;
  resolve(reply);
}

function broke(text) {
  worker?.terminate();
  worker = null;
  if (waiting) answer({ ok: false, errors: [{ setting: "", text: `The calculator broke off (${text}). Try again.` }] });
}

function launch() {
  const made = new Worker("./worker.mjs", { type: "module" });
  made.onerror = (event) => { if (made === worker) broke(event.message || "it could not be loaded"); };
  made.onmessage = ({ data }) => {
    if (made !== worker) return;
    if (data.kind === "failed") broke(data.text);
    else if (data.build !== undefined && data.build !== root.dataset.build) broke("it is of another version than the page; reload the page");
    else if (data.kind === "progress" && data.of === waiting?.id) waiting.hear(data);
    else if (data.id !== undefined && data.id === waiting?.id) answer(data);
  };
  return made;
}
