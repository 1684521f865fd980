"""The jobs that somebody comes with: a name, a sentence and a design to start from, in each system of units."""

from dataclasses import dataclass, field
from functools import cache
from math import inf, pi

from .design import AS_READ, Design, read, read_each, supplied, units_of
from .examples import EXAMPLES
from .settings import BY_KEY, SETTINGS

# What the first screen asks for: a job stays the job in another chamber, and brings what another fuel takes.
ASKED = (
    "fuel",
    *(s.key for s in SETTINGS if s.near == "start"),
    *(CHAMBER := ("chamber_length", "chamber_width", "chamber_height", "chamber_diameter")),
)


@dataclass(frozen=True, eq=False)
class Rung:
    """What a job sets otherwise in a chamber from `least` to below `most` litres, so that it starts without a stop.

    `inches`, `metric`: the settings; `fuels`: for which, all where none is named.
    """

    inches: dict
    metric: dict
    least: float = 0.0
    most: float = inf
    fuels: tuple = ()

    def holds(self, fuel, litres):
        return self.least <= litres < self.most and (not self.fuels or fuel in self.fuels)


@dataclass(frozen=True, eq=False)
class Job:
    """What somebody wants to do.

    Attributes:
        opens      room that is gone to; "" stays where the answer is
        inches, metric   settings to start from; empty leaves the design as it is
        fuels      {fuel: (inches, metric)}: what is set otherwise for a fuel, so that the job starts without a stop
        rungs      what is set otherwise for sizes of the chamber
        asks       settings that are to be entered, in order, where it opens a room
    """

    key: str
    name: str
    sentence: str
    inches: dict = field(default_factory=dict)
    metric: dict = field(default_factory=dict)
    opens: str = ""
    asks: tuple = ()
    fuels: dict = field(default_factory=dict)
    rungs: tuple = ()

    def texts(self, sizes, fuel, litres=None):
        """Settings to start from: sizes of a shop in `in` or `mm`, a fuel, a chamber, its own where none."""
        own = self.metric if sizes == "mm" else self.inches
        if fuel != own.get("fuel", BY_KEY["fuel"].default):
            own = {**supplied(own, {**own, "fuel": fuel}), **self.fuels.get(fuel, ({}, {}))[sizes == "mm"]}
        for rung in self.rungs_at(fuel, litres):
            own = {**own, **(rung.metric if sizes == "mm" else rung.inches)}
        return own

    def rungs_at(self, fuel, litres):
        return tuple(rung for rung in self.rungs if litres is not None and rung.holds(fuel, litres))


# What somebody has or lives with, whatever the job: it stays, or one builds for a blower that one has not.
HAS = (
    *(BLOWER := ("blower_shutoff_pressure", "blower_free_flow", "blower_curve")),
    *("sizes", "ambient_temperature", "altitude", "cylinder", "cylinder_fill", "cylinder_left"),
    *("tank_diameter", "tank_length"),
    *("gas_from", "line_pressure", "meter_capacity", "other_appliances", "fuel_price", "start_date", "damp_air"),
    *(
        "watched_hours",
        "oven_places",
        "kiln",
        "hands",
        "day_hours",
        "work_week",
        "days_off",
        "hour_value",
        "overhead",
        "print_scale_x",
        "print_scale_y",
    ),
    *(s.key for s in SETTINGS if "price" in s.key or "money" in s.key or "stock" in s.key),
)

# An example is a burner as it was built; a job's fire and jet follow the chamber that somebody sets.
_FOLLOWS = {"firing_rate": "auto", "jet_drill": ""}


MUCH = 1.5  # times what the chamber needs from which a fire that somebody set is asked about; common practice


def fit(result, mine=()):
    """Texts that make the fire follow the chamber, for a rate that was set: less than is needed, or much more."""
    d, needed, set_W = result.design, result["firing_rate_needed"], result.checks["rate_for_need"].value
    if d.firing_rate == "auto" or not needed or {*_FOLLOWS} & {*mine}:
        return {}
    if needed * (1 - 1e-9) <= set_W <= MUCH * needed:
        return {}
    return _FOLLOWS


def _follows(texts: dict) -> dict:
    return {key: _FOLLOWS.get(key, text) for key, text in texts.items() if _FOLLOWS.get(key, text)}


