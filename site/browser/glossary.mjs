// Words of the trade explained where they stand: each is a button that shows what it means, above all else on the page.
import { all, button, byId, make, notice, speak } from "./page.mjs";

let found = null; // finds the words in a text
let meanings = {}; // of each word, its name and what it means, under each of its forms

export function wireGlossary({ pattern, words }) {
  found = new RegExp(pattern, "gi");
  meanings = Object.fromEntries(words.flatMap(([word, forms, meaning]) => [word, ...forms].map((form) => [form.toLowerCase(), { word, meaning }])));
  all(".caution, dialog > p, dialog .help, #paper-box .file > span").forEach(explain);
}

// What the search knows of them.
export const wordEntries = () => Object.entries(meanings).filter(([form, { word }]) => form === word.toLowerCase())
  .map(([form, { word, meaning }]) => [`word-${form}`, "word", "", word, Object.keys(meanings).filter((each) => meanings[each].word === word).join(","), meaning]);

function term(text) {
  const made = button(text, () => show(made), "term");
  return made;
}

// Wrap each word of the glossary in the texts of an element, once each.
export function explain(at) {
  if (!found || !at) return at;
  const seen = new Set(all(".term", at).map(({ textContent }) => meanings[textContent.toLowerCase()].word));
  const texts = document.createTreeWalker(at, NodeFilter.SHOW_TEXT), places = [];
  while (texts.nextNode()) if (!texts.currentNode.parentElement.closest("button, a, label, summary, svg, h3")) places.push(texts.currentNode);
  for (const place of places) {
    const parts = [];
    let from = 0;
    for (const { 0: text, index } of place.data.matchAll(found)) {
      const { word } = meanings[text.toLowerCase()];
      if (seen.has(word)) continue;
      seen.add(word);
      const [close] = place.data.slice(index + text.length).match(/^(?:['\u2019]s\b)?[,.;:)]*/); // stays on the word's line
      parts.push(place.data.slice(from, index), close ? make("span", "kept", term(text), close) : term(text));
      from = index + text.length + close.length;
    }
    if (parts.length) place.replaceWith(...parts, place.data.slice(from));
  }
  return at;
}

// What the words in a label mean, outright: a label is a button itself. Those that stand in `said` are explained there.
export function explainLabel(label, said) {
  const words = new Map([...label.matchAll(found ?? /$^/g)].map(([text]) => [meanings[text.toLowerCase()].word, meanings[text.toLowerCase()].meaning]));
  const there = new Set(all(".term", said).map(({ textContent }) => meanings[textContent.toLowerCase()].word));
  return [...words].filter(([word]) => !there.has(word)).map(([word, meaning]) => make("p", "help", make("dfn", "", word), `: ${meaning}`));
}

// The words of a text as buttons, for a text that cannot hold any.
export function termsOf(text) {
  const at = explain(make("p", "help", text));
  const terms = all(".term", at);
  at.replaceChildren("Words: ", ...terms.flatMap((each, n) => (n ? [", ", each] : [each])));
  return terms.length ? [at] : [];
}

export function show(press) {
  const { word, meaning } = meanings[press.textContent.toLowerCase()] ?? meanings[press.dataset.find.replace("word-", "")];
  const box = byId("term"), { left, right, top, bottom } = press.getBoundingClientRect();
  box.replaceChildren(make("dfn", "", word), `: ${meaning}`);
  (press.closest("dialog") ?? document.body).append(box); // what is outside an open dialog is dead
  if (!box.showPopover) return notice(box.textContent); // an old browser
  box.showPopover();
  const { offsetWidth: wide, offsetHeight: high } = box;
  box.style.left = `${Math.max(8, Math.min((left + right - wide) / 2, document.documentElement.clientWidth - wide - 8))}px`;
  box.style.top = `${scrollY + (bottom + 6 + high < innerHeight ? bottom + 6 : Math.max(8, top - 6 - high))}px`;
  speak(box.textContent);
}
