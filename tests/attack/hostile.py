"""Texts from a grammar: good ones, spoiled ones, and what somebody types who means harm. Everything from one Random."""

from functools import cache

from burnercalc.design import limits
from burnercalc.grammars import EXAMPLES
from burnercalc.physics.fuels import BLEND_SPECIES
from burnercalc.physics.linings import material_keys
from burnercalc.units import DIMENSIONS, from_si, show, shown_unit, si_unit_of

ODD_NUMBERS = (
    *(
        "1'000",
        "1,000",
        "1 000",
        "1_000",
        "1,05",
        "1.000,5",
        "--9",
        "+-9",
        "9 +- 1",
        "9 1",
        "1 1/2 0",
        "9 -1/2",
        "9 - 1/2",
    ),
    *(
        "1/0",
        "5 1/0",
        "0/0",
        "1/2/3",
        "6 3/2",
        "1e309",
        "-1e309",
        "1e-400",
        "9e9e9",
        "9**9**9",
        "0x1F",
        "1e",
        ".",
        "-",
        "",
    ),
    *(
        "nan",
        "inf",
        "-inf",
        "NaN",
        "Infinity",
        "٩",
        "９",
        "½2",
        "½½",
        "6½",
        "1½/2",
        "1/½",
        "4 ft 8",
        "4'8",
        "1'00",
        "(9)",
    ),
    *("9" * 150, "9" * 5000, "0." + "0" * 150 + "1", "1/" + "9" * 90, "9e99", "1 2 3", "3-1/2-1/2", "9e+", "I", "one"),
)
ODD_UNITS = (
    *("in*9**9**9", "in**9**9**9", "in/0", "in*0", "in/1e-400", "in in", "in+in", "in-in", "in^in", "in**-1", "in2.5"),
    *(
        "(in)",
        "((in))",
        "[in]",
        "{in}",
        "in)",
        "(" * 100 + "in",
        "in" * 60,
        "/in",
        "in/",
        "*",
        "//",
        "in//h",
        "in%",
        "%%",
    ),
    *(
        "in!",
        "in?",
        "in;",
        "in\0",
        "in\u202e",
        "\u200bin",
        "in\u200d",
        "i\u00adn",
        "in😀",
        "ｉｎ",
        "іn",
        "IN",
        "In",
        "iN",
    ),
    *(
        "__import__('os')",
        "lambda: 0",
        "in if 1 else m",
        "in<b>",
        "'; drop",
        "${in}",
        "in&rows=9",
        "in#v=1",
        "in\\",
        "ft 8 ft",
    ),
    *(
        "1 in",
        "2 in",
        "9in",
        "x" * 200,
        "in/" * 50 + "in",
        "m**3/m**2",
        "furlong",
        "parsec",
        "K",
        "mol",
        "Gin",
        "kin",
        "radian",
    ),
    *(
        "degF/h",
        "degC*m",
        "deg",
        "°",
        "H₂O",
        "in H₂O",
        "in²",
        "m³/h",
        "kBtu per hour",
        "kbtu/h",
        "KW",
        "in_wc",
        "inh2o",
    ),
)
SPACES = (
    " ",
    "",
    " ",
    "\u00a0",
    "\u2009",
    "\u202f",
    "\t",
    "\n",
    "  ",
    "-",
    "\0",
    "\u202e",
    "\u200f",
    "*",
    "\ufeff",
    "\x1b[2J",
)
SIGNS = (
    *"0123456789.,-+/*^%'\"()[]{}<>&=;:#?!_ eEinmftbarF½¼″′×−°²\0\t\n",
    *(
        "\u202e",
        "\u200b",
        "\u00a0",
        "\ud800",
        "😀",
        "\U000e0001",
        "é",
        "٣",
        "in",
        " ",
        "ft",
        "**9",
        "/0",
        "' or 1",
        "%00",
    ),
)


@cache
def _units(dimension):
    return [unit for _, *shown in [DIMENSIONS[dimension]] for unit in shown]


def good_number(rng, dimension, value, system):
    """A value as people write it, exactly."""
    unit = shown_unit(dimension, system)
    number = from_si(value, unit, si_unit_of(dimension))
    space = rng.choice(("", " ", "\u00a0", "\u2009"))
    sign = "-" if number < 0 else ""
    whole, parts = divmod(round(abs(number) * 16), 16)
    style = rng.randrange(4)
    if style == 0 and parts and dimension != "count":
        text = f"{sign}{whole} {parts}/16" if whole else f"{sign}{parts}/16"
    elif style == 1:
        text = f"{number:.6g}"
    elif style == 2:
        text = f"{number:.3e}"
    else:
        return show(value, dimension, system, exact=True)
    return f"{text}{space}{unit}".strip()


