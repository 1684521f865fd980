// The page's thread: hears the widgets, sends the newest settings to Python, and puts the answer into the page.
// It moves numbers and texts and never computes one.
import { ask, onStage, start } from "./python.mjs";
import { embed, figures, focusSetting, model, showCharts, showDrawings, theme } from "./models.mjs";

const root = document.documentElement;
const byId = (id) => document.getElementById(id);
const all = (selector, within = document) => [...within.querySelectorAll(selector)];

let texts = {}; // what was typed, for the settings that differ from the example
let shown = null; // the newest reply that is on the page
let pages = null; // Bokeh documents by name
let asked = 0; // number of the newest solve

function state(name, words) {
  root.dataset.state = name;
  byId("status").textContent = words;
}

// --- what comes in --------------------------------------------------------------------------------------------------

function change(key, text, settled = true) {
  const next = { ...texts, [key]: text };
  solve(next, key, settled);
}

async function solve(next, key = "", settled = true) {
  const mine = ++asked;
  texts = next;
  state("computing", "Computing\u2026");
  if (shown) ask({ kind: "face", settings: next }).then((quick) => { if (quick.ok && mine === asked) showQuick(quick); });
  const reply = await ask({ kind: "solve", settings: next, figures: figures() });
  if (reply.dropped || mine !== asked) return;
  if (!reply.ok) return refuse(reply.errors, settled);
  texts = reply.texts;
  show(reply);
  if (settled) fillFields(reply, "");
  else fillFields(reply, key);
}

function refuse(errors, settled) {
  clearRefusals();
  state("error", "Not computed: the numbers are of the last good design.");
  if (!settled) return;
  const loose = [];
  for (const error of errors) {
    const place = byId(`set-${error.setting}`);
    if (!place) { loose.push(error.text); continue; }
    place.dataset.refused = "";
    const words = place.querySelector(".refused");
    words.textContent = error.text;
    words.hidden = false;
  }
  notice(loose.length ? loose.join(" ") : "");
}

function clearRefusals() {
  for (const place of all("[data-refused]")) {
    delete place.dataset.refused;
    place.querySelector(".refused").hidden = true;
  }
}

function notice(words) {
  byId("notice").textContent = words;
  byId("notice").hidden = !words;
}

// --- what goes out --------------------------------------------------------------------------------------------------

function showAnswers(answers) {
  for (const place of all("[data-answer]")) {
    const answer = answers[place.dataset.answer];
    if (!answer) continue;
    place.dataset.value = answer.value;
    place.textContent = answer.shown;
  }
  for (const place of all("[data-echo]")) if (answers[place.dataset.echo]) place.textContent = answers[place.dataset.echo].shown;
}

function showQuick(reply) {
  showAnswers(reply.answers);
  showDrawings(reply.drawings);
}

function show(reply) {
  shown = reply;
  delete root.dataset.shared;
  root.dataset.units = reply.units;
  clearRefusals();
  showAnswers(reply.answers);
  for (const place of all("[data-sentence]")) {
    const chart = reply.charts[place.dataset.sentence];
    if (chart) place.textContent = chart.sentence;
  }
  showChecks(reply);
  showDrawings(reply.drawings);
  showCharts(reply.charts);
  history.replaceState(null, "", reply.link === "#v=1" ? location.pathname : reply.link);
  state("ready", "Ready. Works without a network.");
}

function showChecks(reply) {
  byId("checks").replaceChildren(...reply.checks.map((check) => {
    const item = document.createElement("li");
    item.className = "verdict";
    item.dataset.check = check.key;
    item.dataset.verdict = check.verdict;
    const sign = document.createElement("span");
    sign.className = "sign";
    sign.setAttribute("aria-hidden", "true");
    const words = document.createElement("span");
    const head = document.createElement("b");
    head.textContent = `${check.label}: ${check.verdict}. `;
    words.append(head, check.text);
    item.append(sign, words);
    return item;
  }));
  const worst = reply.checks.find((check) => check.verdict === reply.worst);
  const button = byId("worst");
  const words = reply.worst === "good" ? `All ${reply.checks.length} checks good` : `${capital(reply.worst)}: ${worst.text}`;
  if (button.dataset.verdict !== reply.worst || byId("worst-text").textContent !== words) speak(words);
  button.dataset.verdict = reply.worst;
  byId("worst-text").textContent = words;
}

const capital = (word) => word[0].toUpperCase() + word.slice(1);

let speaking = 0;
function speak(words) { // to a screen reader, once the typing has come to rest
  clearTimeout(speaking);
  speaking = setTimeout(() => { byId("spoken").textContent = words; }, 900);
}

// The texts of the fields follow the units, but the field that is being typed in is left alone.
function fillFields(reply, typing) {
  for (const [key, field] of Object.entries(reply.fields)) {
    const widget = model(key);
    if (!widget || key === typing) continue;
    const place = byId(`set-${key}`);
    const label = place.dataset.label + (field.unit ? `, ${field.unit}` : "");
    if ("title" in widget && widget.title !== label) widget.title = label;
    if (widget.value !== field.text) {
      widget.filling = true;
      widget.value = field.text;
      widget.filling = false;
    }
  }
}

