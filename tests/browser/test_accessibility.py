"""The page for everybody: axe finds nothing in any state, the job can be done by keyboard, and changes are spoken once."""

import pytest

from browser.conftest import PHONE, READY_MS, open_ready
from browser.test_job import field, settle
from browser.tools import tool

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
DESKTOP = {"viewport": {"width": 1440, "height": 1000}}
SIZES = {"phone": PHONE, "desktop": DESKTOP}
CHAPTERS = ("heat", "face", "feed", "make", "fire")
DIALOGS = ("share-box", "paper-box", "designs-box", "compare-box", "help-box", "walk")
STOP = "#v=1&ports_per_row=40"  # ports so close that the web between them breaks


@pytest.fixture(params=SIZES)
def look(chromium, request):
    """A page of a size, with axe in it."""
    context = chromium.new_context(**SIZES[request.param], service_workers="block")
    context.add_init_script(tool("axe-core").read_text())
    page = context.new_page()
    page.set_default_timeout(READY_MS)
    yield page
    context.close()


def violations(page, state, within="html"):
    """What axe says of a part of the page as it is, in light and in dark, a line for each place."""
    lines = []
    for scheme, only in (("light", {"type": "tag", "values": TAGS}), ("dark", {"type": "rule", "values": ["color-contrast"]})):
        page.emulate_media(color_scheme=scheme)
        page.wait_for_timeout(350)  # colours change within a quarter of a second
        found = page.evaluate("""async ([within, runOnly]) => (await axe.run(within, { runOnly, resultTypes: ["violations"] })).violations""",
                              [within, only])
        lines += [f"{state}, {scheme}: {v['id']}: {v['help']}: {node['target']} {node['html'][:120]} {node['failureSummary']}"
                  for v in found for node in v["nodes"]]
    return lines


def open_all_of(page, chapter):
    """Open a chapter and every fold in it, and wait for its widgets and figures."""
    page.evaluate("""(name) => {
      const chapter = document.getElementById(`chapter-${name}`);
      chapter.open = true;
      for (const fold of chapter.querySelectorAll("details")) fold.open = true;
    }""", chapter)
    page.wait_for_function("""(name) => [...document.querySelectorAll(`#chapter-${name} .widget`)]
      .every((place) => place.firstElementChild?.shadowRoot?.querySelector("input, select"))""", arg=chapter)
    for figure in page.locator(f"#chapter-{chapter} figure[data-lazy]").all():
        figure.scroll_into_view_if_needed()
        page.wait_for_function("figure => figure.dataset.live !== undefined", arg=figure.element_handle())
    page.evaluate("() => scrollTo(0, 0)")
    page.wait_for_timeout(100)
    settle(page)


def test_axe_finds_nothing_in_any_chapter_or_dialog(look, site):
    open_ready(look, site)
    found = violations(look, "start")
    for chapter in CHAPTERS:
        open_all_of(look, chapter)
        found += violations(look, chapter, f"#chapter-{chapter}")
    found += violations(look, "all that is open")
    for dialog in DIALOGS:
        look.evaluate("(id) => document.getElementById(id).showModal()", dialog)
        found += violations(look, dialog, f"#{dialog}")
        look.evaluate("(id) => document.getElementById(id).close()", dialog)
    assert found == []


def test_axe_finds_nothing_when_something_is_wrong(look, site):
    open_ready(look, site + STOP)
    assert look.locator("#worst").get_attribute("data-verdict") == "stop"
    found = violations(look, "stop")
    refused = field(look, "setback")
    refused.fill("9")
    refused.press("Enter")
    look.wait_for_selector("html[data-state=error]", state="attached")
    look.locator("#set-setback .refused").wait_for()
    found += violations(look, "refused")
    assert found == []


def test_axe_finds_nothing_while_a_link_is_worked_out(look, site):
    look.route("**/pyodide.asm.wasm", lambda route: None)  # never answered
    look.goto(site + "#v=1&rows=3")
    look.wait_for_selector("#shared-words")
    assert violations(look, "shared") == []


def test_axe_finds_nothing_when_python_is_broken(look, site):
    look.route("**/pyodide.asm.wasm", lambda route: route.abort())
    look.goto(site)
    look.wait_for_selector("html[data-broken]", state="attached")
    look.wait_for_selector("#notice")
    assert violations(look, "broken") == []


def test_axe_can_find_something(look, site):
    open_ready(look, site)
    look.evaluate("""() => { document.querySelector(".chapter[open] .widget").firstElementChild.shadowRoot.querySelector("label").remove();
      document.documentElement.style.setProperty("--soft", "#888888"); }""")
    rules = {line.split(": ")[1] for line in violations(look, "spoilt")}
    assert {"select-name", "color-contrast"} <= rules
