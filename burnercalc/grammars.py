"""Settings with words of their own: lists of lengths, price lists, prices by weight, dates, linings, gas.

Each reader takes the text, the key of its setting and the reader's measures, in or mm, and returns SI values; an
InputError shows how it is written in those measures.
"""

import datetime
import re
from difflib import get_close_matches
from functools import cache
from math import isfinite
from unicodedata import combining, normalize

from .errors import A_DAY, InputError, InputErrors, printable, require
from .physics import drills, fuels, linings, pipes
from .physics.blower import parse_blower_curve
from .units import dotted, known_unit, parse_quantity, show, split_number

LONGEST_LIST = 1000  # characters of any of these texts
MOST_ENTRIES, MOST_DAYS_OFF = 12, 366
THINNEST_LAYER_M, THICKEST_LAYER_M, MOST_LAYERS = 0.0005, 1.0, 6
LONGEST_M = 30.0  # no rack holds more


def lengths(text, field, system="in"):
    """`4 ft, 8 ft, 20 ft` as an ascending tuple of metres."""
    return tuple(sorted({_length(part, field, system) for part in _entries(text, field, example("lengths", system))}))


def offers(text, field, system="in"):
    """`3 in 6.00, 6 in 9.00` (length, then price) as an ascending tuple of (metres, price)."""
    found = []
    for part in _entries(text, field, example("offers", system)):
        length, _, price = part.rpartition(" ")
        if not length.strip():
            such_as = "150 mm 9.00" if system == "mm" else "6 in 9.00"
            raise InputError(field, part, f"must be a length, then its price, such as {such_as}")
        found.append((_length(length, field, system), _price(price, field)))
    return tuple(sorted(found))


MOST_OF_SIGN = 4
SPELLED = str.maketrans({"\u0142": "l", "\u20b9": "Rs", "\u20bd": "RUB", "\u20ba": "TL"})  # what paper lacks


def money_sign(text, field):
    """`$`, `€`, `kr` or `CHF`: letters and signs of money that a PDF can write too, and no unit of measure."""
    text = text.strip()
    require(len(text) <= MOST_OF_SIGN, field, text, f"must be at most {MOST_OF_SIGN} letters", "$")
    lacking = "".join(sign for sign in text if not _on_paper(sign))
    spelled = normalize("NFKD", text.translate(SPELLED))
    spelled = "".join(sign for sign in spelled if _on_paper(sign) and not combining(sign))
    rule = f"holds {printable(lacking)}, which the printed sheets cannot write"
    require(not lacking, field, text, rule, spelled or "$")
    good = text[:1] != "." and all(sign.isalpha() or sign in "$€£¥¢." for sign in text)
    require(good, field, text, "must be letters, or $, € or £", "$")
    unit = known_unit(text) is not None and not (len(text) == 1 and text.isupper())
    require(not unit, field, text, "is a unit of measure, not of money", "$")
    return text


def _on_paper(sign):
    try:
        return bool(sign.encode("cp1252"))
    except UnicodeError:
        return False


def price_by_mass(text, field, system="in"):
    """`2.00/lb` or `4.50/kg` as a price a kilogram."""
    price, _, unit = text.partition("/")
    such_as, per = ("4.50/kg", "kg") if system == "mm" else ("2.00/lb or 4.50/kg", "lb")
    need = f"needs a unit of mass, such as {such_as}"
    require(unit.strip()[:1].isalpha(), field, text, need, f"{price.strip()}/{per}")
    return _price(price, field) / parse_quantity(f"1 {unit.strip()}", "mass", field, system=system)


FUEL_PRICES = {
    "in": "0.90/lb, 3.80/gal, 1.50/therm, 0.12/kWh or 0.90/m3",
    "mm": "2.00/kg, 1.00/L, 0.12/kWh or 0.90/m3",
}
_LIQUID = ("gal", "gallon", "gallons", "L", "l", "liter", "liters")


def fuel_price(text, field, system="in"):
    """`0.90/lb`, `3.80/gal`, `1.50/therm`, `0.12/kWh`, `0.90/m3` as (price, per), per kg, J, m3 of liquid or m3 of gas.

    Gallons and litres are liquid, cubic metres and feet gas. An unknown unit is refused.
    """
    price, slash, unit = (part.strip() for part in text.partition("/"))
    known = known_unit(unit) if slash else None
    for dimension, per in (("mass", "kg"), ("energy", "J"), ("volume", "m3 liquid" if known in _LIQUID else "m3 gas")):
        try:
            size = parse_quantity(f"1 {known}", dimension, field) if known else 0.0
        except InputError:
            continue
        if size:
            return _price(price, field) / size, per
    per = "kg" if system == "mm" else "lb"
    nearest = f"{price}/{per}" if split_number(price) else ""
    raise InputError(field, text, f"needs a unit of weight, volume or heat, such as {FUEL_PRICES[system]}", nearest)


