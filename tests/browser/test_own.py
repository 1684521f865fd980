"""A link opens beside one's own design, never over it, and two tabs never write over each other's."""

import json

import pytest
from browser.conftest import PHONE, READY_MS, open_ready
from browser.hosted import host, worker_text
from browser.test_job import chapter, enter, field, number, plain, put, settle, shows

from burnercalc import Design, solve

SHARED = "#v=2&body_length=12in"
CHAPTER = "() => document.documentElement.dataset.chapter"
BACK = '#told button:has-text("Back to mine")'


def tab(context, address):
    page = context.new_page()
    return open_ready(page, address)


@pytest.fixture
def phone_context(chromium):
    context = chromium.new_context(**PHONE, service_workers="block")
    yield host(context)
    context.close()


@pytest.fixture
def mine(phone_context, site):
    """A tab with a design of one's own: three rows."""
    page = tab(phone_context, site)
    put(page, "rows", "3")
    return page


def next_visit(context, site):
    """What a new tab opens at the bare address."""
    page = tab(context, site)
    found = page.evaluate("() => location.hash")
    page.close()
    return found


def test_a_shared_link_leaves_ones_own_design_as_it_is(mine, phone_context, site):
    shared = tab(phone_context, site + SHARED)
    assert "body_length=12in" in shared.url
    assert "yours is kept" in shared.locator("#told").inner_text()
    mine.close()
    assert next_visit(phone_context, site) == "#v=2&rows=3"
    shared.reload()
    settle(shared)
    shared.click(BACK)
    shows(shared, "#v=2&rows=3")
    assert number(shared, "port_count") == solve(Design.from_texts({"rows": "3"}))["port_count"]
    assert not shared.locator(BACK).is_visible()
    shared.click("#undo")  # and there again
    shared.wait_for_function("link => location.hash === link", arg=SHARED)
    chapter(shared, "fire")
    shared.reload()
    assert shared.evaluate(CHAPTER) == "fire"  # where one was; a link opens with its answer
    shared.goto("about:blank")
    open_ready(shared, site + SHARED)
    assert shared.evaluate(CHAPTER) == "start"


def test_a_shared_design_that_is_changed_becomes_ones_own_and_the_other_stays(mine, phone_context, site):
    mine.close()
    shared = tab(phone_context, site + SHARED)
    put(shared, "rows", "4")
    changed = shared.evaluate("() => location.hash")
    assert next_visit(phone_context, site) == changed
    shared.reload()
    settle(shared)
    assert shared.locator(BACK).count() == 0  # it is one's own now
    shared.click("#designs")
    shared.wait_for_selector("#visit-list li", state="attached")
    rows = shared.locator("#visit-list li")
    assert rows.count() == 1
    rows.get_by_role("button", name="Open").click()
    shared.wait_for_function("() => location.hash === '#v=2&rows=3'")


def test_a_change_of_a_shared_design_that_is_undone_is_not_what_the_next_visit_opens(mine, phone_context, site):
    mine.close()
    shared = tab(phone_context, site + SHARED)
    put(shared, "rows", "4")
    changed = shared.evaluate("() => location.hash")
    shared.click("#undo")
    shows(shared, SHARED)
    assert "yours is kept" in shared.locator("#told").inner_text()
    assert next_visit(phone_context, site) == "#v=2&rows=3"
    shared.click("#redo")
    shows(shared, changed)
    assert next_visit(phone_context, site) == changed


def test_where_nothing_is_ones_own_an_undone_change_of_a_shared_design_leaves_nothing(phone_context, site):
    shared = tab(phone_context, site + SHARED)
    put(shared, "rows", "4")
    shared.click("#undo")
    shows(shared, SHARED)
    assert next_visit(phone_context, site) == ""


def test_an_open_list_follows_what_another_tab_keeps_and_deletes(mine, phone_context, site):
    other = tab(phone_context, site)
    for page in (mine, other):
        page.click("#designs")
    mine.fill("#keep-name", "Three rows")
    mine.press("#keep-name", "Enter")
    other.wait_for_selector("#design-list li:has-text('Three rows')")
    mine.locator("#design-list button", has_text="Delete").click()
    other.wait_for_selector("#design-list li", state="detached")


