// Before the first paint: an address that holds a design, or the design kept from the last visit, must never be taken
// for the example whose numbers are in the page. And what a first visit is offered must be there from the start, or it
// would push the page down.
(function () {
  var page = document.documentElement, design = location.hash + location.search;
  page.dataset.script = "";
  try {
    if (!/[#?&]v=/.test(design)) design = localStorage.getItem("burnercalc-last") || "";
    if (!localStorage.getItem("burnercalc-walked")) page.dataset.first = "";
  } catch (closed) {} // storage
  if (/[#?&]v=\d+&/.test(design)) page.dataset.shared = "";
})();
// A browser that cannot read app.mjs runs only this file, so this file is written for old ones.
addEventListener("load", function () {
  var page = document.documentElement;
  if (page.hasAttribute("data-app")) return;
  page.removeAttribute("data-shared");
  page.setAttribute("data-broken", "");
  page.setAttribute("data-state", "error");
  document.getElementById("status").textContent = "This browser is too old for the calculator, or a part of it did not load.";
  document.getElementById("notice-text").textContent = "The page shows the example only: do not build from it. "
    + "A newer browser, or a reload with a network, may help.";
  document.getElementById("notice").hidden = false;
});