_SCENARIO = {e.key: {"inches": _follows(e.inches), "metric": _follows(e.metric)} for e in EXAMPLES}

# House gas has little pressure to turn down: ports for a chamber of up to twice the size, a mixture that no shop near
# it makes rich, and a guard that watches the flame.
_HOUSE = {"rows": "6", "baffle_holes": "60", "equivalence_ratio": "0.94", "lit_by": "guard"}
_PINS = {"port_diameter": "5/16 in", "ports_per_row": "7"}
_PINS_METRIC = {**_PINS, "port_diameter": "8 mm"}

# Butane boils off slowly: a regulator that needs little, more cylinders, and a guard that watches the flame.
_BUTANE = {"gas_pressure": "3 psi", "regulator_inlet_pressure": "3 psi", "cylinder_count": "6", "lit_by": "guard"}
_BUTANE_METRIC = {**_BUTANE, "gas_pressure": "0.2 bar", "regulator_inlet_pressure": "0.2 bar"}


def _butane(inches, metric):
    """What a job sets otherwise for butane."""
    return {**_BUTANE, **inches}, {**_BUTANE_METRIC, **metric}


_OVEN = {"heat_up_time": "20 min", "equivalence_ratio": "0.92"}  # on house gas

# A small chamber takes less work through a smaller opening, a shorter face, more time, and a guard for the flame.
_SMALL = {"body_length": "7 in", "rows": "5", "ports_per_row": "6", "low_fire": "60 %", "lit_by": "guard"}
_SMALL |= {"opening_area": "6 in2"}
_SMALL_METRIC = {**_SMALL, "body_length": "180 mm", "opening_area": "39 cm2"}
_SMALL_FORGE = {
    **_SMALL_METRIC,
    "port_diameter": "6 mm",
    "work_rate": "1.8 kg/h",
    "heat_up_time": "80 min",
    "blower_shutoff_pressure": "7.5 mbar",
    "blower_free_flow": "50 m3/h",
}
_SMALL_ON_HOUSE = {"port_diameter": "8 mm", "rows": "4"}
_SMALL_MOST, _NO_TRIAL = 3.0, 4.2  # litres; to the second the larger burner lets in more than twice the chamber
_TWO = {"burner_count": "2", "batch_size": "2", "blowers": "each"}  # for a chamber that one burner does not fill


