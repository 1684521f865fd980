"""One page is of one version, a new one is told of, and nobody frames the page."""

import os
import re
import shutil
import sys

import pytest
from browser.conftest import PHONE, READY_MS, open_ready
from browser.hosted import host, renamed
from browser.test_job import enter, number, put
from browser.test_runtime import listening

import build
from burnercalc import Design, solve

sys.path.insert(0, str(build.ROOT / "site" / "make"))
import assemble

OTHER = "0" * 16
RELOAD = '#bars button:visible:has-text("Reload")'


def build_name():
    return (build.DIST / "build.txt").read_text().strip()


@pytest.fixture
def copy(tmp_path, site):
    """A copy of dist/ that is served: (folder, address)."""
    folder = tmp_path / "dist"
    shutil.copytree(build.DIST, folder)
    server, address = listening(folder)
    yield folder, address
    server.shutdown()
    server.server_close()


def of_another_build(folder, *names):
    for name in names:
        data = (folder / name).read_bytes()
        other = renamed(name, data, build_name(), OTHER)
        assert other != data, name
        (folder / name).write_bytes(other)


# Each with a way of its own of seeing it; that every module sees it is tested below.
@pytest.mark.parametrize(
    "name", ["index.html", "app.mjs", "page.mjs", "settings.mjs", "worker.mjs", "page.bin", "selfcheck.json"]
)
def test_a_page_of_two_versions_says_so_and_computes_nothing(chromium, copy, name):
    folder, address = copy
    of_another_build(folder, name)
    for path in folder.rglob("*"):  # old enough for a browser to keep a file for days without asking
        os.utime(path, (0, 0))
    context = chromium.new_context(**PHONE, service_workers="block")
    if name not in ("worker.mjs", "selfcheck.json"):  # these only the real worker sees
        host(context)
    page = context.new_page()
    page.goto(address)
    page.wait_for_selector("html[data-broken][data-state=error]", state="attached", timeout=READY_MS)
    said = page.locator("#notice").inner_text()
    assert "do not build from" in said and ("new version" in said or "another version" in said)
    again = page.locator("#bars button:visible").first
    shutil.copyfile(build.DIST / name, folder / name)  # the host has got the whole of it
    again.click()
    page.wait_for_selector("html[data-state=ready]", state="attached", timeout=READY_MS)
    context.close()


def test_every_module_of_the_page_carries_the_build(site):
    modules = {path.name for path in build.DIST.glob("*.mjs")} - {"sw.mjs"}
    assert len(modules) > 10
    for name in modules:
        assert (build.DIST / name).read_text().count(build_name()) == 1, name
    assert re.search(rf'data-build="{build_name()}"', (build.DIST / "index.html").read_text())


def test_an_open_tab_is_told_of_a_new_version_and_takes_it_with_its_design(phone_context, copy):
    folder, address = copy
    page = open_ready(phone_context.new_page(), address)
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    put(page, "rows", "3")
    other = open_ready(phone_context.new_page(), address + "#v=2&rows=6")
    other.wait_for_function("() => navigator.serviceWorker.controller !== null")
    assert page.locator("#bars .bar:visible").count() == 0
    (before,) = page.evaluate("() => caches.keys()")

    shutil.copytree(build.DIST, folder, dirs_exist_ok=True)
    modules = [path.name for path in build.DIST.glob("*.mjs") if path.name != "sw.mjs"]
    of_another_build(folder, "index.html", "build.txt", "page.bin", "selfcheck.json", *modules)
    relist(folder)
    # As when one comes back to the tab.
    page.evaluate("() => { document.dispatchEvent(new Event('visibilitychange')); }")
    page.wait_for_selector(RELOAD)
    assert "new version" in page.locator("#bars").inner_text()
    assert page.evaluate("() => document.documentElement.dataset.build") == build_name()  # nothing is taken unasked
    enter(page, "rows", "4")
    page.wait_for_function("() => location.hash.includes('rows=4')")
    page.locator(RELOAD).click()
    page.wait_for_selector(f"html[data-build='{OTHER}'][data-state=ready]", state="attached", timeout=READY_MS)
    assert number(page, "port_count") == solve(Design.from_texts({"rows": "4"}))["port_count"]
    (after,) = page.evaluate("() => caches.keys()")
    assert after != before
    other.wait_for_selector(RELOAD)  # the other tab is of the old version still, and told so
    other.locator('#bars button:visible:has-text("Reload")').click()
    other.wait_for_selector(f"html[data-build='{OTHER}'][data-state=ready]", state="attached", timeout=READY_MS)
    assert "rows=6" in other.url


def relist(folder):
    """Write the service worker's list anew, as the build does."""
    (folder / "sw.mjs").unlink()
    assemble.write_service_worker(folder)


def test_nobody_frames_the_page(chromium, site):
    context = chromium.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    # Another page, with no policy of its own: ours would let it frame nothing.
    page.route(site + "another", lambda route: route.fulfill(content_type="text/html", body="<p>another site</p>"))
    page.goto(site + "another")
    framed = "() => { const at = document.createElement('iframe'); at.src = './'; document.body.append(at); }"

    with page.expect_console_message(lambda message: "frame-ancestors 'none'" in message.text):
        page.evaluate(framed)

    # A host that sends no header: the page itself sees that it is framed.
    index = (build.DIST / "index.html").read_text()
    page.route(site, lambda route: route.fulfill(content_type="text/html", body=index))
    page.reload()
    page.evaluate(framed)
    inner = page.frame_locator("iframe")
    inner.locator("#framed").wait_for()
    assert "another site" in inner.locator("#framed").inner_text()
    assert not inner.locator("#job").is_visible() and not inner.locator("header").is_visible()
    context.close()
