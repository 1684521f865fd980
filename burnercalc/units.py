"""The border: what a person types becomes SI here, and SI becomes what a person reads. The only module that knows pint.

pint reads the project's own short definitions (data/units.txt); formulas see SI floats only.
"""

import re
from fractions import Fraction
from functools import cache, lru_cache
from importlib import resources
from math import floor, isfinite, log10
from typing import Any, Self

import pint

from .errors import InputError, printable, require

# dimension: SI unit, unit shown in inch mode, unit shown in mm mode. The first is the unit of every number in JSON.
DIMENSIONS = {
    "length": ("m", "in", "mm"),
    "long_length": ("m", "ft", "m"),
    "paper_length": ("m", "mm", "mm"),
    "drill_length": ("m", "in", "mm"),  # too fine for a tape: decimals of an inch
    "bore": ("m", "in", "mm"),  # of what is drilled: decimals where no mark of a tape is that size
    "area": ("m2", "in2", "cm2"),
    "volume": ("m3", "in3", "L"),
    "gas_volume": ("m3", "ft3", "m3"),  # as it would fill a meter
    "mass": ("kg", "lb", "kg"),
    "mass_flow": ("kg/s", "lb/h", "kg/h"),
    "time": ("s", "h", "h"),
    "speed": ("m/s", "ft/s", "m/s"),
    "air_flow": ("m3/s", "cfm", "m3/h"),
    "gas_flow": ("m3/s", "cfh", "m3/h"),
    "power": ("W", "kBtu/h", "kW"),
    "power_per_area": ("W/m2", "kBtu/h/in2", "W/mm2"),
    "heat_flux": ("W/m2", "Btu/h/ft2", "W/m2"),
    "power_per_volume": ("W/m3", "Btu/h/in3", "kW/L"),
    "energy": ("J", "kBtu", "MJ"),
    "energy_per_volume": ("J/m3", "Btu/ft3", "MJ/m3"),
    "energy_per_mass": ("J/kg", "Btu/lb", "MJ/kg"),
    "temperature": ("K", "degF", "degC"),
    "rough_temperature": ("K", "degF", "degC"),  # common practice or a guess: 300 degF is no 149 degC
    "pressure": ("Pa", "inH2O", "mbar"),
    "gas_pressure": ("Pa", "psi", "bar"),
    "line_pressure": ("Pa", "inH2O", "mbar"),  # of gas on a house line, told to the half mark that its gauge shows
    "density": ("kg/m3", "lb/ft3", "kg/m3"),
    "rate": ("1/s", "1/s", "1/s"),
    "angle": ("deg", "deg", "deg"),
    "ratio": ("1", "", ""),
    "times": ("1", "", ""),  # how many times one thing is another; far beyond what matters it has no figure
    "mixture": ("1", "", ""),  # lean below 1, rich above
    "fraction": ("1", "%", "%"),
    "gas_share": ("1", "%", "%"),  # of a mixture by volume; traces are said in ppm
    "count": ("1", "", ""),
    "money": ("1", "", ""),
    "price": ("1", "", ""),  # on a list, in hundredths, so that the lines add up
    "word": ("", "", ""),
    "sold_length": ("m", "in", "mm"),  # as the shop sells it
    "sold_mass": ("kg", "lb", "kg"),
    "division": ("kg", "lb", "kg"),  # of a scale, which counts in the unit that it carries
}

SOLD = {"sold_length": "length", "sold_mass": "mass"}  # of what is bought, named as the shop does
MODES = {"in": ("in", "mm"), "mm": ("mm",)}  # in which a refusal says what it wants, by the reader's measures

# What is typed is read by the patterns and names below alone; no text of anybody's reaches an evaluator.
LONGEST_TEXT = 200  # characters of a quantity
NEEDS_UNIT = "needs a unit"
MOST_FACTORS = 4  # of a unit: kBtu/h/in2 has three

