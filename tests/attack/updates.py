"""The site is replaced while it is used: by a service worker or file by file, while a design is kept or a link opens.

No page computes with files of two versions, and nothing that was kept, and no design in a tab, is lost.
"""

import os
import shutil
import sys
import tempfile
import threading
from contextlib import contextmanager
from functools import cache
from pathlib import Path

from attack.kills import KEEP, KEPT, SAID, SHOWN
from attack.site import LONGEST_MS, PHONE, place, ports, ready, type_in
from browser.hosted import renamed, worker_text

import build
from burnercalc import worker
from burnercalc.design import Design
from burnercalc.link import from_link, to_link
from burnercalc.result import solve

sys.path.insert(0, str(build.ROOT / "site" / "make"))
import assemble

OTHER = "1" * 16
APART = ("pyodide", "licences")  # not asked for while Python answers from this process
SETTLED = """() => {
  const { state, broken } = document.documentElement.dataset;
  return state === "ready" || broken !== undefined;
}"""
OFFER = "#bars .bar:visible button:visible, #late-again:visible"
answering = threading.Lock()


class Handler(build.Handler):
    """The host; it also answers what the page asks Python."""

    def do_POST(self):
        asked = self.rfile.read(int(self.headers["Content-Length"])).decode()
        with answering:
            answer = worker.handle(asked).encode()
        self.send_response(200)
        self.send_header("Content-Length", str(len(answer)))
        self.end_headers()
        self.wfile.write(answer)


@cache
def versions():
    """Two folders of the site as one build and another make it, Python asked of the host."""
    folder = Path(tempfile.mkdtemp(prefix="burnercalc-versions-"))
    name, found = (build.DIST / "build.txt").read_text().strip(), []
    for version in (name, OTHER):
        out = folder / version
        shutil.copytree(build.DIST, out, ignore=shutil.ignore_patterns(*APART))
        (out / "worker.mjs").write_text(worker_text(), encoding="utf-8")
        for path in out.rglob("*"):
            if path.is_file():
                path.write_bytes(renamed(path.name, path.read_bytes(), name, version))
        for path in out.glob("*.mjs"):
            if path.name != "sw.mjs":  # each says which version it is of
                path.write_text(path.read_text(encoding="utf-8") + f'\n(self.builds ??= new Set()).add("{version}");\n')
        assemble.write_service_worker(out)
        found.append(out)
    return found


@contextmanager
def host():
    """(a folder that is served, its address)."""
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        served = Path(folder) / "dist"
        shutil.copytree(versions()[0], served)
        server = build.http.server.ThreadingHTTPServer(
            ("127.0.0.1", 0), lambda *arguments: Handler(*arguments, directory=str(served))
        )
        threading.Thread(target=server.serve_forever, daemon=True).start()
        try:
            yield served, f"http://127.0.0.1:{server.server_port}/"
        finally:
            server.shutdown()
            server.server_close()


def differing():
    """Files that differ between the two versions."""
    old, new = versions()
    names = [path.relative_to(new).as_posix() for path in new.rglob("*") if path.is_file()]
    return sorted(name for name in names if (old / name).read_bytes() != (new / name).read_bytes())


def put(folder, names):
    """The host gets some files of the new version, each at once."""
    for name in names:
        fresh = folder / f"{name}.new"
        shutil.copyfile(versions()[1] / name, fresh)
        os.replace(fresh, folder / name)


def trial(rng):
    chromium, _ = place()
    with host() as (folder, address):
        keeps = rng.random() < 0.7  # else no service worker stands between page and host, as in a private window
        context = chromium.new_context(**{**PHONE, "service_workers": "allow" if keeps else "block"})
        context.set_default_timeout(LONGEST_MS)
        try:
            return judge(rng, context, folder, address, keeps)
        finally:
            context.close()


