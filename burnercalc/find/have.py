"""What I have: the sizes that lie in a shop, what may be bought, and the settings that are mine.

As text, a line a kind, entries apart by semicolons: `tube: 3 1/2 x 3 1/2 x 3/16 in, 8 ft; 4 x 4 x 3/16 in`; or as JSON,
{"tube": ["3 1/2 x 3 1/2 x 3/16 in, 8 ft"]}. All faults are reported together.
"""

import json
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from typing import Any

from ..constants import INCH_M
from ..design import Design, parse_setting
from ..errors import InputError, InputErrors, few
from ..link import read_beside
from ..physics.drills import drill_named
from ..physics.linings import material_keys, material_name
from ..settings import BY_KEY, SETTINGS
from ..tables import read_table
from ..units import as_on_a_plate, parse_quantity, plain, show, split_number
from .sold import STICK

# kind: what it is, and how an entry is written.
KINDS = {
    "tube": ("square or rectangular tube: width x depth x wall, length", "3 1/2 x 3 1/2 x 3/16 in, 8 ft"),
    "plate": ("plate: thickness, length x width", "3/16 in, 24 x 24 in"),
    "round": ("round pipe for a body: outside diameter x wall, length", "6 x 3/16 in, 24 in"),
    "pins": ("pins, dowels or rods for the ports: diameter, length of a stick, how many", "9/32 in, 36 in x 5"),
    "pipe": ("pipe for mix pipe and inlet: nominal size", "1-1/2"),
    "blower": ("blower: pressure shut and flow free, or points of its curve", "4 inH2O 60 cfm"),
    "drill": ("drills or jets for the gas", "#54"),
    "regulator": ("regulator: gas pressure, or from low to high", "0 to 30 psi"),
    "cylinder": ("cylinders: full charge, how many", "20 lb x 2"),
    "line": ("gas line: its pressure", "7 inH2O"),
    "bag": ("bags of refractory: class, how many", "castable 60 % x 2"),
    "board": ("boards for the mould", "ply 3/4"),
}
SHUT = (
    "needs its pressure too: read it off the plate, or measure it with the outlet shut, for a design rests on it; "
    "a fan like a propeller makes up to {}, a small drum with many blades {}, a high-pressure blower {}"
)
NO_KIND = "is not a kind"
FREE = "needs its flow too: the one on its plate, with nothing on the outlet"
METRIC = {  # examples for a shop with a metric tape
    "tube": "90 x 90 x 4 mm, 2 m",
    "plate": "5 mm, 600 x 600 mm",
    "round": "150 x 5 mm, 600 mm",
    "pins": "7 mm, 1000 mm x 5",
    "pipe": "DN 40",
    "blower": "10 mbar 100 m3/h",
    "drill": "1.4 mm",
    "regulator": "0 to 2 bar",
    "cylinder": "9 kg x 2",
    "line": "20 mbar",
    "board": "ply 18 mm",
}
BY_KIND = (
    "needs its two numbers, as on its plate; those offered are typical of its kind, and yours may give half or twice"
)
OF_WATER = "must have its pressure in inches of water, written inH2O: inches alone are a length"
TYPICAL = {  # of a blower, where one half is not given: in the offer, and in words; common practice
    "blower_shutoff_pressure": {
        "in": ("2 inH2O", SHUT.format("1/2 inH2O", "1 to 3", "4 to 12")),
        "mm": ("5 mbar", SHUT.format("1.2 mbar", "2.5 to 7.5", "10 to 30")),
    },
    "blower_free_flow": {"in": ("60 cfm", FREE), "mm": ("100 m3/h", FREE)},
}
# Of which sold sizes are known.
SOLD = ("tube", "plate", "pins", "pipe", "blower", "drill", "regulator", "cylinder", "bag", "board")
BODIES, GAS = ("tube", "plate", "round"), ("cylinder", "line")
EXAMPLE = "tube: " + KINDS["tube"][1]
# What must come from somewhere: at hand or bought.
NEEDED = (BODIES, ("pins",), ("pipe",), ("blower",), GAS)
# What every burner takes too, and nobody need tell: where none lies there it is taken as sold.
UNASKED = ("drill", "regulator", "bag", "board")
COUNTS = {word: count for count, word in enumerate(("one", "two", "three", "four", "five", "six"), 1)}
# Of phones and of files.
QUOTES = str.maketrans(
    {**dict.fromkeys("\u201c\u201d\u2033", '"'), **dict.fromkeys("\u2018\u2019\u2032", "'"), "\ufeff": None}
)
BULLET = re.compile(r"[-*\u2022\u2013]\s+")  # of a list that came in a message
# Units and words of an entry, which are the same in capitals; one that is not, such as MPA, is refused as ever.
SPELLED = {
    one.lower(): one
    for one in (
        *("in", "inch", "inches", "ft", "feet", "mm", "cm", "m", "cfm", "m3/h", "m\u00b3/h", "L/s", "inH2O"),
        *("mbar", "bar", "Pa", "hPa", "kPa", "psi", "lb", "kg", "wc", "wg", "x", "to", "at"),
    )
}
WORDS = re.compile(r"(?<![A-Za-z#])[A-Za-z]+\u00b3?[0-9]?(?:/[A-Za-z]|O)?(?![A-Za-z0-9])")
LONGEST_ENTRY, MOST_ENTRIES = 1_000, 24
LEAST_LIP_M = INCH_M * 3 / 16  # of steel inside the wall
LEAST_WINDOW_M = INCH_M / 2