def test_a_link_opened_in_the_same_tab_leaves_ones_own_design_too(mine, phone_context, site):
    chapter(mine, "fire")
    mine.evaluate("() => scrollTo(0, 600)")
    mine.evaluate("link => { location.hash = link; }", SHARED)
    mine.wait_for_selector(BACK)
    settle(mine)
    assert mine.evaluate(CHAPTER) == "start" and mine.evaluate("() => scrollY") == 0
    high = mine.locator("#told").bounding_box()["height"]
    put(mine, "rows", "4")
    assert mine.locator("#told p").first.inner_text() == "Yours now; the one before is kept."
    assert mine.locator(BACK).count() == 0  # what is shown is mine
    assert mine.locator("#told").bounding_box()["height"] == high  # nothing moves under a thumb
    mine.click('#told button:has-text("Open it")')
    mine.wait_for_function("() => location.hash === '#v=2&rows=3'")
    settle(mine)
    mine.click("#designs")
    mine.wait_for_selector("#visit-list li", state="attached")  # the shared one, changed
    assert mine.locator("#visit-list li").count() == 1


def told(page):
    return [part.inner_text() for part in page.locator("#told p:first-child, #told button").all()]


def follow(page, link):
    page.evaluate("link => { location.hash = link; }", link)
    shows(page, plain(link))
    return told(page)


def test_a_link_is_told_as_shared_and_mine_as_kept_only_where_there_is_one(phone_context, site):
    page = tab(phone_context, site + SHARED)
    assert told(page) == ["Shared design.", "Close"]
    assert next_visit(phone_context, site) == ""  # nobody made anything here
    assert follow(page, "#v=2&rows=7") == ["Shared design.", "Close"]
    assert follow(page, "#v=2&rows=5") == ["Shared design.", "Close"]  # as the example
    assert follow(page, "#v=2&rows=abc") == []
    left = page.locator("#notice").inner_text()
    assert "Left out of this design: " in left and "abc" in left
    assert left.endswith("What stands here is the plain example.")
    follow(page, "#v=2&rows=7")
    assert not page.locator("#notice").is_visible()
    put(page, "rows", "3")
    assert told(page) == ["This one is yours now.", "Close"]
    assert follow(page, "#v=2&rows=abc") == ["The plain example; yours is kept.", "Back to mine", "Close"]
    page.click(BACK)
    page.wait_for_function("() => location.hash === '#v=2&rows=3'")
    settle(page)
    assert told(page) == []


def test_an_address_that_names_a_place_goes_there(mine, phone_context, site):
    mine.evaluate("() => { location.hash = '#answer-run_time'; }")
    mine.wait_for_selector("#answer-run_time[data-marked]:visible")
    assert mine.evaluate(CHAPTER) == "feed" and "rows=3" in mine.url and told(mine) == []
    mine.evaluate("() => { location.hash = '#heat'; }")
    mine.wait_for_function(f"() => ({CHAPTER})() === 'heat'")
    assert mine.evaluate("() => scrollY") == 0 and "rows=3" in mine.url
    page = tab(phone_context, site + "#make")
    assert page.evaluate(CHAPTER) == "make" and not page.locator("#notice").is_visible()


def test_two_tabs_keep_a_design_each(mine, phone_context, site):
    other = tab(phone_context, site)
    assert "rows=3" in other.url
    put(other, "rows", "5")
    put(mine, "ports_per_row", "7")
    put(other, "rows", "6")
    first, second = (page.evaluate("() => location.hash") for page in (mine, other))
    mine.close()
    other.close()
    page = tab(phone_context, site)
    assert page.evaluate("() => location.hash") == second
    page.click("#designs")
    page.locator("#visit-list li").first.get_by_role("button", name="Open").click()
    page.wait_for_function("link => location.hash === link", arg=first)


def test_a_reload_of_either_tab_opens_that_tabs_own_design(mine, phone_context, site):
    other = tab(phone_context, site)
    put(other, "rows", "5")
    for page, link in ((mine, "#v=2&rows=3"), (other, "#v=2&rows=5")):
        page.reload()
        settle(page)
        assert page.evaluate("() => location.hash") == link
        assert page.locator(BACK).count() == 0


def test_the_design_that_an_earlier_version_kept_survives_a_change(phone_context, site):
    page = phone_context.new_page()
    page.add_init_script(
        """if (!localStorage.getItem("burnercalc-last")) localStorage.setItem("burnercalc-last", "#v=2&rows=3");"""
    )
    open_ready(page, site)
    assert "rows=3" in page.url
    put(page, "rows", "5")
    page.reload()
    settle(page)
    page.click("#designs")
    page.locator("#visit-list li").get_by_role("button", name="Open").click()
    page.wait_for_function("() => location.hash === '#v=2&rows=3'")