_NUMBER = r"[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?"
_MIXED = re.compile(r"([+-]?[0-9]+)(?: +|-)([0-9]+) ?/ ?([0-9]+)(.*)")
_FRACTION = re.compile(r"([+-]?[0-9]+) ?/ ?([0-9]+)(.*)")
_DECIMAL = re.compile(rf"({_NUMBER})(.*)")
_FEET_INCHES = re.compile(
    r"([0-9]+) ?(?:'|ft|feet) ?((?:0|[1-9][0-9]?)(?:\.[0-9]+|(?: |-)[0-9]+ ?/ ?[0-9]+)?|[0-9]+ ?/ ?[0-9]+)"
    r" ?(?:\"|in|inch|inches)?"
)
_VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3"}
_TYPOGRAPHY = str.maketrans(
    {
        **dict.fromkeys("\N{PRIME}\N{LEFT SINGLE QUOTATION MARK}\N{RIGHT SINGLE QUOTATION MARK}", "'"),
        **dict.fromkeys("\N{DOUBLE PRIME}\N{LEFT DOUBLE QUOTATION MARK}\N{RIGHT DOUBLE QUOTATION MARK}", '"'),
        **dict.fromkeys("\N{MINUS SIGN}\N{HYPHEN}\N{NON-BREAKING HYPHEN}\N{EN DASH}", "-"),
        **dict.fromkeys("\N{FRACTION SLASH}\N{DIVISION SLASH}", "/"),
        **dict.fromkeys("\N{MULTIPLICATION SIGN}\N{MIDDLE DOT}\N{DOT OPERATOR}", "*"),
        **dict.fromkeys("\N{DEGREE SIGN}\N{MASCULINE ORDINAL INDICATOR}", "deg"),
        "\N{DEGREE CELSIUS}": "degC",
        "\N{DEGREE FAHRENHEIT}": "degF",
        "\N{SUPERSCRIPT TWO}": "^2",
        "\N{SUPERSCRIPT THREE}": "^3",
    }
)
_SPELLINGS = {
    '"': "in",
    "inches": "in",
    "in.": "in",
    "'": "ft",
    "feet": "ft",
    "ft.": "ft",
    "F": "degF",
    "C": "degC",
    "degF": "degF",
    "degC": "degC",
    "deg": "deg",
    "inH2O": "inH2O",
    "mmH2O": "mmH2O",
    "inwc": "inH2O",
    "inWC": "inH2O",
    "inw.c.": "inH2O",
    "inW.C.": "inH2O",
    '"wc': "inH2O",
    '"WC': "inH2O",
    '"w.c.': "inH2O",
    '"H2O': "inH2O",
    "lbs": "lb",
    "lb.": "lb",
    "hrs": "h",
    "mins": "min",
    "degree": "deg",
    "degrees": "deg",
    "kBtuh": "kBtu/h",
    "Btuh": "Btu/h",
    "sqin": "in2",
    "sqft": "ft2",
    "cuin": "in3",
    "cuft": "ft3",
}
# Units that the prefixes of units.txt may stand before.
_PREFIXED = (
    *("meter", "m", "second", "s", "gram", "g", "mole", "mol", "liter", "l", "L", "newton", "N", "pascal", "Pa"),
    *("bar", "joule", "J", "watt", "W", "watt_hour", "Wh", "british_thermal_unit", "Btu", "btu", "BTU"),
)


@cache
def _definitions() -> str:
    return resources.files(__package__).joinpath("data", "units.txt").read_text(encoding="utf-8")


@cache
def _names() -> frozenset[str]:
    """Every name of a unit that is read: those that units.txt defines, their plurals, and metric ones with a prefix."""
    names, prefixes = set(), set()
    for line in _definitions().splitlines():
        if " = " not in line or line.startswith(("#", " ")):
            continue
        words = [word.strip() for word in line.split(" = ")]
        if words[0].endswith("-"):
            prefixes |= {words[0][:-1], *(word[:-1] for word in words[2:])}
        else:
            names |= {words[0], words[0] + "s", *words[2:]}
    metric = {*_PREFIXED, *(unit + "s" for unit in _PREFIXED if len(unit) > 3)}
    return frozenset(names | {prefix + unit for prefix in prefixes for unit in metric})


