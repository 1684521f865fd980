"""Pages that die in the middle of a save: whatever was saved before is there afterwards, whole."""

import os
import signal
import tempfile
from contextlib import suppress

from attack.site import KEPT, PHONE, opened, place, type_in, visitor
from browser import engines
from browser.hosted import host
from playwright.sync_api import Error

from burnercalc.design import Design
from burnercalc.link import from_link, to_link

KILLS = 5  # a trial
KEEP = """(name) => {
  document.getElementById("designs-status").textContent = "";
  document.getElementById("keep-name").value = name;
  document.getElementById("keep").requestSubmit();
}"""
SHOWN = "link => (location.hash || '#v=2') === link && document.documentElement.dataset.state === 'ready'"
SAID = "() => document.getElementById('designs-status').textContent"
NAMES = ("one", "two", "three")


def trial(rng):
    if rng.random() < 0.1:
        return whole_browser(rng)
    with visitor() as (context, address):
        page, saved = opened(context, address), Saved()
        for _ in range(KILLS):
            saved.save(page, rng)
            saved.begin(page, rng)
            die(page, rng)
            page = opened(context, address)
            saved.judge(page)
    return KILLS


class Saved:
    """What the page has said is kept, and what it may have kept besides when it died."""

    def __init__(self):
        self.kept = {}  # name -> links, one of which the design has
        self.last = set()  # links, one of which the next visit opens

    def change(self, page, rng):
        text = f"{rng.randint(12, 30)} in"
        type_in(page, "chamber_length", text)
        return to_link(Design.from_texts({"chamber_length": text}))

    def save(self, page, rng):
        """Change and keep something, and wait until the page says so."""
        link, name = self.change(page, rng), rng.choice(NAMES)
        page.wait_for_function(SHOWN, arg=link)
        page.evaluate(KEEP, name)
        said = page.wait_for_function(SAID).json_value()
        assert name in said and ("is kept" in said or "is overwritten" in said), said
        self.kept[name], self.last = {link}, {link}

    def begin(self, page, rng):
        """The same, without waiting."""
        link, name = self.change(page, rng), rng.choice(NAMES)
        page.evaluate(KEEP, name)
        page.wait_for_timeout(rng.choice((0, 0, 1, 3, 10, 30, 100)))
        if name in self.kept:  # with what is on the page, old or new
            self.kept[name] = self.kept[name] | self.last | {link}
        self.last = self.last | {link}

    def judge(self, page, flushed=True):
        records = page.evaluate(KEPT)
        kept = {record["name"]: record for record in records}
        assert len(kept) == len(records), f"a name twice: {records}"
        for name, links in self.kept.items():
            assert name in kept, f"{name} is lost"
            assert kept[name]["link"] in links, f"{name} is {kept[name]['link']}, not one of {links}"
            self.kept[name] = {kept[name]["link"]}
        for record in records:
            assert record["v"] == 1 and from_link(record["link"])[1] == [], f"half a design: {record}"
            self.kept.setdefault(record["name"], {record["link"]})
        shown = page.evaluate("() => location.hash || '#v=2'")
        assert not flushed or shown in self.last, f"{shown} is opened, not one of {self.last}"
        self.last = {shown}


def die(page, rng):
    way = rng.randrange(3)
    with suppress(Error):  # a page that crashes says so
        if way == 1:
            page.goto("chrome://crash")
        elif way == 2:
            page.goto("about:blank")
    page.close()


def whole_browser(rng):
    """The browser itself is killed. It writes texts of a page's storage seconds later, so of those nothing is asked."""
    chromium, address = place()
    saved = Saved()
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        for _ in range(2):
            context = host(
                chromium.browser_type.launch_persistent_context(
                    profile, executable_path=engines.chromium(), args=engines.CHROMIUM_ARGUMENTS, **PHONE
                )
            )
            page = opened(context, address)
            if saved.kept:
                saved.judge(page, flushed=False)
                context.close()
                return 1
            saved.save(page, rng)
            saved.begin(page, rng)
            os.kill(browser_process(profile), signal.SIGKILL)
            with suppress(Error):
                context.close()


def browser_process(profile):
    """The process of the browser that was started with a profile: by Chromium's own lock, which names it."""
    return int(os.readlink(f"{profile}/SingletonLock").rpartition("-")[2])
