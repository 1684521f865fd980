// Asks Python in its worker; every answer is a promise.
let worker = null;
let listener = () => {};
let last = 0;
const waiting = new Map();

export function onStage(hear) {
  listener = hear;
}

export function start() {
  try {
    worker = new Worker("./worker.mjs", { type: "module" });
  } catch (error) {
    return listener("", String(error));
  }
  worker.onerror = (event) => listener("", event.message || "this browser is too old for it");
  worker.onmessage = ({ data }) => {
    if (data.kind === "stage") return listener(data.name, "");
    if (data.kind === "failed") return listener(data.stage, data.text);
    waiting.get(data.id)?.(data);
    waiting.delete(data.id);
  };
}

export function ask(request) {
  return new Promise((resolve) => {
    const id = ++last;
    waiting.set(id, resolve);
    worker.postMessage({ id, ...request });
  });
}
