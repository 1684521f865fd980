"""One flow in Chromium, Firefox and WebKit: open, change, share, open the link, make a template, go on with no server.

Each engine is driven by its own WebDriver at the size of a phone, as far as its window lets it.
"""

import http.server
import os
import shutil
import subprocess
import threading
import time

import pytest
from browser import engines
from browser.conftest import PHONE, READY_MS, open_ready
from pdf_reader import pages
from selenium import webdriver
from selenium.webdriver.common.actions.action_builder import ActionBuilder
from selenium.webdriver.common.actions.interaction import POINTER_MOUSE, POINTER_TOUCH
from selenium.webdriver.common.actions.pointer_input import PointerInput
from selenium.webdriver.common.by import By
from selenium.webdriver.common.keys import Keys

import build
from burnercalc.design import Design
from burnercalc.link import to_link
from burnercalc.result import solve

WIDTH, HEIGHT = 412, 915
BARE = "manifest.webmanifest"  # a file of the site that is no page


def start_chromium(folder):
    browser, driver = engines.chromium_driver()
    options = webdriver.ChromeOptions()
    options.binary_location = browser
    for argument in (*engines.CHROMIUM_ARGUMENTS, "--headless=new", f"--window-size={WIDTH},{HEIGHT}"):
        options.add_argument(argument)
    options.add_experimental_option("prefs", {"download.default_directory": str(folder)})
    return webdriver.Chrome(options=options, service=webdriver.ChromeService(driver))


def start_firefox(folder):
    browser, driver = engines.firefox()
    options = webdriver.FirefoxOptions()
    options.binary_location = browser
    options.add_argument("-headless")
    for name, value in (
        ("browser.download.folderList", 2),
        ("browser.download.dir", str(folder)),
        ("pdfjs.disabled", True),
        ("browser.helperApps.neverAsk.saveToDisk", "application/pdf"),
        ("browser.download.alwaysOpenPanel", False),
    ):
        options.set_preference(name, value)
    made = webdriver.Firefox(options=options, service=webdriver.FirefoxService(driver))
    made.set_window_size(WIDTH, HEIGHT)
    return made


def start_webkit(folder):
    browser, driver, display = engines.webkit()
    options = webdriver.WebKitGTKOptions()
    options.binary_location = browser
    options.add_argument("--automation")
    options.add_argument("--full-screen")
    read, write = os.pipe()
    screen = subprocess.Popen(
        [display, "-displayfd", str(write), "-screen", "0", f"{WIDTH}x{HEIGHT}x24", "-nolisten", "tcp"],
        pass_fds=[write],
        stderr=subprocess.DEVNULL,
    )
    os.close(write)
    with os.fdopen(read) as number:
        name = f":{number.readline().strip()}"
    home = {"DISPLAY": name, "HOME": str(folder), "XDG_DOWNLOAD_DIR": str(folder), "GTK_A11Y": "none"}
    try:
        made = webdriver.WebKitGTK(
            options=options, service=webdriver.WebKitGTKService(driver, env={**os.environ, **home})
        )
    except BaseException:
        screen.terminate()
        raise
    made.screen = screen
    return made


START = {"chromium": start_chromium, "firefox": start_firefox, "webkit": start_webkit}


@pytest.fixture(scope="module")
def downloads(tmp_path_factory):
    return tmp_path_factory.mktemp("downloads")


@pytest.fixture(scope="module", params=START)
def browser(request, downloads):
    """A browser of each engine; its downloads go to `downloads`."""
    try:
        made = START[request.param](downloads)
    except engines.Missing as missing:
        if shutil.which("apt-get") and os.geteuid() == 0:
            raise  # here it can be installed, so it must be
        pytest.skip(str(missing))
    made.set_script_timeout(READY_MS / 1000)
    yield made
    made.quit()
    if hasattr(made, "screen"):
        made.screen.terminate()
        made.screen.wait()


def wait(browser, script, *arguments):
    """Wait until a script gives something, and return that."""
    until = time.monotonic() + READY_MS / 1000
    while time.monotonic() < until:
        found = browser.execute_script(script, *arguments)
        if found:
            return found
        time.sleep(0.05)
    said = browser.execute_script("return document.body.innerText")[:500]
    raise AssertionError(f"{script} {arguments} never came true; the page says: {said}")


