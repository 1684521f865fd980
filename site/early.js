// Before the first paint: an address that holds a design must never show the example's numbers as its own.
if (/[#?&]v=\d+&/.test(location.hash + location.search)) document.documentElement.dataset.shared = "";
document.documentElement.dataset.script = "";
// And what a first visit is offered must be there from the start, or it would push the page down. Closed storage: no offer.
try {
  if (!localStorage.getItem("burnercalc-walked")) document.documentElement.dataset.first = "";
} catch (closed) {}
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
