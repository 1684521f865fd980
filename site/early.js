// Before the first paint: an address that holds a design must never show the example's numbers as its own.
if (/[#?&]v=\d+&/.test(location.hash + location.search)) document.documentElement.dataset.shared = "";
document.documentElement.dataset.script = "";