@cache
def _registry() -> pint.UnitRegistry[Any]:
    registry: pint.UnitRegistry[Any] = pint.UnitRegistry(None)
    registry.load_definitions(_definitions().splitlines())
    registry._build_cache()
    return registry


def known_unit(text: str) -> str | None:
    """A typed unit as it is written here, `lbs / hour` as `lb/hour`; None unless it is made of known names.

    unit = factor, then up to three times / or * and a factor;  factor = name, then 2 or 3, also as ^2 and **2
    """
    compact = text.replace(" ", "")
    if compact in _SPELLINGS:
        return _SPELLINGS[compact]
    parts = re.split(r" ?([*/]) ?", text.replace("**", "^"), maxsplit=MOST_FACTORS)
    factors = [factor for part in parts[::2] if (factor := _factor(part))]
    if not len(parts[::2]) == len(factors) <= MOST_FACTORS:
        return None
    return "".join(sign + factor for sign, factor in zip(["", *parts[1::2]], factors))


def _factor(text: str) -> str | None:
    if text in _names():
        return text
    name, power = (text[:-1].removesuffix("^"), text[-1]) if text[-1:] in ("2", "3") else (text, "")
    name = _SPELLINGS.get(name, name)
    return name + power if name in _names() else None


def _pint_name(unit: str) -> str:
    """`W/m2` as `W/m**2`, `kBtu/h/in2` as `kBtu/h/in**2`; H2O in a unit name is left alone."""
    return re.sub(r"(?<=[a-zA-Z])([23])(?![a-zA-Z0-9])", r"**\1", unit)


@lru_cache(maxsize=1024)
def conversion(unit: str, si_unit: str) -> tuple[float, float]:
    """(scale, offset) with si = scale * value + offset; InputError when the two are not the same kind of quantity."""
    if unit == si_unit or si_unit in ("", "deg"):
        if unit != si_unit and known_unit(unit) != "deg":
            raise InputError("unit", unit, f"is not a unit of {si_unit or 'a plain number'}")
        return 1.0, 0.0
    if si_unit == "1":
        if unit in ("%", ""):
            return (0.01, 0.0) if unit == "%" else (1.0, 0.0)
        raise InputError("unit", unit, "is not a unit of a plain number")
    known = known_unit(unit)
    if known is None:
        raise InputError("unit", unit, f"is not a unit that converts to {si_unit}")
    try:
        offset = _registry().Quantity(0.0, _pint_name(known)).to(_pint_name(si_unit)).magnitude
        scale = _registry().Quantity(1.0, _pint_name(known)).to(_pint_name(si_unit)).magnitude - offset
    except pint.PintError:
        raise InputError("unit", known, f"is not a unit that converts to {si_unit}") from None
    if known in ("degF", "degC"):
        scale = 5 / 9 if known == "degF" else 1.0
    return float(scale), float(offset)


def to_si(value: float, unit: str, si_unit: str) -> float:
    """`value` in `unit` as a float in `si_unit`."""
    scale, offset = conversion(unit, si_unit)
    return scale * value + offset


def from_si(value: float, unit: str, si_unit: str) -> float:
    """A float in `si_unit` as a number in `unit`."""
    scale, offset = conversion(unit, si_unit)
    return (value - offset) / scale


class Reader(str):
    """Whom numbers are shown to: measures `in` or `mm`, the sign of the money, and by which of both measures their shop
    sells."""

    sign: str
    shop: str

    def __new__(cls, system: str, sign: str = "", shop: str = "") -> Self:
        made = super().__new__(cls, system)
        made.sign, made.shop = sign, shop or system
        return made


def sign_of(reader: str) -> str:
    """The sign that money is shown with; "" of a plain `in` or `mm`."""
    return getattr(reader, "sign", "")