def ready(browser):
    wait(browser, "return document.documentElement.dataset.state === 'ready'")


def answer(browser, key):
    return float(
        browser.execute_script("return document.querySelector(arguments[0]).dataset.value", f'[data-answer="{key}"]')
    )


def put(browser, chapter, key, text):
    """Open the chapter and type into the setting's field, as a person does."""
    press(browser, f'#chapters [data-go="{chapter}"]')
    field = wait(
        browser,
        "return document.getElementById(arguments[0]).firstElementChild?.shadowRoot?.querySelector('input')",
        f"root-{key}",
    )
    browser.execute_script("arguments[0].scrollIntoView({ block: 'center' })", field)
    field.send_keys(Keys.END + Keys.BACKSPACE * 12 + text + Keys.ENTER)
    wait(browser, "return location.hash.includes(arguments[0])", f"{key}={text.replace(' ', '-')}")
    ready(browser)


def press(browser, selector):
    """Press what is there, once it stands still and nothing that passes, such as a line at the foot, lies over it."""
    pressed = browser.find_element(By.CSS_SELECTOR, selector)
    wait(
        browser,
        "const [pressed] = arguments; pressed.scrollIntoView({ block: 'center' });"
        "const { x, y, width, height } = pressed.getBoundingClientRect(), before = window.stood;"
        "window.stood = `${x} ${y} ${scrollY} ${document.body.scrollHeight}`;"
        "return window.stood === before && pressed.contains(document.elementFromPoint(x + width / 2, y + height / 2))",
        pressed,
    )
    pressed.click()


def drag(browser, selector, across, kind):
    """Take hold of what is there with a finger or a mouse and pull it so many px to the right."""
    place = wait(
        browser,
        "const held = document.querySelector(arguments[0]); held?.scrollIntoView({ block: 'center' });"
        "const box = held?.getBoundingClientRect(); return box && [box.x + box.width / 2, box.y + box.height / 2]",
        selector,
    )
    x, y = map(round, place)
    hand = PointerInput(kind, kind)
    moves = ActionBuilder(browser, mouse=hand, duration=20)
    hand.create_pointer_move(x=x, y=y)
    hand.create_pointer_down(button=0)
    for step in range(1, 7):
        hand.create_pointer_move(x=x + round(across * step / 6), y=y, duration=20)
    hand.create_pointer_up(button=0)
    moves.perform()


def rests(browser, chapter, *over):
    """Wait until a chapter is open with that over it, and the browser's list says so too."""
    wait(
        browser,
        "const over = [...document.querySelectorAll('dialog[open], figure.large')].map(({ id }) => id);"
        "return document.documentElement.dataset.chapter === arguments[0] && String(over) === arguments[1]"
        " && history.state?.over === over.length && history.state.chapter === arguments[0]",
        chapter,
        ",".join(over),
    )


def downloaded(folder, name):
    until = time.monotonic() + READY_MS / 1000
    while time.monotonic() < until:
        for path in folder.rglob(name):
            if path.stat().st_size and not list(folder.rglob("*.part")) and not list(folder.rglob("*.crdownload")):
                return path.read_bytes()
        time.sleep(0.1)
    raise AssertionError(f"no download of {name}, only {[path.name for path in folder.rglob('*.pdf')]}")


class Open(http.server.BaseHTTPRequestHandler):
    """Another site, which anybody may ask and which has no policy; it frames the address in the query."""

    def do_GET(self):
        self.server.asked.append(self.path)
        self.send_response(200)
        self.send_header("Access-Control-Allow-Origin", "*")
        self.send_header("Content-Type", "text/html")
        self.end_headers()
        path, _, framed = self.path.partition("?")
        if path == "/frame":
            self.wfile.write(f'<!DOCTYPE html><title>other</title><iframe src="{framed}"></iframe>'.encode())

    def log_message(self, *arguments):
        pass


@pytest.fixture
def another_site():
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), Open)
    server.asked = []
    threading.Thread(target=server.serve_forever, daemon=True).start()
    server.address = f"http://127.0.0.1:{server.server_port}/"
    yield server
    server.shutdown()
    server.server_close()


