"""What the settings of chamber, lining, work and fire owe each other; read by rules.py, which says what a rule is."""

from functools import lru_cache
from math import ceil, floor

from .burner import Burner
from .errors import InputError, InputErrors
from .parts.chamber import walls
from .parts.firing import rate_W
from .parts.gas import gas
from .parts.reached import walls_K
from .physics.chamber_walls import upright_wall_m2
from .physics.metals import metal
from .physics.pipes import pipe, pipe_names
from .settings import BY_KEY
from .units import field_text, from_si, parse_quantity, show, shown_unit, si_unit_of, significant


def _opening_fits(v):
    box = v["chamber_shape"] == "box"
    sides = {f"{side}_m": v[f"chamber_{side}"] for side in ("length", "width", "height", "diameter")}
    wall = upright_wall_m2(box=box, **sides)
    if not v["opening_area"] <= wall:
        said, most = _told(v, "area", v["opening_area"], wall)
        return InputError(
            "opening_area",
            said,
            "must fit into the chamber's " + ("largest upright wall" if box else "end") + f" ({most})",
            _about(v, 0.99 * wall, "area"),
            (("chamber_length", "chamber_width", "chamber_height") if box else ("chamber_diameter",)),
        )


def _lining_fits(v):
    try:
        most = Burner(v.__getitem__).call(walls).thickest_m()
    except InputError:
        return None  # the opening's own rule speaks
    thickness = sum(thickness_m for _, thickness_m in v["lining"])
    if not thickness <= most:
        thin = ", ".join(
            f"{key} {_about(v, 0.9 * most / thickness * thickness_m, 'length')}" for key, thickness_m in v["lining"]
        )
        return InputError(
            "lining",
            _about(v, thickness, "length") + " in all",
            "must be thin enough for so small a chamber, or the "
            f"reckoning of its corners does not hold ({_about(v, most, 'length')} in all)",
            thin,
            ("chamber_length", "chamber_width", "chamber_height", "opening_area"),
        )


def _work_below_chamber(v):
    if not v["work_temperature"] <= v["chamber_temperature"]:
        said, most = _told(v, "temperature", v["work_temperature"], v["chamber_temperature"])
        return InputError(
            "work_temperature",
            said,
            f"must not be hotter than the chamber ({most})",
            _shown(v, v["chamber_temperature"], "temperature"),
            ("chamber_temperature",),
        )


def _metal_is_known_so_hot(v):
    found = metal(v["work_metal"])
    if not v["work_temperature"] <= found.temps_K[-1]:
        said, most = _told(v, "temperature", v["work_temperature"], found.temps_K[-1])
        return InputError(
            "work_temperature",
            said,
            f"must be within what is known of {found.name} ({most} or less)",
            _about(v, found.temps_K[-1] - 10, "temperature"),
            ("work_metal",),
        )


def _throat_is_wide(v):
    jet_m = v["aspirated_jet"]
    if not pipe(v["aspirated_throat"]).bore_m > 3 * jet_m:
        wide = next(name for name in pipe_names() if pipe(name).bore_m > 6 * jet_m)
        return InputError(
            "aspirated_throat",
            v["aspirated_throat"],
            f"must be a pipe wider than 3 jet diameters ({_length(v, 3 * jet_m)})",
            wide,
            ("aspirated_jet",),
        )


def _auto_rate_W(need, burner_count):
    return rate_W("auto", burner_count, need.needed_W)