JOBS = (
    Job(
        "forge",
        "Forge",
        "A box forge for bar and small work at 2250 °F (1230 °C); the fire is what the chamber needs.",
        {
            "lining": "dense_castable 1 in, ifb_26 2 1/2 in, blanket_8lb 1 in",
            "opening_depth": "4 1/2 in",
            "heat_up_time": "55 min",
            "firing_rate": "auto",
            "cylinder_count": "2",
        },
        {
            "units": "mm",
            "lining": "dense_castable 25 mm, ifb_26 64 mm, blanket_8lb 25 mm",
            "opening_depth": "115 mm",
            "heat_up_time": "55 min",
            "firing_rate": "auto",
            "gas_pressure": "350 mbar",
            "cylinder_count": "2",
        },
        fuels={
            "natural_gas": (
                {**_HOUSE, **_PINS, "heat_up_time": "57 min", "block_thickness": "3 1/4 in"},
                {**_HOUSE, **_PINS_METRIC, "block_thickness": "75 mm", "low_fire": "43 %"},
            ),
            "butane": _butane(
                {
                    "refractory": "insulating_castable",
                    "block_thickness": "3 in",
                    "gas_pressure": "4 psi",
                    "cylinder_count": "8",
                },
                {"refractory": "insulating_castable", "gas_pressure": "0.28 bar", "cylinder_count": "9"},
            ),
        },
        rungs=(
            Rung(
                {
                    **_SMALL,
                    "work_rate": "4 lb/h",
                    "heat_up_time": "80 min",
                    "blower_shutoff_pressure": "3 inH2O",
                    "blower_free_flow": "30 cfm",
                },
                _SMALL_FORGE,
                most=_SMALL_MOST,
            ),
            Rung({}, _SMALL_ON_HOUSE, most=_SMALL_MOST, fuels=("natural_gas",)),
            Rung({}, _SMALL_FORGE, _SMALL_MOST, _NO_TRIAL, fuels=("propane",)),
            Rung({**_TWO, "cylinder_count": "4"}, {**_TWO, "cylinder_count": "4"}, 25.0, fuels=("propane",)),
            Rung(_TWO, _TWO, 25.0, fuels=("natural_gas",)),
            Rung({**_TWO, "cylinder_count": "12"}, {**_TWO, "cylinder_count": "12"}, 25.0, fuels=("butane",)),
        ),
    ),
    Job(
        "weld",
        "Weld",
        "A forge that brings bar to welding heat, at 2350 °F (1290 °C).",
        {**_SCENARIO["smith"]["inches"], "low_fire": "48 %"},
        {**_SCENARIO["smith"]["metric"], "low_fire": "49 %"},
        fuels={
            "natural_gas": ({"block_thickness": "3 1/2 in", "lit_by": "guard"}, {"lit_by": "guard"}),
            "butane": _butane(
                {"block_thickness": "3 1/2 in", "cylinder_count": "8"},
                {"block_thickness": "80 mm", "cylinder_count": "8"},
            ),
        },
        rungs=(
            Rung(
                {**_SMALL, "work_rate": "5 lb/h", "heat_up_time": "90 min"},
                {**_SMALL_METRIC, "work_rate": "2.3 kg/h", "heat_up_time": "90 min"},
                most=5.0,
            ),
        ),
    ),
    Job(
        "heat_treat",
        "Heat-treat",
        "A long, narrow chamber that holds blades at 1500 °F (815 °C).",
        **_SCENARIO["knife"],
        fuels={
            # A little fire runs back into a lip that glows before the walls do: larger ports, and for them more fire,
            # as a larger opening and less time to heat up ask for.
            "natural_gas": (
                {
                    **_OVEN,
                    "rows": "4",
                    "port_diameter": "1/4 in",
                    "ports_per_row": "6",
                    "body_length": "7 1/2 in",
                    "block_thickness": "2 1/4 in",
                    "opening_area": "20 in2",
                    "low_fire": "66 %",
                },
                {
                    **_OVEN,
                    "rows": "4",
                    "port_diameter": "6 mm",
                    "ports_per_row": "6",
                    "body_length": "190 mm",
                    "opening_area": "120 cm2",
                },
            ),
            "butane": _butane({"cylinder_count": "2"}, {"cylinder_count": "2"}),
        },
    ),
    Job(
        "melt_bronze",
        "Melt bronze",
        "A round furnace for a small crucible.",
        inches={**_SCENARIO["crucible"]["inches"], "block_thickness": "3 in"},
        metric=_SCENARIO["crucible"]["metric"],
        fuels={
            "propane": ({"low_fire": "42 %"}, {"low_fire": "42 %"}),
            "butane": _butane(
                {"block_thickness": "3 1/2 in", "gas_pressure": "4 psi"},
                {"block_thickness": "90 mm", "gas_pressure": "0.28 bar"},
            ),
        },
        rungs=(Rung(_TWO, _TWO, 22.0, fuels=("natural_gas",)),),
    ),
    Job(
        "melt_iron",
        "Melt iron",
        "A round furnace, well insulated, that is brought to 2650 °F (1455 °C) in three hours.",
        {
            "chamber_shape": "cylinder",
            "chamber_length": "12 in",
            "chamber_diameter": "9 in",
            "lining": "dense_castable 1 in, ifb_28 4 1/2 in, blanket_8lb 1 in",
            "opening_area": "11 in2",
            "chamber_temperature": "2650 degF",
            "equivalence_ratio": "0.95",
            "work_metal": "iron",
            "work_rate": "4 lb/h",
            "work_temperature": "2500 degF",
            "heat_up_time": "180 min",
            "low_fire": "55 %",
            "firing_rate": "auto",
            "cylinder_count": "3",
            "rows": "4",
            "port_diameter": "5/16 in",
            "ports_per_row": "8",
            "block_thickness": "3 in",
            "gas_pressure": "10 psi",
            "lit_by": "guard",
        },
        {
            "units": "mm",
            "chamber_shape": "cylinder",
            "chamber_diameter": "230 mm",
            "lining": "dense_castable 25 mm, ifb_28 115 mm, blanket_8lb 25 mm",
            "opening_area": "70 cm2",
            "chamber_temperature": "1455 degC",
            "equivalence_ratio": "0.95",
            "work_metal": "iron",
            "work_rate": "1.8 kg/h",
            "work_temperature": "1370 degC",
            "heat_up_time": "180 min",
            "low_fire": "55 %",
            "firing_rate": "auto",
            "cylinder_count": "3",
            "port_diameter": "8 mm",
            "ports_per_row": "8",
            "rows": "4",
            "block_thickness": "75 mm",
            "gas_pressure": "0.7 bar",
            "lit_by": "guard",
        },
        fuels={
            "natural_gas": (
                {"opening_depth": "4 in", "body_length": "8 in"},
                {"opening_depth": "90 mm", "body_length": "200 mm"},
            ),
            "butane": _butane(
                {"block_thickness": "3 1/2 in"},
                {"block_thickness": "80 mm"},
            ),
        },
        rungs=(
            Rung(
                {"opening_area": "6 in2", "work_rate": "2 lb/h"},
                {"opening_area": "39 cm2", "work_rate": "0.9 kg/h"},
                most=6.0,
            ),
        ),
    ),
    Job(
        "burner",
        "I have a burner",
        "Measure it and enter it: box, ports, blower and jet. Then read what it gives.",
        opens="feed",
        asks=(
            *("body_length", "body_width", "rows", "ports_per_row", "port_diameter"),
            *("inlet", "baffle_holes", "mix_pipe", "blower_shutoff_pressure", "blower_free_flow"),
            *("jet_drill", "gas_pressure", "low_fire"),
        ),
    ),
    Job(
        "face",
        "Only the face",
        "Lay out the ports for a piece of tube and pins at hand.",
        opens="face",
        asks=("body_length", "body_width", "setback", "port_diameter", "rows", "ports_per_row"),
    ),
)