def shop_of(reader: str) -> str:
    """By which measures the reader's shop sells: of a plain `in` or `mm` the same."""
    return getattr(reader, "shop", str(reader))


def seller_of(reader: str, *sizes: tuple[float, str]) -> str:
    """In which measures something is named that is sold: the shop's, where all its sizes (value, dimension) are read
    off in them with nothing left over, else the reader's."""
    shop = shop_of(reader)
    return shop if shop == reader or all(_reads_in(shop, *size) for size in sizes) else reader


def _reads_in(system: str, value: float, dimension: str) -> bool:
    number = from_si(value, shown_unit(dimension, system), si_unit_of(dimension))
    if dimension in TAPED and system == "in":
        return is_on_tape(number)
    read = round(number, 1) if dimension in TAPED else float(significant(number))
    return abs(read - number) <= 1e-6 * abs(number)


SIGNS_BEFORE = ("$", "€", "£", "¥")  # which stand before the figure


def priced(figure: str, system: str) -> str:
    """A figure of money with the reader's sign: `12.00` -> `$12.00` or `12.00 kr`."""
    sign = sign_of(system)
    if sign in SIGNS_BEFORE:
        return f"-{sign}{figure[1:]}" if figure.startswith("-") else f"{sign}{figure}"
    return f"{figure} {sign}".strip()


def whose(dimension: str, reader: str) -> str:
    """What a label says of bare figures of money: whose they are, where the reader has set no sign."""
    return ", in your money" if dimension in ("money", "price") and not sign_of(reader) else ""


def si_unit_of(dimension: str) -> str:
    return DIMENSIONS[dimension][0]


def shown_unit(dimension: str, units: str) -> str:
    """The unit a number of this dimension is shown in; `units` is `in` or `mm`."""
    return DIMENSIONS[dimension][1 if units == "in" else 2]


def plain(text: str, field: str, most: int = LONGEST_TEXT) -> str:
    """A text in ASCII, single spaces in it: the trade's typographic signs as they are typed on a keyboard.

    Raises InputError when it is longer than `most` or holds any other sign.
    """
    require(len(text) <= most, field, text, f"must be at most {most} characters long")
    text = _keyboard(text)
    strange = next((sign for sign in text if not " " <= sign <= "~"), None)
    require(
        strange is None,
        field,
        text,
        f"must not hold the sign {printable(strange or '')}",
        "".join(filter(_typed, text)),
    )
    return text


def _keyboard(text: str) -> str:
    text = " ".join(text.split())
    if text.isascii():
        return text.replace("''", '"')
    text = text.translate(_TYPOGRAPHY).replace("H₂O", "H2O").replace("''", '"')
    signs = "".join(_VULGAR)  # a digit beside one of these stays a number of its own
    text = re.sub(f"([0-9{signs}])(?=[{signs}])|([{signs}])(?=[0-9])", r"\1\2 ", text)
    for sign, fraction in _VULGAR.items():
        text = text.replace(sign, fraction)
    return text


def split_number(text: str) -> tuple[float, str] | None:
    """The number at the start of a text, and what follows it: `6 1/2 in` -> (6.5, "in").

    Reads decimals, fractions `5/16`, mixed numbers `6 1/2` and `6-1/2`, the signs for halves, quarters and eighths.
    Returns None when the text does not start with a number.
    """
    text = _keyboard(text)
    value: float | Fraction
    if match := _MIXED.fullmatch(text):
        whole, top, bottom, rest = match.groups()
        if not int(top) < int(bottom):
            return None
        part = Fraction(int(top), int(bottom))
        value = int(whole) - part if whole.startswith("-") else int(whole) + part
    elif match := _FRACTION.fullmatch(text):
        top, bottom, rest = match.groups()
        if int(bottom) == 0:
            return None
        value = Fraction(int(top), int(bottom))
    elif match := _DECIMAL.fullmatch(text):
        number, rest = match.groups()
        value = float(number)
    else:
        return None
    return float(value), rest.strip()


