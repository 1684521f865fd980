// Lines beside the work, each with what can be done about it. What the design on the page is stands at the page's head; what
// the page waits for or offers at the foot of the window. Either takes its own room.
import { all, button, byId, changedOnly, make, root } from "./page.mjs";

const AT_HEAD = ["own", "offered"], OF_PAGE = ["brought", "version", "asks"]; // the latter wait behind a dialog

const LATE_MS = 6000; // after which what has not come is said to be waited for
const lines = new Map();
let before = null; // what had the focus before a line took it

// Say something under a name, or say it anew; each press is [words, what it does].
export function tell(name, words, ...presses) {
  if (!lines.has(name)) {
    const row = make("p", "row", ...presses.map(([label, press]) => button(label, press, "small")));
    lines.set(name, make("div", OF_PAGE.includes(name) ? "bar behind" : name === "have" ? "bar of-list" : "bar", make("p", ""), row));
    byId(AT_HEAD.includes(name) ? "told" : "bars").append(lines.get(name));
  }
  const said = lines.get(name).firstChild;
  changedOnly(said, words);
  said.classList.toggle("all", words.includes("\n")); // a list has the whole width
  if (said.scrollHeight > said.clientHeight + 1) said.tabIndex = 0; // a long one is read by scrolling, above what it tells of
  else said.removeAttribute("tabindex");
  room();
  clear();
}

// The page is longer by what stands at its foot, so that all of it can be scrolled clear.
function room() {
  const bars = byId("bars");
  root.style.setProperty("--said", bars.parentElement === document.body ? `${bars.offsetHeight}px` : "0px");
}

// What of the first screen's number, verdict and buttons stood in sight still does: the page moves up by what would be covered.
function clear() {
  const foot = byId("bars"), end = byId("chapters").getBoundingClientRect().top;
  const low = all("#chapter-start .head :is(.big, .worst, .row.two)").map((part) => part.getBoundingClientRect()).filter((part) => part.height && part.bottom <= end).map((part) => part.bottom);
  const covered = Math.max(...low) + 4 - foot.getBoundingClientRect().top;
  if (foot.parentElement === document.body && foot.offsetHeight && covered > 0) scrollBy({ top: covered, behavior: "instant" });
}

export function hush(name) {
  const line = lines.get(name), held = line?.contains(document.activeElement);
  line?.remove();
  lines.delete(name);
  room();
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

// A dialog makes all that is outside it dead, so the lines go into the one in front, below its title.
export function wireBars() {
  const bars = byId("bars");
  const place = () => {
    const dialog = all("dialog[open]").at(-1), front = dialog?.querySelector(".closer") ?? dialog ?? document.body;
    if (bars.parentElement !== front) front.append(bars);
    room();
  };
  for (const dialog of all("dialog")) new MutationObserver(place).observe(dialog, { attributeFilter: ["open"] });
  new ResizeObserver(room).observe(bars);
  bars.addEventListener("focusin", ({ relatedTarget }) => { if (!bars.contains(relatedTarget)) before = relatedTarget; });
}