_FORGE, _FIRST = JOBS[0], JOBS[0].rungs[0]

# What the page opens with before a job is chosen: another fuel or a small chamber brings it what the forge has.
NONE_CHOSEN = Job(
    "",
    "no job",
    "",
    {},
    {"units": "mm"},
    fuels={
        "natural_gas": tuple(
            {**_HOUSE, "rows": "5", **{key: own[key] for key in _PINS}, "block_thickness": block}
            for own, block in zip(_FORGE.fuels["natural_gas"], ("3 1/4 in", "75 mm"))  # lit at 6,000 ft too
        ),
        "butane": _FORGE.fuels["butane"],
    },
    rungs=(
        Rung(
            {**_FORGE.inches, **_FIRST.inches},
            {**_FORGE.metric, **_FIRST.metric},
            most=_FIRST.most,
            fuels=("propane",),
        ),
        Rung({}, {**_FORGE.metric, **_SMALL_FORGE}, _SMALL_MOST, _NO_TRIAL, fuels=("propane",)),
        Rung(
            {**_FORGE.inches, **_FORGE.fuels["natural_gas"][0], **_FIRST.inches},
            {**_FORGE.metric, **_FORGE.fuels["natural_gas"][1], **_FIRST.metric, **_SMALL_ON_HOUSE},
            most=_FIRST.most,
            fuels=("natural_gas",),
        ),
    ),
)
_KNOWN_JOBS = (*(job for job in JOBS if job.inches), NONE_CHOSEN)


@cache
def _design(job, sizes, fuel, litres):
    return Design.from_texts(job.texts(sizes, fuel, litres))


def _of(job, sizes, fuel, litres):
    """The job's design for a chamber; one for all chambers of a rung."""
    rungs = job.rungs_at(fuel, litres)
    return _design(job, sizes, fuel, max(rung.least for rung in rungs) if rungs else None)


def _litres(texts):
    """Room in a chamber, or None while its sizes are refused; a bare number takes its reader's unit, as on the page."""
    sizes = {key: texts[key] for key in ("units", "sizes", "chamber_shape", *CHAMBER) if key in texts}
    values = read(sizes, units_of(texts))[0]
    length, width, height, across = (values[key] for key in CHAMBER)
    if None in (length, width, height, across):
        return None
    return 1000 * length * (width * height if values["chamber_shape"] == "box" else pi / 4 * across**2)


def job_of(design):
    """(job, sizes it is written for) of a design that differs from it in what is asked or had only, or None."""
    found = _origin(design)
    return None if found is None or found[0] is NONE_CHOSEN else found


