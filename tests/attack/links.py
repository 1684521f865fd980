"""Hostile links: each opens to a design, quickly, and costs no setting that could stay."""

import json
from urllib.parse import quote_plus, unquote_plus

from attack.hostile import SIGNS, good, hostile, spoiled

from burnercalc import worker
from burnercalc.design import default_text, parse_setting, read
from burnercalc.errors import InputError, InputErrors
from burnercalc.link import LONGEST_LINK, from_link, to_link
from burnercalc.settings import BY_KEY, SETTINGS
from burnercalc.units import DIMENSIONS, dotted

# The defaults that a link of version 1 stands on, by its shop's sizes; a newer setting has its own in each.
EARLIEST = {sizes: from_link(f"#v=1&units={sizes}")[0] for sizes in ("in", "mm")}
LONGEST_NOTICE = 40_000  # characters of all that is said of a link


def trial(rng):
    judge(link(rng))


def link(rng):
    pairs = []
    for setting in rng.sample(SETTINGS, rng.choice((1, 3, 10, 40, len(SETTINGS)))):
        if rng.random() < rng.choice((0.0, 0.1, 0.9)):
            text = hostile(rng, setting)[:3000]
        else:
            text = good(rng, setting)
        pairs.append(f"{setting.key}={_quoted(rng, text)}")
    for _ in range(rng.choice((0, 0, 1, 5, 3000))):
        pairs.insert(rng.randint(0, len(pairs)), _junk(rng))
    start = rng.choice(("#v=1&", "?v=1&", "#", "https://example.org/burner/#v=1&", "http://[", "#v=2&", ""))
    made = start + "&".join(pairs)
    if rng.random() < 0.2:
        made = spoiled(rng, made)
    if rng.random() < 0.02:
        made += "&" + rng.choice(("x", "=", "&", "%", "rows=4&", "\0")) * rng.choice((99_000, 299_000, 600_000))
    return made


def _quoted(rng, text):
    return text if rng.random() < 0.1 else quote_plus(text, errors="replace")


def _junk(rng):
    key = rng.choice(
        ("grate", "v", "rows", "units", "", "x" * 70, "%00", "%", "%zz", "__class__", "constructor", "&&", "#")
    )
    return key + rng.choice(("=", "", "==")) + rng.choice(("", "1", "%ff%fe", "9in", rng.choice(SIGNS) * 5))


def judge(link):
    design, ignored = from_link(link)
    reply = worker.handle(json.dumps({"kind": "open", "link": link}))
    shown = json.loads(reply)
    assert shown["ok"] and len(reply) <= LONGEST_NOTICE + len(link), (
        f"a notice of {len(reply)} characters: {link[:200]!r}"
    )
    said = [error["text"] for error in shown["ignored"]]
    assert sum(map(len, said)) <= LONGEST_NOTICE, f"a notice of {sum(map(len, said))} characters: {link[:200]!r}"
    assert all(text.isprintable() for text in said), f"signs that nobody sees: {said!r}"
    assert from_link(to_link(design)) == (design, []), f"the design's own link: {to_link(design)}"
    asked = _asked(link)
    earliest = asked.pop("v", "") == "1"
    for key, text in asked.items():
        try:
            value = parse_setting(BY_KEY[key], text)
        except (InputError, InputErrors):
            today = default_text(BY_KEY[key], design.values())  # the gas pressure follows the supply of the fuel
            of_first = earliest and key not in ("units", "sizes")  # which the rest of the link follows
            first = EARLIEST[design.sizes].text(key) if of_first else today
            if design.value(key) != parse_setting(BY_KEY[key], first):  # only where that is at odds with the rest
                assert read({**design.texts, key: first})[2], f"{key} is not as at first: {link!r}"
                assert design.value(key) == parse_setting(BY_KEY[key], today), f"{key}: {link!r}"
            continue
        if design.value(key) != value:
            assert any(error.field == key for error in ignored), f"{key} = {text!r} is lost in silence: {link!r}"
            assert read({**design.texts, key: text})[2], f"{key} = {text!r} could have stayed: {link!r}"


def _asked(link):
    """{key: text} of a link, its version too, read by plain splitting."""
    link = link.strip()
    if len(link) > LONGEST_LINK:
        return {}
    for mark in "#?":
        if link.partition(mark)[2]:
            link = link.partition(mark)[2]
            break
    found = {}
    for pair in link.split("&"):
        key, _, text = pair.partition("=")
        key, text = (unquote_plus(part) for part in (key, text))
        if key in BY_KEY or key == "v":
            # 1,05 typed by hand is 1.05
            found[key] = dotted(text) if key in BY_KEY and BY_KEY[key].dimension in DIMENSIONS else text
    return found
