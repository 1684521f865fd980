"""Files of the site that are missing, cut, false, slow or of another build: no number of a half-loaded page is shown,
the page says a word in the time that it states, and what it offers works once the files are right."""

import re

from attack.site import LONGEST_MS, ports, visitor
from browser.hosted import renamed

import build
from burnercalc.design import Design
from burnercalc.result import solve

SAYS_S = 6  # after which bars.mjs and early.js speak of what has not come, counted anew for each step of a start
LINK = "#v=2&rows=3"
# Not needed for a page that computes: icons, licences, what is for hosts, and what is fetched later or when asked for.
SPARE = re.compile(
    r"icons/|licences/|_headers|csp\.txt|index\.html|headers\.|web\.config|\.htaccess|manifest|sw\.mjs|build\.txt|sources\.bin|example\.html|bill"
)
PYTHON = ("pyodide/", "worker.mjs", "selfcheck.json")  # asked for only where Python runs in the browser
WORDS = """() => [...document.querySelectorAll("#notice:not([hidden]), #bars .bar, #late-scripts:not([hidden])")]
  .map((each) => each.textContent.trim()).join(" ")"""
# A number of the page as it was built, in sight, while neither the page nor a word says that it is the example's.
FALSE = """() => {
  if (!document.documentElement) return false; // nothing of the page has come yet
  const { state, shared, broken } = document.documentElement.dataset;
  const number = document.querySelector('[data-answer="port_count"]');
  return state !== "ready" && broken === undefined && shared === undefined && number?.checkVisibility();
}"""
OFFER = "#bars .bar:visible button:visible, #late-again:visible"


def names():
    """Every file of the site that a page needs."""
    files = sorted(path.relative_to(build.DIST).as_posix() for path in build.DIST.rglob("*") if path.is_file())
    return [name for name in files if not SPARE.search(name)]


def missing(route, data):
    route.fulfill(status=404, body="gone")


def failing(route, data):
    route.fulfill(status=500, body="")


def cut(route, data):
    route.fulfill(body=data[: len(data) // 2], content_type=_kind(route))


def empty(route, data):
    route.fulfill(body=b"", content_type=_kind(route))


def false(route, data):
    """As the page of a network that wants somebody to log in first."""
    route.fulfill(body="<!DOCTYPE html><title>Log in</title>", content_type="text/html")


def aborted(route, data):
    route.abort()


def slow(route, data):
    """Never answered."""


def other(route, data):
    """Of another build."""
    name = (build.DIST / "build.txt").read_text().strip()
    body = renamed(route.request.url.split("?")[0], data, name, "0" * len(name))
    route.fulfill(body=body, content_type=_kind(route))


WAYS = (missing, failing, cut, empty, false, aborted, slow, other)
KINDS = {
    "mjs": "text/javascript",
    "js": "text/javascript",
    "json": "application/json",
    "css": "text/css",
    "wasm": "application/wasm",
    "html": "text/html",
}


def _kind(route):
    path = route.request.url.split("?")[0].split("#")[0]
    return KINDS.get(path.rpartition(".")[2], "text/html" if path.endswith("/") else "application/octet-stream")


def trial(rng):
    judge(rng.choice(names()), rng.choice(WAYS))


def judge(name, way):
    said = f"{name} {way.__name__}"
    data = (build.DIST / name).read_bytes()
    stamped = renamed(name, data, (build.DIST / "build.txt").read_text().strip(), "") != data
    with visitor(real=name.startswith(PYTHON)) as (context, address):
        page = context.new_page()
        page.clock.install()
        met = []

        def spoil(route):
            met.append(route)
            way(route, data)

        def matches(url):
            return url.split("?")[0].split("#")[0] == address + name

        page.route(matches, spoil)
        page.goto(address + LINK, wait_until="commit")
        _until_it_says_or_computes(page, met if way is slow else [], said)
        if page.evaluate("() => document.documentElement.dataset.state") == "ready":  # it can do without
            assert ports(page) == EXPECTED, f"{said}: {ports(page)} ports"
            return 1
        assert not (way is other and not stamped), f"{said}: not of a build, and yet it stops the page"
        page.unroute(matches)
        page.locator(OFFER).first.click()
        page.wait_for_selector("html[data-state=ready]", state="attached", timeout=LONGEST_MS)
        assert ports(page) == EXPECTED, f"{said}: {ports(page)} ports after all"
    return 1


def _until_it_says_or_computes(page, met, said):
    """Wait for a word with an offer, or for numbers; time jumps only while nothing moves."""
    for _ in range(600):
        assert not page.evaluate(FALSE), f"{said}: numbers of a page that is not ready"
        state = page.evaluate("() => document.documentElement?.dataset.state")
        if state == "ready":
            return
        if page.locator(OFFER).count() and page.evaluate(WORDS):
            return
        page.wait_for_timeout(50)
        if met:
            met.append("a second")
            assert len(met) < SAYS_S + 20, f"{said}: not a word in {SAYS_S} s"
            page.clock.fast_forward(1000)
    raise AssertionError(f"{said}: not a word, and no offer")


EXPECTED = solve(Design.from_texts({"rows": "3"}))["port_count"]
