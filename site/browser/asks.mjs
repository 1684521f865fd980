// A job that begins with what somebody has: its settings to enter, one after the other. Until then the page shows its example.
import { all, byId } from "./page.mjs";
import { hush, tell } from "./bars.mjs";
import { go } from "./chapters.mjs";
import { jump } from "./jump.mjs";

const READ = ["units", "sizes", "mine"]; // which make no burner

export function wireAsks(design) {
  for (const press of all("[data-asks]")) {
    press.addEventListener("click", () => {
      const keys = press.dataset.asks.split(" ").filter((key) => byId(`set-${key}`)), whose = Object.keys(design.texts()).some((key) => !READ.includes(key)) ? "" : "The numbers are an example's. ";
      const at = (index) => {
        const next = keys[index + 1], name = (key) => byId(`set-${key}`).querySelector(".name").textContent;
        hush("asks");
        tell("asks", `${index ? "" : whose}Enter yours, ${index + 1} of ${keys.length}: ${name(keys[index])}.`,
          ...(next ? [[`Next: ${name(next)}`, () => at(index + 1)]] : []), next ? ["Stop", () => hush("asks")] : ["Done", () => { hush("asks"); go("start"); }]); // where the answer is
        jump(`set-${keys[index]}`);
      };
      at(0);
    });
  }
}
