"""What a typed text means, read a second time by other code: strict, and with factors of its own (NIST SP 811).

None where a text has no single meaning; what the package then accepts, it accepts in silence.
"""

import datetime
import re
from fractions import Fraction

from burnercalc.physics.drills import FAMILIES, drills

# name: (factor to SI, powers of metre, kilogram, second)
_M, _KG, _S, _AREA, _VOLUME = (1, 0, 0), (0, 1, 0), (0, 0, 1), (2, 0, 0), (3, 0, 0)
_PA, _J, _W = (-1, 1, -2), (2, 1, -2), (2, 1, -3)
_BTU, _PSI, _INH2O = 1055.05585262, 0.45359237 * 9.80665 / 0.0254**2, 249.08891
_PLAIN = {
    (0.0254, _M): "in inch inchs inches in.",
    (0.3048, _M): "ft foot foots feet ft.",
    (0.45359237, _KG): "lb lbs lb. pound pounds",
    (60, _S): "min minute minutes mins",
    (3600, _S): "h hr hrs hour hours",
    (86400, _S): "d day days",
    (3.785411784e-3, _VOLUME): "gal gallon gallons",
    (1e5 * _BTU, _J): "therm therms thm",
    (_PSI, _PA): "psi psis psig",
    (_INH2O, _PA): "inH2O in_wc inch_H2O_conventional inch_H2O_conventionals",
    (9.80665, _PA): "mmH2O millimeter_H2O_conventional millimeter_H2O_conventionals",
    (0.3048**3 / 60, (3, 0, -1)): "cfm cubic_feet_per_minute cubic_feet_per_minutes",
    (0.3048**3 / 3600, (3, 0, -1)): "cfh cubic_feet_per_hour cubic_feet_per_hours",
    (0.3048 / 60, (1, 0, -1)): "fpm feet_per_minute feet_per_minutes",
}
_METRIC = {
    (1, _M): "m meter meters",
    (1, _S): "s second seconds",
    (1e-3, _KG): "g gram grams",
    (1e-3, _VOLUME): "l L liter liters",
    (1, (1, 1, -2)): "N newton newtons",
    (1, _PA): "Pa pascal pascals",
    (1e5, _PA): "bar bars",
    (1, _J): "J joule joules",
    (1, _W): "W watt watts",
    (3600, _J): "Wh watt_hour watt_hours",
    (_BTU, _J): "Btu btu BTU british_thermal_unit british_thermal_units",
}
_PREFIXES = {"": 1, "m": 1e-3, "milli": 1e-3, "c": 1e-2, "centi": 1e-2, "k": 1e3, "kilo": 1e3, "M": 1e6, "mega": 1e6}
UNITS = {
    prefix + name: (factor * scale, powers)
    for (factor, powers), names in _METRIC.items()
    for name in names.split()
    for prefix, scale in _PREFIXES.items()
} | {name: found for found, names in _PLAIN.items() for name in names.split()}
_SHORT = dict.fromkeys(("inH2O", "inwc", "inWC", "inw.c.", "inW.C.", '"wc', '"WC', '"w.c.', '"H2O'), "inH2O") | {
    **dict(zip(('"', "'", "in.", "ft.", "lb."), ("in", "ft", "in", "ft", "lb"))),
    **dict(zip(("kBtuh", "Btuh", "mmH2O"), ("kBtu/h", "Btu/h", "mmH2O"))),
    **dict(zip(("sqin", "sqft", "cuin", "cuft"), ("in2", "ft2", "in3", "ft3"))),
}
_DIMENSIONS = {
    **dict.fromkeys(("length", "long_length", "paper_length", "drill_length"), _M),
    **dict.fromkeys(("pressure", "gas_pressure"), _PA),
    "area": _AREA,
    "mass": _KG,
    "mass_flow": (0, 1, -1),
    "time": _S,
    "air_flow": (3, 0, -1),
    "gas_flow": (3, 0, -1),
    "power": _W,
    "density": (-3, 1, 0),
}
_SIGNS = str.maketrans({"½": "\0 1/2", "¼": "\0 1/4", "¾": "\0 3/4", "⅛": "\0 1/8", "⅜": "\0 3/8", "⅝": "\0 5/8"})
_SIGNS |= str.maketrans({"⅞": "\0 7/8", "⅓": "\0 1/3", "⅔": "\0 2/3"})
_SIGNS |= str.maketrans("′‘’″“”−‐‑–⁄∕×·⋅", "'''\"\"\"----//***")
_SIGNS |= str.maketrans({"°": "deg", "º": "deg", "℃": "degC", "℉": "degF", "²": "^2", "³": "^3"})
_WHOLE, _PART = "[0-9]+", "([0-9]+) ?/ ?([0-9]+)"