def _origin(design):
    """The same, and what the page opens with."""
    litres = _litres(design.texts)
    for job in _KNOWN_JOBS:
        for written in ("in", "mm"):
            own = _of(job, written, design.fuel, litres)
            if own.gas_from != design.gas_from:
                own = own.changed({"gas_from": design.gas_from})
            if all(
                design.value(setting.key) == own.value(setting.key)
                for setting in SETTINGS
                if setting.key not in (*ASKED, *HAS)
            ):
                return job, written
    return None


@cache
def _known(sizes, fuel):
    """Designs that nobody typed, of a shop: the default, the examples, and the jobs on a fuel."""
    written = [{"units": sizes}, *(example.metric if sizes == "mm" else example.inches for example in EXAMPLES)]
    return [read_each(texts)[0] for texts in written + [job.texts(sizes, fuel) for job in JOBS if job.inches]]


def set_by_hand(before):
    """Keys of what differs from the design that it differs least from, of those that nobody typed; and what is mine."""
    values, kept, _ = read_each({key: text for key, text in before.items() if key != "mine"})
    apart = [{key for key in kept if values[key] != known[key]} for known in _known(values["sizes"], values["fuel"])]
    return (min(apart, key=len) - AS_READ) | {key for key in before.get("mine", "").split(",") if key in BY_KEY}


def begun(job, before, released=()):
    """The texts that a job starts from: its own, in the shop's sizes; what somebody has or named as mine stays.

    So does a chamber of its shape typed before. What another burner stands in, an example's say, is left with that.
    Settings of mine that are `released` do not stay, nor as something that somebody has.
    """
    design = Design.from_texts({key: text for key, text in before.items() if key != "mine"})
    own, typed = _begun(job, before, design), set_by_hand(before)
    kept = {*HAS, *before.get("mine", "").split(",")} & typed - {*released}
    if kept & {*BLOWER}:
        kept |= {*BLOWER}  # one machine
    stays = supplied(own, {**own, **{key: design.text(key) for key in BY_KEY if key in kept}})
    own = own if read(stays)[2] else stays
    return own if design.units == design.sizes else Design.from_texts(own).read_in(design.units).texts


def _begun(job, before, design):
    own = job.texts(design.sizes, design.fuel)
    found = job_of(design)
    if not found and before.keys() - {"mine", *ASKED}:
        return own
    was = _of(*found, design.fuel, _litres(before)) if found else Design.from_texts({"units": design.sizes})
    typed = {key: before[key] for key in CHAMBER if key in before and design.value(key) != was.value(key)}
    shape = BY_KEY["chamber_shape"].default
    if own.get("chamber_shape", shape) != before.get("chamber_shape", shape) or not typed:
        return own
    return {**job.texts(design.sizes, design.fuel, _litres({**own, **typed})), **typed}


def _fed(texts, after):
    """A job's texts with its gas from where it comes from after a change: a line has a pressure of its own."""
    return supplied(texts, {**texts, "gas_from": after["gas_from"]}) if "gas_from" in after else texts


def refitted(before, after, mine=""):
    """The texts after a change. A job's design brings what the job sets otherwise for another fuel, shop or chamber.

    Not where that was changed too, or is among the settings that are `mine`, with commas between.
    """
    asked = ("fuel", "units", "sizes", "chamber_shape", *CHAMBER)
    was, now = ({key: texts.get(key) for key in asked} for texts in (before, after))
    litres = None if was == now else _litres(after)
    if litres is None or (now["fuel"] or BY_KEY["fuel"].default) not in dict(BY_KEY["fuel"].choices):
        return after
    design = Design.from_texts({key: text for key, text in before.items() if key != "mine"})
    found = _origin(design)
    if found is None:
        return after
    job, written = found
    sizes = written if was["sizes"] == now["sizes"] else now["sizes"] or units_of(after)
    own = _fed(job.texts(written, design.fuel, _litres(before)), after)
    other = _fed(job.texts(sizes, now["fuel"] or BY_KEY["fuel"].default, litres), after)
    still = {*ASKED, *mine.split(","), *(key for key in {**before, **after} if before.get(key) != after.get(key))}
    as_begun = _of(job, written, design.fuel, _litres(before))
    still |= {key for key in HAS if design.value(key) != as_begun.value(key)}
    moved = [key for key in {**own, **other} if own.get(key) != other.get(key) and key not in still]
    kept = {key: text for key, text in after.items() if key not in moved}
    return {**kept, **{key: other[key] for key in moved if key in other}}
