// Letters too large for their place, be it that somebody set them so or that it is narrow: what is in it stacks (style.css).
import { all, root } from "./page.mjs";

const PLACES = ".lead, .ask, .settings, .numbers, .answers, .worst"; // none is within another of them
const TIGHT_REM = 18.2, TIGHTER_REM = 10.8; // widths up to which it does
let due = 0;

function measure() {
  due = 0;
  const rem = parseFloat(getComputedStyle(root).fontSize);
  const wide = [...all(PLACES)].map((place) => [place, place.clientWidth]).filter(([, width]) => width); // in sight
  for (const [place, width] of wide) {
    place.classList.toggle("tight", width <= TIGHT_REM * rem);
    place.classList.toggle("tighter", width <= TIGHTER_REM * rem);
    place.style.setProperty("--share", `${width / 100}px`);
  }
}

export function wireTight() {
  // In the next frame: a place that stacks is of another height, which would be a loop within one.
  const seen = new ResizeObserver(() => { due ||= requestAnimationFrame(measure); });
  for (const place of [root, ...all(PLACES)]) seen.observe(place);
}