def _auto_rate_is_possible(v):
    if v["firing_rate"] != "auto":
        return None
    each_W = _rate_W(tuple((key, v[key]) for key in (*_RATE, "fuel_blend")))
    if each_W is REFUSED:
        return None  # what is wrong with the chamber has a rule of its own
    low, high = BY_KEY["firing_rate"].low, BY_KEY["firing_rate"].high
    if each_W is None:
        return InputError(
            "firing_rate",
            "auto",
            f"needs a chamber that a fire can hold so hot: {_hottest(v)}",
            BY_KEY["firing_rate"].default_in(v.get("sizes") or "in"),
            ("chamber_temperature", "equivalence_ratio", "fuel"),
        )
    low_W, high_W = (parse_quantity(text, "power", "firing_rate") for text in (low, high))
    if low_W <= each_W <= high_W:
        return None
    taken = Burner(v.__getitem__).part("bars").taken_kg_s if each_W > high_W else None
    if taken and v["work_rate"] > taken.high:
        return InputError(
            "firing_rate",
            "auto",
            f"needs a smaller work rate: the bars on this floor take up heat for {_about(v, taken.low, 'mass_flow')} "
            f"to {_about(v, taken.high, 'mass_flow')} in any fire",
            BY_KEY["firing_rate"].default,
            ("work_rate",),
        )
    all_W = v["burner_count"] * each_W
    burners = ceil(all_W / high_W) if each_W > high_W else floor(all_W / low_W)
    most = int(BY_KEY["burner_count"].high)
    if 1 <= burners <= most:
        return InputError(
            "burner_count",
            v["burner_count"],
            f"must share what the chamber needs so that each burner has {low} to "
            f"{high} ({_about(v, all_W, 'power')} in all)",
            str(burners),
            ("firing_rate",),
        )
    return InputError(
        "firing_rate",
        "auto",
        f"needs a chamber that asks for {low} to {high} of each burner; this one asks for {_about(v, each_W, 'power')}",
        high if each_W > high_W else low,
        ("burner_count",),
    )


SURE_K = 5.0  # more than three digits are off by


def _hottest(v):
    """What the most fire that burns in so large a chamber brings it to."""
    hottest_K, most_W = _fired(tuple((key, v[key]) for key in (*_RATE, "fuel_blend")))
    if hottest_K is None:
        return "with this fuel and mixture no flame burns"
    return (
        f"{_about(v, most_W, 'power')}, the most for its size, brings it to about "
        f"{_about(v, hottest_K - SURE_K, 'temperature')}, a smaller opening or a thicker lining to more"
    )


@lru_cache(maxsize=16)
def _fired(values):
    return Burner(dict(values).__getitem__).call(_hottest_K)


def _hottest_K(zone):
    return (walls_K(zone, zone.most_W).value, zone.most_W) if zone.zones else (None, None)


_CHAMBER = ("chamber_shape", "chamber_length", "chamber_width", "chamber_height", "chamber_diameter")
_RATE = (
    *("firing_rate", "burner_count", "lining", "opening_area", "opening_depth", "chamber_temperature", "work_metal"),
    *("work_rate", "work_temperature", "heat_up_time", "fuel", "equivalence_ratio", "ambient_temperature", "altitude"),
    *_CHAMBER,
)
REFUSED = "refused"


@lru_cache(maxsize=64)
def _rate_W(values):
    """What the chamber asks of each burner; REFUSED when it cannot be worked out. Kept, as rules ask it often."""
    try:
        return Burner(dict(values).__getitem__).call(_auto_rate_W)
    except (InputError, InputErrors):
        return REFUSED


def _liquid_is_sold_in_cylinders(v):
    if v["fuel_price"][1] == "m3 liquid" and gas(v["fuel"], v["fuel_blend"]).metered:
        return InputError(
            "fuel_price",
            f"{v['fuel_price'][0] / 1000:.3g}/L",
            "must be by heat, by cubic feet or metres, or by weight: gas of a house line is never liquid",
            "1.50/therm",
            ("fuel", "fuel_blend"),
        )


# Each rule with the settings it needs.
HEAT_RULES = (
    (_liquid_is_sold_in_cylinders, ("fuel_price", "fuel")),
    (_opening_fits, ("opening_area", *_CHAMBER)),
    (_lining_fits, ("lining", "opening_area", *_CHAMBER)),
    (_work_below_chamber, ("work_temperature", "chamber_temperature")),
    (_metal_is_known_so_hot, ("work_temperature", "work_metal")),
    (_throat_is_wide, ("aspirated_throat", "aspirated_jet")),
    (_auto_rate_is_possible, (*_RATE, "bar_diameter")),
)


def _shown(v, value, dimension):
    return show(value, dimension, v.get("units") or "in", exact=True)


def _told(v, dimension, *values):
    """Values as their fields show them, with all digits where two would read alike."""
    system = v.get("units") or "in"
    texts = [f"{field_text(value, dimension, system)} {shown_unit(dimension, system)}" for value in values]
    return texts if len(set(texts)) == len(texts) else [_shown(v, value, dimension) for value in values]


def _about(v, value, dimension):
    """Rounded to three digits, and readable back."""
    unit = shown_unit(dimension, v.get("units") or "in")
    return f"{significant(from_si(value, unit, si_unit_of(dimension)))} {unit}"


def _length(v, length_m):
    return _shown(v, length_m, "length")
