"""The face under a finger: its handles are dragged and the design follows, its ports are looked at and marked."""

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


def press(page, steps, touch):
    """One pointer down at the first place, over the others, and up."""
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


def line(start, end):
    (x1, y1), (x2, y2) = start, end
    return [(x1 + (x2 - x1) * i / 8, y1 + (y2 - y1) * i / 8) for i in range(9)]


def drag(page, key, end, touch=True):
    """A handle to a place of the face, in mm from its middle."""
    box = page.locator(f'.grips [data-key="{key}"]').bounding_box()
    start = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    press(page, line(start, page.evaluate(AT, end)), touch)


def tap(page, place):
    page.touchscreen.tap(*page.evaluate(AT, place))


def words(page, start):
    page.wait_for_function("(start) => document.getElementById('port-words').textContent.startsWith(start)", arg=start)


def counted(page, text):
    page.wait_for_function("(text) => document.getElementById('drilled-count').textContent === text", arg=text)


@pytest.mark.parametrize("touch", [True, False])
def test_the_edge_of_the_body_follows_the_pointer_and_one_undo_takes_it_back(page, touch):
    assert value(page, "body_length") == "9"
    drag(page, "body_length", (-127, -25.4), touch)
    until(page, "body_length", "10")
    undone(page, "body_length", "9")


def test_a_lip_that_is_dragged_past_what_goes_stays_at_its_limit_and_is_taken_there(page):
    lip = value(page, "setback")
    drag(page, "setback", (20, 0))  # past the middle of the face
    words(page, "Lip 1 9/16 in: no further")
    until(page, "setback", "1 9/16")
    assert not page.locator("#set-setback .refused").is_visible()
    undone(page, "setback", lip)


def test_what_is_dragged_stays_under_the_finger_when_a_verdict_above_it_takes_a_line_more(page):
    """The face went 21 px down under a finger that dragged its edge, and the edge came to 6 1/4 in."""
    high = "() => document.querySelector('#chapter-face .worst').offsetHeight"
    page.evaluate("() => scrollTo(0, 0)")
    was = page.evaluate(high)
    drag(page, "body_width", (0, 63.5))  # half an inch further on either side
    until(page, "body_width", "5")
    assert page.evaluate(high) > was
    undone(page, "body_width", "4")


def test_a_tap_on_a_port_after_a_drag_says_which_it_is(page):
    drag(page, "body_length", (-127, -25.4))
    until(page, "body_length", "10")
    undone(page, "body_length", "9")
    tap(page, (0, 0))
    words(page, "Port 22:")


def test_the_lip_follows_and_so_do_the_verdicts(page):
    drag(page, "setback", (88.9, 0))
    until(page, "setback", "1")
    undone(page, "setback", "5/8")
    worst = 'details.worst[data-room="face"]'
    assert page.get_attribute(worst, "data-verdict") == "good"
    drag(page, "body_length", (-139.7, -25.4))
    until(page, "body_length", "11")  # its lip gets too hot
    assert page.get_attribute(worst, "data-verdict") == "caution"
    undone(page, "body_length", "9")


def test_a_row_is_dragged_up_and_down_by_its_handle(page):
    before = page.url
    drag(page, "edge_margin", (-106, 22.2))
    page.wait_for_function("() => location.href.includes('edge_margin=3/8in')")
    settled(page)
    page.click("#undo")
    page.wait_for_url(before)


def test_a_finger_that_goes_up_beside_the_handles_scrolls_and_changes_nothing(page):
    before, texts = page.evaluate("scrollY"), page.url
    press(page, line(page.evaluate(AT, (-40, -20)), page.evaluate(AT, (-40, 90))), True)
    page.wait_for_function("(y) => scrollY > y + 50", arg=before)
    settled(page)
    assert page.url == texts
    page.evaluate("(y) => scrollTo(0, y)", before)


def test_enlarged_it_lies_down_and_the_lines_follow_there_too(page):
    page.click("#figure-face .enlarge")
    for _ in range(100):
        if page.evaluate(LIES):
            break
        page.wait_for_timeout(50)
    drag(page, "body_length", (25.4, -101.6))
    until(page, "body_length", "8")
    page.click("#figure-face .enlarge")
    undone(page, "body_length", "9")


HANDLES = """async () => {
  const { model } = await import("./models.mjs"), x = model("face-x"), y = model("face-y");
  const { left, top, width, height } = document.getElementById("live-face").getBoundingClientRect();
  return [...document.querySelectorAll(".grips span")].map((handle) => {
    const box = handle.getBoundingClientRect();
    const right = box.left + box.width / 2 - left, down = box.top + box.height / 2 - top;
    return [handle.dataset.key, x.start + right / width * (x.end - x.start), y.end - down / height * (y.end - y.start)];
  });
}"""


@pytest.mark.parametrize("length", ["9", "10"])  # the example's face, which a touch makes live, and another
def test_after_a_reload_each_handle_stands_on_its_line(page, length):
    """They lay in a heap at the drawing's corner, and a drag there set the edge margin to 0."""
    if length != "9":
        drag(page, "body_length", (-12.7 * float(length), -25.4))
        until(page, "body_length", length)
    page.wait_for_timeout(300)
    before = {key: place for key, *place in page.evaluate(HANDLES)}
    assert before["body_length"] == pytest.approx([-12.7 * float(length), before["body_length"][1]], abs=1)
    page.reload()
    settled(page)
    page.keyboard.press("Shift")  # wakes the face
    page.wait_for_selector("#figure-face[data-live]", state="attached")
    page.wait_for_selector(".grips span", state="attached")
    page.wait_for_timeout(300)
    after = page.evaluate(HANDLES)
    assert {key: pytest.approx(place, abs=1) for key, *place in after} == before
    if length != "9":
        undone(page, "body_length", "9")


def test_ports_marked_as_drilled_stay_so_over_a_reload_until_they_are_cleared(page, site):
    tap(page, (0, 0))
    words(page, "Port 22:")
    tap(page, (0, 0))  # read again, nothing marked
    counted(page, "0 of 43 drilled")
    page.click("#drilled")
    counted(page, "1 of 43 drilled")
    tap(page, (0, 0))
    page.click("#drilled")  # once more: not drilled
    counted(page, "0 of 43 drilled")
    page.click("#drilled")
    page.click("#drilled")  # the next one that is not
    counted(page, "2 of 43 drilled")
    assert "drilled" not in page.url
    page.reload()
    page.keyboard.press("Shift")  # wakes the face
    counted(page, "2 of 43 drilled")
    page.click("#undrill")
    counted(page, "0 of 43 drilled")
    page.click("#undrill")  # taken by mistake
    counted(page, "2 of 43 drilled")
    page.click("#undrill")
    assert page.evaluate("localStorage.getItem('burnercalc-drilled')") == "{}"
