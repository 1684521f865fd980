// Runs burnercalc in Pyodide, off the page's thread.
//
// Posts while starting   {kind: "stage", name, build}      loadRuntime, loadPackage, selfCheck, ready
// Takes                  {id, kind, ...}                   what burnercalc.worker.handle understands; also before ready
// Posts                  {kind: "begun", of}               the id of what it is at from now on
//                        {kind: "progress", of, ...}       how far that has come, as burnercalc.worker tells it
//                        {id, ...reply}                    its answer
//                        {id, dropped: true}               a "solve" or "face" that a newer one has replaced
//                        {id, ok: false, errors: [...]}    Python raised; the text is its last line
//                        {kind: "failed", stage, text}     Python cannot start, or has died; nothing more will come
const NEWEST_ONLY = ["solve", "face"]; // of these kinds only the newest request is worth computing
const BUILD = ""; // filled in by the build
const pending = [];
let handle = null; // takes JSON text, gives JSON text; null until ready
let stage = "";

self.onmessage = ({ data }) => {
  if (NEWEST_ONLY.includes(data.kind)) {
    for (let i = pending.length - 1; i >= 0; i--) {
      if (pending[i].kind === data.kind) self.postMessage({ id: pending.splice(i, 1)[0].id, dropped: true });
    }
  }
  pending.push(data);
  next();
};

// One message a turn of the event loop, so that what arrived during a computation is queued before the next one.
function next() {
  if (handle && pending.length) setTimeout(answer);
}

function answer() {
  const message = pending.shift();
  if (!message) return; // answered, or dropped for a newer one
  self.postMessage({ kind: "begun", of: message.id });
  try {
    const reply = JSON.parse(handle(JSON.stringify(message), (text) => tell(message.id, JSON.parse(text))));
    if (reply?.ok === undefined) return fail("no answer");
    self.postMessage({ id: message.id, ...reply });
  } catch (error) {
    if (error.type === undefined) return fail(error); // not a Python exception: the runtime itself broke
    self.postMessage({ id: message.id, ok: false, errors: [{ field: "", text: lastLine(error) }] });
  }
  next();
}

let told = 0;

// Counts come in hundreds a second, more than anybody reads.
function tell(of, news) {
  if (news.done !== undefined && performance.now() < told + 100) return;
  told = performance.now();
  self.postMessage({ kind: "progress", of, ...news });
}

function lastLine(error) {
  return String(error.message ?? error).trim().split("\n").at(-1);
}

function fail(error) {
  handle = null;
  self.onmessage = null;
  self.postMessage({ kind: "failed", stage, text: lastLine(error) });
}

function enter(name) {
  stage = name;
  self.postMessage({ kind: "stage", name, build: BUILD });
}

// Where two JSON values differ, in words; "" if they agree. Numbers may differ by rounding.
function difference(got, expected, where) {
  if (typeof expected === "number" && typeof got === "number") {
    return Math.abs(got - expected) <= 1e-9 * Math.max(Math.abs(got), Math.abs(expected)) ? "" :
      `${where} is ${got} here and ${expected} in the page`;
  }
  if (expected === null || typeof expected !== "object" || got === null || typeof got !== "object") {
    return got === expected ? "" : `${where} is ${JSON.stringify(got)} here and ${JSON.stringify(expected)} in the page`;
  }
  for (const key of new Set([...Object.keys(expected), ...Object.keys(got)])) {
    const found = difference(got[key], expected[key], where ? `${where}.${key}` : key);
    if (found) return found;
  }
  return "";
}

// Pyodide only logs it when its WebAssembly cannot be loaded, and then waits for ever: listen in, and reject.
function brokenWasm() {
  const { instantiateStreaming } = WebAssembly;
  return new Promise((_, reject) => {
    WebAssembly.instantiateStreaming = (...given) => {
      const loading = instantiateStreaming.apply(WebAssembly, given);
      loading.catch(reject);
      return loading;
    };
  });
}

async function start() {
  enter("loadRuntime");
  const { loadPyodide } = await import("./pyodide/pyodide.mjs");
  const python = await Promise.race([brokenWasm(), loadPyodide()]);

  enter("loadPackage");
  const problems = [];
  await python.loadPackage("burnercalc", { messageCallback: () => {}, errorCallback: (text) => problems.push(text) });
  if (problems.length) throw new Error(problems.join("; "));
  // What is loaded stays, and little of what is worked out is rubbish in a ring: looked for less often, and not there.
  const rubbish = python.pyimport("gc");
  rubbish.disable();
  const ours = python.pyimport("burnercalc.worker").handle;
  rubbish.freeze();
  rubbish.set_threshold(50000, 20, 100);
  rubbish.enable();

  // The page was filled by CPython when the site was built: the same request must give the same numbers here.
  enter("selfCheck");
  const response = await fetch("./selfcheck.json");
  if (!response.ok) throw new Error(`selfcheck.json: ${response.status}`);
  const { build, request, reply } = await response.json();
  if (build !== BUILD) throw new Error("selfcheck.json is of another version than the page; reload the page");
  const found = difference(JSON.parse(ours(JSON.stringify(request))), reply, "");
  if (found) throw new Error(found);

  handle = ours;
  enter("ready");
  next();
}

start().catch(fail);