_WATER = re.compile(
    r'\s*(?:"|(?<![A-Za-z])in(?:ch(?:es)?)?\.?)\s*(?:of )?(?:w\.?\s?[cg]\.?|water)(?![A-Za-z0-9])', re.I
)
_PASCAL = re.compile("(?<![A-Za-z])pa(?![A-Za-z0-9])", re.I)


def as_on_a_plate(text: str) -> str:
    """Pressures as plates of blowers have them, read as one unit each: `3" WC`, `3 in. w.g.`, `500 pa`."""
    return _PASCAL.sub("Pa", _WATER.sub(" inH2O", text))


_COMMA = re.compile(r"[^.,]*\d,\d[^.,]*")
_THOUSANDS = re.compile(r"(?<!\d)[1-9]\d{0,2},\d{3}(?!\d)")


def dotted(text: str) -> str:
    """`1,05 in` as 1.05 in, where the comma cannot part thousands; the page does the same with its fields."""
    alone = _COMMA.fullmatch(text) and not _THOUSANDS.search(text)
    return text.replace(",", ".") if alone else text


def parse_quantity(text: str, dimension: str, field: str, bare_units: str | None = None, system: str = "in") -> float:
    """A typed quantity as an SI float.

    Arguments:
        text         `8in`, `6 1/2 in`, `165 mm`, `5/16"`, `2 ft 3 in`, `100 kBtu/h`, `70 degF`
        dimension    a key of DIMENSIONS
        field        key of the setting, for the refusal
        bare_units   None: a number without a unit is refused; `in` or `mm`: it takes the unit shown in that mode
        system       the reader's measures: a refusal names metric units only to the reader of millimetres, both else
    Raises:
        InputError   not a number, no unit, a unit of another kind, or a text that could mean two things
    """
    try:
        return _quantity(plain(text, field), dimension, field, bare_units, system)
    except InputError as refused:
        nearest = [other for other in refused.nearest.split(" or ") if _reads(other, dimension)]
        raise InputError(field, text, refused.rule, " or ".join(nearest or _meant(text, dimension, system))) from None


def _quantity(text: str, dimension: str, field: str, bare_units: str | None, system: str = "in") -> float:
    si_unit = si_unit_of(dimension)
    examples = " or ".join(dict.fromkeys(_example(dimension, mode) for mode in MODES[system]))
    if dimension in ("length", "long_length") and (match := _FEET_INCHES.fullmatch(text)):
        feet, inches = match.groups()
        found = split_number(inches)
        if not (found and found[0] < 12):
            raise InputError(field, text, "must have less than 12 inches beside its feet")
        return to_si(float(feet), "ft", "m") + to_si(found[0], "in", "m")
    found = split_number(text)
    if found is None or not isfinite(found[0]):
        if si_unit == "1":
            raise InputError(field, text, f"must be a number, such as {_example(dimension, 'in')}")
        such_as = f"such as {_example(dimension, bare_units)}" if bare_units else f"with a unit, such as {examples}"
        raise InputError(field, text, f"must be a number{',' if bare_units else ''} {such_as}")
    value, unit = found[0], as_on_a_plate(found[1]).strip()
    require(not re.match(",[0-9]", unit), field, text, "must have no sign between its thousands and no comma")
    if unit == "" and dimension == "fraction":
        if bare_units is None:  # 0.2 may be meant as 20 % or as 0.2 %
            share = f"{100 * value:.12g} % or " if value <= 1 else ""
            raise InputError(field, text, "needs a % sign", f"{share}{text} %")
        unit = "%"
    elif unit == "" and si_unit != "1":
        if bare_units is None:
            shown = " or ".join(dict.fromkeys(f"{text} {shown_unit(dimension, mode)}" for mode in MODES[system]))
            raise InputError(field, text, NEEDS_UNIT, shown)
        unit = shown_unit(dimension, bare_units)
    try:
        require(unit != "1" and (unit == "" or dimension not in ("count", "money", "price")), field, text, "")
        value = to_si(value, unit, si_unit)
    except InputError:
        first, _, over = unit.partition(" ")
        if over and _reads(f"1 {first.rstrip(',;')}", dimension):
            end = "end with its unit" if si_unit != "1" else "be a number alone"
            raise InputError(field, text, f"must {end}: {over} is too much") from None
        raise InputError(
            field,
            text,
            f"needs a unit of {'length' if 'length' in dimension else dimension.replace('_', ' ')}, such as {examples}"
            if si_unit != "1"
            else "must be a plain number",
        ) from None
    require(isfinite(value), field, text, "must be a finite number")
    return value