TRY = """const [other, done] = arguments;
const inline = document.createElement("script");
inline.textContent = "document.documentElement.dataset.inline = ''";
document.body.append(inline);
const foreign = document.createElement("script");
foreign.src = `${other}script`;
document.body.append(foreign);
const image = new Image();
image.src = `${other}image`;
const form = document.createElement("form");
form.action = `${other}form`;
const frame = document.createElement("iframe");
frame.name = form.target = "aside";
document.body.append(frame, form);
try { form.submit(); } catch { /* Firefox says so that it may not */ }
Promise.allSettled([fetch(`${other}fetch`), new Promise((later) => { setTimeout(later, 1500); })])
  .then(() => done(document.documentElement.dataset.inline !== undefined));"""


def test_every_engine_keeps_to_the_headers(browser, site, another_site):
    """No inline script, no other host and no frame, by the headers that the files for hosts ask for."""
    browser.get(site + "build.txt")
    assert browser.execute_async_script(TRY, another_site.address) is False
    assert another_site.asked == []
    browser.get(another_site.address)
    assert browser.execute_async_script(TRY, another_site.address) is True
    wanted = {"script", "image", "form", "fetch"}
    assert soon(lambda: {path.strip("/?") for path in another_site.asked} >= wanted), another_site.asked

    assert not framed(browser, another_site, site, 3)
    bare = build.server()
    bare.RequestHandlerClass = lambda *given: WithoutHeaders(*given, directory=str(build.DIST))
    threading.Thread(target=bare.serve_forever, daemon=True).start()
    assert framed(browser, another_site, f"http://127.0.0.1:{bare.server_port}/", READY_MS / 1000)
    bare.shutdown()
    bare.server_close()


class WithoutHeaders(build.Handler):
    def end_headers(self):
        http.server.SimpleHTTPRequestHandler.end_headers(self)


def soon(true, seconds=READY_MS / 1000):
    """Whether something comes true in that time."""
    until = time.monotonic() + seconds
    while not (found := true()) and time.monotonic() < until:
        time.sleep(0.05)
    return found


def framed(browser, another_site, address, seconds):
    """Whether the page comes up in a frame of another site in that time."""
    browser.get(f"{another_site.address}frame?{address}")
    browser.switch_to.frame(0)
    try:
        return soon(lambda: browser.execute_script("return document.getElementById('job') !== null"), seconds)
    finally:
        browser.switch_to.default_content()


def test_the_same_flow_in_every_engine(browser, site, downloads):
    server = build.server()
    threading.Thread(target=server.serve_forever, daemon=True).start()
    address = f"http://127.0.0.1:{server.server_port}/"
    design = Design.from_texts({"rows": "4", "port_diameter": "3/16 in"})
    expected = solve(design)

    browser.get(address)
    ready(browser)
    assert answer(browser, "port_count") == solve(Design.from_texts({}))["port_count"]
    put(browser, "face", "rows", "4")
    put(browser, "face", "port_diameter", "3/16")
    assert answer(browser, "port_count") == expected["port_count"]
    assert answer(browser, "plenum_to_port_ratio") == pytest.approx(expected["plenum_to_port_ratio"], rel=1e-9)

    last = "return JSON.parse(sessionStorage.getItem('burnercalc-steps')).past.at(-1).link.includes('body_length=')"
    for kind in (POINTER_TOUCH, POINTER_MOUSE):
        drag(browser, '.grips [data-key="body_length"]', -15, kind)
        wait(browser, last)  # the whole drag is one step
        press(browser, "#undo")
        wait(browser, last.replace("return ", "return !"))
        ready(browser)

    press(browser, "#share")
    link = wait(browser, "return document.getElementById('share-link').value")
    assert link == to_link(design, address)
    wait(browser, "const code = document.getElementById('share-code'); return !code.hidden && code.naturalWidth > 0")
    browser.back()  # takes off what lies over the page, and no more
    rests(browser, "face")
    press(browser, "#figure-face .enlarge")
    rests(browser, "face", "figure-face")
    browser.back()
    rests(browser, "face")
    press(browser, '[data-open="help-box"]')
    rests(browser, "face", "help-box")
    press(browser, "#help-box [data-close]")
    rests(browser, "face")
    browser.back()  # one dialog left no entry behind
    rests(browser, "start")
    browser.forward()
    rests(browser, "face")
    assert answer(browser, "port_count") == expected["port_count"]

    press(browser, '[data-open="paper-box"]')
    press(browser, '[data-file="template-a4"]')
    circles = [circle for page in pages(downloaded(downloads, "*.pdf")) for circle in page.circles]
    diameter_mm = round(1000 * design.port_diameter, 2)
    assert [round(circle[2], 2) for circle in circles].count(diameter_mm) >= expected["port_count"]

    wait(browser, "return navigator.serviceWorker.controller !== null")
    browser.execute_script("localStorage.clear()")
    server.shutdown()
    server.server_close()
    browser.get(address + BARE)  # leaves the page, so that the link below opens it anew
    browser.get(link)
    ready(browser)
    assert answer(browser, "port_count") == expected["port_count"]
    put(browser, "face", "rows", "3")
    assert answer(browser, "port_count") == solve(design.changed({"rows": "3"}))["port_count"]