def judge(rng, context, folder, address, keeps):
    tab = context.new_page()
    tab.goto(address)
    ready(tab)
    if keeps and rng.random() < 0.8:  # else the update comes while the first version is still being kept
        tab.wait_for_function("() => navigator.serviceWorker.controller !== null")
    links = {tab: keep(tab, rng, "first")}
    kept = {"first": {links[tab]}}
    names = differing()
    rng.shuffle(names)
    cut = rng.choice((0, rng.randint(1, 3), rng.randint(1, len(names) - 1), len(names)))
    put(folder, names[:cut])
    began = begin(rng, tab, links)
    kept |= {name: found for name, found in began.items() if found}
    if rng.random() < 0.7:  # a link opens while the host has files of both
        other = context.new_page()
        links[other] = to_link(Design.from_texts({"rows": rng.choice("2346")}))
        other.goto(address + links[other], wait_until="commit")
        if rng.random() < 0.5:
            settled(other, links[other])
    put(folder, names[cut:])
    for page in links:
        take(page)
    for page, link in links.items():
        last_of(page, link)
    records = {record["name"]: record["link"] for record in tab.evaluate(KEPT)}
    for name, possible in kept.items():
        assert name in records or name == "second", f"{name} is lost: {records}"
        assert name not in records or records[name] in possible, f"{name} is {records[name]}, not one of {possible}"
    return 1


def keep(page, rng, name):
    """Change and keep something, and wait until the page says so; its link."""
    text = f"{rng.randint(13, 30)} in"
    link = to_link(Design.from_texts({"chamber_length": text}))
    type_in(page, "chamber_length", text)
    page.wait_for_function(SHOWN, arg=link)
    page.evaluate(KEEP, name)
    said = page.wait_for_function(SAID).json_value()
    assert name in said and "kept" in said, said
    return link


def begin(rng, page, links):
    """Begin to keep another design and have the page look for a new version, in either order; what may be kept."""
    text = f"{rng.randint(13, 30)} in"
    link = to_link(Design.from_texts({"chamber_length": text}))
    look = "() => { document.dispatchEvent(new Event('visibilitychange')); }"
    first = rng.random() < 0.5
    if first:
        page.evaluate(look)
    type_in(page, "chamber_length", text)
    page.wait_for_function(SHOWN, arg=link)
    page.evaluate(KEEP, "second")
    if not first:
        page.evaluate(look)
    found = {"second": {link}}
    links[page] = link
    if rng.random() < 0.3:
        page.reload(wait_until="commit")
    return found


def settled(page, link):
    """A page of one version that shows its design, or one that says that it is broken and offers to load again."""
    page.wait_for_function(SETTLED, timeout=LONGEST_MS)
    if page.evaluate("() => document.documentElement.dataset.broken !== undefined"):
        page.wait_for_selector(OFFER)
        return False
    page.wait_for_function(SHOWN, arg=link)
    build, builds = page.evaluate("() => [document.documentElement.dataset.build, [...self.builds]]")
    assert builds == [build], f"a page of {build} computes with modules of {builds}"
    design, _ = from_link(link)
    assert ports(page) == solve(design)["port_count"], f"{link}: {ports(page)} ports"
    return True


def take(page):
    """Have the page look for a new version."""
    page.wait_for_function(SETTLED, timeout=LONGEST_MS)
    page.evaluate("""async () => {
      const registration = await navigator.serviceWorker?.getRegistration();
      await registration?.update().catch(() => {});
    }""")


def last_of(page, link):
    """The page gets to the new version by what it offers itself, or by a reload, with its design."""
    for _ in range(4):
        if settled(page, link) and page.evaluate("() => document.documentElement.dataset.build") == OTHER:
            return
        offer = page.locator(OFFER).filter(has_text="eload").or_(page.locator(OFFER).filter(has_text="again"))
        with page.expect_event("load", timeout=LONGEST_MS):
            if offer.count():
                offer.first.click()
            else:
                page.reload(wait_until="commit")
    raise AssertionError(f"{link}: still of the version before after four loads")