def _reads(text: str, dimension: str) -> bool:
    try:
        return bool(text) and _quantity(text, dimension, "", None) is not None
    except InputError:
        return False


def _meant(text: str, dimension: str, system: str) -> list[str]:
    """What an unreadable text may have been meant as, the first guess of which something can be read."""
    if len(text) > LONGEST_TEXT:
        return []
    text = "".join(filter(_typed, _keyboard(text)))
    whole = re.sub(r"(?<=[0-9])[', _](?=[0-9]{3}(?![0-9]))", "", text)  # 1'000 m
    point = whole.replace(",", ".")
    feet = re.sub(r"^([0-9]+) ?(?:'|ft|feet) ?- ?", r"\1 ft ", text)  # 4'-8"
    guesses = [[feet, whole, text.replace(",", ".")], [point.strip("([{=.,;:!?)]} ")]]
    if found := split_number(point):
        number = point.removesuffix(found[1]).strip().rstrip(".")  # 4, and more
        letters = re.sub(r"[^a-z0-9/]", "", found[1].lower())
        guesses.append([f"{number} {unit}" for unit in sorted(_names()) if unit.lower() == letters])  # 25 kw
        guesses.append([f"{number} {found[1].split(' ')[0].rstrip('.')}"])
        guesses.append([f"{number} {shown_unit(dimension, mode)}".strip() for mode in MODES[system]])
    for guess in guesses:
        if works := [text for text in dict.fromkeys(guess) if _reads(text, dimension)]:
            return works
    return []


def _typed(sign: str) -> bool:
    return " " <= sign <= "~"


EXAMPLE_NUMBERS = {
    "length": {"in": "3", "mm": "75"},
    "temperature": {"in": "70", "mm": "20"},
    "count": {"in": "14", "mm": "14"},
}


@cache
def _example(dimension: str, mode: str) -> str:
    unit = shown_unit(dimension, mode)
    number = EXAMPLE_NUMBERS.get(dimension, {})
    return f"{number.get(mode, '1')} {unit}".strip()


def tape(inches: float, denominator: int = 64) -> str:
    """Inches as a tape measure is read, to the nearest 1/denominator: 2.375 -> `2 3/8`, 0.3125 -> `5/16`."""
    parts = round(abs(inches) * denominator)
    whole, rest = divmod(parts, denominator)
    sign = "-" if inches < 0 and parts else ""
    if rest == 0:
        return f"{sign}{whole}"
    part = Fraction(rest, denominator)
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"


def tapped(pressure_Pa: float, system: str, digits: int, finer: int = 0) -> str:
    """A pressure as a tap shows it, below none as suction: `0.05 in H₂O of suction`."""
    text = show(abs(pressure_Pa), "pressure", system, digits, finer=finer)
    return f"{text} of suction" if pressure_Pa < 0 else text


def is_on_tape(inches: float, denominator: int = 64) -> bool:
    """True when the length stands on a mark of the tape (to a millionth of an inch)."""
    return abs(inches * denominator - round(inches * denominator)) < 1e-6 * denominator


def significant(value: float, digits: int = 3) -> str:
    """A number with so many significant digits, never in powers of ten: 12345.6 -> `12300`, 0.012345 -> `0.0123`."""
    if value == 0 or not isfinite(value):
        return "0" if value == 0 else str(value)
    rounded = round(value, digits - 1 - floor(log10(abs(value))))
    return f"{rounded:.{max(digits - 1 - floor(log10(abs(rounded))), 0)}f}"