@dataclass(frozen=True)
class Piece:
    """One entry: what was typed, the settings it gives as texts, and figures beside them (lengths in m, counts)."""

    kind: str
    typed: str
    texts: Mapping[str, str]
    figures: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True)
class Have:
    """The pieces of each kind, kinds that may be bought besides, and what is never moved: {setting: text, or None}.

    A setting that is mine without a text stays as the design in question has it.
    """

    pieces: Mapping[str, tuple[Piece, ...]]
    buy: frozenset[str]
    mine: Mapping[str, str | None] = field(default_factory=dict)

    def of(self, *kinds: str) -> tuple[Piece, ...]:
        if len(kinds) == 1:
            return self.pieces.get(kinds[0], ())
        return tuple(piece for kind in kinds for piece in self.pieces.get(kind, ()))

    def in_order(self) -> "Have":
        """Kinds as they are listed here, the pieces of each by size: in which order they were typed is no part of what
        is asked."""
        return replace(
            self, pieces={kind: tuple(sorted(self.pieces[kind], key=_size)) for kind in KINDS if kind in self.pieces}
        )

    def may_buy(self, *kinds: str) -> bool:
        return any(kind in self.buy for kind in kinds)

    @property
    def fixed_pressure(self) -> bool:
        """Whether what regulators lie there give one pressure each, which nobody can turn."""
        regulators = self.of("regulator")
        return bool(regulators) and all(piece.texts for piece in regulators)

    def text(self) -> str:
        """The form that is read back."""
        lines = [f"{kind}: {'; '.join(piece.typed for piece in pieces)}" for kind, pieces in self.pieces.items()]
        lines.append("buy: " + (", ".join(kind for kind in KINDS if kind in self.buy) or "none"))
        if self.mine:
            names = {key: key if "," in label else label for label, key in _LABELS.items()}  # commas part what is mine
            kept = (names[key] if text is None else f"{names[key]}={text}" for key, text in self.mine.items())
            lines.append("mine: " + "; ".join(kept))
        return "\n".join(lines) + "\n"


def _size(piece: Piece) -> tuple[list[tuple[str, str, float]], str]:
    """What a piece is sorted by: its sizes in SI, then as it was typed."""
    sizes = {key: parse_setting(BY_KEY[key], text) for key, text in piece.texts.items()}
    found = [
        (key, "", float(one)) if isinstance(one, (int, float)) else (key, str(one), 0.0) for key, one in sizes.items()
    ]
    return [*found, *((key, "", one) for key, one in piece.figures.items())], piece.typed


def read_have(text: str, system: str = "in") -> Have:
    """What I have, from a file's text.

    Arguments:
        text     lines or JSON
        system   in or mm: the unit of a bare number in a size
    Raises:
        InputErrors   every entry that cannot be read or used, and every kind that is neither there nor to be bought
    """
    have, errors = gathered(text, system)
    if errors:
        raise InputErrors(errors)
    return have


def gathered(text: str, system: str = "in") -> tuple[Have, list[InputError]]:
    """What of a list can be read, and all that read_have refuses of it."""
    given, unread = _entries(text)
    errors = [_with_example(error, system) for error in unread]
    pieces: dict[str, tuple[Piece, ...]] = {}
    for kind, entries in given.items():
        if kind in KINDS:
            found = []
            for entry in entries[:MOST_ENTRIES]:
                entry = _dotted(kind, _spelled(kind, entry), system)
                if comma := re.search(r"\d,\d", entry):
                    at = comma.start() + 1
                    rule = "has a comma within a number: write a point there, or a blank after it"
                    as_number = f"{entry[:at]}.{entry[at + 1 :]}"
                    errors.append(_offering(kind, entry, rule, [as_number, f"{as_number} mm"], system))
                    continue
                if len(entry) > LONGEST_ENTRY:
                    rule = f"must be at most {LONGEST_ENTRY} characters long"
                    errors.append(_offering(kind, entry[:60], rule, [], system))
                    continue
                try:
                    found.append(_READERS[kind](entry, _own(entry, system)))
                except (InputError, InputErrors) as refused:
                    for error in refused.errors:
                        errors.append(_of_entry(kind, entry, error, system))
            if found:
                pieces[kind] = tuple(found)
    buy = _buy(given, errors)
    mine = _mine(given.get("mine", []), errors, system)
    bad = {error.field for error in errors}
    for group in NEEDED if "buy" not in bad else ():  # what may be bought is not known then
        if not any(kind in pieces or kind in buy or kind in bad for kind in group):
            errors.append(_offering(group[0], "nothing", "must be at hand, or may be bought", [], system))
    return Have(pieces, buy, mine), few(errors, "have")