def keyboard(text):
    """Typographic signs as typed on a keyboard; a fraction sign takes a space from the digit before it."""
    if "\0" in text:
        return "\0"
    text = " ".join(text.split()).translate(_SIGNS).replace("H₂O", "H2O").replace("''", '"')
    text = re.sub("(?<=[0-9])\0 ", " ", text).replace("\0 ", "")
    return re.sub("\0", "", text)


def number(text):
    """An exact Fraction, or None."""
    if found := re.fullmatch(rf"([+-]?)(?:({_WHOLE})[ -])?{_PART}", re.sub(" +", " ", text)):
        sign, whole, top, bottom = found.groups()
        if int(bottom) == 0 or (whole is not None and int(top) >= int(bottom)):
            return None
        size = int(whole or 0) + Fraction(int(top), int(bottom))
        return -size if sign == "-" else size
    if found := re.fullmatch(r"([+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+))(?:[eE]([+-]?[0-9]+))?", text):
        power = int(found[2] or 0) if Fraction(found[1]) else 0
        return Fraction(found[1]) * Fraction(10) ** power if abs(power) < 1000 else Fraction(0) if power < 0 else None
    return None


def unit(text):
    """(factor, powers) of a unit, or None."""
    compact = text.replace(" ", "")
    text = _SHORT.get(compact, text)
    if re.search(r"\d \d|[A-Za-z0-9.] [A-Za-z0-9.]", text):
        return None
    factor, powers, sign = 1.0, [0, 0, 0], 1
    parts = re.split("([*/])", text.replace(" ", "").replace("**", "^"))
    if len(parts) > 7:
        return None
    for part in parts:
        if part in ("*", "/"):
            sign = 1 if part == "*" else -1
            continue
        name, power = part, 1
        if part not in UNITS and re.search("[23]$", part):
            name, power = part[:-1].removesuffix("^"), int(part[-1])
        name = _SHORT.get(name, name)
        if name not in UNITS:
            return None
        size, own = UNITS[name]
        factor *= size ** (sign * power)
        powers = [total + sign * power * one for total, one in zip(powers, own)]
    return factor, tuple(powers)


def quantity(text, dimension):
    """The SI value of a quantity, or None."""
    text = keyboard(text)
    if len(text) > 300:
        return None
    if dimension in ("length", "long_length") and (
        found := re.fullmatch(r"([0-9]+) ?(?:'|ft|feet) ?([0-9].*?) ?(?:\"|in|inch|inches)?", text)
    ):
        inches = number(found[2])
        plain = re.fullmatch(rf"(0|[1-9][0-9]?)(\.[0-9]+|[ -]{_WHOLE} ?/ ?{_WHOLE})?|{_WHOLE} ?/ ?{_WHOLE}", found[2])
        return float(int(found[1]) * 12 + inches) * 0.0254 if plain and inches is not None and inches < 12 else None
    for at in range(len(text), 0, -1):
        value = number(text[:at].rstrip(" ")) if text[at - 1] != " " else None
        if value is not None:
            return _scaled(value, text[at:].strip(), dimension)
    return None


def _scaled(value, rest, dimension):
    if dimension in ("count", "money"):
        return float(value) if rest == "" else None
    if dimension in ("ratio", "fraction"):
        if rest == "%":
            return float(value / 100)
        return float(value) if rest == "" and dimension == "ratio" else None
    if dimension == "angle":
        return float(value) if rest.replace(" ", "") in ("deg", "degree", "degrees") else None
    if dimension == "temperature":
        scale = rest.replace(" ", "")
        if scale in ("degF", "F", "degree_Fahrenheit", "degree_Fahrenheits"):
            return float((value + Fraction("459.67")) * 5 / 9)
        if scale in ("degC", "C", "degree_Celsius", "degree_Celsiuss"):
            return float(value + Fraction("273.15"))
        return float(value) if scale in ("K", "kelvin", "kelvins") else None
    found = unit(rest)
    return float(value) * found[0] if found and found[1] == _DIMENSIONS[dimension] else None


def _entries(text):
    return [part for part in (part.strip() for part in keyboard(text).split(",")) if part]