LEAST_BAR_PA = 1e5  # less is read in mbar, as air and mixture beside it are
LEAST_MASS_KG = 0.1  # less is said in grams or ounces


FIGURES = 3  # significant ones that a number is told with
# Of these two are known, or read on what measures them; none is told coarser than so much of its unit: an inch of
# water to a tenth, a share to a whole percent, a mixture to a hundredth.
ROUGHLY = {"pressure": 0.1, "fraction": 1.0, "ratio": 1.0, "times": 1.0, "mixture": 0.01}
MOST_TIMES = 10.0  # beyond it no figure is told, only that it is more: nothing hangs on it; common practice

TAPED = ("length", "bore")  # read on a tape
ROUGH = (10, 5, 1)  # degrees that a rough temperature is rounded to; finer below 100, or where two would read alike


def show(
    value: float | str | None, dimension: str, units: str, digits: int = 0, exact: bool = False, finer: int = 0
) -> str:
    """An SI number as a person reads it, with its unit: 0.0079375 m -> `5/16 in`, 29307 W -> `100 kBtu/h`.

    Lengths in inches are given as tape fractions of 1/64 when exact, or to 1/32 otherwise (1/64 below 1/8 in); times
    under a minute in seconds, under an hour in minutes, from three days on in days; traces of gas in ppm; gas below
    1 bar in mbar; masses below 0.1 kg in g or oz; money from 10 on whole. `digits`: significant ones, 0 as many as such
    a quantity has. `exact` keeps the unit, and what a tape cannot show as a decimal, so that the text can be read back
    without loss. `finer` gives so many digits more than usual; of inches first 1/64, then decimals.
    """
    if value is None:
        return "none"
    if isinstance(value, str):
        return value
    if dimension == "count":
        return f"{value:g}"
    if dimension == "times" and value > MOST_TIMES and not exact:
        return f"more than {MOST_TIMES:g}"
    if dimension in SOLD:
        dimension = SOLD[dimension]
        units = seller_of(units, (value, dimension))
    unit = shown_unit(dimension, units)
    known = digits or FIGURES
    if dimension == "gas_share" and 0 < value < 5e-3 and not exact:
        return f"{significant(1e6 * value, known + finer)} ppm"
    if dimension == "time" and not exact:
        unit = "s" if 0 < value < 60 else "min" if value < 3600 else unit if value < 3 * 86400 else "day"
    if unit == "bar" and 0 < abs(value) < LEAST_BAR_PA and not exact:
        unit = "mbar"
    if dimension == "mass" and 0 < value < LEAST_MASS_KG and not exact:
        unit = {"kg": "g", "lb": "oz"}[unit]
    number = from_si(value, unit, si_unit_of(dimension))
    if dimension in TAPED and unit == "in":
        if is_on_tape(number):
            text = tape(number)
        else:
            text = repr(round(number, 9)) if exact else _off_tape(number, finer if dimension == "length" else finer + 2)
    elif exact:
        text = f"{number:.12g}"
    elif dimension in TAPED:
        text = f"{number:.{(2 if abs(number) < 10 else 1) + finer}f}"
        text = text.rstrip("0").rstrip(".")
    elif dimension == "temperature":
        text = significant(number, known + finer) if abs(number) >= 1000 else f"{number:.{finer}f}"
    elif dimension == "rough_temperature":
        step = ROUGH[min(finer + (abs(number) < 100), 2)]
        text = f"{step * round(number / step)}"
    elif dimension in ("price", "money"):
        figure = f"{number:.{finer}f}" if dimension == "money" and abs(number) >= 10 else f"{number:.{2 + finer}f}"
        text = priced(figure, units)
    else:
        digits = 2 if unit == "day" else digits
        text = significant(number, digits + finer) if digits else roughly(number, dimension, finer)
        if "." in text and abs(float(text) - number) <= 1e-9 * abs(number):  # 2.50 that is 2.5 and no more
            text = text.rstrip("0").rstrip(".")
    if exact:
        return f"{text} {unit}".strip()
    unit = "days" if unit == "day" and text != "1" else readable(unit)
    return f"{text}{unit}" if unit == "°" else f"{text} {unit}".strip()


