"""Storage full, denied, slow or dead: the page computes as ever, and never says that it kept what it did not."""

from attack.kills import KEEP, KEPT, SAID, SHOWN
from attack.site import opened, type_in, visitor

from burnercalc.design import Design
from burnercalc.link import to_link

FULL = """{
  const full = () => { throw new DOMException("full", "QuotaExceededError"); };
  Storage.prototype.setItem = full;
  IDBObjectStore.prototype.put = full;
}"""
NO_TEXTS = """for (const name of ["localStorage", "sessionStorage"]) {
  Object.defineProperty(window, name, { get() { throw new DOMException("denied", "SecurityError"); } });
}"""
NO_DATABASE = """indexedDB.constructor.prototype.open = () => { throw new DOMException("denied", "SecurityError"); };"""
NO_REMOVING = """{
  const denied = () => { throw new DOMException("denied", "UnknownError"); };
  IDBObjectStore.prototype.delete = denied;
  Storage.prototype.removeItem = denied;
}"""
SLOW = """{
  const { open } = IDBFactory.prototype;
  IDBFactory.prototype.open = function (...given) {
    const until = performance.now() + 300;
    while (performance.now() < until);
    return open.apply(this, given);
  };
}"""
DEAD = """IDBFactory.prototype.open = () => new EventTarget();"""  # never answers
AILMENTS = {"full": FULL, "denied": NO_TEXTS + NO_DATABASE, "removing": NO_REMOVING, "slow": SLOW, "dead": DEAD}


def trial(rng):
    ailment = rng.choice(list(AILMENTS))
    with visitor() as (context, address):
        context.add_init_script(AILMENTS[ailment])
        if ailment == "dead":
            context.clock.install()
        return judge(ailment, opened(context, address), rng, context, address)


def judge(ailment, page, rng, context, address):
    said_wrong = []
    page.on("pageerror", lambda error: said_wrong.append(str(error)))
    for _ in range(2):
        text = f"{rng.randint(13, 30)} in"
        link = to_link(Design.from_texts({"chamber_length": text}))
        type_in(page, "chamber_length", text)
        page.wait_for_function(SHOWN, arg=link)
    page.evaluate(KEEP, "mine")
    pass_time(page, ailment)
    said = page.wait_for_function(SAID).json_value()
    kept = "mine is kept" in said
    assert kept == (ailment in ("removing", "slow")), f"{ailment}: {said}"
    assert kept or "export to a file" in said, f"{ailment}: {said}"
    page.click("#designs")
    if ailment == "removing":
        page.locator("#design-list button", has_text="Delete").click()
        page.wait_for_function("() => document.getElementById('designs-status').textContent.includes('export')")
        assert len(page.evaluate(KEPT)) == 1
    if ailment == "slow":
        page.locator("#design-list li").wait_for()
    with page.expect_download() as download:
        page.click("#export")
        pass_time(page, ailment)
    assert link in download.value.path().read_text()
    page.click("#designs-box [data-close]")
    page.reload()
    page.wait_for_function(SHOWN, arg=link)  # the address holds it
    assert said_wrong == [], f"{ailment}: {said_wrong}"
    return 1


def pass_time(page, ailment):
    """Let the page give up what never answers."""
    for _ in range(4 if ailment == "dead" else 0):
        page.clock.fast_forward(5000)
        page.evaluate("() => new Promise(requestAnimationFrame)")
