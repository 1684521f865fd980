// The page itself on paper: the verdict on the whole design above, and the drawings of the size and in the colours of paper.
import { all, byId, root } from "./page.mjs";

const WIDEST_PX = 640; // of a sheet between its margins

export function wirePrinted() {
  addEventListener("beforeprint", () => {
    const { dataset: { verdict }, textContent } = document.querySelector("#chapter-start .worst");
    byId("printed").textContent = `${verdict === "stop" ? "DO NOT BUILD. " : ""}The whole design: ${textContent.trim()}`;
    root.classList.toggle("drawn-dark", matchMedia("screen and (prefers-color-scheme: dark)").matches);
    for (const live of all("figure[data-live] .live")) {
      const { width, height } = live.getBoundingClientRect();
      if (!width) continue; // in a chapter that is not open
      for (const [name, value] of [["-wide", `${width}px`], ["-high", `${height}px`], ["", Math.min(1, WIDEST_PX / width)]]) live.style.setProperty(`--drawn${name}`, value);
    }
  });
}
