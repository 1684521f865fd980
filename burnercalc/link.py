"""A design as a short readable link, and back. Links made by one version open in all later ones."""

import re
from collections.abc import Mapping
from difflib import get_close_matches
from urllib.parse import parse_qsl, quote_plus

from .design import Design, read, sizes_of, with_offer
from .errors import InputError, InputErrors, few
from .settings import BY_KEY, SETTINGS, Setting
from .units import DIMENSIONS, dotted, plain

VERSION = "2"
# Defaults as they were: a link holds what differs from the defaults of its own version, and goes on meaning those.
# {version: {setting: its default in the links of that version}}, in order; what a later version changes stands there.
EARLIER_DEFAULTS = {
    "1": {
        "equivalence_ratio": "1.0",
        "cylinder_count": "1",
        "lining": "dense_castable 1 in, blanket_8lb 2 in",
        "port_wall_temperature": "1200 degF",
        "price_train": "140",
        "bought_price": "700",
        "watched_hours": "through",
        "blowers": "each",
        "gas_pressure": "5 psi",
        "fuel_price": "0.90/lb",
        "cap_thickness": "wall",
    }
}
# The same of a design in millimetres, for settings that had the default of an inch shop there too.
EARLIER_METRIC = {
    "1": {
        "body_length": "9 in",
        "body_width": "4 in",
        "body_depth": "4 in",
        "wall": "3/16 in",
        "setback": "5/8 in",
        "corner_radius": "3/16 in",
        "port_diameter": "1/4 in",
        "rows": "5",
        "ports_per_row": "9",
        "edge_margin": "1/4 in",
        "block_thickness": "2 1/2 in",
        "grip": "3/4 in",
        "chamber_length": "12 in",
        "chamber_width": "6 in",
        "chamber_height": "5 1/2 in",
        "chamber_diameter": "6 1/2 in",
        "opening_area": "12 in2",
        "opening_depth": "3 in",
        "chamber_temperature": "2250 degF",
        "work_rate": "10 lb/h",
        "pilot_rate": "1 kBtu/h",
        "work_temperature": "2100 degF",
        "bar_diameter": "1 in",
        "firing_rate": "100 kBtu/h",
        "ambient_temperature": "60 degF",
        "aspirated_pressure": "10 psi",
        "blower_shutoff_pressure": "4 inH2O",
        "blower_free_flow": "60 cfm",
        "mix_pipe_length": "18 in",
        "baffle_hole_diameter": "3/8 in",
        "baffle_thickness": "1/16 in",
        "other_appliances": "100 kBtu/h",
        "line_pressure": "7 inH2O",
        "tank_diameter": "30 in",
        "tank_length": "92 in",
        "regulator_inlet_pressure": "10 psi",
        "cap_gap": "1/64 in",
        "stock_lengths": "1 ft, 2 ft, 4 ft, 8 ft, 20 ft",
        "kerf": "1/16 in",
        "corner_drill": "3/8 in",
        "inlet_length": "3 in",
        "nipple_stock": "3 in 8.00, 4 in 9.00, 6 in 11.00, 12 in 18.00, 36 in 40.00",
        "mould_clearance": "1/8 in",
        "mould_board": "ply 3/4",
        "mould_base": "ply 3/4",
        "pin_depth": "1/2 in",
        "pin_stock_length": "36 in",
        "castable_density": "145 lb/ft3",
        "castable_service": "3000 degF",
        "bag_mass": "55 lb",
        "placing_rate": "80 lb/h",
        "port_position_tolerance": "1/32 in",
        "price_steel": "2.00/lb",
    }
}
BESIDE = ("mine", "have")  # what a link may carry beside the design: settings that stay, and what lies in the shop
LONGEST_HAVE = 20_000  # characters of what a link carries beside
LONGEST_LINK = 300_000  # characters; a design makes 10,000 at most, a list of what lies in the shop twelve a sign