def date(text, field, system="in"):
    """`2026-03-02` as a date."""
    try:
        day = datetime.date.fromisoformat(text)
        require(str(day) == text, field, text, "must be a date written year-month-day", str(day))
    except ValueError as refused:
        if isinstance(refused, InputError):
            raise
        raise InputError(field, text, "must be a date written year-month-day", A_DAY) from None
    nearest = "1970-01-01" if day.year < 1970 else "2999-12-31"
    require(1970 <= day.year <= 2999, field, text, "must be a date from 1970 to 2999", nearest)
    return day


def days(text, field, system="in"):
    """`2026-12-24 to 2027-01-02, 2027-05-01` as ((first, last), ...), dates in order."""
    found = []
    for part in _entries(text, field, example("days", system)):
        first, to, last = part.partition(" to ")
        first, last = date(first.strip(), field), date((last if to else first).strip(), field)
        require(first <= last, field, part, "must run from the earlier date to the later one", f"{last} to {first}")
        found.append((first, last))
    number = sum((last - first).days + 1 for first, last in found)
    fewer = f"{first} to {first + datetime.timedelta(days=MOST_DAYS_OFF - 1)}"
    require(number <= MOST_DAYS_OFF, field, text, f"must be at most {MOST_DAYS_OFF} days in all, not {number}", fewer)
    return tuple(sorted(found))


def lining(text, field, system="in"):
    """`dense_castable 1 in, blanket_8lb 2 in` as ((material, thickness_m), ...); InputErrors names faulty layers."""

    def thickness_m(typed):
        try:
            thickness = parse_quantity(typed, "length", field, system=system)
        except InputError as error:
            raise ValueError(error.rule) from None
        if not THINNEST_LAYER_M <= thickness <= THICKEST_LAYER_M:
            raise ValueError("from 0.5 mm to 1000 mm")
        return thickness

    parts = text.split(",")
    fewer = ",".join(parts[:MOST_LAYERS])
    require(len(parts) <= MOST_LAYERS, field, text, f"must have at most {MOST_LAYERS} layers", fewer)
    try:
        return linings.parse_lining(text, thickness_m)
    except InputErrors as refused:
        meant = ", ".join(_layer_meant(part, thickness_m, system) for part in parts)
        raise InputErrors([InputError(field, e.value, e.rule, meant) for e in refused.errors]) from None


def layers_in_words(layers, system):
    """`2 1/2 in soft brick 26, 1 in blanket 8 lb` of ((material, thickness_m), ...)."""
    return ", ".join(
        f"{show(thick, 'length', system)} {linings.material_name(material, system)}" for material, thick in layers
    )


def _layer_meant(part, thickness_m, system):
    """The nearest layer that can be read: `dense castable 1 in` as `dense_castable 1 in`."""
    words = part.replace("_", " ").split()[:8]
    name, thickness = words, "25 mm" if system == "mm" else "1 in"
    for at in range(1, len(words)):
        try:
            thickness_m(" ".join(words[at:]))
        except ValueError:
            continue
        name, thickness = words[:at], " ".join(words[at:])
        break
    return f"{get_close_matches('_'.join(name).lower()[:40], linings.material_keys(), 1, 0)[0]} {thickness}"


def fuel_blend(text, field, system="in"):
    """`C3H8 0.93, C2H6 0.05, C4H10 0.02` (mole fractions) as a composition."""
    require("_" not in text, field, text, "must be species, each with its mole fraction", example("fuel_blend", system))
    return fuels.parse_blend(text)


blend_text = fuels.blend_text


def blower_curve(text, field, system="in"):
    """`0 cfm 8 inH2O, 100 cfm 5 inH2O` as ((flow_m3_s, pressure_Pa), ...), flows rising from 0."""

    def read(part, dimension, field):
        return parse_quantity(part, dimension, field, system=system)

    points = parse_blower_curve(text, read, field, example("blower_curve", system))
    return tuple(zip(points.flows_m3_s, points.pressures_Pa))


def drill(text, field, system="in"):
    """`#54`, `F`, `1/16 in` or `1.5 mm` as the drill's name; spaces and capitals do not count."""
    known = _drill_known(text)
    if known:
        return known
    such_as = "1.5 mm or 0.9 mm" if system == "mm" else "#54, F, 1/16 in or 1.5 mm"
    raise InputError(field, text, f"is not a drill as sold; write it as {such_as}", _drill_near(text, field, system))


def _drill_known(text):
    return _drills_by_name().get(_drill_name(text))


@cache
def _drills_by_name():
    return {_drill_name(known.name): known.name for family in drills.FAMILIES for known in drills.drills(family)}


def _drill_near(text, field, system):
    """What was typed with the sign or the unit it lacks, else the sold size next to it; "" where no size is read."""
    bare = text.strip()
    guesses = (f"{bare} mm", f"#{bare}") if system == "mm" else (f"{bare} in", f"#{bare}", f"{bare} mm")
    meant = next(filter(None, map(_drill_known, guesses)), None)
    if meant:
        return meant
    metric = system == "mm" or "mm" in _drill_name(text)
    families = ["metric"] if metric else [family for family in drills.FAMILIES if family != "metric"]
    try:
        size_m = parse_quantity(text, "length", field, system)
        around = [each for family in families for each in drills.nearest_drills(size_m, family) if each]
    except InputError:
        return ""
    return min(around, key=lambda each: abs(each.diameter_m - size_m)).name