def _spelled(kind: str, entry: str) -> str:
    """Units in capitals as they are written; names of stuff and boards are read in any case."""
    if kind in ("bag", "board") or len(entry) > LONGEST_ENTRY:
        return entry
    return WORDS.sub(lambda word: SPELLED.get(word[0].lower(), word[0]), entry)


def _dotted(kind: str, entry: str, system: str) -> str:
    """Decimal commas as points, where neither thousands nor two sizes with a comma between can be meant."""
    if not re.search(r"\d,\d", entry) or re.search(r"\d,\d{3}(?!\d)", entry):
        return entry
    as_number, as_two = (re.sub(r"(?<=\d),(?=\d)", sign, entry) for sign in (".", ", "))
    return as_number if _can_stand(kind, as_number, system) and not _can_stand(kind, as_two, system) else entry


def _can_stand(kind: str, entry: str, system: str) -> bool:
    try:
        _READERS[kind](entry, _own(entry, system))
    except (InputError, InputErrors):
        return False
    return True


def _of_entry(kind: str, entry: str, error: InputError, system: str) -> InputError:
    """What is wrong with one size of an entry, as what is wrong with the entry."""
    several = re.sub(r"\s*,\s*", "; ", entry) if "," in entry else ""  # 1/4, 3/8: two of them
    if error.field == kind or error.field not in BY_KEY:
        # 4x4 1/4, 100x100 4: the wall without its sign.
        wall = "[0-9]+/[0-9]+" if system == "in" else "[0-9]+"
        walled = f"{re.sub(rf'(?<=[0-9]) +(?={wall}$)', ' x ', entry)} {system}" if kind == "tube" else ""
        offered = [several, entry.lower(), walled, *_in_words(kind, entry, system), _no_example(kind, error)]
        return _offering(kind, entry, error.rule, offered, system)
    name = BY_KEY[error.field].label.lower()
    size, near = split_number(str(error.value)), split_number(error.nearest)
    offered = [*_in_words(kind, entry, system), _no_example(kind, error)]
    if size and near:
        # The number as typed, wherever it stands in the entry, in the measure of the nearest that works.
        typed = str(error.value)[: len(str(error.value)) - len(size[1])].strip()
        offered.insert(0, re.sub(rf"(?<![\d./]){re.escape(typed)}(?![\d./])", error.nearest, entry))
        offered.insert(0, re.sub(rf"(?<![\d./]){re.escape(typed)}\s*{re.escape(size[1])}", error.nearest, entry))
    # A comma that is missing, and a metric size without its unit.
    as_meant = [
        re.sub(r"(in|mm)\s+(?=[0-9])", r"\1, ", entry),
        f"{entry} mm",
        entry.lower(),
        re.sub(r"\s*[a-z]+$", " in", entry) if system == "in" else "",
    ]
    as_meant.append(re.sub(r"^([0-9.]+)( to |-)([0-9.]+)", r"\3\2\1", entry))  # 30 to 0 psi
    return _offering(kind, entry, f"{error.rule} ({name})", [several, *as_meant, *offered], system)


SIZE = r"(?:[0-9]+[ -])?[0-9]+/[0-9]+|[0-9]*\.?[0-9]+"
TUBE_WORDS = r"[^0-9a-z]*\b(?:hss|steel|square|sq|rectangular|rect|box|tube|tubing|wall|thick|inch|inches|in|mm)\b"


