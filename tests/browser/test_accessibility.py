"""The page for everybody: axe finds nothing in any state, the keyboard does the job, and changes are spoken once."""

import pytest
from browser.conftest import PHONE, READY_MS, open_ready
from browser.hosted import host
from browser.test_job import field, settle
from browser.tools import tool

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
DESKTOP = {"viewport": {"width": 1440, "height": 1000}}
SIZES = {"phone": PHONE, "desktop": DESKTOP}
CHAPTERS = ("start", "heat", "face", "feed", "make", "fire")
DIALOGS = (
    "search-box",
    "share-box",
    "paper-box",
    "designs-box",
    "compare-box",
    "help-box",
    "walk",
    "find-box",
    "good-box",
    "shops-box",
)
STOP = "#v=2&ports_per_row=40"  # ports so close that the web between them breaks


@pytest.fixture(params=SIZES)
def look(chromium, request):
    """A page of a size, with axe in it."""
    context = host(chromium.new_context(**SIZES[request.param], service_workers="block"))
    context.add_init_script(tool("axe-core").read_text())
    context.add_init_script("""addEventListener("DOMContentLoaded", () => {
      const still = document.createElement("style");
      still.textContent = "* { transition: none !important; }";
      document.head.append(still);
    });""")  # a colour on its way to another one is neither
    page = context.new_page()
    page.set_default_timeout(READY_MS)
    yield page
    context.close()


# Without the chapters and dialogs that are not shown, which take most of the time to read, unless the page is `whole`.
AXE = """async ([within, runOnly, whole]) => {
  const home = document.querySelector(within), put = [];
  const away = (each) => !whole && !each.contains(home) && !each.checkVisibility();
  for (const each of [...document.querySelectorAll(".chapter, dialog")].filter(away)) {
    const place = document.createElement("template"); // an element: the page waits for what follows its first chapter
    each.replaceWith(place);
    put.push(() => place.replaceWith(each));
  }
  try {
    return (await axe.run(within, { runOnly, resultTypes: ["violations"] })).violations;
  } finally {
    for (const back of put) back();
  }
}"""


def violations(page, state, within="html", whole=False):
    """What axe says of a part of the page as it is, a line for each place: in light, and on a phone in dark.

    No colour depends on the width, so the desktop has nothing to add in dark.
    """
    lines = []
    schemes = [("light", {"type": "tag", "values": TAGS}), ("dark", {"type": "rule", "values": ["color-contrast"]})]
    for scheme, only in schemes if page.viewport_size["width"] < 1000 else schemes[:1]:
        page.emulate_media(color_scheme=scheme)
        found = page.evaluate(AXE, [within, only, whole])
        lines += [
            f"{state}, {scheme}: {v['id']}: {v['help']}: {node['target']} {node['html'][:120]} {node['failureSummary']}"
            for v in found
            for node in v["nodes"]
        ]
    return lines


def open_all_of(page, chapter):
    """Open a chapter and every fold in it, and wait for its widgets and figures."""
    page.evaluate(
        """(name) => {
      document.querySelector(`#chapters [data-go="${name}"]`).click();
      const chapter = document.getElementById(`chapter-${name}`);
      for (const fold of chapter.querySelectorAll("details")) fold.open = true;
      for (const name of chapter.querySelectorAll(".setting .name[aria-expanded=false]")) name.click();
    }""",
        chapter,
    )
    page.wait_for_function(
        """(name) => [...document.querySelectorAll(`#chapter-${name} .widget`)]
      .every((place) => place.firstElementChild?.shadowRoot?.querySelector("input, select"))""",
        arg=chapter,
    )
    for figure in page.locator(f"#chapter-{chapter} figure[data-lazy]").all():
        figure.scroll_into_view_if_needed()
        page.wait_for_function("figure => figure.dataset.live !== undefined", arg=figure.element_handle())
    page.evaluate("() => scrollTo(0, 0)")
    settle(page)


def violations_of_a_chosen_port(page):
    """The face with a port that is looked at and one that is drilled, small and enlarged."""
    page.locator("#drilled").evaluate("press => press.parentElement.hidden = false")
    page.locator("#drilled").press("ArrowRight")
    page.click("#drilled")
    page.wait_for_selector("#undrill")
    found = violations(page, "a port", "#figure-face")
    page.click("#figure-face .enlarge")
    settle(page)
    found += violations(page, "a port of the enlarged face", "#figure-face")
    page.click("#undrill")
    page.click("#figure-face .enlarge")
    return found


