"""Hostile links and files, opened by the page itself: it ends up ready with a design, runs nothing and asks nobody."""

import json

from attack.kills import SAID
from attack.links import link
from attack.site import KEPT, LONGEST_MS, ready, visitor

from burnercalc.link import from_link, to_link

LINKS = 5  # a trial
TEXTS = (
    "<img src=x onerror=window.harm=1>",
    "<script>window.harm=1</script>",
    "javascript:window.harm=1",
    "\0\u202eback",
    "",
    "n" * 100_000,
    "__proto__",
    "constructor",
    "😀" * 50,
    "'; window.harm=1; '",
)
SCALARS = (None, 0, -1, 1e308, True, [], {}, [[]], {"v": 1}, {"__proto__": {"harm": 1}}, "text")
BARE = "manifest.webmanifest"


def trial(rng):
    with visitor() as (context, address):
        page = context.new_page()
        wrong = []
        page.on("pageerror", lambda error: wrong.append(f"error: {error}"))
        page.on("dialog", lambda dialog: (wrong.append(f"dialog: {dialog.message}"), dialog.dismiss()))
        page.on("console", lambda message: message.type == "error" and wrong.append(f"console: {message.text}"))
        page.on(
            "request", lambda request: request.url.startswith(("data:", "blob:", address)) or wrong.append(request.url)
        )
        tried = files(page, address, rng) if rng.random() < 0.3 else links(page, address, rng)
        assert not page.evaluate("() => window.harm"), "a script of the visitor's ran"
        assert wrong == [], wrong
    return tried


def links(page, address, rng):
    for _ in range(LINKS):
        found = link(rng)
        start = found.find("#") if "#" in found else found.find("?")
        # As the address bar keeps it; signs that no address holds are not sent.
        end = (found[start:] if start >= 0 else "#" + found).encode("utf-8", "replace").decode()
        page.goto("about:blank")
        page.evaluate("() => {}")
        page.goto(address + end, timeout=LONGEST_MS)
        ready(page)
        shown = page.evaluate("() => location.hash || '#v=2'")
        given = page.evaluate("() => window.name")
        assert given == ""
        design, ignored = from_link(shown)
        assert not ignored and to_link(design) == shown, f"{shown[:300]} of {end[:300]!r}"
    return LINKS


def entry(rng):
    if rng.random() < 0.3:
        return rng.choice(SCALARS)
    made = {"name": rng.choice((*TEXTS, *SCALARS)), "link": rng.choice((link(rng), *TEXTS, *SCALARS))}
    for key in rng.sample(sorted(made), rng.choice((0, 0, 1))):
        del made[key]
    return made


def files(page, address, rng):
    page.goto(address)
    ready(page)
    page.click("#designs")
    kept = 0
    for number in range(LINKS):
        content = {
            "kind": rng.choice(("burnercalc designs",) * 4 + TEXTS),
            "version": rng.choice((1, 1, 1, 1, *SCALARS)),
            "designs": rng.choice(([entry(rng) for _ in range(rng.randint(0, 6))], *SCALARS)),
        }
        data = json.dumps(rng.choice((content,) * 6 + SCALARS)).encode("utf-8", "surrogatepass")
        if rng.random() < 0.2:
            data = data[: rng.randint(0, len(data))] + rng.choice((b"", b"\xff\xfe", b"[" * 50_000))
        page.evaluate("() => { document.getElementById('designs-status').textContent = ''; }")
        page.set_input_files("#import", {"name": f"{number}.json", "mimeType": "application/json", "buffer": data})
        said = page.wait_for_function(SAID).json_value()
        records = page.evaluate(KEPT)
        new = int(said.split("Kept on this device: ")[1].split(".")[0]) if "Kept on this device: " in said else 0
        assert len(said) < 300 and len(records) == kept + new, f"{said[:300]}: {kept} and then {len(records)} kept"
        kept = len(records)
        assert all(set(each) == {"key", "v", "name", "link", "thumb"} for each in records), records
        page.wait_for_function("count => document.querySelectorAll('#design-list li').length === count", arg=kept)
    return LINKS