def _in_words(kind: str, entry: str, system: str) -> list[str]:
    """What somebody may have meant who says it in the words of a yard, or leaves a unit to be understood."""
    said = entry.lower().replace('"', " in")
    sizes = re.findall(SIZE, said)
    match kind:
        case "tube" if not re.sub(rf"{TUBE_WORDS}|{SIZE}|[x*,.\s-]", "", said):
            square = [sizes[0], *sizes] if len(sizes) == 2 and re.search(r"\bsq", said) else sizes
            bare = re.sub(TUBE_WORDS, "", f" {said}").strip(" ,")
            walled = re.sub(r"(?<=[0-9]) +(?=[0-9]+/[0-9]+$)", " x ", bare)  # 4x4 1/4 wall
            return [f"{' x '.join(square)} {system}" if len(square) == 3 else f"{walled} {system}"]
        case "plate" if len(sizes) == 3 and not re.sub(rf"{SIZE}|\b(in|inch|mm|plate)\b|[x*,\s]", "", said):
            return [f"{sizes[0]} {system}, {sizes[1]} x {sizes[2]} {system}"]
        case "regulator":
            return [f"{entry} {'psi' if system == 'in' else 'bar'}"]
        case "line":
            return [re.sub(r"\s*(?:in|inch|inches)\b.*$", " inH2O", said)]
        case "board" if len(sizes) == 1 and (system == "mm" or "ply" in said):
            return [f"ply {sizes[0]}", f"ply {sizes[0]} mm"]
        case "drill" if re.fullmatch("[0-9]+", said):
            return [f"#{said}"]
    return []


def _no_example(kind: str, error: InputError) -> str:
    """Its nearest that works, but not where that only shows how an entry is written."""
    return "" if error.nearest == KINDS[kind][1] and error.rule != OF_WATER else error.nearest


def _offering(kind: str, entry: str, rule: str, offered: Sequence[str], system: str) -> InputError:
    """With the first that can stand in its place; where none can, how one is written."""
    found = _offer(kind, offered, system)
    error = InputError(kind, entry, rule, found or KINDS[kind][1])
    return error if found else _with_example(error, system)


def _offer(kind: str, offered: Sequence[str], system: str) -> str:
    """The first that is offered and can stand as an entry, or as several; "" where none can."""
    for nearest in offered:
        ones = nearest.split("; ")
        if not all(map(str.strip, ones)):
            continue
        if all(_can_stand(kind, one, system) for one in ones):
            return nearest
    return ""


def _with_example(error: InputError, system: str) -> InputError:
    """What has nothing near it that works is told how it is written: an example is no offer."""
    meant = error.rule == OF_WATER  # what was typed may be the example itself, but for its unit
    if meant or error.field not in KINDS or error.nearest != KINDS[error.field][1]:
        return error
    example = METRIC.get(error.field, error.nearest) if system == "mm" else error.nearest
    return InputError(error.field, error.value, f"{error.rule}; it is written like {example}", "", error.others)


def rows_of(text: str) -> dict[str, str]:
    """{kind: its entries as typed}, `buy` and `mine` too, however bad they are."""
    return {kind: "; ".join(entries) for kind, entries in _entries(text)[0].items()}


def _entries(text: str) -> tuple[dict[str, list[str]], list[InputError]]:
    """({kind: [entry]}, what is not understood)."""
    errors: list[InputError] = []
    found: dict[str, list[str]] = {}
    _, unreadable = read_beside("have", text)
    if unreadable:
        return {}, unreadable
    for kind, entries in _pairs(text, errors):
        if kind not in (*KINDS, "buy", "mine"):
            near = get_close_matches(kind, (*KINDS, "buy", "mine"), 1)
            known = ", ".join((*KINDS, "buy", "mine"))
            errors.append(InputError("have", kind, f"{NO_KIND}; known: {known}", near[0] if near else ""))
            continue
        found.setdefault(kind, []).extend(entries)
        if not entries and kind in KINDS:
            errors.append(InputError(kind, "", "needs an entry after the colon", KINDS[kind][1]))
        most = len(SETTINGS) if kind == "mine" else MOST_ENTRIES
        if len(found[kind]) > most:
            errors.append(InputError(kind, f"{len(found[kind])} entries", f"must be at most {most}"))
    return found, errors


def _pairs(text: str, errors: list[InputError]) -> list[tuple[str, list[str]]]:
    text = text.translate(QUOTES)
    if text.lstrip().startswith("{"):
        try:
            data = json.loads(text, object_pairs_hook=list)  # pairs, so that a kind given twice loses nothing
        except (ValueError, RecursionError):
            errors.append(InputError("have", text, "must be readable JSON, or a line a kind", EXAMPLE))
            return []
        pairs = []
        for kind, entries in data:
            entries = [entries] if isinstance(entries, str) else entries
            if not isinstance(entries, list) or not all(isinstance(one, str) for one in entries):
                named = kind.strip().lower()
                like = "rows=4; pattern=straight" if named == "mine" else KINDS.get(named, ("", ""))[1]
                told = f"must be a list of texts{f', each written like {like}' if like else ''}"
                errors.append(InputError(kind, "what stands there", told))
                continue
            entries = [one.strip() for entry in entries for one in entry.split(";")]
            pairs.append((kind.strip().lower(), [one for one in entries if one]))
        return pairs
    pairs = []
    for line in text.splitlines():
        line = BULLET.sub("", line.strip(), 1) if BULLET.match(line.strip()) else line.strip()
        if not line or re.match(r"#(?!\d)", line):
            continue
        kind, colon, rest = line.partition(":")
        if not colon:
            errors.append(InputError("have", line, "must be a kind, a colon and its entries", EXAMPLE))
            continue
        pairs.append((kind.strip().lower(), [entry.strip() for entry in rest.split(";") if entry.strip()]))
    return pairs