def roughly(number: float, dimension: str, finer: int = 0) -> str:
    """A number with the digits that are known of such a quantity, and so many more."""
    step = ROUGHLY.get(dimension, 0) / 10**finer
    if not step or not isfinite(number) or abs(number) < 9.95 * step:
        return significant(number, (2 if step else FIGURES) + finer)
    return significant(step * round(number / step), min(floor(log10(round(abs(number) / step))) + 1, FIGURES + finer))


def _off_tape(inches: float, finer: int) -> str:
    if finer > 1:
        return f"{inches:.{finer + 1}f}"
    return tape(inches, 32 if abs(inches) >= 1 / 8 and not finer else 64)


def near_a_mark(length_m: float) -> str:
    """Inches that no mark of a tape tells from the next length: `just under 5/16 in`."""
    inches = from_si(length_m, "in", "m")
    text = f"{tape(inches)} in"
    if is_on_tape(inches):
        return text
    return f"just {'under' if inches < round(64 * inches) / 64 else 'over'} {text}"


def field_text(value: float, dimension: str, units: str) -> str:
    """An SI number as it stands in a field, without its unit: a tape reading, other measures rounded."""
    unit = shown_unit(dimension, units)
    number = from_si(value, unit, si_unit_of(dimension))
    if dimension == "length" and unit == "in" and (is_on_tape(number) or number >= 1 / 8):
        return tape(number)
    if dimension == "temperature":
        return f"{number:.0f}"
    if dimension != "time" and unit == shown_unit(dimension, "mm" if units == "in" else "in"):
        return f"{number:.10g}"
    text = (
        f"{number:.{2 if abs(number) < 10 else 1}f}" if (dimension, unit) == ("length", "mm") else significant(number)
    )
    return text.rstrip("0").rstrip(".") if "." in text else text


SHOPS = re.compile(r"\[\[([^|\[\]]*)\|([^|\[\]]*)\]\]")
MEASURES = re.compile(r"\[([^|\[\]]*)\|([^|\[\]]*)\]")


def in_measures(text: str, units: str) -> str:
    """Of `[250 °F|140 °C]` in a text the reader of inches gets the first, of millimetres the second; of
    `[[1/4 in NPT|R 1/4]]` whose shop sells by inches, or by millimetres."""
    return _in_measures(text, str(units), shop_of(units)) if "|" in text else text


@lru_cache(maxsize=4096)
def _in_measures(text: str, units: str, shop: str) -> str:
    text = SHOPS.sub(r"\1" if shop == "in" else r"\2", text)
    return MEASURES.sub(r"\1" if units == "in" else r"\2", text)


def in_both_measures(text: str) -> str:
    """A text for readers of either: `[250 °F|140 °C]` as `250 °F (140 °C)`."""
    return MEASURES.sub(r"\1 (\2)", SHOPS.sub(r"\1 (\2)", text))


@cache
def readable(unit: str) -> str:
    """A unit as printed: `in2` -> `in²`, `degF` -> `°F`."""
    return _pint_name(unit).replace("**2", "²").replace("**3", "³").replace("deg", "°").replace("inH2O", "in H₂O")


@cache
def _printed() -> re.Pattern[str]:
    shown = {unit for units in DIMENSIONS.values() for unit in units if readable(unit) != unit}
    longest_first = "|".join(map(re.escape, sorted(shown, key=len, reverse=True)))
    return re.compile(rf"(?: deg|(?<![\w/])(?:{longest_first}))(?![\w/])")


def printed(text: str) -> str:
    """A text with the units in it as they are printed: `32 degF to 8 in2` as `32 °F to 8 in²`."""
    return _printed().sub(lambda unit: readable(unit[0].strip()), text)
