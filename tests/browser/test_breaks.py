"""A calculator that breaks, loops or does not come: the page says so, can be helped, and loses nothing."""

import pytest
from browser.conftest import PHONE, READY_MS, open_ready
from browser.hosted import host, worker_text
from browser.test_job import enter, field, number, put, settle

from burnercalc import Design, solve


@pytest.fixture
def spoilt(chromium, site):
    """Opens a page whose first `times` workers do what `script` says when they are asked for four rows, or for as many
    as `rows` says of each worker."""
    context = host(chromium.new_context(**PHONE, service_workers="block"))

    def opened(script, times, link="", rows=lambda worker: "4", ready=True):
        text = worker_text()
        broken = text.replace(
            "handle = ours;",
            f"""handle = (asked) => {{ if (asked.includes('"rows":"ROWS"')) {{ {script} }} return ours(asked); }};""",
        )
        assert broken != text
        page = context.new_page()
        page.clock.install()
        page.workers_started = []

        def worker(route):
            number = len(page.workers_started)
            page.workers_started.append(number)
            body = broken.replace("ROWS", rows(number)) if number < times else text
            route.fulfill(content_type="text/javascript", body=body)

        page.route("**/worker.mjs", worker)
        if ready:
            return open_ready(page, site + link)
        page.goto(site + link)
        return page

    yield opened
    context.close()


BREAK = 'throw new RangeError("broke");'  # no exception of Python's: the runtime itself


def test_a_design_that_cannot_be_worked_out_leaves_the_example(spoilt):
    page = spoilt(
        """return '{"ok": false, "errors": [{"setting": "", "text": "A fault of ours."}]}';""", 1, "#v=2&rows=4"
    )
    assert (
        "A fault of ours." in page.locator("#notice").inner_text()
        and "shows the example" in page.locator("#notice").inner_text()
    )
    assert (
        page.locator("#set-chamber_length .widget input").is_visible()
        and not page.locator("#shared-words").is_visible()
    )
    assert number(page, "port_count") == solve(Design.from_texts({}))["port_count"]


def test_a_runtime_that_breaks_is_started_again_and_loses_nothing(spoilt):
    page = spoilt(BREAK, 1)
    put(page, "rows", "4")
    assert number(page, "port_count") == solve(Design.from_texts({"rows": "4"}))["port_count"]
    put(page, "rows", "3")
    assert number(page, "port_count") == solve(Design.from_texts({"rows": "3"}))["port_count"]


def test_a_design_that_breaks_the_runtime_twice_is_refused_and_others_go_on(spoilt):
    page = spoilt(BREAK, 99)
    put(page, "rows", "3")
    enter(page, "rows", "4")
    page.wait_for_selector("html[data-state=error]", state="attached")
    assert "broke off twice" in page.locator("#notice").inner_text()
    assert "last good settings" in page.locator("#status").inner_text()
    assert number(page, "port_count") == solve(Design.from_texts({"rows": "3"}))["port_count"]
    assert field(page, "rows").input_value() == "4"
    put(page, "rows", "5")
    assert number(page, "port_count") == solve(Design.from_texts({"rows": "5"}))["port_count"]
    assert not page.locator("#notice").is_visible()
    assert len(page.workers_started) == 3


def test_a_runtime_that_breaks_on_every_other_design_is_not_started_for_ever(spoilt):
    """Each worker answers what the one before it broke on, and breaks on the next: an answer between any two breaks."""
    restarts = 5  # as python.mjs has it
    page = spoilt(BREAK, 99, rows=lambda worker: str(3 + worker))
    for each in range(3, 3 + restarts):
        put(page, "rows", str(each))
        assert number(page, "port_count") == solve(Design.from_texts({"rows": str(each)}))["port_count"]
    enter(page, "rows", str(3 + restarts))
    page.wait_for_selector("html[data-broken][data-state=error]", state="attached")
    assert len(page.workers_started) == 1 + restarts
    assert "last good settings" in page.locator("#status").inner_text()
    assert "reload the page" in page.locator("#notice").inner_text()
    assert number(page, "port_count") == solve(Design.from_texts({"rows": str(2 + restarts)}))["port_count"]
    page.reload()
    page.wait_for_selector("html[data-state=ready]", state="attached")
    assert f"rows={2 + restarts}" in page.url


# Work that does not end

LOOP = "for (;;);"
STOP = "#bars .bar:visible button:has-text('Stop')"


def rows_3(key="port_count"):
    return solve(Design.from_texts({"rows": "3"}))[key]


def pass_time(page, until, seconds):
    """Let the page's clock jump, again and again, until something is there."""
    for _ in range(200):
        if page.locator(until).count():
            return
        page.clock.fast_forward(1000 * seconds)
        page.wait_for_function("() => new Promise(requestAnimationFrame)")
    raise AssertionError(f"{until} never came; the page says: {page.locator('body').inner_text()[:300]}")


def test_work_that_takes_long_says_so_and_can_be_stopped(spoilt):
    page = spoilt(LOOP, 99)
    put(page, "rows", "3")
    enter(page, "rows", "4")
    stop = page.locator("#bars button", has_text="Stop")
    pass_time(page, STOP, 10)
    assert "Still computing after 10 s" in page.locator("#bars").inner_text()
    stop.click()
    page.wait_for_selector("html[data-state=error]", state="attached")
    assert "Stopped after 10 s" in page.locator("#notice").inner_text() and not stop.is_visible()
    assert field(page, "rows").input_value() == "4"  # what was typed is kept
    assert number(page, "port_count") == rows_3() and "rows=3" in page.url
    page.click("#undo")
    settle(page)
    assert field(page, "rows").input_value() == "3"
    put(page, "rows", "5")
    assert number(page, "port_count") == solve(Design.from_texts({"rows": "5"}))["port_count"]
    assert len(page.workers_started) == 2