_LABELS = {setting.label.lower(): setting.key for setting in SETTINGS}


def _buy(given: Mapping[str, list[str]], errors: list[InputError]) -> frozenset[str]:
    """Kinds that may be bought; where nothing is said, those of which nothing is at hand."""
    if "buy" not in given:
        missing = [group for group in NEEDED if not any(kind in given for kind in group)]
        kinds = {group[0] for group in missing}
        return frozenset(kinds | {kind for kind in UNASKED if kind not in given})
    words = {word.strip().lower() for entry in given["buy"] for word in entry.split(",") if word.strip()}
    if words == {"all"}:
        return frozenset(KINDS)
    if words == {"none"}:
        return frozenset()
    if len(words) > 1 and words & {"all", "none"}:
        errors.append(InputError("buy", ", ".join(sorted(words)), "must be all alone, none alone, or kinds", "all"))
        return frozenset(words & set(KINDS))
    for word in sorted(words - set(KINDS)):
        near = get_close_matches(word, KINDS, 1)
        rule = "must be all, none or kinds: " + ", ".join(KINDS)
        errors.append(InputError("buy", word, rule, near[0] if near else "all"))
    return frozenset(words & set(KINDS))


def _parted(key: str, text: str) -> list[InputError]:
    """What is wrong with `4, inlet = 2`, where a comma stands between two settings; empty where none does."""
    first, comma, rest = text.partition(",")
    named = rest.partition("=")[0].strip()
    if not comma or _LABELS.get(named.lower(), named) not in BY_KEY:
        return []
    return [InputError(key, text, "must have a semicolon before the next setting", f"{first.strip()}; {rest.strip()}")]


def _mine(entries: list[str], errors: list[InputError], system: str) -> dict[str, str | None]:
    mine: dict[str, str | None] = {}
    for entry in entries:
        for one in [entry] if "=" in entry else entry.split(","):
            key, equals, text = one.partition("=")
            key, value = key.strip(), text.strip() if equals else None
            key = _LABELS.get(key.lower(), key)
            if key not in BY_KEY:
                near = get_close_matches(key.lower(), (*_LABELS, *BY_KEY), 1)
                errors.append(InputError("mine", key, "is not a setting", near[0] if near else ""))
                continue
            if key in mine and mine[key] != value:
                words = ["as it is" if text is None else text or "nothing" for text in (mine[key], value)]
                errors.append(InputError(key, " and ".join(words), "is mine twice, and not the same", mine[key] or ""))
                continue
            if value is not None:
                try:
                    parse_setting(BY_KEY[key], value, system=system)
                except (InputError, InputErrors) as refused:
                    errors += _parted(key, value) or refused.errors
                    continue
            mine[key] = value
    return mine


# Readers of an entry


def _sizes(text: str, count: int, kind: str, system: str) -> list[str]:
    """`3 1/2 x 3 1/2 x 3/16 in` as texts, each with its unit: the last one's where one has none."""
    parts = [part.strip() for part in re.split(r"\s*[xX×*]\s*", text.strip())]
    if len(parts) != count or not all(parts):
        raise InputError(kind, text, f"must be {KINDS[kind][0]}", KINDS[kind][1])
    unit = re.search(r"[A-Za-z\"']+$", parts[-1])
    tail = unit.group() if unit else system
    return [part if re.search(r"[A-Za-z\"']$", part) else f"{part} {tail}" for part in parts]


def _setting(key: str, text: str, system: str) -> Any:
    return parse_setting(BY_KEY[key], text, system=system)


def _length_m(text: str, kind: str, entry: str, system: str) -> float:
    length = parse_quantity(text, "long_length" if "ft" in text else "length", kind, system, system)
    if not 0 < length <= 30:
        raise InputError(kind, entry, "must have a length above 0 and up to 30 m", KINDS[kind][1])
    return length


def _split(entry: str) -> tuple[str, str]:
    first, _, rest = entry.partition(",")
    return first.strip(), rest.strip()


