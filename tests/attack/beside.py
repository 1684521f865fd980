"""What goes beside a design: lists of what lies in the shop and settings that are mine, in links and requests."""

import json
from urllib.parse import quote_plus

from attack.hostile import ODD_NUMBERS, ODD_UNITS, SIGNS, good, spoiled
from attack.requests import ask

from burnercalc.design import Design
from burnercalc.errors import InputErrors
from burnercalc.find.have import BODIES, GAS, KINDS, METRIC, read_have
from burnercalc.link import LONGEST_HAVE, LONGEST_LINK, beside, from_link, to_link
from burnercalc.settings import BY_KEY, SETTINGS


def trial(rng):
    system = rng.choice(("in", "mm"))
    text = a_list(rng, system)
    read_alike(text, system)
    travels(rng, text)
    return 2


def a_list(rng, system):
    """A list as somebody types it, or means harm with it."""
    if rng.random() < 0.03:
        return rng.choice(SIGNS) * rng.choice((LONGEST_HAVE - 1, LONGEST_HAVE, LONGEST_HAVE + 1, 60_000))
    lines = [_line(rng, kind, system) for kind in rng.sample((*KINDS, "buy", "mine"), rng.randint(0, 14))]
    for _ in range(rng.choice((0, 0, 0, 1, 2000))):
        lines.append(
            rng.choice(("anvil: 2", "tube", ":", "tube:", "buy: buy", "mine: mine", "", "#", "pins: ;;", "[1]"))
        )
    rng.shuffle(lines)
    text = "\n".join(lines)
    if rng.random() < 0.2:
        text = json.dumps({kind: rng.choice((rest, rest.split(";"))) for kind, _, rest in map(_parted, lines)})
    return spoiled(rng, text) if rng.random() < 0.2 else text


def _parted(line):
    return line.partition(":")


def _line(rng, kind, system):
    if kind == "buy":
        return f"buy: {', '.join(rng.sample((*KINDS, 'all', 'none', 'anvil'), rng.randint(0, 5)))}"
    if kind == "mine":
        keys = rng.sample(SETTINGS, rng.randint(0, 4))
        return "mine: " + "; ".join(f"{s.key}={good(rng, s)}" if rng.random() < 0.5 else s.key for s in keys)
    entries = [_entry(rng, kind, system) for _ in range(rng.choice((1, 1, 2, 40)))]
    return f"{kind}: {'; '.join(entries)}"


def _entry(rng, kind, system):
    entry = METRIC.get(kind, KINDS[kind][1]) if system == "mm" else KINDS[kind][1]
    if rng.random() < 0.6:
        return entry
    words = entry.split(" ")
    words[rng.randrange(len(words))] = rng.choice(
        rng.choice((ODD_NUMBERS, ODD_UNITS, SIGNS, ("0", "0.001", "99", "1000")))
    )
    return " ".join(words)


def read_alike(text, system):
    """A list is read whole or refused with words; one that is read writes itself; an offer is an entry that works."""
    told = ask({"kind": "have", "text": text, "units": system})
    try:
        have = read_have(text, system)
    except InputErrors as refused:
        assert told["errors"] and len(refused.errors) <= 21, f"{len(refused.errors)} refusals of {text[:200]!r}"
        assert sum(len(error["text"]) for error in told["errors"]) < 20_000, text[:200]
        for error in refused.errors:
            if error.field in KINDS and error.nearest:
                assert _works(error.field, error.nearest, system), f"{error.nearest!r} does not work: {error}"
        return
    assert not told["errors"], f"refused by the page alone: {text[:200]!r}"
    again = read_have(have.text(), system)
    assert again == have, f"{text[:300]!r} comes back as {have.text()[:300]!r}"


def _works(kind, entry, system):
    need = "".join(f"{group}: {KINDS[group][1]}\n" for group in (BODIES[0], "pins", "pipe", "blower", GAS[0]))
    try:
        read_have(f"{need}{kind}: {entry}", system)
    except InputErrors:
        return False
    return True


def travels(rng, text):
    """What goes in a link comes out of it; what does not is refused, by name."""
    named = [setting.key for setting in rng.sample(SETTINGS, rng.randint(0, 5))]
    named += rng.choice(
        ([], [], ["anvil"], ["rowz", "rows "], ["x" * 9000] * 3, [str(n) for n in range(999)], ["\ud800"])
    )
    mine, settings = ",".join(named), {"rows": "4", "mine": ",".join(key for key in named if key in BY_KEY)}
    typed = f"#v=2&rows=4&mine={quote_plus(mine, errors='replace')}&have={quote_plus(text, errors='replace')}"
    design, ignored = from_link(typed)
    kept, said = beside(typed), {error.field for error in ignored}
    if len(typed) > LONGEST_LINK:
        assert said == {"link"} and not kept, f"a link of {len(typed)} characters: {said}"
        return
    assert design == Design.from_texts({"rows": "4"}) and said <= {"mine", "have"}, f"{said}: {typed[:200]!r}"
    assert ("mine" in said) == any(key.strip() not in BY_KEY for key in named), mine[:200]
    assert kept.get("mine", "") == ",".join(s.key for s in SETTINGS if s.key in {key.strip() for key in named}), mine[
        :200
    ]
    assert sum(len(str(error)) for error in ignored) < 5000, f"a long notice of {typed[:200]!r}"
    assert ("have" in said) == (len(text) > LONGEST_HAVE), f"{said} of {len(text)} characters"
    assert "have" in said or kept.get("have", "") == quoted(text), f"lost in silence: {text[:200]!r}"
    made = ask({"kind": "link", "settings": settings, "have": text})
    if not made["ok"]:
        assert {error["setting"] for error in made["errors"]} == {"have"}
        assert len(text) > LONGEST_HAVE or not text.isascii(), f"cannot be shared: {text[:200]!r}"
        return
    opened = ask({"kind": "open", "link": made["link"]})
    assert not opened["ignored"] and opened["have"] == text, f"its own link: {made['link'][:200]!r}"
    assert to_link(from_link(made["link"])[0], "", beside(made["link"])) == made["link"]


def quoted(text):
    """As `errors="replace"` leaves it in an address."""
    return text.encode(errors="replace").decode()
