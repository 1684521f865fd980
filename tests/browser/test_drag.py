"""Lines of the face are dragged with a finger and a mouse; the design follows; one undo takes it back."""

import pytest
from browser.conftest import PHONE, READY_MS, open_ready
from browser.hosted import host

AT = """async (mm) => {
  const { model } = await import("./models.mjs"), x = model("face-x"), y = model("face-y");
  const { left, top, width, height } = document.getElementById("live-face").getBoundingClientRect();
  return [left + (mm[0] - x.start) / (x.end - x.start) * width, top + (y.end - mm[1]) / (y.end - y.start) * height];
}"""


LIES = """async () => {
  const { model } = await import("./models.mjs"), x = model("face-x"), y = model("face-y");
  return y.end - y.start > x.end - x.start;
}"""


@pytest.fixture(scope="module")
def page(chromium, site):
    context = host(chromium.new_context(**PHONE, service_workers="block"))
    made = context.new_page()
    made.set_default_timeout(READY_MS)
    open_ready(made, site)
    made.click('#chapters [data-go="face"]')
    made.wait_for_selector("#figure-face[data-live]", state="attached")
    made.wait_for_selector("#root-body_length > div", state="attached")
    yield made
    context.close()


def settled(page):
    page.wait_for_function("() => document.documentElement.dataset.state === 'ready'")


def until(page, key, text):
    """Wait until a setting's field says a text."""
    for _ in range(300):
        if value(page, key) == text:
            return settled(page)
        page.wait_for_timeout(50)
    raise AssertionError(f"{key} is {value(page, key)}, not {text}")


def value(page, key):
    return page.evaluate("async (key) => (await import('./models.mjs')).model(key).value", key)


def undone(page, key, text):
    """One press of Undo takes all of a drag back."""
    page.click("#undo")
    until(page, key, text)


def drag(page, start, end, touch):
    """From one place of the face to another, in mm from its middle."""
    (x1, y1), (x2, y2) = page.evaluate(AT, start), page.evaluate(AT, end)
    steps = [(x1 + (x2 - x1) * i / 8, y1 + (y2 - y1) * i / 8) for i in range(9)]
    if touch:
        session = page.context.new_cdp_session(page)

        def send(kind, points):
            session.send(
                "Input.dispatchTouchEvent", {"type": kind, "touchPoints": [{"x": x, "y": y} for x, y in points]}
            )

        send("touchStart", steps[:1])
        for step in steps[1:]:
            send("touchMove", [step])
        send("touchEnd", [])
    else:
        page.mouse.move(*steps[0])
        page.mouse.down()
        for step in steps[1:]:
            page.mouse.move(*step)
        page.mouse.up()


@pytest.mark.parametrize("touch", [True, False])
def test_the_edge_of_the_body_follows_the_pointer_and_one_undo_takes_it_back(page, touch):
    assert value(page, "body_length") == "9"
    drag(page, (114.3, 20), (127, 20), touch)
    until(page, "body_length", "10")
    undone(page, "body_length", "9")


def test_the_lip_follows_and_so_do_the_verdicts(page):
    drag(page, (98.4, 0), (88.9, 0), True)
    until(page, "setback", "1")
    undone(page, "setback", "5/8")
    worst = 'details.worst[data-room="face"]'
    assert page.get_attribute(worst, "data-verdict") == "good"
    drag(page, (114.3, 20), (139.7, 20), True)
    until(page, "body_length", "11")  # its lip gets too hot
    assert page.get_attribute(worst, "data-verdict") == "caution"
    undone(page, "body_length", "9")


def test_a_finger_that_goes_up_scrolls_and_changes_nothing(page):
    before = page.evaluate("scrollY")
    drag(page, (0, 50.8), (0, 20), True)
    drag(page, (0, -50.8), (0, 90), True)
    page.wait_for_timeout(200)
    settled(page)
    assert value(page, "body_width") == "4" and "edge_margin" not in page.url
    page.evaluate("(y) => scrollTo(0, y)", before)


def test_enlarged_it_lies_down_and_the_lines_follow_there_too(page):
    page.click("#figure-face .enlarge")
    for _ in range(100):
        if page.evaluate(LIES):
            break
        page.wait_for_timeout(50)
    drag(page, (20, 114.3), (20, 101.6), True)
    until(page, "body_length", "8")
    page.click("#figure-face .enlarge")
    undone(page, "body_length", "9")
