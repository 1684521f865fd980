// Taking a design away: link, QR code, the phone's own share sheet, and files made by Python.
import { address, all, byId, picture, saveFile } from "./page.mjs";
import { ask } from "./python.mjs";

let design = null;

export function wireShare(given) {
  design = given;
  for (const press of all("[data-open]")) press.addEventListener("click", () => byId(press.dataset.open).showModal());
  for (const press of all("[data-close]")) press.addEventListener("click", () => press.closest("dialog").close());
  byId("share").addEventListener("click", openShare);
  byId("copy").addEventListener("click", copyLink);
  byId("send").addEventListener("click", () => navigator.share({ title: "Burner design", url: byId("share-link").value }).catch(() => {}));
  for (const press of all("[data-file]")) press.addEventListener("click", () => makeFile(press.dataset.file));
}

async function openShare() {
  byId("share-link").value = address() + (design.shown()?.link ?? location.hash);
  byId("send").hidden = !navigator.share;
  byId("copied").textContent = "";
  byId("share-box").showModal();
  byId("share-link").select();
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

// Downloaded, or handed to the phone's share sheet where that takes files.
async function makeFile(file) {
  const status = byId("paper-status");
  status.textContent = "Drawing\u2026";
  const reply = await ask({ kind: "file", settings: design.texts(), file, site: address() });
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