# Browsers that are too old, each imitated by what it lacks


def no_workers(page):
    page.add_init_script("delete window.Worker")


def no_static_blocks(page):
    """As Safari before 16.4 takes Pyodide: a syntax error."""
    page.route(
        "**/pyodide.asm.mjs", lambda route: route.fulfill(content_type="text/javascript", body="class Old { static @ }")
    )


def no_modern_syntax(page):
    """The page's own scripts do not even parse."""
    page.route("**/app.mjs", lambda route: route.fulfill(content_type="text/javascript", body="let a ?\u003f= @"))


def no_modules(page):
    """Not even asked for: what a browser without module scripts does."""
    page.route("**/app.mjs", lambda route: route.abort())


def no_unpacking(page):
    """As Safari before 16.4 and Firefox before 113: what the page packs cannot be read."""
    page.add_init_script("delete window.DecompressionStream")


def no_wasm(page):
    page.route(
        "**/pyodide.asm.wasm", lambda route: route.fulfill(content_type="application/wasm", body=b"\0asm of tomorrow")
    )


@pytest.mark.parametrize("lacks", [no_workers, no_static_blocks, no_modern_syntax, no_modules, no_unpacking, no_wasm])
def test_a_browser_too_old_gets_a_plain_sentence_and_the_preview(phone_context, site, lacks):
    page = phone_context.new_page()
    lacks(page)
    page.goto(site)
    page.wait_for_selector("html[data-broken][data-state=error]", state="attached", timeout=READY_MS)
    said = page.locator("#notice").inner_text()
    assert "shows the example only: do not build from it" in said and "newer browser" in said
    assert "Preview" not in page.locator("#status").inner_text()
    assert page.locator('[data-answer="port_count"]').text_content() == str(solve(Design.from_texts({}))["port_count"])
    assert page.locator("#figure-face :is(.still svg, .live > div):visible").count() == 1


def test_without_scripts_the_page_says_that_it_is_an_example(chromium, site):
    context = chromium.new_context(**PHONE, java_script_enabled=False)
    page = context.new_page()
    page.goto(site)
    page.wait_for_url("**/example.html")
    page.get_by_text("Without scripts this page shows the example only").wait_for()
    assert page.locator("#figure-face svg:visible").count() == 1
    result = solve(Design.from_texts({}))
    assert page.locator("[data-answer]").count() == len(result.answers)  # those in folds too
    assert page.locator("li[data-check]").count() == len(result.checks)
    context.close()


def test_chromium_would_install_it(chromium, site, tmp_path):
    """By the browser's own check, which needs a profile that is kept."""
    context = chromium.browser_type.launch_persistent_context(
        tmp_path, executable_path=engines.chromium(), args=engines.CHROMIUM_ARGUMENTS, **PHONE
    )
    page = context.pages[0]
    open_ready(page, site)
    devtools = context.new_cdp_session(page)
    assert devtools.send("Page.getInstallabilityErrors")["installabilityErrors"] == []
    assert devtools.send("Page.getAppManifest")["errors"] == []
    context.close()
