"""The built site in Chromium, for targets that attack the page: started when first needed, or handed in by tests."""

import atexit
import threading
from contextlib import contextmanager

from browser import engines
from browser.hosted import host
from browser.test_job import field
from playwright.sync_api import sync_playwright

import build

PHONE = {"viewport": {"width": 412, "height": 915}, "is_mobile": True, "has_touch": True, "service_workers": "block"}
LONGEST_MS = 60_000  # a page that needs longer hangs
_given = []  # Chromium, the site's address
faults = {}  # file of the site: (text, what stands there instead), which tests put in to see them found


def use(chromium, address):
    _given[:] = chromium, address


def place():
    """(Chromium, the site's address)."""
    if not _given:
        build.build()
        server = build.server()
        threading.Thread(target=server.serve_forever, daemon=True).start()
        playwright = sync_playwright().start()
        chromium = playwright.chromium.launch(executable_path=engines.chromium(), args=engines.CHROMIUM_ARGUMENTS)
        use(chromium, f"http://127.0.0.1:{server.server_port}/")
        atexit.register(lambda: (chromium.close(), playwright.stop(), server.shutdown()))
    return tuple(_given)


@contextmanager
def visitor(real=False):
    """(a new visitor's browser, the site's address); Python answers from this process unless `real`."""
    chromium, address = place()
    context = chromium.new_context(**PHONE)
    context.set_default_timeout(LONGEST_MS)
    for name, (right, wrong) in faults.items():
        _put_in(context, name, right, wrong)
    try:
        yield (context if real else host(context)), address
    finally:
        context.close()


def _put_in(context, name, right, wrong):
    text = (build.DIST / name).read_text(encoding="utf-8")
    assert text.count(right) == 1, f"{name}: {right}"
    body = text.replace(right, wrong)
    context.route(f"**/{name}", lambda route: route.fulfill(content_type="text/javascript", body=body))


def opened(context, address):
    """A page that is ready."""
    page = context.new_page()
    page.goto(address)
    ready(page)
    return page


def ready(page):
    page.wait_for_selector("html[data-state=ready]", state="attached", timeout=LONGEST_MS)


def type_in(page, key, text):
    """Type a value into a field, and leave it."""
    found = field(page, key)
    found.fill(text)
    found.press("Enter")


def ports(page):
    return float(page.locator('[data-answer="port_count"]').get_attribute("data-value"))


KEPT = """async () => {
  const { entries } = await import("./vendor/idb-keyval/index.js");
  return (await entries()).map(([key, record]) => ({ key, ...record }));
}"""
