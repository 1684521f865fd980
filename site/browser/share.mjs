// Taking a design away: link, QR code, the phone's own share sheet, and files made by Python.
import { address, all, byId, picture, saveFile, today } from "./page.mjs";
import { notTaken } from "./settings.mjs";
import { ask } from "./python.mjs";
import { haveText } from "./have.mjs";
import { got } from "./shopping.mjs";

const BESIDE = ["share-mine", "share-have"];
let design = null;
let shared = {}; // settings of the design whose link is shown

export function wireShare(given) {
  design = given;
  for (const press of all("[data-open]")) press.addEventListener("click", () => byId(press.dataset.open).showModal());
  for (const press of all("[data-close]")) press.addEventListener("click", () => press.closest("dialog").close());
  byId("share").addEventListener("click", () => share(design.texts(), design.shown()?.link ?? location.hash, notTaken()));
  for (const box of BESIDE) byId(box).addEventListener("change", renew);
  byId("copy").addEventListener("click", copyLink);
  byId("send").addEventListener("click", () => navigator.share({ title: "Burner design", url: byId("share-link").value }).catch(() => {}));
  document.querySelector("[data-open=paper-box]").addEventListener("click", () => { byId("paper-status").textContent = noFile(); });
  byId("paper-box").addEventListener("click", ({ target }) => target.dataset.file && makeFile(target.dataset.file));
}

// A design's link, as it is or with what goes beside it.
export async function share(settings, link, beside = "") {
  shared = settings;
  byId("share-link").value = address() + link;
  byId("share-mine-label").hidden = !settings.mine;
  byId("share-have-label").hidden = !haveText();
  byId("share-beside").hidden = !settings.mine && !haveText();
  byId("send").hidden = !navigator.share;
  byId("copied").textContent = beside;
  byId("share-box").showModal();
  byId("share-link").select();
  if (byId("share-beside").hidden) showCode();
  else renew();
}

async function renew() {
  const { mine, ...bare } = shared;
  const settings = mine && byId("share-mine").checked ? shared : bare;
  const reply = await ask({ kind: "link", settings, have: byId("share-have").checked ? haveText() : "" });
  if (reply.ok) byId("share-link").value = address() + reply.link;
  showCode();
}

async function showCode() {
  const reply = await ask({ kind: "code", text: byId("share-link").value });
  if (reply.ok) byId("share-code").src = picture(reply.svg);
  byId("share-code").hidden = !reply.ok;
}

async function copyLink() {
  try {
    await navigator.clipboard.writeText(byId("share-link").value);
    byId("copied").textContent = "Copied.";
  } catch {
    byId("share-link").select();
    byId("copied").textContent = "Press and hold the link to copy it.";
  }
}

const noFile = () => notTaken("Nothing is printed while a setting is refused");

// Downloaded, or handed to the phone's share sheet where that takes files.
async function makeFile(file) {
  const status = byId("paper-status");
  if (noFile()) return void (status.textContent = noFile());
  status.textContent = "Drawing\u2026";
  const reply = await ask({ kind: "file", settings: design.texts(), file, site: address(), got: got(), today: today() });
  if (!reply.ok) {
    status.textContent = reply.errors.map((error) => error.text).join(" ");
    return;
  }
  const bytes = Uint8Array.from(atob(reply.file_base64), (letter) => letter.charCodeAt(0));
  const shared = new File([bytes], reply.name, { type: reply.type });
  if (byId("paper-share").checked && navigator.canShare?.({ files: [shared] })) {
    await navigator.share({ files: [shared], title: reply.name }).catch(() => {});
  } else {
    saveFile(reply.name, reply.type, bytes);
  }
  status.textContent = `${reply.name} is made.`;
}
