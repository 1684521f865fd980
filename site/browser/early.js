// Before the first paint: an address that holds a design, or the design kept from the last visit, must never be taken
// for the example whose numbers are in the page. And a reload comes back to the chapter that was open.
(function () {
  var page = document.documentElement, design = location.hash + location.search;
  page.dataset.script = "";
  page.dataset.chapter = "start";
  if (window.top !== window.self) page.dataset.framed = ""; // nobody's tap here is to be lured into another site's page
  try {
    var visit = history.state && history.state.visit;
    var come = performance.getEntriesByType("navigation")[0];
    if (!come || come.type !== "reload") sessionStorage.removeItem("burnercalc-job"); // tapped on what has been left
    if (visit || !/[#?&]v=/.test(design)) page.dataset.chapter = sessionStorage.getItem("burnercalc-place") || "start"; // a link opens at the first screen
    if (!/[#?&]v=/.test(design)) design = sessionStorage.getItem("burnercalc-here") || localStorage.getItem("burnercalc-last") || "";
  } catch (closed) {} // storage
  if (/[#?&]v=\d+&/.test(design)) page.dataset.shared = "";
})();
// A job that is tapped before those scripts are there is opened when they are, over a reload too.
document.addEventListener("click", function (event) {
  var job = !document.documentElement.hasAttribute("data-jobs") && event.target.closest && event.target.closest("[data-job]");
  try { if (job) sessionStorage.setItem("burnercalc-job", job.getAttribute("data-job")); } catch (closed) {} // storage
});
// The page's own scripts may never come.
setTimeout(function () {
  if (!document.documentElement.hasAttribute("data-app")) sayLate("Waiting for the page's own scripts. "
    + (navigator.onLine === false ? "There is no network." : "Check the network if nothing comes."));
}, 6000);
// A reload may take an old script from the browser's cache again, for days; so what the page loaded is fetched past it.
function fetchAnew() {
  if (!window.fetch || !window.performance) return location.reload();
  var own = performance.getEntriesByType("resource").map(function (entry) { return entry.name; }).filter(function (name) {
    return name.indexOf(location.origin) === 0 && /\.(mjs|js|json)$/.test(name);
  });
  var past = own.concat(location.href.split("#")[0]).map(function (name) { return fetch(name, { cache: "reload" }).catch(function () {}); });
  Promise.all(past).then(function () { location.reload(); });
}
function sayLate(words) {
  document.getElementById("late-words").textContent = words;
  document.getElementById("late-again").onclick = fetchAnew;
  document.getElementById("late-scripts").hidden = false;
}
// A browser that cannot read app.mjs runs only this file, so this file is written for old ones.
addEventListener("load", function () {
  var page = document.documentElement;
  if (page.hasAttribute("data-app")) return;
  page.removeAttribute("data-shared");
  page.setAttribute("data-broken", "");
  page.setAttribute("data-state", "error");
  var mixed = page.hasAttribute("data-mixed"); // a module is not of the page's build
  var old = !window.DecompressionStream; // app.mjs stops without it
  document.getElementById("status").textContent = mixed ? "The page is made of two versions."
    : "This browser is too old for the calculator" + (old ? "." : ", or a part of it did not load.");
  document.getElementById("notice-text").textContent = "The page shows the example only: do not build from it. "
    + (mixed ? "A new version of this page came while it was loading. Reload it." : old ? "It needs a newer browser." : "A newer browser, or a reload with a network, may help.");
  if (mixed || !old) sayLate(mixed ? "Reload for the new version." : "A part of the page is missing.");
  document.getElementById("notice").hidden = false;
  document.getElementById("whole").hidden = false;
});