def test_many_visits_are_bounded(phone_context, site):
    page = tab(phone_context, site)
    page.evaluate(
        "() => { for (let i = 0; i < 60; i++) localStorage.setItem(`burnercalc-visit-${i}`, `${i} #v=2&rows=${i}`); }"
    )
    put(page, "rows", "3")
    kept = page.evaluate("() => Object.keys(localStorage).filter((key) => key.startsWith('burnercalc-visit-')).length")
    assert kept == 20
    assert field(page, "rows").input_value() == "3"


@pytest.fixture
def slow(chromium, site):
    """A page whose worker, asked to solve four rows, waits for what is in `held`; `posted` records the questions."""
    context = host(chromium.new_context(**PHONE, service_workers="block"))
    page = context.new_page()
    page.set_default_timeout(READY_MS)
    wait = """handle = (asked) => {
      if (asked.includes('"kind":"solve"') && asked.includes('"rows":"4"')) {
        const request = new XMLHttpRequest();
        request.open("GET", "./build.txt?wait", false);
        request.send();
      }
      return ours(asked);
    };"""
    text = worker_text()
    assert text.count("handle = ours;") == 1
    body = text.replace("handle = ours;", wait)
    page.route("**/worker.mjs", lambda route: route.fulfill(content_type="text/javascript", body=body))
    page.held = []
    page.route(lambda url: url.endswith("?wait"), lambda route: page.held.append(route))
    page.add_init_script("""{
      window.posted = [];
      const { postMessage } = Worker.prototype;
      Worker.prototype.postMessage = function (given) { window.posted.push(given); postMessage.call(this, given); };
    }""")
    yield page
    context.close()


def test_a_change_that_a_solve_for_more_figures_overtakes_is_still_ones_own(slow, site):
    slow.add_init_script(
        """if (!localStorage.getItem("burnercalc-last")) localStorage.setItem("burnercalc-last", "#v=2&rows=3");"""
    )
    open_ready(slow, site + SHARED)
    assert slow.locator(BACK).is_visible()
    enter(slow, "rows", "4")
    chapter(slow, "feed")  # other figures come near the window
    slow.wait_for_function(
        "() => window.posted.filter(({ kind, settings }) => kind === 'solve' && settings.rows === '4').length > 1"
    )
    slow.route(lambda url: url.endswith("?wait"), lambda route: route.continue_())
    for route in slow.held:
        route.continue_()
    slow.wait_for_function("() => location.hash.includes('rows=4')")
    settle(slow)
    assert slow.evaluate("() => localStorage.getItem('burnercalc-last')") == slow.evaluate("() => location.hash")


def test_where_nothing_can_be_kept_it_is_said_once(phone_context, site):
    page = tab(phone_context, site)
    put(page, "rows", "3")
    assert page.locator("#bars .bar").count() == 0
    page.evaluate(
        "() => { Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }; }"
    )
    put(page, "rows", "4")
    page.wait_for_selector("#bars .bar:visible")
    assert "does not keep your design" in page.locator("#bars").inner_text()
    page.click("#bars button:has-text('Close')")
    put(page, "rows", "3")
    assert page.locator("#bars .bar").count() == 0


def test_a_job_that_is_tapped_just_before_a_reload_is_not_lost(slow, site):
    open_ready(slow, site)
    job = slow.evaluate("() => document.querySelector('[data-job]').dataset.job")
    slow.evaluate("""() => {
      const { postMessage } = Worker.prototype;
      Worker.prototype.postMessage = function (given) {
        if (given.kind !== "solve") postMessage.call(this, given);
        else window.held = true;
      };
    }""")
    slow.click(f'[data-job="{job}"]')
    slow.wait_for_function("() => window.held")
    slow.reload()
    slow.wait_for_selector(f'[data-job="{job}"][aria-pressed=true]')