def to_link(design: Design, base: str = "", beside: Mapping[str, str] | None = None) -> str:
    """`base#v=2&body_length=8in&...`: the settings that differ from the defaults, as they were typed.

    Arguments:
        base     address before the #
        beside   texts of BESIDE that go along; `mine=rows,inlet` are settings that stay as they are
    Raises:
        InputErrors   what goes along and could not be read back
    """
    parts = [f"v={VERSION}"]
    for setting in SETTINGS:
        if setting.key in design.texts:
            parts.append(f"{setting.key}={quote_plus(short(setting, design.texts[setting.key]), safe='/,.-:')}")
    going = {key: text for key, text in (beside or {}).items() if text}
    if faults := [fault for key, text in going.items() for fault in read_beside(key, text)[1]]:
        raise InputErrors(faults)
    parts += [f"{key}={quote_plus(text, safe='/,.-:')}" for key, text in going.items()]
    return base + "#" + "&".join(parts)


def short(setting: Setting, text: str) -> str:
    """A quantity without spaces, `6 1/2 in` as `6-1/2in`: a fraction stays apart from what is before it."""
    if setting.dimension not in DIMENSIONS:
        return text
    text = plain(text, setting.key)
    return re.sub(r"(\d)\s+(\d+\s*/)", r"\1-\2", text.replace('"', "in")).replace(" ", "")


def from_link(link: str) -> tuple[Design, list[InputError]]:
    """The design in a link, and what was not accepted.

    Arguments:
        link     a whole address, or what follows its # or ?
    Returns:
        (Design, list of InputError): settings that are unknown, bad or at odds are left at their defaults and named.
        Nothing else is: what can stand beside all that was accepted is accepted.
    """
    texts, earlier, ignored = _typed(link)
    design, left_out = accepted(texts, None, earlier)
    return design, [with_offer(error, design.values(), search=False) for error in [*ignored, *left_out]]


def accepted(
    texts: Mapping[str, str], bare_units: str | None = None, earlier: Mapping[str, str] | None = None
) -> tuple[Design, list[InputError]]:
    """The design of what of some texts can stand, over defaults of an `earlier` version, and what of them cannot."""
    texts, earlier = dict(texts), dict(earlier or {})
    ignored: list[InputError] = []
    left_out: dict[str, tuple[str, InputError]] = {}  # setting: (its text, why), because of another
    while True:
        values, _, errors = read({**earlier, **texts}, bare_units)
        if not errors:
            break
        unreadable = [error for error in errors if values.get(error.field) is None]
        ignored += unreadable
        for key in {error.field for error in unreadable}:  # one text may have several faults
            (texts if key in texts else earlier).pop(key, None)
        if not unreadable:
            key = _costs_least({**earlier, **texts}, errors[0])
            left_out.setdefault(key, ((texts if key in texts else earlier).pop(key), errors[0]))
    texts = {**earlier, **texts}
    while back := next(
        (key for key, (text, _) in left_out.items() if not read({**texts, key: text}, bare_units)[2]), None
    ):
        texts[back] = left_out.pop(back)[0]
    for key, (text, why) in left_out.items():
        ignored.append(why if key == why.field else _not_with(key, text, why))
    return Design.from_texts(texts, bare_units), ignored


def holds_a_design(link: str) -> bool:
    """Whether a text is a link at all: it names its version or a setting; of one that does not all is as at first."""
    return any(key == "v" or key in BY_KEY for key, _ in _pairs(link))


def brings(link: str, design: Design, ignored: list[InputError]) -> bool:
    """Whether a setting that a link names is in the design that was read from it, were it only a default."""
    out = {error.field for error in ignored}
    return any(key in design.texts or key not in out for key, _ in _pairs(link) if key in BY_KEY)


def beside(link: str) -> dict[str, str]:
    """What a link carries beside the design: {`mine` or `have`: text}; what is wrong with it `from_link` says."""
    given = {key: text for key, text in _pairs(link) if key in BESIDE}
    return {key: text for key in given if (text := read_beside(key, given[key])[0])}