// --- start ----------------------------------------------------------------------------------------------------------

function listen(key, widget) {
  let typing = 0;
  widget.properties.value.change.connect(() => {
    clearTimeout(typing);
    if (!widget.filling) change(key, widget.value);
  });
  widget.properties.value_input?.change.connect(() => {
    clearTimeout(typing);
    if (!widget.filling && widget.value_input !== widget.value) {
      typing = setTimeout(() => change(key, widget.value_input, false), 350);
    }
  });
}

async function openChapter(chapter) {
  const name = chapter.id.replace("chapter-", "");
  if (!pages?.[name] || chapter.dataset.live !== undefined) return;
  chapter.dataset.live = "";
  for (const widget of await embed(pages[name])) listen(widget.name, widget);
  if (shown) fillFields(shown, "");
}

async function openAddress() {
  const link = location.hash || location.search;
  if (!/[#?&]v=/.test(link)) return solve(texts);
  const reply = await ask({ kind: "open", link });
  if (reply.ignored.length) {
    notice(`This link held something that was left out. ${reply.ignored.map((error) => error.text).join(" ")}`);
  }
  await solve(reply.settings);
}

function wire() {
  for (const place of all("[data-setting]")) {
    place.dataset.label = place.querySelector(".still").textContent.split(/, |: /)[0];
    for (const button of all(".step", place)) {
      button.addEventListener("click", async () => {
        const reply = await ask({ kind: "step", settings: texts, key: place.dataset.setting, by: Number(button.dataset.by) });
        if (reply.ok) change(reply.key, reply.text);
      });
    }
  }
  for (const chapter of all(".chapter")) chapter.addEventListener("toggle", () => chapter.open && openChapter(chapter));
  byId("worst").addEventListener("click", () => {
    const check = shown?.checks.find((each) => each.verdict === shown.worst);
    if (check?.changes.length) focusSetting(check.changes[0].setting);
    else byId("outcome").scrollIntoView();
  });
  for (const button of all("[data-close]")) button.addEventListener("click", () => button.closest("dialog").close());
  byId("share").addEventListener("click", openShare);
  byId("copy").addEventListener("click", copyLink);
  byId("send").addEventListener("click", () => navigator.share({ title: "Burner design", url: byId("share-link").value }).catch(() => {}));
  byId("paper").addEventListener("click", () => byId("paper-box").showModal());
  for (const button of all("[data-file]")) button.addEventListener("click", () => makeFile(button.dataset.file));
  addEventListener("hashchange", openAddress);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", theme);
  const wide = matchMedia("(min-width: 64rem)");
  const spread = () => all(".chapter").forEach((chapter, i) => {
    if (wide.matches) chapter.removeAttribute("name");
    else chapter.setAttribute("name", "chapter");
    chapter.open = wide.matches || i === 0;
  });
  wide.addEventListener("change", spread);
  spread();
}

function openShare() {
  byId("share-link").value = new URL(shown?.link ?? location.hash, location.href.split("#")[0].split("?")[0]).href;
  byId("send").hidden = !navigator.share;
  byId("copied").textContent = "";
  byId("share-box").showModal();
  byId("share-link").select();
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

async function makeFile(file) {
  byId("paper-status").textContent = "Drawing\u2026";
  const reply = await ask({ kind: "file", settings: texts, file, site: location.href.split("#")[0].split("?")[0] });
  if (!reply.ok) {
    byId("paper-status").textContent = reply.errors.map((error) => error.text).join(" ");
    return;
  }
  const bytes = Uint8Array.from(atob(reply.file_base64), (letter) => letter.charCodeAt(0));
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes], { type: reply.type }));
  link.download = reply.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  byId("paper-status").textContent = `${reply.name} is made.`;
}

async function live() { // Bokeh's models, once the first paint is done
  const response = await fetch("./page.json");
  pages = await response.json();
  await embed(pages.sight);
  for (const chapter of all(".chapter[open]")) await openChapter(chapter);
  const seen = new IntersectionObserver((entries) => {
    for (const entry of entries) {
      if (!entry.isIntersecting) continue;
      seen.unobserve(entry.target);
      embed(pages[entry.target.dataset.lazy]).then(() => { if (shown) solve(texts); });
    }
  }, { rootMargin: "400px" });
  for (const place of all("[data-lazy]")) seen.observe(place);
  if (shown) show(shown);
}

wire();
onStage((stage, trouble) => {
  if (trouble) {
    delete root.dataset.shared;
    state("error", `Python could not start (${trouble}). What you see is the example design; nothing here is computed.`);
    notice("This browser could not start the calculator. The page shows the example only. A newer browser, or a reload with a network, may help.");
  } else if (stage === "ready") {
    for (const button of all(".step")) button.disabled = false;
  } else if (root.dataset.state !== "error") {
    byId("status").textContent = "Preview of the example design; Python is starting.";
  }
});
start();
const drawn = live();
drawn.then(openAddress);
if ("serviceWorker" in navigator) navigator.serviceWorker.register("./sw.mjs").catch(() => {});