@pytest.mark.parametrize("reloads", [False, True])
def test_a_job_that_is_tapped_before_the_page_can_answer_is_opened_when_it_can(phone, site, reloads):
    """On the first screen a job can be tapped while the scripts or the calculator are still on their way."""
    waiting = []
    late = "**/app.mjs" if reloads else "**/selfcheck.json"
    phone.route(late, lambda route: waiting.append(route))
    phone.goto(site + "#v=2&wall=1/8in", wait_until="commit")
    phone.locator("[data-job]").first.click()
    job = phone.evaluate("() => document.querySelector('[data-job]').dataset.job")
    if not reloads:
        phone.wait_for_selector("#bars .bar:has-text('as soon as the calculator has started')")
    phone.unroute(late)
    if reloads:
        phone.reload()
    for route in waiting if not reloads else ():
        route.continue_()
    phone.wait_for_selector(f'[data-job="{job}"][aria-pressed=true]')
    phone.wait_for_selector("#bars .bar:has-text('has started')", state="detached")
    phone.wait_for_function("() => sessionStorage.getItem('burnercalc-job') === null")


# Files of designs


@pytest.fixture
def import_(phone, site):
    """Gives a file of designs to the page; what the page says of it."""

    def given(content):
        if not phone.url.startswith(site):
            open_ready(phone, site)
            phone.click("#designs")
        phone.evaluate("() => { document.getElementById('designs-status').textContent = ''; }")
        file = {"name": "some.json", "mimeType": "application/json", "buffer": json.dumps(content).encode()}
        phone.set_input_files("#import", file)
        phone.wait_for_function("() => document.getElementById('designs-status').textContent")
        return phone.locator("#designs-status").inner_text()

    return given


def test_an_import_goes_on_after_what_is_no_design(import_, phone):
    good = [{"name": "One", "link": "#v=2&rows=3"}, {"name": "Two", "link": "#v=2&rows=4"}]
    odd = [None, 7, "text", {}, {"name": "no link"}, {"name": "link of a kind", "link": {"v": 1}}, []]
    said = import_({"kind": "burnercalc designs", "version": 1, "designs": [good[0], *odd, good[1]]})
    assert "Kept on this device: 2." in said and f"left out when opened: {len(odd)}." in said
    assert sorted(phone.locator("#design-list b").all_inner_texts()) == ["One", "Two"]


def test_a_file_of_another_version_or_kind_is_refused(import_, phone):
    for version in (99, 0, "1", None):
        said = import_({"kind": "burnercalc designs", "version": version, "designs": [{"name": "One", "link": "#v=2"}]})
        assert "does not know" in said and str(version).replace("None", "null") in said
    for content in (None, [], {"kind": "burnercalc designs", "version": 1, "designs": {}}, {"kind": "x"}):
        assert "not a file of burner designs" in import_(content)
    assert phone.locator("#design-list li").count() == 0


def test_what_is_entered_just_before_a_reload_is_not_lost(mine):
    """Quicker than it is computed."""
    wanted = {"rows": "4", "ports_per_row": "7", "body_length": "10 in", "setback": "3/4 in"}
    fields = {key: field(mine, key) for key in wanted}
    for key, text in wanted.items():
        fields[key].fill(text)
        fields[key].press("Enter")
    mine.reload()
    settle(mine)
    mine.wait_for_function("() => location.hash.includes('setback')")
    link = mine.evaluate("() => location.hash")
    assert all(f"{key}={text.replace(' ', '')}" in link for key, text in wanted.items()), link


def test_an_address_that_is_no_design_is_said(phone_context, site):
    page = tab(phone_context, site + "#%%%")
    assert "What the address holds after # is no design: #%%%." in page.locator("#notice").inner_text()


def test_where_nothing_can_be_kept_what_is_imported_can_still_be_opened(import_, phone, site):
    open_ready(phone, site)
    phone.evaluate(
        "() => { IDBFactory.prototype.open = () => { throw new DOMException('no', 'InvalidStateError'); }; }"
    )
    phone.click("#designs")
    file = [{"name": "One", "link": "#v=2&rows=3"}, {"name": "Two", "link": "#v=2&rows=4"}]
    said = import_({"kind": "burnercalc designs", "version": 1, "designs": file})
    phone.wait_for_selector("#design-list li >> nth=1")
    said = phone.locator("#designs-status").inner_text()
    assert "Kept on this device: 0." in said and "Not kept: 2" in said
    assert phone.locator("#design-list b").all_inner_texts() == ["One (not kept)", "Two (not kept)"]
    phone.locator("#design-list li").first.get_by_role("button", name="Open").click()
    phone.wait_for_function("() => location.hash.includes('rows=3')")