def read_beside(key: str, text: str) -> tuple[str, list[InputError]]:
    """(what is understood of a text of BESIDE, what is not); of `mine` each setting once, in the order declared."""
    if key == "mine":
        named = {name.strip(): None for name in text.split(",") if name.strip()}
        unknown = [InputError(key, name, "is not a setting", _like(name)) for name in named if name not in BY_KEY]
        return ",".join(setting.key for setting in SETTINGS if setting.key in named), few(unknown, key)
    if key != "have":
        return "", [InputError(key, text, "is nothing that goes beside a design")]
    if len(text) > LONGEST_HAVE:
        return "", [InputError(key, text, f"must be at most {LONGEST_HAVE} characters long")]
    if not whole_signs(text):
        return "", [InputError(key, text, "must be of whole signs")]
    return text, []


def _like(name: str) -> str:
    """The setting that is called most like it, by key or label; "" where none is."""
    keys = {setting.label.lower(): setting.key for setting in SETTINGS} | {key: key for key in BY_KEY}
    near = get_close_matches(name.lower(), keys, 1)
    return keys[near[0]] if near else ""


def whole_signs(text: str) -> bool:
    """Whether it holds no half of a sign, which no file can take."""
    return not any("\ud800" <= sign <= "\udfff" for sign in text)


def _pairs(link: str) -> list[tuple[str, str]]:
    """(key, text) of a link, none of one that is too long."""
    return parse_qsl(_settings_part(link), keep_blank_values=True) if len(link) <= LONGEST_LINK else []


def _typed(link: str) -> tuple[dict[str, str], dict[str, str], list[InputError]]:
    """({key: text} of the settings in a link, the defaults of its version, [InputError] of all else in it)."""
    texts: dict[str, str] = {}
    odd: list[InputError] = []
    version = ""
    if len(link) > LONGEST_LINK:
        return {}, {}, [InputError("link", link, f"must be at most {LONGEST_LINK} characters long")]
    for key, text in _pairs(link):
        if key == "v":
            if version and version != text:
                odd.append(InputError("v", version, "is given twice; the last one counts"))
            version = text
            if text != VERSION and text not in EARLIER_DEFAULTS:
                odd.append(InputError("v", text, "is not a version of links that is known", VERSION))
        elif key not in BY_KEY and key not in BESIDE:
            odd.append(InputError(key, text, "is not a setting"))
        else:
            if texts.get(key, text) != text:
                odd.append(InputError(key, texts[key], "is given twice; the last one counts"))
            texts[key] = dotted(text) if key in BY_KEY and BY_KEY[key].dimension in DIMENSIONS else text
    odd = few(odd, "link")
    for key in BESIDE:
        odd += read_beside(key, texts.pop(key, ""))[1]
    # A link that names no version was typed by somebody who looks at this page.
    return texts, _defaults(version or VERSION, sizes_of(texts)), odd


def _defaults(version: str, system: str) -> dict[str, str]:
    """The defaults of a version, in a link's measures, that differ from those of today."""
    versions = list(EARLIER_DEFAULTS)
    texts: dict[str, str] = {}
    for earlier in versions[versions.index(version) :] if version in versions else ():
        metric = EARLIER_METRIC.get(earlier, {}) if system == "mm" else {}
        texts = {**metric, **EARLIER_DEFAULTS[earlier], **texts}
    return texts


def _costs_least(texts: dict[str, str], error: InputError) -> str:
    """The setting to leave out for a rule: the one it names, or of those it weighs the one that mends most."""
    if error.field in texts:
        return error.field

    def left_broken(key: str) -> int:
        return len(read({other: text for other, text in texts.items() if other != key})[2])

    return min((key for key in error.others if key in texts), key=left_broken)


def _not_with(key: str, text: str, why: InputError) -> InputError:
    return InputError(key, text, f"is not possible with {why.field} = {why.said}, which {why.rule}", "", why.others)


def _settings_part(link: str) -> str:
    link = link.strip()
    for mark in "#?":
        _, _, after = link.partition(mark)
        if after:
            return after
    # An address alone is the default design; other words are named as unknown.
    alone = "=" not in link and re.match(r"[a-zA-Z][a-zA-Z0-9+.-]*:", link)
    return "" if alone or not link.strip("#?") else link
