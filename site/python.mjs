// Asks Python in its worker; every answer is a promise. A runtime that breaks (WebKit's WebAssembly has done so) is started
// anew and asked again what it has not answered; breaking twice without an answer in between ends it.
let worker = null;
let listener = () => {};
let last = 0;
let breaks = 0; // since the last answer
const waiting = new Map(); // what is asked and not answered: id to {request, resolve}

// Hear (stage, trouble): the worker's stages while starting, "again" before another start, and trouble when it is over.
export function onStage(hear) {
  listener = hear;
}

export function start() {
  try {
    worker = new Worker("./worker.mjs", { type: "module" });
  } catch (error) {
    return listener("", String(error));
  }
  worker.onerror = (event) => broke(event.message || "this browser is too old for it");
  worker.onmessage = ({ data }) => {
    if (data.kind === "stage") return listener(data.name, "");
    if (data.kind === "failed") return broke(data.text);
    breaks = 0;
    waiting.get(data.id)?.resolve(data);
    waiting.delete(data.id);
  };
  for (const [id, { request }] of waiting) worker.postMessage({ id, ...request });
}

function broke(trouble) {
  worker.terminate();
  breaks += 1;
  if (breaks > 1) return listener("", trouble);
  listener("again", "");
  start();
}

export function ask(request) {
  return new Promise((resolve) => {
    const id = ++last;
    waiting.set(id, { request, resolve });
    worker?.postMessage({ id, ...request });
  });
}
