"""A worker that throws, leaves, loops or answers nonsense: it is missed, and the last good design comes back."""

from attack.site import ports, ready, type_in, visitor
from browser.hosted import worker_text

from burnercalc.design import Design
from burnercalc.result import solve

HARM = {
    "throws": "throw new RangeError('broke');",
    "loops": "for (;;);",
    "leaves": "self.close(); for (;;);",
    "dies": "setTimeout(() => self.close()); throw { type: 'x', message: 'x' };",
    "speaks no JSON": "return '<html>';",
    "says nothing": "return 'null';",
    "refuses": "return JSON.stringify({ ok: false, errors: [{ setting: 'rows', text: 'no', rule: 'no' }] });",
}
KINDS = ("solve", "face", "file", "thumb", "open", "code", "step")


def trial(rng):
    name, kind, after = rng.choice(list(HARM)), rng.choice(KINDS[:2]), rng.randint(0, 3)
    times = rng.choice((1, 1, 2, 99))
    return judge(name, kind, after, times)


def judge(name, kind, after, times):
    """Workers 0 to `times` do harm at a question of a kind about 20 in, when they have answered `after` of them."""
    said = f"{name} at {kind} {after} of {times} workers"
    text = worker_text()
    harm = f"""let left = {after};
handle = (asked) => {{
  const request = JSON.parse(asked);
  if (request.kind === "{kind}" && request.settings.chamber_length === "20" && left-- <= 0) {{ {HARM[name]} }}
  return ours(asked);
}};"""
    started = []

    def worker(route):
        started.append(route)
        body = text.replace("handle = ours;", harm) if len(started) <= times else text
        route.fulfill(content_type="text/javascript", body=body)

    with visitor() as (context, address):
        page = context.new_page()
        page.clock.install()
        page.route("**/worker.mjs", worker)
        page.goto(address)
        ready(page)
        put(page, "15")
        put_and_wait(page, said)
        if page.evaluate("() => document.documentElement.dataset.broken !== undefined"):
            assert page.locator("#bars button:visible").count(), f"{said}: broken, and no offer"
            return 1
        state = page.evaluate("() => document.documentElement.dataset.state")
        shown = page.evaluate("() => location.hash")
        length = "20 in" if state == "ready" else "15 in"
        assert length.replace(" ", "") in shown, f"{said}: {state} with {shown}"
        number = float(page.locator('[data-answer="firing_rate_gross"]').get_attribute("data-value"))
        expected = solve(Design.from_texts({"chamber_length": length}))["firing_rate_gross"]
        assert abs(number / expected - 1) < 1e-9, f"{said}: {number} of {shown}, not {expected}"
        put(page, "16")
        page.wait_for_function("() => location.hash.includes('chamber_length=16in')")
        ready(page)
        assert ports(page) == solve(Design.from_texts({"chamber_length": "16 in"}))["port_count"], said
    return 1


def put(page, text):
    type_in(page, "chamber_length", text)
    if text != "20":
        page.wait_for_function("text => location.hash.includes(`chamber_length=${text}in`)", arg=text)
        ready(page)


def put_and_wait(page, said):
    put(page, "20")
    for _ in range(1000):
        page.wait_for_timeout(20)
        state = page.evaluate("() => [document.documentElement.dataset.state, location.hash]")
        if state[0] == "error" or (state[0] == "ready" and "=20in" in state[1]):
            return
        page.clock.fast_forward(
            10_000 if page.evaluate("() => document.documentElement.dataset.state") == "computing" else 0
        )
    raise AssertionError(f"{said}: it never ends")
