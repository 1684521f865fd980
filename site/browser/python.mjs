// Asks Python in its worker; every question gets an answer, as a promise.
//
// A runtime that breaks (WebKit's WebAssembly has done so) is started anew and asked again what it has not answered. When
// that ends rests on counts that only grow, never on which of two things comes first: what has broken it BLAMES times is
// refused, two starts in a row that fail end it, and so does one break more than RESTARTS. Work that takes long is said to,
// can be stopped, and is stopped in the end.
const BLAMES = 2;
const RESTARTS = 5; // in the life of the page
const SLOW_S = 10;
const LONGEST_S = 120;
const ONE_DESIGN = ["solve", "face"]; // questions about a whole design: what one of them breaks, the other would

let hear = null;
let worker = null;
let ready = false;
let ended = ""; // why nothing is asked any more
let failedStarts = 0; // in a row
let restarts = 0;
let last = 0;
let begun = 0; // id of what the worker is at
let seconds = 0; // for how long, in steps of SLOW_S
let clock = 0;
const waiting = new Map(); // what is asked and not answered: id to {request, about, resolve}
const broken = new Map(); // how often a question has broken the runtime

// `given` hears stage(name, build) at each step of a start and then ready(); slow(seconds) of work that goes on, and quick()
// at its end; again() before another start, and over(trouble) when there will be none.
export function start(given) {
  hear = given;
  launch();
}

function launch() {
  ready = false;
  begin(0);
  hear.stage("worker");
  try {
    worker = new Worker("./worker.mjs", { type: "module" });
  } catch (error) {
    return end(String(error));
  }
  const mine = worker;
  worker.onerror = (event) => { if (mine === worker) broke(event.message || "this browser is too old for it"); };
  worker.onmessage = ({ data }) => { if (mine === worker) take(data); };
  for (const [id, { request }] of waiting) worker.postMessage({ id, ...request });
}

function take(data) {
  if (data.kind === "stage") {
    if (data.name !== "ready") return hear.stage(data.name, data.build);
    ready = true;
    failedStarts = 0;
    begin(0);
    hear.ready();
  } else if (data.kind === "failed") {
    broke(data.text);
  } else if (data.kind === "begun") {
    begin(data.of);
  } else {
    waiting.get(data.id)?.resolve(data);
    waiting.delete(data.id);
    if (data.id === begun) begin(0);
  }
}

// The worker is at a question, or at none; time is also counted while it should begin one, as it may have died in silence.
function begin(id) {
  begun = id;
  clearInterval(clock);
  if (seconds) hear.quick();
  seconds = 0;
  clock = ready && waiting.size ? setInterval(tick, 1000 * SLOW_S) : 0;
}

function tick() {
  seconds += SLOW_S;
  if (seconds < LONGEST_S) hear.slow(seconds);
  else stop();
}

// Give up what the worker is at, and start another one.
export function stop() {
  const asked = waiting.get(begun) ?? waiting.values().next().value;
  if (!asked) return;
  const text = `Stopped after ${seconds} s. What you typed is kept: change it, or undo it.`;
  worker.terminate();
  refuse(asked.about, { ok: false, stopped: true, errors: [{ setting: "", text }] });
  launch();
}

// Start another worker because somebody says so, whatever has been counted.
export function retry() {
  worker?.terminate();
  ended = "";
  failedStarts = restarts = 0;
  launch();
}

function broke(trouble) {
  worker.terminate();
  restarts += 1;
  if (!ready) failedStarts += 1;
  const asked = waiting.get(begun);
  if (asked) {
    broken.set(asked.about, (broken.get(asked.about) ?? 0) + 1);
    if (refused(asked.about)) refuse(asked.about, BREAKS);
  }
  if (failedStarts > 1 || restarts > RESTARTS) return end(trouble);
  hear.again();
  launch();
}

const BREAKS = { ok: false, broken: true, errors: [{ setting: "", text: "The calculator broke off twice at this. Undo the last change, or try another value." }] };
const refused = (about) => broken.get(about) >= BLAMES;

// Answer with a refusal all that waits and is about the same.
function refuse(about, reply) {
  for (const [id, asked] of waiting) {
    if (asked.about !== about) continue;
    waiting.delete(id);
    asked.resolve(reply);
  }
}

function end(trouble) {
  worker = null;
  ended = trouble;
  hear.over(trouble);
  for (const { resolve } of waiting.values()) resolve(gone());
  waiting.clear();
  begin(0);
}

const gone = () => ({ ok: false, ended: true, errors: [{ setting: "", text: `The calculator broke off (${ended}).` }] });

export function ask(request) {
  const { kind, figures, today, ...rest } = request; // neither size nor day is what breaks it
  const about = JSON.stringify(ONE_DESIGN.includes(kind) ? rest : request);
  if (ended) return Promise.resolve(gone());
  if (refused(about)) return Promise.resolve(BREAKS);
  return new Promise((resolve) => {
    const id = ++last;
    waiting.set(id, { request, about, resolve });
    worker?.postMessage({ id, ...request });
    if (!clock) begin(begun);
  });
}