def _tube(entry: str, system: str) -> Piece:
    section, rest = _split(entry)
    width, depth, wall = _sizes(section, 3, "tube", system)
    values = {"body_width": width, "body_depth": depth, "wall": wall}
    size = {key: _setting(key, text, system) for key, text in values.items()}
    if not 4 * size["wall"] < min(size["body_width"], size["body_depth"]):
        raise InputError("tube", entry, "must have a wall of less than a quarter of its smaller side")
    length_m = _length_m(rest or STICK[system], "tube", entry, system)
    _longer_than_lips(length_m, size["wall"], "tube", entry, system)
    return Piece("tube", entry, {"body_kind": "tube", **values}, {"length_m": length_m})


def _own(entry: str, system: str) -> str:
    """The system of the units that an entry names, so that it means the same in any; else the page's."""
    named = re.search(r"(?<![A-Za-z])(mm|cm|m|in|ft|feet|inch|inches)(?![A-Za-z])|[\"']", entry)
    return system if named is None else "mm" if named.group() in ("mm", "cm", "m") else "in"


def _longer_than_lips(length_m: float, wall_m: float, kind: str, entry: str, system: str) -> None:
    least = 2 * (wall_m + LEAST_LIP_M) + LEAST_WINDOW_M
    if not length_m >= least:
        raise InputError(
            kind,
            entry,
            f"must be longer than its two lips and a window between them ({show(least, 'length', system)})",
            KINDS[kind][1],
        )


def _plate(entry: str, system: str) -> Piece:
    thickness, rest = _split(entry)
    (wall,) = _sizes(thickness, 1, "plate", system)
    wall_m = _setting("wall", wall, system)
    sides = _sizes(rest, 2, "plate", system) if rest else ["48 in", "48 in"]
    length_m, width_m = (_length_m(side, "plate", entry, system) for side in sides)
    _longer_than_lips(max(length_m, width_m), wall_m, "plate", entry, system)
    return Piece("plate", entry, {"body_kind": "plates", "wall": wall}, {"length_m": length_m, "width_m": width_m})


def _round(entry: str, system: str) -> Piece:
    section, rest = _split(entry)
    outside, wall = _sizes(section, 2, "round", system)
    values = {"body_length": outside, "body_width": outside, "wall": wall}
    size = {key: _setting(key, text, system) for key, text in values.items()}
    _longer_than_lips(size["body_width"], size["wall"], "round", entry, system)
    length_m = _length_m(rest or STICK[system], "round", entry, system)
    return Piece("round", entry, {"body_kind": "pipe", **values}, {"length_m": length_m})


MANY = (
    r"(?P<size>.*[A-Za-z\"'])\s*[xX×*]\s*(?P<count>[0-9]+)",
    r"(?P<count>[0-9]+)\s*[xX×*]\s+(?P<size>.*[A-Za-z\"'])",
)


def _pins(entry: str, system: str) -> Piece:
    """Of so many pins cut to length, or so many sticks where their length is told; else of as many as it takes."""
    counted = next(filter(None, (re.fullmatch(form, entry.strip()) for form in MANY)), None)
    if counted:
        made, count = _pins(counted["size"].strip(), system), int(counted["count"])
        if made.figures or not 1 <= count <= 999:
            raise InputError("pins", entry, "must be from 1 to 999 of them", KINDS["pins"][1])
        return replace(made, typed=entry, figures={"count": count})
    diameter, rest = _split(entry)
    if diameter.startswith("#"):  # wires, needles and drills have numbers, and each its own
        try:
            size = show(drill_named(diameter).diameter_m, "length", system, exact=True)
        except InputError:
            size = ""
        rule = "needs its diameter, as numbers of wires and drills differ"
        raise InputError("pins", entry, f"{rule}; a drill {diameter} is {size}" if size else rule, size)
    if (bare := re.sub(r"\s*\b(dowel|pin|rod)s?\b", "", entry, flags=re.I).strip()) != entry:
        raise InputError("pins", entry, "must be a diameter, and a length after a comma, with no word beside", bare)
    texts = {"port_diameter": _sizes(diameter, 1, "pins", system)[0]}
    if rest:
        texts["pin_stock_length"] = _sizes(rest, 1, "pins", system)[0]
    for key, text in texts.items():
        _setting(key, text, system)
    return Piece("pins", entry, texts)


def _pipe(entry: str, system: str) -> Piece:
    return Piece("pipe", entry, {"mix_pipe": _named("pipe", "mix_pipe", entry, system)})


