// Keeps the site for use without a network, and says when a newer one is there. It is taken when somebody says so: the
// design is in the address, so a reload loses nothing.
import { root } from "./page.mjs";
import { hush, tell } from "./bars.mjs";

const LOOK_MS = 3600000;
let keeping = false;

export const reload = () => location.reload();

export async function keepSite() {
  if (keeping || !("serviceWorker" in navigator)) return;
  keeping = true;
  const site = navigator.serviceWorker;
  site.addEventListener("controllerchange", compare);
  const registration = await site.register("./sw.mjs").catch(() => null);
  if (!registration) return;
  const look = () => { if (registration.waiting && site.controller) offer(() => take(registration)); };
  look();
  registration.addEventListener("updatefound", () => registration.installing?.addEventListener("statechange", look));
  const ask = () => { if (!document.hidden) registration.update().catch(() => {}); }; // no network, or gone
  document.addEventListener("visibilitychange", ask);
  setInterval(ask, LOOK_MS);
}

function offer(press) {
  tell("version", "A new version of this page is ready. Your design stays.", ["Reload", press], ["Later", () => hush("version")]);
}

function take({ waiting }) {
  if (!waiting) return reload(); // another tab has taken it
  navigator.serviceWorker.addEventListener("controllerchange", reload, { once: true });
  waiting.postMessage("take over");
}

// What serves this page from now on may be of another version: another tab has taken it, or it came while this page loaded.
async function compare() {
  const build = await fetch("./build.txt").then((got) => got.text()).catch(() => root.dataset.build);
  if (build.trim() !== root.dataset.build) offer(reload);
}
