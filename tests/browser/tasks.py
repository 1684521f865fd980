"""Ten jobs played by touch on two phones: how many taps and how many screens of scrolling each takes.

Run by `build.py tasks`, which prints them; test_tasks.py holds them to their limits.
"""

import sys
import threading
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent.parent
if __name__ == "__main__":
    sys.path[:0] = [str(ROOT), str(ROOT / "tests")]

from browser import engines  # noqa: E402
from browser.conftest import READY_MS, open_ready  # noqa: E402
from browser.hosted import host  # noqa: E402

import build  # noqa: E402

PHONES = {
    "Pixel 7": {"viewport": {"width": 412, "height": 839}, "device_scale_factor": 2.625},
    "small": {"viewport": {"width": 360, "height": 640}, "device_scale_factor": 2},
}
TOUCH = {"is_mobile": True, "has_touch": True}
FIELD = "#set-{} .widget :is(input, select)"


class Hand:
    """One finger: it taps what is in sight, and scrolls to what is not."""

    def __init__(self, page):
        self.page, self.taps, self.scrolled_px = page, 0, 0.0

    @property
    def screens(self):
        return self.scrolled_px / self.page.viewport_size["height"]

    def see(self, selector):
        """Scroll until a thing is clear of the header and of the bar; where its middle is."""
        found = self.page.locator(selector).first
        found.wait_for()
        away = found.evaluate("""(at) => {
          const box = at.getBoundingClientRect(), inside = at.closest("dialog, header, nav");
          const top = inside ? 0 : document.querySelector("header.top").getBoundingClientRect().bottom;
          const foot = inside ? innerHeight : document.querySelector("#chapters").getBoundingClientRect().top;
          if (box.top < top) return box.top - top;
          return box.bottom > foot ? Math.min(box.bottom - foot, box.top - top) : 0;
        }""")
        if away:
            self.scrolled_px += abs(away)
            found.evaluate(
                "(at, away) => (at.closest('dialog') ?? window).scrollBy({ top: away, behavior: 'instant' })", away
            )
        box = found.bounding_box()
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    def tap(self, selector):
        place = self.see(selector)
        self.taps += 1
        self.page.touchscreen.tap(*place)

    def type(self, key, text):
        """Tap a setting's field, type, and press the keypad's own Enter."""
        self.tap(FIELD.format(key))
        self.page.keyboard.press("Control+A")
        self.page.keyboard.type(text)
        self.page.keyboard.press("Enter")
        self.settle()

    def choose(self, key, label):
        """Tap a list and one line of what the phone shows of it."""
        self.tap(FIELD.format(key))
        self.taps += 1
        self.page.keyboard.press("Escape")
        self.page.locator(FIELD.format(key)).select_option(label=label)
        self.settle()

    def chapter(self, name):
        self.tap(f'#chapters [data-go="{name}"]')

    def settle(self):
        self.page.wait_for_function("() => document.documentElement.dataset.state !== 'computing'")
        self.page.wait_for_selector("html[data-state=ready]", state="attached")


def size_a_burner(hand):
    hand.tap(".chip:has-text('Weld')")
    hand.page.wait_for_selector(".chip[aria-pressed=true]")
    hand.settle()
    for key, text in (("chamber_length", "16"), ("chamber_width", "7"), ("chamber_height", "7")):
        hand.type(key, text)
    hand.see('.big[data-echo="firing_rate_gross"]')
    hand.see("#chapter-start .worst")


def lay_out_a_tube(hand):
    hand.chapter("face")
    for key, text in (
        ("body_length", "12"),
        ("body_width", "4"),
        ("body_depth", "4"),
        ("port_diameter", "5/16"),
        ("rows", "4"),
        ("ports_per_row", "10"),
    ):
        hand.type(key, text)
    hand.see('#chapter-face [data-answer="port_count"]')
    hand.see("#chapter-face .worst")


def cure_the_worst(hand):
    before = hand.page.locator("#chapter-start .worst .words").inner_text()
    hand.tap("#chapter-start .worst summary")
    hand.tap("#chapter-start .worst .cure")
    hand.page.wait_for_function(
        "(before) => document.querySelector('#chapter-start .worst .words').innerText !== before", arg=before
    )
    hand.settle()


def print_the_template(hand):
    hand.tap('[data-open="paper-box"]')
    with hand.page.expect_download():
        hand.tap('[data-file="template-letter"]')


def share(hand):
    hand.tap("#share")
    hand.page.wait_for_selector("#share-box[open]")
    hand.tap("#copy")


def find_a_number(hand):
    hand.tap('[data-open="search-box"]')
    hand.page.keyboard.type("bottle lasts")
    hand.tap("#search-found button")
    hand.page.wait_for_selector("#answer-run_time[data-marked]:visible")


def take_another_fuel(hand):
    hand.choose("fuel", "natural gas")


def see_where_a_number_comes_from(hand):
    hand.chapter("face")
    hand.tap('[data-answer="plenum_to_port_ratio"]')
    hand.see("#answer-plenum_to_port_ratio .inputs li")


def keep_by_name(hand):
    hand.tap("#designs")
    hand.tap("#keep-name")
    hand.page.keyboard.type("First one")
    hand.tap("#keep button")
    hand.page.wait_for_selector("#design-list li")


def read_the_days(hand):
    hand.chapter("fire")
    hand.see('[data-answer="days_in_all"]')


STOP = "#v=2&ports_per_row=40"  # ports so close that the web between them breaks
# name: what is done, most taps, most screens, design to start from
TASKS = {
    "size a burner for a chamber": (size_a_burner, 6, 1, ""),
    "lay out a tube with pins at hand": (lay_out_a_tube, 10, 3, ""),
    "cure the worst check": (cure_the_worst, 3, 1, STOP),
    "print the template": (print_the_template, 3, 1, ""),
    "share": (share, 2, 0, ""),
    "find a number by search": (find_a_number, 3, 0, ""),
    "take another fuel": (take_another_fuel, 2, 1, ""),
    "see where a number comes from": (see_where_a_number_comes_from, 2, 1, ""),
    "keep a design by name": (keep_by_name, 3, 1, ""),
    "read how many days it takes": (read_the_days, 1, 0, ""),
}


def play(browser, site, phone, name):
    """(taps, screens) of a task on a phone that has never seen the page."""
    do, _, _, link = TASKS[name]
    context = host(browser.new_context(**PHONES[phone], **TOUCH, service_workers="block", accept_downloads=True))
    page = context.new_page()
    page.set_default_timeout(READY_MS)
    open_ready(page, site + link)
    hand = Hand(page)
    do(hand)
    found = hand.taps, round(hand.screens, 1)
    context.close()
    return found


def main():
    from playwright.sync_api import sync_playwright

    build.build()
    server = build.server()
    threading.Thread(target=server.serve_forever, daemon=True).start()
    print(f"{'taps and screens':34} {'most':>10}" + "".join(f"{phone:>12}" for phone in PHONES))
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=engines.chromium(), args=engines.CHROMIUM_ARGUMENTS)
        for name, (_, taps, screens, _) in TASKS.items():
            found = [play(browser, f"http://127.0.0.1:{server.server_port}/", phone, name) for phone in PHONES]
            cells = "".join(f"{each[0]:>6} {each[1]:>5}" for each in found)
            print(f"{name:34} {taps:>5} {screens:>4}{cells}", flush=True)
        browser.close()
    server.shutdown()


if __name__ == "__main__":
    main()