def _drill_name(text):
    """Without capitals and spaces, but for one between two numbers: `1 1/16 in` is not 11/16 in; `.90` is 0.9."""
    name = re.sub(r"(?<![0-9]) | (?![0-9])", "", text.lower().replace('"', "in"))
    return re.sub(r"(?<![0-9])\.", "0.", re.sub(r"(\.[0-9]*?)0+(?![0-9])", r"\1", name).replace(".mm", "mm"))


def pipe_size(text):
    """(nominal size that a text names, None where none is sold; the sold one nearest to it, None of no size at all).

    Reads `2 in`, `1 1/2`, `1.5"`, `DN 50` and `50 mm`. A bare number above the largest in inches is a DN.
    """
    typed = dotted(text.strip().lower())
    bare = typed.removeprefix("dn").lstrip()
    found = split_number(bare)
    if not found:
        return None, None
    number, unit = found
    inches = {split_number(name)[0]: name for name in pipes.pipe_names()}
    metric = {pipes.nominal_mm(name): name for name in pipes.pipe_names()}
    if bare != typed or not unit:
        sizes = metric if bare != typed or number > max(inches) else inches
    else:
        sizes = {"in": inches, "inch": inches, "mm": metric}.get(known_unit(unit), {})
    return sizes.get(number), sizes[min(sizes, key=lambda size: abs(size - number))] if sizes else None


LISTS = ("lengths", "offers", "days", "lining", "fuel_blend", "blower_curve")


def parted(text):
    """A list with semicolons between its entries, whose commas are decimal: `1,5 m; 2,5 m` as `1.5 m, 2.5 m`."""
    return re.sub(r"(?<=[0-9]),(?=[0-9])", ".", text).replace(";", ",") if ";" in text else text


def _entries(text, field, example):
    parts = [part.strip() for part in text.split(",") if part.strip()]
    require(
        1 <= len(parts) <= MOST_ENTRIES,
        field,
        text,
        f"needs 1 to {MOST_ENTRIES} entries with commas between them",
        example,
    )
    return parts


def _length(text, field, system):
    length = parse_quantity(text, "long_length", field, system=system)
    require(
        0 < length <= LONGEST_M,
        field,
        text,
        "must hold lengths above 0 and up to 30 m",
        "6 m" if system == "mm" else "20 ft",
    )
    return length


def _price(text, field):
    found = split_number(text)
    require(
        found is not None and found[1] == "" and isfinite(found[0]) and 0 <= found[0] <= 1e6,
        field,
        text.strip(),
        "must hold prices of 0 to 1000000, plain numbers",
    )
    return found[0]


GRAMMARS = {
    "lengths": lengths,
    "offers": offers,
    "price_by_mass": price_by_mass,
    "fuel_price": fuel_price,
    "date": date,
    "days": days,
    "lining": lining,
    "fuel_blend": fuel_blend,
    "blower_curve": blower_curve,
    "drill": drill,
}


def in_millimetres(kind, value):
    """A value's text with metric measures, for a default that is written in inches and pounds; None for a kind that has
    no measures."""
    if kind == "lengths":
        return ", ".join(f"{length:.3g} m" for length in value)
    if kind == "offers":
        return ", ".join(f"{1000 * length:.3g} mm {price:.2f}" for length, price in value)
    if kind == "price_by_mass":
        return f"{value:.2f}/kg"
    if kind == "fuel_price" and value[1] == "kg":
        return f"{value[0]:.2f}/kg"
    if kind == "fuel_price" and value[1] == "J":
        return f"{value[0] * 3.6e6:.3g}/kWh"
    if kind == "lining":
        return ", ".join(f"{material} {1000 * thickness:.12g} mm" for material, thickness in value)
    return None


# Of each kind a text that is always read, for the reader of inches and of millimetres.
EXAMPLES = {
    "lengths": ("4 ft, 8 ft, 20 ft", "1 m, 3 m, 6 m"),
    "offers": ("3 in 6.00, 6 in 9.00", "80 mm 6.00, 150 mm 9.00"),
    "price_by_mass": ("2.00/lb", "4.50/kg"),
    "fuel_price": ("0.90/lb", "2.00/kg"),
    "date": ("2026-03-02",) * 2,
    "days": ("2026-12-24 to 2027-01-02, 2027-05-01",) * 2,
    "lining": ("dense_castable 1 in, blanket_8lb 2 in", "dense_castable 25 mm, blanket_8lb 50 mm"),
    "fuel_blend": ("C3H8 0.93, C2H6 0.05, C4H10 0.02",) * 2,
    "blower_curve": ("0 cfm 8 inH2O, 100 cfm 5 inH2O", "0 m3/h 20 mbar, 170 m3/h 12 mbar"),
    "drill": ("#54", "1.5 mm"),
}


def example(kind, system):
    return EXAMPLES[kind][system == "mm"]