def violations_of_full_dialogs(page):
    """Dialogs with what they show once they are used."""
    found = []
    page.click("#share")
    page.wait_for_selector("#share-code:not([hidden])")
    found += violations(page, "shared", "#share-box")
    page.click("#share-box [data-close]")
    page.click("[data-open=search-box]")
    page.fill("#search-for", "jet")
    page.wait_for_selector("#search-found button")
    found += violations(page, "found", "#search-box")
    page.click("#search-box [data-close]")
    page.click("#designs")
    page.fill("#keep-name", "Kept")
    page.press("#keep-name", "Enter")
    page.wait_for_selector("#design-list .design")
    found += violations(page, "kept", "#designs-box")
    page.locator("#design-list button", has_text="Compare").click()
    page.wait_for_selector("#compare-answers tr")
    found += violations(page, "compared", "#compare-box")
    page.click("#compare-box [data-close]")
    page.click("#designs-box [data-close]")
    return found


def test_axe_finds_nothing_in_any_chapter_or_dialog(look, site):
    open_ready(look, site)
    found = []
    for chapter in CHAPTERS:
        open_all_of(look, chapter)
        assert look.locator(f"#chapter-{chapter}").is_visible()
        found += violations(look, chapter, f"#chapter-{chapter}")
        if chapter == "face":
            look.locator("#chapter-face .term:visible").first.click()
            found += violations(look, "a word", "#term")
            look.keyboard.press("Escape")
            found += violations_of_a_chosen_port(look)
    found += violations(look, "the whole page", whole=True)
    found += violations_of_full_dialogs(look)
    look.evaluate("() => document.getElementById('job').remove()")  # dead behind a dialog, and read each time
    for dialog in DIALOGS:
        look.evaluate("(id) => document.getElementById(id).showModal()", dialog)
        found += violations(look, dialog, f"#{dialog}")
        look.evaluate("(id) => document.getElementById(id).close()", dialog)
    assert found == []


def test_axe_finds_nothing_when_something_is_wrong(look, site):
    open_ready(look, site + STOP)
    assert look.locator("#chapter-start .worst").get_attribute("data-verdict") == "stop"
    look.locator("#chapter-start .worst summary").click()
    look.wait_for_selector("#chapter-start .cure")
    found = violations(look, "stop")
    refused = field(look, "setback")
    refused.fill("9")
    refused.press("Enter")
    look.wait_for_selector("html[data-state=error]", state="attached")
    look.locator("#set-setback .refused").wait_for()
    look.evaluate("() => scrollBy(0, -24)")  # a row that the bar half covers is no small target: it is scrolled clear
    found += violations(look, "refused")
    assert found == []


def test_axe_finds_nothing_while_a_link_is_worked_out(look, site):
    look.route("**/worker.mjs", lambda route: None)  # never answered
    look.goto(site + "#v=2&rows=3")
    look.wait_for_selector("#shared-words")
    assert violations(look, "shared") == []


def test_axe_finds_nothing_in_the_lines_at_the_foot(look, site):
    held, let_go = [], []
    look.clock.install()
    look.route("**/worker.mjs", lambda route: route.fallback() if let_go else held.append(route))  # no Python without
    look.goto(site + "#v=2&rows=3")
    while not held:
        look.wait_for_timeout(20)
    look.clock.fast_forward(7000)
    look.wait_for_selector("#bars .bar:visible button")
    found = violations(look, "waited for", "#bars")
    let_go.append(True)
    for route in held:
        route.fallback()
    look.wait_for_selector("html[data-state=ready]", state="attached")
    look.evaluate("""async () => {
      const { tell } = await import("./bars.mjs");
      tell("own", "Shared design; yours is kept.", ["Back to mine", () => {}], ["Close", () => {}]);
      tell("slow", "Still computing after 10 s.", ["Stop", () => {}]);
    }""")
    found += violations(look, "lines", "#bars") + violations(look, "line at the head", "#told")
    look.click("#designs")
    look.wait_for_selector("#designs-box #bars button")
    found += violations(look, "lines in a dialog", "#designs-box")
    stop = look.locator("#bars button", has_text="Stop")
    stop.focus()
    assert look.evaluate(FOCUS)["uncovered"] and look.evaluate(FOCUS)["inSight"]
    assert found == []