def test_a_worker_that_died_in_silence_is_missed(spoilt):
    # The face is answered, the rest never: it closes, and what is queued must not run between that and its end.
    page = spoilt('if (asked.includes(\'"kind":"solve"\')) { self.close(); for (;;); }', 1)
    enter(page, "rows", "4")
    pass_time(page, STOP, 10)
    page.locator(STOP).click()
    page.wait_for_selector("html[data-state=error]", state="attached")
    assert field(page, "rows").input_value() == "4"
    put(page, "rows", "5")
    assert number(page, "port_count") == solve(Design.from_texts({"rows": "5"}))["port_count"]


def test_work_that_never_ends_is_stopped_with_nobody_there(spoilt):
    page = spoilt(LOOP, 99)
    put(page, "rows", "3")
    enter(page, "rows", "4")
    pass_time(page, "html[data-state=error]", 10)
    assert "Stopped after 120 s" in page.locator("#notice").inner_text()
    assert number(page, "port_count") == rows_3()
    put(page, "rows", "5")


def test_a_link_that_never_ends_leaves_the_example(spoilt):
    page = spoilt(LOOP, 99, "#v=2&rows=4", ready=False)
    page.wait_for_function("() => document.getElementById('status').textContent.startsWith('Computing')")
    pass_time(page, STOP, 10)
    page.locator(STOP).click()
    page.wait_for_selector("html[data-state=ready]", state="attached", timeout=READY_MS)
    assert "shows the example" in page.locator("#notice").inner_text()
    assert number(page, "port_count") == solve(Design.from_texts({}))["port_count"]


def test_stop_is_in_reach_while_a_file_is_made(spoilt):
    page = spoilt('if (asked.includes(\'"kind":"file"\')) for (;;);', 99)
    put(page, "rows", "4")
    page.click('[data-open="paper-box"]')
    page.click('[data-file="template-a4"]')
    pass_time(page, STOP, 10)
    page.locator(STOP).click()
    page.wait_for_function("() => document.getElementById('paper-status').textContent.startsWith('Stopped')")
    page.click("#paper-box [data-close]")
    put(page, "rows", "5")


# What does not come

LATE = {  # what never answers at first: what the page says of it; every file's turn comes in the standing attack
    "app.mjs": "own scripts",
    "vendor/idb-keyval/*": "own scripts",
    "page.bin": "fields and drawings",
    "vendor/bokeh/1.js": "fields and drawings",
    "worker.mjs": "calculator",
    "pyodide/pyodide.asm.wasm": "calculator",
    "pyodide/burnercalc-*.whl": "calculator",
    "selfcheck.json": "calculator",
}


@pytest.fixture
def alone(chromium):
    """A page of phone size with a clock that tests move, and without a service worker."""
    context = chromium.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    page.set_default_timeout(READY_MS)
    page.clock.install()
    yield page
    context.close()


def hold_first(page, pattern):
    """The first request for a file is never answered."""
    held = []

    def answer(route):
        if held:
            route.fallback()
        else:
            held.append(route)

    page.route("**/" + pattern, answer)
    return held


def until(page, held):
    """Wait for the request itself, so that nothing that comes before it is said to be waited for."""
    for _ in range(READY_MS // 20):
        if held:
            return
        page.wait_for_timeout(20)
    raise AssertionError("never asked for")


@pytest.mark.parametrize("file", LATE)
def test_what_does_not_come_is_said_and_can_be_asked_for_again(alone, site, file):
    if LATE[file] != "calculator" or file == "worker.mjs":
        host(alone.context)
    held = hold_first(alone, file)
    alone.goto(site + "#v=2&rows=3", wait_until="commit")
    until(alone, held)
    bar = f'#bars .bar:visible:has-text("{LATE[file]}")'
    pass_time(alone, bar, 3)
    said = alone.locator(bar).inner_text()
    assert "Waiting for" in said and "network" in said, said
    alone.locator(bar).get_by_role("button", name="Try again").click()
    alone.wait_for_selector("html[data-state=ready]", state="attached")
    assert number(alone, "port_count") == rows_3()
    alone.wait_for_function("() => !document.querySelector('#bars .bar:not([hidden])')")


def test_where_a_number_comes_from_does_not_come(alone, site):
    host(alone.context)
    open_ready(alone, site)
    held = hold_first(alone, "sources.bin")
    alone.click('#chapters [data-go="heat"]')
    alone.locator("#chapter-heat details.answer").first.locator("summary").click()
    until(alone, held)
    pass_time(alone, "#bars .bar:visible button", 3)
    alone.locator("#bars button:visible", has_text="Try again").click()
    alone.wait_for_selector("#chapter-heat details.answer[open] .inputs", state="attached")


def test_without_a_network_the_page_says_so_and_goes_on_when_there_is_one(alone, site):
    held = hold_first(alone, "worker.mjs")
    alone.goto(site + "#v=2&rows=3")
    until(alone, held)
    alone.wait_for_selector("#set-chamber_length .widget input", state="attached")  # all else has come
    alone.context.set_offline(True)
    pass_time(alone, "#bars .bar:visible button", 3)
    assert "There is no network" in alone.locator("#bars").inner_text()
    alone.locator("#bars button:visible", has_text="Try again").click()
    alone.wait_for_selector("html[data-broken]", state="attached")
    assert "There is no network" in alone.locator("#notice").inner_text()
    alone.context.set_offline(False)
    alone.wait_for_selector("html[data-state=ready]", state="attached")
    assert number(alone, "port_count") == rows_3()
    assert not alone.locator("#notice").is_visible()