def _blower(entry: str, system: str) -> Piece:
    plate = ("blower_shutoff_pressure", "blower_free_flow")
    one = r"([0-9.][0-9./ -]*[A-Za-z][A-Za-z0-9/]*)"
    typed, entry = entry, as_on_a_plate(entry.replace("\u00b3", "3"))
    for kind in read_table("blower_kinds"):
        names = (str(kind["key"]).replace("_", " "), str(kind["name"]).lower().replace("-", " "))
        if any(name in typed.lower().replace("-", " ") for name in names):
            shut, free = ("inH2O", "cfm") if system == "in" else ("mbar", "m3_h")
            typical = f"{kind[f'shut_{shut}']:g} {shut} {kind[f'free_{free}']:g} {free.replace('_', '/')}"
            raise InputError("blower", entry, BY_KIND, typical)
    entry = re.sub(r"(?<=[A-Za-z0-9])(?:\s+at\s+|\s*@\s*)(?=[0-9.])", " ", entry)  # 60 cfm at 4 inH2O
    if re.fullmatch(rf"{one},\s*{one}", entry.strip()):  # 3 inH2O, 80 cfm: no points of a curve
        entry = entry.replace(",", " ")
    if "," in entry:
        try:
            _setting("blower_curve", entry, system)
        except (InputError, InputErrors) as refused:  # what it offers is another blower
            raise InputError("blower", entry, refused.errors[0].rule, KINDS["blower"][1]) from None
        return Piece("blower", typed, {"blower_curve": entry})
    both = re.fullmatch(rf"{one}(?:\s+{one})?", entry.strip())
    neither = InputError("blower", entry, "must be a pressure and a flow, each with its unit", KINDS["blower"][1])
    # Inches beside a flow are a gauge's: 100 cfm 2 in.
    of_water = re.sub(r"(?<=[0-9])\s*(?:in|inch|inches|\")(?![A-Za-z0-9])", " inH2O", entry)
    if of_water != entry and _can_stand("blower", of_water, system):
        raise InputError("blower", entry, OF_WATER, of_water)
    if not both:
        raise neither
    found: dict[str, str] = {}
    for part in filter(None, both.groups()):
        for key in plate:
            try:
                _setting(key, part, system)
            except (InputError, InputErrors) as refused:
                first = refused.errors[0]
                if "must be" in first.rule and "number" not in first.rule:  # of the right kind, out of range
                    raise InputError("blower", entry, f"{first.rule} ({BY_KEY[key].label.lower()})") from None
                continue
            if key in found:
                raise InputError("blower", entry, f"must have one {BY_KEY[key].label.lower()}", KINDS["blower"][1])
            found[key] = part
    lacking = [key for key in plate if key not in found]
    if len(lacking) == len(plate):
        raise neither
    if lacking:
        # What is typed stays in the offer: another blower is no help.
        (key,) = lacking
        whole = " ".join({**found, key: TYPICAL[key][system][0]}[one] for one in plate)
        raise InputError("blower", entry, TYPICAL[key][system][1], whole)
    return Piece("blower", entry, {**found, "blower_curve": ""})


def _drill(entry: str, system: str) -> Piece:
    return Piece("drill", entry, {"jet_drill": _setting("jet_drill", entry, system)})


def _regulator(entry: str, system: str) -> Piece:
    low, to, high = re.sub(r"(?<=[0-9]) ?- ?(?=[0-9])", " to ", plain(entry, "regulator"), count=1).partition(" to ")
    if not to:
        _setting("gas_pressure", entry, system)
        return Piece("regulator", entry, {"gas_pressure": entry})
    unit = re.search(r"[A-Za-z][A-Za-z0-9]*$", high.strip())
    typed = low.strip() if re.search(r"[A-Za-z]", low) else f"{low.strip()} {unit.group() if unit else ''}"
    low_Pa = parse_quantity(typed, "gas_pressure", "regulator", system=system)
    high_Pa = parse_quantity(high.strip(), "gas_pressure", "regulator", system=system)
    if not 0 <= low_Pa <= high_Pa:
        first = high.strip()
        if unit and typed.endswith(unit.group()):  # said once
            first = first.removesuffix(unit.group()).strip()
        turned = f"{first} to {typed}"
        raise InputError("regulator", entry, "must be from the lower pressure to the higher", turned)
    _setting("gas_pressure", high.strip(), system)
    return Piece("regulator", entry, {}, {"low_Pa": low_Pa, "high_Pa": high_Pa})


def _named(kind: str, key: str, text: str, system: str) -> str:
    """The value of a choice by any name it goes by: in a list, in full, as either shop calls it, or in a link."""
    known: dict[str, str] = {}
    for value, label in BY_KEY[key].choices:
        names = [value, label, *label.split(", ")]
        names += [material_name(value, full=True)] if value in material_keys() else []
        known |= {_plain(name): value for name in names}
    if _plain(text) in known:
        return known[_plain(text)]
    words = [choice_name(key, value, system) for value, _ in BY_KEY[key].choices]
    raise InputError(kind, text, f"is not known; known: {', '.join(words)}", _nearest(text, words))