def test_axe_finds_nothing_when_python_is_broken(look, site):
    look.route("**/worker.mjs", lambda route: route.abort())
    look.goto(site)
    look.wait_for_selector("html[data-broken]", state="attached")
    look.wait_for_selector("#notice")
    assert violations(look, "broken") == []


@pytest.mark.parametrize("look", ["desktop"], indirect=True)
def test_axe_can_find_something(look, site):
    open_ready(look, site)
    look.evaluate("""() => {
      const widget = document.querySelector("#root-fuel").firstElementChild;
      widget.shadowRoot.querySelector("label").remove();
      document.documentElement.style.setProperty("--soft", "#888888"); }""")
    for within in ("html", "#chapter-start"):
        rules = {line.split(": ")[1] for line in violations(look, "spoilt", within)}
        assert {"select-name", "color-contrast"} <= rules


# Of every list that is shown: its choices that are wider than the place they are shown in.
CUT = """() => {
  const pen = document.createElement("canvas").getContext("2d");
  const inside = [...document.querySelectorAll("[data-setting] .widget")].map((at) => at.firstElementChild?.shadowRoot?.querySelector("select"));
  const lists = [...inside, ...document.querySelectorAll(".layer select, .kind select")].filter((list) => list?.clientWidth);
  return lists.flatMap((list) => {
    const { fontWeight, fontSize, fontFamily, paddingLeft, paddingRight } = getComputedStyle(list);
    pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
    const arrow = inside.includes(list) ? 0 : 16; // the browser's own
    const room = list.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight) - arrow;
    return [...list.options].map(({ textContent }) => textContent).filter((text) => pen.measureText(text).width > room);
  });
}"""  # noqa: E501


TURNED_OR_LARGE = ((640, 360, ""), (839, 412, ""), (412, 839, "34px"), (360, 640, "34px"), (1280, 900, "34px"))

# Every number, name, unit, field and verdict in sight that is wider than its place, or beyond the window.
NOT_WHOLE = """() => {
  const pen = document.createElement("canvas").getContext("2d"), wide = document.documentElement.clientWidth;
  const fields = [...document.querySelectorAll("[data-setting] .widget")].map((at) => at.firstElementChild?.shadowRoot?.querySelector("input, select"));
  const cut = fields.filter((field) => field?.checkVisibility() && !field.getRootNode().host.closest(".long")).filter((field) => {
    const { fontWeight, fontSize, fontFamily, paddingLeft, paddingRight } = getComputedStyle(field);
    pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
    const text = field.selectedOptions?.[0]?.textContent ?? field.value, { right } = field.getBoundingClientRect();
    return right > wide + 1 || pen.measureText(text).width > field.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight) + 0.5;
  }).map((field) => `${field.getRootNode().host.closest("[data-setting]").id}: ${field.value}`);
  const texts = [...document.querySelectorAll(".answer .name, [data-answer], [data-echo], .setting .name, .setting .unit, .words, .checks p, .chip, h2, h3")];
  const off = texts.filter((at) => at.checkVisibility() && !at.closest(".scroll")).filter((at) => {
    const { left, right } = at.getBoundingClientRect(), block = getComputedStyle(at).display !== "inline";
    return left < 0 || right > wide + 1 || (block && at.scrollWidth > at.clientWidth + 1) || (at.matches(".words") && at.scrollHeight > at.clientHeight + 2);
  }).map((at) => `${at.closest("[id]").id}: ${at.textContent.trim().slice(0, 40)}`);
  return [...cut, ...off, ...(document.documentElement.scrollWidth > wide ? ["the page scrolls sideways"] : [])];
}"""  # noqa: E501