def good(rng, setting):
    """A text that the setting's own reader takes; another rule may still refuse the design."""
    if setting.choices:
        return rng.choice([value for value, _ in setting.choices])
    if setting.words and rng.random() < 0.2:
        return rng.choice(setting.words)
    if setting.dimension in DIMENSIONS:
        low, high = limits(setting)
        share = rng.choice((rng.random(), rng.random() ** 4, 0.0, 1.0))
        value = low + share * (high - low)
        if setting.whole:
            return str(round(value))
        return good_number(rng, setting.dimension, value, rng.choice(("in", "mm")))
    return good_list(rng, setting)


def _date(rng):
    return f"{rng.randint(1970, 2100)}-{rng.randint(1, 12):02}-{rng.randint(1, 28):02}"


def good_list(rng, setting):
    kind = setting.dimension
    if kind == "lining":
        layers = [f"{rng.choice(material_keys())} {rng.uniform(0.05, 6):.3g} in" for _ in range(rng.randint(1, 6))]
        return ", ".join(layers)
    if kind == "fuel_blend":
        names = rng.sample(BLEND_SPECIES, rng.randint(1, 3))
        return ", ".join(f"{name} {1 / len(names):.4f}" for name in names)
    if kind == "lengths":
        return ", ".join(f"{rng.randint(1, 30)} ft" for _ in range(rng.randint(1, 12)))
    if kind == "offers":
        return ", ".join(f"{rng.randint(1, 60)} in {rng.uniform(1, 99):.2f}" for _ in range(rng.randint(1, 12)))
    if kind == "price_by_mass":
        return f"{rng.uniform(0, 20):.2f}/{rng.choice(('lb', 'kg'))}"
    if kind == "fuel_price":
        return f"{rng.uniform(0, 20):.2f}/{rng.choice(('lb', 'kg', 'therm', 'kWh', 'MJ', 'm3', 'ft3'))}"
    if kind == "blower_curve":
        flows = sorted(rng.sample(range(1, 400), rng.randint(1, 5)))
        pressures = sorted((rng.uniform(0, 20) for _ in [0, *flows]), reverse=True)
        if len(pressures) > 2 and rng.random() < 0.3:  # a hump between its ends, as some blowers have
            pressures[1] = 1.2 * pressures[0]
        return ", ".join(f"{flow} cfm {head:.2f} inH2O" for flow, head in zip([0, *flows], pressures, strict=True))
    if kind == "money_sign":
        return rng.choice(("$", "€", "£", "kr", "CHF", "zl"))
    if kind == "days":
        ends = sorted(_date(rng) for _ in range(2))
        return rng.choice((ends[0], f"{ends[0]} to {ends[0][:-2]}28", ", ".join(ends)))
    if kind == "date":
        return _date(rng)
    return rng.choice(("#54", "F", "1/16 in", "1.5 mm", "#60", "1/8 in", *EXAMPLES[kind]))


def spoiled(rng, text):
    """A text with one to four accidents."""
    for _ in range(rng.randint(1, 4)):
        at = rng.randint(0, len(text))
        kind = rng.randrange(6)
        if kind == 0:
            text = text[:at] + text[at + 1 :]
        elif kind == 1:
            text = text[:at] + rng.choice(SIGNS) + text[at:]
        elif kind == 2:
            text = text[:at] + rng.choice(SIGNS) + text[at + 1 :]
        elif kind == 3:
            text = text[:at] + text[max(0, at - 4) : at] + text[at:]
        elif kind == 4:
            text = text[at:] + text[:at]
        else:
            text = text + rng.choice((" ", ",", ", ", "")) + text
    return text


def hostile(rng, setting):
    """Any text at all for a setting, aimed at its kind."""
    kind = rng.randrange(10)
    if kind < 5:
        return spoiled(rng, good(rng, setting))
    if kind < 8:
        unit = rng.choice(ODD_UNITS)
        if setting.dimension in DIMENSIONS and rng.random() < 0.5:
            unit = rng.choice(_units(setting.dimension))
        start = rng.choice(ODD_NUMBERS) if rng.random() < 0.6 else str(rng.randint(0, 20))
        text = start + rng.choice(SPACES) + unit
        return text if setting.dimension in DIMENSIONS else f"{rng.choice(('', 'ifb_23 ', '#', '2/'))}{text}, {text}"
    if kind == 8:
        return "".join(rng.choice(SIGNS) for _ in range(rng.randint(0, 30)))
    return rng.choice(SIGNS) * rng.choice((100, 250, 1200, 20000))