def _nearest(text: str, names: list[str]) -> str:
    """The name of the same words; else that whose size is next to that of a text; without a size the one that looks
    like it, or none."""
    words = sorted(re.findall(r"[a-z0-9./]+", text.lower()))
    for name in names:
        if sorted(re.findall(r"[a-z0-9./]+", name.lower())) == words:  # 3/4 ply
            return name
    sizes = {name: found[0] for name in names if (found := split_number(name.removeprefix("DN ")))}
    size = split_number(text.removeprefix("DN "))
    if size and sizes:
        return min(sizes, key=lambda name: abs(sizes[name] - size[0]))
    like = (get_close_matches(text, names, 1) or [""])[0]
    return like if set(re.findall(r"[0-9]+", text)) <= set(re.findall(r"[0-9]+", like)) else ""


def _plain(name: str) -> str:
    """A name without what need not be told: spaces, inches, and that a pipe is one, of the schedule it is taken for."""
    bare = re.sub(r"(sch(ed|edule)?\.?40|pipe)+$", "", re.sub(r"[\s_-]", "", name.lower()))
    return re.sub(r"(inch|inches|in\.?|\")$", "", bare)


def choice_name(key: str, value: str, system: str) -> str:
    """What the reader's shop calls a choice that both shops have a name for: 20 lb or 9 kg."""
    label = dict(BY_KEY[key].choices)[value]
    return label.rpartition(", ")[2 if system == "mm" else 0] or label if label[0].isdigit() else label


def _counted(entry: str, kind: str) -> tuple[str, int]:
    entry = re.sub(r"^([0-9]+)\s*[xX×*]\s+(.*[A-Za-z].*)$", r"\2 x \1", entry.strip())  # 2 x 20 lb
    entry = re.sub(rf"^({'|'.join(COUNTS)})\s+(.*)$", lambda said: f"{said[2]} x {COUNTS[said[1]]}", entry)
    match = re.fullmatch(r"(.*?)(?:\s*[xX×*]\s*([0-9]+))?", entry)
    name, count = match.groups() if match else (entry, None)
    number = int(count) if count else 1
    if not 1 <= number <= 20:
        raise InputError(kind, entry, "must be from 1 to 20 of them", KINDS[kind][1])
    return name.strip(), number


def _cylinder(entry: str, system: str) -> Piece:
    name, count = _counted(entry, "cylinder")
    return Piece("cylinder", entry, {"cylinder": _named("cylinder", "cylinder", name, system)}, {"count": count})


GASES = re.compile(r"(?i)\b(?:propane|butane|natural[ _]gas|house gas|mains gas|ng|lpg?)\b(?: gas)?[ ,:]*")


def _line(entry: str, system: str) -> Piece:
    bare = GASES.sub("", entry).strip(" ,")
    if bare != entry.strip():
        try:
            _setting("line_pressure", bare, system)
        except InputError:
            bare = KINDS["line"][1]
        raise InputError("line", entry, "must be its pressure alone: which gas it holds is set by fuel", bare)
    _setting("line_pressure", entry, system)
    return Piece("line", entry, {"gas_pressure": entry, "line_pressure": entry})


def _bag(entry: str, system: str) -> Piece:
    name, count = _counted(entry, "bag")
    return Piece("bag", entry, {"refractory": _named("bag", "refractory", name, system)}, {"count": count})


def _board(entry: str, system: str) -> Piece:
    return Piece("board", entry, {"mould_board": _named("board", "mould_board", entry, system)})


_READERS = {
    "tube": _tube,
    "plate": _plate,
    "round": _round,
    "pins": _pins,
    "pipe": _pipe,
    "blower": _blower,
    "drill": _drill,
    "regulator": _regulator,
    "cylinder": _cylinder,
    "line": _line,
    "bag": _bag,
    "board": _board,
}


def keeping(have: Have, design: Design, keys: Iterable[str], errors: list[InputError]) -> Have:
    """With settings that are mine as a design has them; those that are mine otherwise in the list are named."""
    keys = tuple(keys)  # it is read twice
    for key in keys:
        text = have.mine.get(key)
        if text is not None and parse_setting(BY_KEY[key], text) != design.value(key):
            rule = "is mine twice, and not the same"
            errors.append(InputError(key, f"{design.text(key)} and {text}", rule, design.text(key)))
    return replace(have, mine={**dict.fromkeys(keys), **have.mine})