def test_what_is_chosen_is_read_whole_on_a_narrow_phone(chromium, site):
    context = host(chromium.new_context(viewport={"width": 360, "height": 640}, service_workers="block"))
    page = context.new_page()
    page.set_default_timeout(READY_MS)
    page.goto(site)
    line = page.locator("#status")
    high = line.bounding_box()["height"]  # of the preview's words, the longest but those of a trouble
    open_ready(page, site)
    assert line.bounding_box()["height"] == high < 20
    for chapter in CHAPTERS:
        page.evaluate(
            """(name) => {
          document.querySelector(`#chapters [data-go="${name}"]`).click();
          for (const fold of document.querySelectorAll(`#chapter-${name} details.more`)) fold.open = true; }""",
            chapter,
        )
        page.wait_for_function(
            """(name) => [...document.querySelectorAll(`#chapter-${name} .choice .widget`)]
          .every((place) => place.firstElementChild?.shadowRoot?.querySelector("select"))""",
            arg=chapter,
        )
        assert page.evaluate(CUT) == [], chapter
    page.locator("#chapters [data-go=start]").click()
    page.evaluate("() => { document.querySelector('#chapter-start details.more').open = false; }")
    page.locator("#set-fuel select").select_option(label="natural gas")
    told = page.locator("#bars .bar:visible > p").first
    told.wait_for()
    page.click("#bars button:has-text('Which')")
    assert "Lit by: guarded pilot, was " in told.inner_text()
    answer, foot = page.locator("#chapter-start .big").bounding_box(), page.locator("#bars .bar").last.bounding_box()
    assert answer["y"] > 52 and answer["y"] + answer["height"] <= foot["y"]  # and covers no answer
    page.locator("#title-start").click()  # it goes with the next tap
    assert page.locator("#bars .bar:visible").count() == 0
    for wide, high, letters in TURNED_OR_LARGE:
        page.set_viewport_size({"width": wide, "height": high})
        page.evaluate("(letters) => { document.documentElement.style.fontSize = letters; }", letters)
        for chapter in CHAPTERS:
            page.evaluate("(name) => document.querySelector(`#chapters [data-go=${name}]`).click()", chapter)
            page.evaluate("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")
            assert page.evaluate(NOT_WHOLE) == [], (wide, high, letters, chapter)
    page.evaluate("() => document.querySelector('#chapters [data-go=start]').click()")
    page.evaluate("() => { document.querySelector('#fit').hidden = false; }")  # the big figure and its button
    for wide in (360, 412):
        page.set_viewport_size({"width": wide, "height": 640})
        page.evaluate("() => { document.documentElement.style.fontSize = '32px'; }")
        page.evaluate("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")
        assert page.evaluate(NOT_WHOLE) == [], wide
    page.evaluate("() => { document.querySelector('.numbers').style.width = '60px'; }")  # it can find something
    page.evaluate("() => document.querySelector('#chapters [data-go=heat]').click()")
    assert page.evaluate(NOT_WHOLE)
    context.close()


# By keyboard alone, with what a screen reader would say

FOCUS = """() => {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  const box = at.getBoundingClientRect(), style = getComputedStyle(at);
  const host = at.getRootNode().host ?? at;
  return { id: at.id, key: host.closest("[data-setting]")?.dataset.setting ?? "",
    words: (at.getAttribute("aria-label") ?? at.textContent).trim().slice(0, 60),
    outline: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
    inSight: box.width > 0 && box.top >= 0 && box.bottom <= innerHeight && box.left >= 0 && box.right <= innerWidth,
    uncovered: at === document.body ||
      host.contains(document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2)) };
}"""


def walk_to(page, wanted, key="Tab", most=150):
    """Press a key until the focus is at the wanted place; every stop on the way must show where it is."""
    for _ in range(most):
        page.keyboard.press(key)
        at = page.evaluate(FOCUS)
        assert at["outline"], f"no focus ring: {at}"
        if wanted(at):
            assert at["inSight"] and at["uncovered"], at
            return at
    raise AssertionError(f"{most} times {key} did not get there; last at {at}")


def spoken(page):
    return page.evaluate("() => window.spoken")


@pytest.fixture
def keyboard(chromium, site):
    """A desktop page that is ready, with a record of what its live region says."""
    context = host(chromium.new_context(viewport={"width": 1000, "height": 900}, service_workers="block"))
    page = context.new_page()
    page.set_default_timeout(READY_MS)
    page.clock.install()
    open_ready(page, site)
    page.evaluate("""() => {
      window.spoken = [];
      const region = document.getElementById("spoken");
      const watcher = new MutationObserver(() => window.spoken.push(region.textContent));
      watcher.observe(region, { childList: true, characterData: true, subtree: true });
    }""")
    yield page
    context.close()