def _in_a_pdf(text):
    """All its signs are among the 8-bit ones of Western alphabets."""
    return all(ord(sign) < 256 and sign.isprintable() for sign in text if sign not in "€ŠšŽžŒœŸƒ")


def value(setting, text):
    """What a setting of any kind means by a text, in the form that the package keeps it; None where nothing."""
    text, kind = text.strip(), setting.dimension
    if setting.choices:
        # A pipe of 4 in goes by 4" too, with any sign for inches, and by 4. as a number does.
        called = (
            {text, keyboard(text).removesuffix('"').rstrip().removesuffix(".")}
            if "DN" in setting.choices[-1][1]
            else {text}
        )
        return next((value for value, label in setting.choices if called & {value, label}), None)
    if text.lower() in setting.words:
        return text.lower()
    if kind == "money_sign":
        return text if re.fullmatch(r"(?!\.)(?:[^\W\d_]|[$€£¥¢.]){1,4}", text) and _in_a_pdf(text) else None
    if kind == "lengths":
        return _all(sorted({quantity(part, "length") or 0 for part in _entries(text)}))
    if kind == "offers":
        pairs = [part.rpartition(" ") for part in _entries(text)]
        return _all(sorted((quantity(length, "length") or 0, _price(price)) for length, _, price in pairs))
    if kind == "price_by_mass":
        price, _, mass = keyboard(text).partition("/")
        found = unit(mass.strip())
        return _price(price.strip()) / found[0] if found and found[1] == _KG else None
    if kind == "fuel_price":
        price, _, sold = keyboard(text).partition("/")
        found = unit(sold.strip())
        liquid = sold.strip() in ("gal", "gallon", "gallons", "L", "l", "liter", "liters")
        per = {_KG: "kg", _J: "J", (3, 0, 0): "m3 liquid" if liquid else "m3 gas"}
        return (_price(price.strip()) / found[0], per[found[1]]) if found and found[1] in per else None
    if kind == "days":
        ends = [part.partition(" to ") for part in _entries(keyboard(text))]
        dates = sorted(
            tuple(map(datetime.date.fromisoformat, (a.strip(), (b if to else a).strip()))) for a, to, b in ends
        )
        longest = sum((last - first).days + 1 for first, last in dates)
        return _all(dates) if longest <= 366 and all(first <= last for first, last in dates) else None
    if kind == "date":
        return datetime.date.fromisoformat(keyboard(text))
    if kind == "lining":
        pairs = [part.strip().partition(" ") for part in keyboard(text).split(",")]
        return _all([(name, quantity(thickness, "length") or 0) for name, _, thickness in pairs])
    if kind == "fuel_blend":
        pairs = [part.split() for part in keyboard(text).split(",")]
        total = sum(number(share) for _, share in pairs)
        return _all([(name, float(number(share) / total)) for name, share in pairs if number(share)])
    if kind == "blower_curve":
        points = [re.split(r" +(?=[-+.0-9])", point.strip()) for point in re.split("[,;]", keyboard(text))]
        curve = [(quantity(point[0], "air_flow"), quantity(point[1], "pressure")) for point in points if point != [""]]
        rises = len(curve) > 1 and (curve[-1][1] > curve[0][1] or max(one[1] for one in curve) > 1.5 * curve[0][1])
        return None if rises else _all(curve)
    if kind == "drill":
        named = {drill.name.lower().replace(" ", ""): drill.name for family in FAMILIES for drill in drills(family)}
        size = quantity(text, "length")
        known = {round(drill.diameter_m * 1e9) for family in ("fraction", "metric") for drill in drills(family)}
        short = keyboard(text).lower().replace(" ", "").replace('"', "in")
        if stamped := re.fullmatch(r"([0-9]+\.?[0-9]*|\.[0-9]+)mm", short):  # 1.0 mm, .55 mm
            short = f"{float(stamped[1]):g}mm"
        return named.get(short) if size is None or round(size * 1e9) in known else None
    return quantity(text, kind)


def _price(text):
    found = number(text)
    return -1.0 if found is None else float(found)


def _all(found):
    return tuple(found) if found else None


def alike(mine, theirs):
    """Equal, numbers to 1e-9."""
    if isinstance(theirs, (tuple, list)):
        return isinstance(mine, (tuple, list)) and len(mine) == len(theirs) and all(map(alike, mine, theirs))
    if isinstance(theirs, (int, float)) and isinstance(mine, (int, float)):
        return abs(mine - theirs) <= 1e-9 * abs(theirs) + 1e-15
    return mine == theirs
