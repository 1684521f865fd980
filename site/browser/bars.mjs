// Lines at the foot of the window, beside the work: what the page waits for or offers, each with what can be done about it.
import { all, button, byId, changedOnly, make } from "./page.mjs";

const LATE_MS = 6000; // after which what has not come is said to be waited for
const lines = new Map();
let before = null; // what had the focus before a line took it

// Say something under a name, or say it anew; each press is [words, what it does].
export function tell(name, words, ...presses) {
  if (!lines.has(name)) {
    const row = make("p", "row", ...presses.map(([label, press]) => button(label, press, "small")));
    lines.set(name, make("div", "bar", make("p", ""), row));
    byId("bars").append(lines.get(name));
  }
  const said = lines.get(name).firstChild;
  changedOnly(said, words);
  if (said.scrollHeight > said.clientHeight + 1) said.tabIndex = 0; // a long one is read by scrolling, above what it tells of
  else said.removeAttribute("tabindex");
  clear();
}

// The number that the first screen answers with is not covered: the page moves up by as much.
function clear() {
  const foot = byId("bars"), answer = document.querySelector("#chapter-start .big").getBoundingClientRect();
  const covered = answer.bottom + 4 - foot.getBoundingClientRect().top;
  if (foot.parentElement === document.body && answer.height && covered > 0 && answer.bottom < byId("chapters").getBoundingClientRect().top) scrollBy({ top: covered, behavior: "instant" });
}

export function hush(name) {
  const line = lines.get(name), held = line?.contains(document.activeElement);
  line?.remove();
  lines.delete(name);
  if (held) before?.focus({ preventScroll: true });
}

// Say what is waited for unless the function that is given back is called soon; that also ends saying it.
export function waitFor(name, what, ...presses) {
  const say = () => tell(name, `Waiting for ${what}. ${navigator.onLine === false ? "There is no network." : "Check the network if nothing comes."}`, ...presses);
  const clock = setTimeout(say, LATE_MS);
  return () => {
    clearTimeout(clock);
    hush(name);
  };
}

// A file of the site, JSON that the build has packed; one that does not come is said to be waited for, and asked for anew when somebody presses.
export async function fetchPacked(url, what) {
  for (;;) {
    const abort = new AbortController();
    const arrived = waitFor(url, what, ["Try again", () => abort.abort()]);
    try {
      const response = await fetch(url, { signal: abort.signal });
      if (!response.ok) throw new Error(`${url}: ${response.status}`);
      return await new Response(response.body.pipeThrough(new DecompressionStream("deflate"))).json();
    } catch (error) {
      if (!abort.signal.aborted) throw error;
    } finally {
      arrived();
    }
  }
}

// A dialog makes all that is outside it dead, so the lines go into the one in front; above its foot, which they would cover.
export function wireBars() {
  const bars = byId("bars");
  const place = () => {
    const dialog = all("dialog[open]").at(-1), front = dialog?.querySelector(".foot") ?? dialog ?? document.body;
    if (bars.parentElement !== front) front.append(bars);
  };
  for (const dialog of all("dialog")) new MutationObserver(place).observe(dialog, { attributeFilter: ["open"] });
  bars.addEventListener("focusin", ({ relatedTarget }) => { if (!bars.contains(relatedTarget)) before = relatedTarget; });
}