def test_the_whole_job_by_keyboard(keyboard):
    page = keyboard
    walk_to(page, lambda at: at["words"].startswith("Face"))
    page.keyboard.press("Enter")
    page.wait_for_selector("#chapter-face:visible #root-setback > div")
    walk_to(page, lambda at: at["key"] == "setback" and at["id"] == "input")
    page.keyboard.press("Control+A")
    page.keyboard.type("3/16")
    page.keyboard.press("Enter")
    page.wait_for_selector('#chapters [data-go="make"][data-verdict=stop]')  # so narrow a lip cannot be cut
    settle(page)

    walk_to(page, lambda at: at["words"].startswith("Make"), "Shift+Tab")
    page.keyboard.press("Enter")
    walk_to(page, lambda at: at["words"].startswith("Stop"))
    page.keyboard.press("Enter")  # what can be done about it
    page.wait_for_selector("#chapter-make .worst .cures button")
    walk_to(page, lambda at: at["words"].startswith("Raise lip"))
    page.keyboard.press("Enter")  # to the setting that moves it, in its own chapter
    page.wait_for_function("() => document.activeElement.closest('#chapter-face [data-setting][data-marked]')")
    page.keyboard.press("Control+A")
    page.keyboard.type("5/8")
    page.keyboard.press("Enter")
    page.wait_for_selector('#chapters [data-go="make"]:not([data-verdict=stop])')
    settle(page)

    for opener, box, way in (("Share", "share-box", "Shift+Tab"), ("Paper", "paper-box", "Tab")):
        walk_to(page, lambda at: at["words"] == opener, way)
        page.keyboard.press("Enter")
        page.wait_for_selector(f"#{box}[open]")
        assert page.evaluate("(id) => document.activeElement.closest(`#${id}`) !== null", box)
        if page.evaluate(FOCUS)["words"] != "Close":  # which stands on top of a dialog
            walk_to(page, lambda at: at["words"] == "Close", "Shift+Tab")
        page.keyboard.press("Enter")
        page.wait_for_selector(f"#{box}:not([open])", state="attached")
        assert page.evaluate(FOCUS)["words"] == opener  # back where it was


def test_a_word_of_the_trade_is_explained_by_keyboard_and_nothing_moves(keyboard):
    page = keyboard
    page.evaluate("() => document.querySelector('#chapters [data-go=face]').click()")
    page.locator("#set-block_thickness .name").evaluate(
        "name => { name.closest('details').open = true; name.click(); }"
    )
    settle(page)
    word = page.locator("#about-block_thickness .term", has_text="plenum")
    page.keyboard.press("Shift")  # the first key wakes the drawings
    settle(page)
    page.wait_for_timeout(500)
    word.focus()
    before = page.evaluate("() => [scrollY, document.body.scrollHeight]")
    page.keyboard.press("Enter")
    shown = page.locator("#term:popover-open")
    assert shown.text_content().startswith("plenum: The room in the box behind the ports.")
    box, at = shown.bounding_box(), word.bounding_box()
    assert box["y"] >= at["y"] + at["height"] and box["x"] >= 0 and box["x"] + box["width"] <= 1000
    assert page.evaluate("() => [scrollY, document.body.scrollHeight]") == before
    page.clock.fast_forward(2000)
    assert spoken(page)[-1] == shown.text_content()
    page.keyboard.press("Escape")
    assert not shown.is_visible() and page.evaluate("() => document.activeElement.textContent") == "plenum"
    # A label is a button itself: its words are told under it, and those of its choices.
    told = page.locator("#about-block_thickness dfn")
    assert told.all_text_contents() == ["block"]
    page.keyboard.press("/")
    page.fill("#search-for", "plenum")
    page.locator("#search-found [data-find=word-plenum]").click()
    assert page.locator("#search-box #term:popover-open").text_content().startswith("plenum: ")


def test_only_changed_verdicts_are_spoken_and_not_each_letter(keyboard):
    page = keyboard
    found = field(page, "ports_per_row")
    found.click()
    found.press("Control+A")
    page.clock.pause_at(page.evaluate("() => Date.now() / 1000") + 1)
    for letter in "40":
        page.keyboard.type(letter)
        page.clock.run_for(100)
    page.clock.resume()
    page.wait_for_selector("#chapter-face .worst[data-verdict=stop]")
    settle(page)
    page.clock.fast_forward(2000)
    said = spoken(page)
    assert len(said) == 1 and said[0].startswith("Stop"), said
    found.press("Enter")  # the same design again: nothing new to say
    settle(page)
    page.locator('#set-body_depth .step[data-by="1"]').click()  # another number, the same verdict
    page.wait_for_function("() => location.hash.includes('body_depth=')")
    settle(page)
    page.clock.fast_forward(2000)
    assert spoken(page) == said
    found.fill("9")
    found.press("Enter")
    page.wait_for_selector("#chapter-face .worst:not([data-verdict=stop])")
    settle(page)
    page.clock.fast_forward(2000)
    assert len(spoken(page)) == 2
