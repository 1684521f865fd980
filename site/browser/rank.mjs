// How well each thing the search knows answers what was typed. No page in here, so that a test can ask it.

// Words that say nothing about what is sought.
const SMALL = new Set("a about am an and any are as at be been by can could did do does dont for from get gets give given got had has have how i if in into is it its just know let like many may me mine much must my need needs of on one only or our per please put set should show so some tell than that the their them then there these they this to too use used using very was we were what when where which who why will wish with would you your".split(" "));
const AMERICAN = { mold: "mould", molds: "moulds", center: "centre", fiber: "fibre", aluminum: "aluminium", gage: "gauge", color: "colour", odor: "odour", vapor: "vapour", labor: "labour", meter: "metre", liter: "litre" };
const PLACES = [9, 6, 1.5]; // worth of a word in the name, the other names, the sentence
const EXACT = 1, BEGUN = 0.7, TYPO = 0.6;

const plainly = (text) => text.toLowerCase().replace(/['\u2019]/g, "").normalize("NFD").replace(/\p{M}/gu, "");
export const words = (text) => (plainly(text).match(/[\p{L}\p{N}]+/gu) ?? []).map((word) => AMERICAN[word] ?? word);

// A word without what grammar hangs on it: pipes, drilling, lights, noisy, cured.
export function stem(word) {
  if (word.length < 4 || /\d/.test(word)) return word;
  const one = word.replace(/iz(?=e|ing)/, "is").replace(/(ss|[sx]|ch|sh)es$/, "$1").replace(/([^su])s$/, "$1");
  const bare = one.replace(/(?<=[aeiouy].*)(ing|ed)$/, "").replace(/(?<=..)(ie|[ey])$/, "");
  return bare.length > 2 ? bare.replace(/([bdgmnpt])\1$/, "$1") : word;
}

const wordsThatCount = (all) => {
  const left = all.filter((word) => !SMALL.has(word));
  return left.length ? left : all;
};

// One letter more, less, another, or two that changed places.
function oneOff(one, other) {
  const [short, long] = one.length < other.length ? [one, other] : [other, one];
  if (short.length < 4 || long.length - short.length > 1) return false;
  let at = 0;
  while (at < short.length && short[at] === long[at]) at += 1;
  const rest = (text, by) => text.slice(at + by);
  if (rest(short, long.length > short.length ? 0 : 1) === rest(long, 1)) return true;
  return short.length === long.length && short[at] === long[at + 1] && short[at + 1] === long[at] && rest(short, 2) === rest(long, 2);
}

// Entries are [id, kind, room, label, other names with commas between, sentence].
export function ready(entries) {
  const known = entries.map((entry) => {
    const [label, also, sentence] = entry.slice(3).map(words);
    const phrases = [entry[3], ...entry[3].split(":"), ...entry[4].split(",")].map((phrase) => wordsThatCount(words(phrase)).map(stem)).filter((phrase) => phrase.length);
    return { entry, places: [label, also, sentence].map((all) => ({ words: [...new Set(all)], stems: new Set(all.map(stem)) })), phrases };
  });
  const every = new Set(known.flatMap(({ places }) => places.flatMap((place) => place.words)));
  return { known, every: [...every], stems: new Set([...every].map(stem)) };
}

// How a word is met in a place of an entry: whole, begun, or not.
function met(place, word) {
  if (place.stems.has(word.stem)) return EXACT;
  return word.begins && place.words.some((each) => each.startsWith(word.text)) ? BEGUN : 0;
}

// Two words that the entries know as one: back fire, flash back.
function joined(typed, stems) {
  const all = [...typed];
  for (let at = 0; at + 1 < all.length; at += 1) if (stems.has(stem(all[at] + all[at + 1]))) all.splice(at, 2, all[at] + all[at + 1]);
  return all;
}

// What was typed as words that the entries know: as it is, else with one slip of a finger. A short one that is a word
// by itself, such as CO, begins no other.
function asked(typed, { every, stems }) {
  return wordsThatCount(joined(words(typed), stems)).map((text) => {
    const known = stems.has(stem(text)), one = { text, stem: stem(text), worth: 1, begins: text.length > (known ? 3 : 1) };
    if (known || every.some((each) => each.startsWith(text))) return [one];
    return every.filter((each) => oneOff(text, each)).map((each) => ({ text: each, stem: stem(each), worth: TYPO, begins: true }));
  });
}

// The entries that answer, best first.
export function search(typed, index) {
  const wanted = asked(typed, index);
  if (!wanted.some((readings) => readings.length)) return [];
  const scores = index.known.map(({ places }) => wanted.map((readings) => Math.max(0, ...readings.map((word) => word.worth * Math.max(...places.map((place, at) => PLACES[at] * met(place, word)))))));
  // A word that many things share says little.
  const weights = wanted.map((_, n) => Math.log(2 + index.known.length / (1 + scores.filter((score) => score[n] > PLACES[2]).length)));
  const whole = weights.reduce((sum, each) => sum + each, 0);
  const stems = wanted.map((readings) => readings.map((word) => word.stem));
  const found = index.known.map(({ entry, phrases, places }, at) => {
    const share = scores[at].reduce((sum, each, n) => sum + (each ? weights[n] : 0), 0) / whole;
    if (share < 0.5) return null;
    const sum = scores[at].reduce((total, each, n) => total + each * weights[n], 0);
    const says = phrases.some((phrase) => phrase.length === stems.length && stems.every((readings) => readings.some((each) => phrase.includes(each))));
    return [sum * share ** 2 * (says ? 2 : 1) + 1 / (1 + places[0].words.length), entry];
  });
  return found.filter(Boolean).sort((a, b) => b[0] - a[0]).map(([, entry]) => entry);
}
