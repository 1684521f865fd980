"""Gas: the jet and its drill, the card for the regulator, what the cylinder can give, and cost."""

from functools import lru_cache
from math import ceil, floor, log10, sqrt

from ..physics import combustion, cylinder, drills, fuels, gas_jet, pipes
from ..result import Axis, Chart, Column, Series, Table
from ..units import conversion, show, shown_unit

GROUP = "gas"
JET_FAMILIES = ("number", "letter")  # what jets are drilled with when none is named; common practice
JET = "compressible flow of an ideal gas; discharge coefficient as set"
LIQUIDS = ("C3H8", "C4H10", "iC4H10", "C3H6")
PSI_PA = 6894.757293168
REGULATOR_MOST_PA = 30 * PSI_PA  # of an adjustable high-pressure LP regulator; common practice
REGULATOR_LEAST_PA = 0.5 * PSI_PA  # below it such a regulator is hard to hold; common practice
HOUSE_PA = 7 * 249.08891  # usual in a house line; common practice
WEAK_PA = PSI_PA  # below a pound, gas pressure is said in the unit of the blower
HOUSE_MOST_PA = 2 * PSI_PA  # the most in a house line; common practice
JET_TURN = 1.25  # pressure for the wanted rate over the set one, either way: a turn of the dial
RATE_SHORT = (0.97, 0.85)  # rate over the wanted one from a house line: good from, stop below
JET_OF_PIPE = 0.25  # largest jet, of the mix pipe's bore; common practice
LEFT_SHARE = (0.25, 0.50)  # of a full charge left when the cold ends it, good and stop; common practice
LEAST_RUN_S = 1800  # a shorter run that the cold ends is a stop
CARD_RATIOS = (0.65, 1.4)  # equivalence ratios that the card spans
NEAR_DRILL = 1.25  # drills further off than this in diameter are not offered
COEFFICIENT_BAND = 0.05


def solve(d, r):
    r.liquid = _liquid(r.fuel)
    jet = _Jet(d, r)
    _jet_answers(d, r, jet)
    _card(d, r, jet)
    _gas_pressure_check(d, r, jet)
    _jet_checks(d, r, jet)
    _cylinder(d, r)
    _cost(d, r)
    r.charts["jet_card"] = lambda: _card_chart(d, r, jet)


def _liquid(fuel):
    """The liquid that the fuel is drawn from, by its largest part; None for a gas that comes by a line."""
    species = max(fuel, key=lambda part: part[1])[0]
    return species if species in LIQUIDS else None


class _Jet:
    """The gas jet of this design: pressure up- and downstream, and flows as firing rate."""

    def __init__(self, d, r):
        self.coefficient, self.temp_K = d.jet_discharge_coefficient, d.ambient_temperature
        self.molar_mass, self.ratio = fuels.molar_mass_kg_mol(r.fuel), gas_jet.heat_capacity_ratio(r.fuel)
        self.W_per_kg_s = fuels.gross_heating_value_J_kg(r.fuel)
        self.ambient_Pa, self.gauge_Pa = r.ambient_pressure_Pa, d.gas_pressure
        self.down_Pa = r.ambient_pressure_Pa + r["mixture_pressure"]
        self.flows = self.gauge_Pa + self.ambient_Pa > self.down_Pa

    def rate_W(self, diameter_m, gauge_Pa, down_Pa=None):
        down_Pa = self.down_Pa if down_Pa is None else down_Pa
        up = self.ambient_Pa + gauge_Pa
        if up <= down_Pa:
            return 0.0
        return self.W_per_kg_s * gas_jet.jet_flow_kg_s(
            diameter_m, self.coefficient, up, down_Pa, self.temp_K, self.molar_mass, self.ratio
        )

    def diameter_m(self, rate_W, coefficient=None):
        return gas_jet.jet_diameter_m(
            rate_W / self.W_per_kg_s,
            coefficient or self.coefficient,
            self.ambient_Pa + self.gauge_Pa,
            self.down_Pa,
            self.temp_K,
            self.molar_mass,
            self.ratio,
        )

    def needed_Pa(self, rate_W, diameter_m, down_Pa=None):
        """Gauge pressure at which a hole gives a rate."""
        return (
            gas_jet.jet_pressure_Pa(
                rate_W / self.W_per_kg_s,
                diameter_m,
                self.coefficient,
                self.down_Pa if down_Pa is None else down_Pa,
                self.temp_K,
                self.molar_mass,
                self.ratio,
            )
            - self.ambient_Pa
        )


def _neighbours(diameter_m):
    """Drills next below and above a hole, of every family that has one near, each once, smallest first."""
    found = {
        drill
        for family in drills.FAMILIES
        for drill in drills.nearest_drills(diameter_m, family)
        if drill is not None and 1 / NEAR_DRILL <= drill.diameter_m / diameter_m <= NEAR_DRILL
    }
    return sorted(found, key=lambda drill: (drill.diameter_m, drill.name))


def _jet_answers(d, r, jet):
    inputs = (
        "firing_rate",
        "fuel",
        "gas_pressure",
        "jet_discharge_coefficient",
        "mixture_pressure",
        "ambient_temperature",
        "altitude",
    )
    diameter = jet.diameter_m(r.rate_W) if jet.flows else None
    band = (
        ()
        if diameter is None
        else tuple(
            diameter * sqrt(jet.coefficient / min(jet.coefficient + step, 1.0))
            for step in (COEFFICIENT_BAND, -COEFFICIENT_BAND)
        )
    )
    r.answer(
        "orifice_diameter",
        diameter,
        "drill_length",
        "Jet",
        "Hole that passes the gas of high fire at the gas pressure; the band is the discharge coefficient give or "
        "take 0.05.",
        "sqrt(4 x gas flow / (pi x coefficient x flow of an ideal nozzle per area))",
        inputs,
        JET,
        "common practice",
        band,
    )
    near = _neighbours(diameter) if diameter else []
    jets = [one for one in near if one.family in JET_FAMILIES] or near
    drill = (
        drills.drill_named(d.jet_drill)
        if d.jet_drill
        else min(jets, key=lambda one: (abs(one.diameter_m / diameter - 1), one.name))
        if jets
        else None
    )
    r.jet_drill = drill
    r.answer(
        "jet",
        drill.name if drill else None,
        "word",
        "Jet drill",
        "Drill for the jet: the one set, or else the "
        "nearest number or letter drill, as jets are drilled; the table lists fractions and metric drills too.",
        "nearest in diameter of number and letter drills",
        ("jet_drill", "orifice_diameter"),
        "drill sizes as sold",
        "published",
    )
    rate = jet.rate_W(drill.diameter_m, d.gas_pressure) if drill else None
    needed = jet.needed_Pa(r.rate_W, drill.diameter_m) if drill else None
    r.answer(
        "jet_firing_rate",
        rate,
        "power",
        "Rate through the jet drill",
        "Firing rate that the jet drill gives at the gas pressure as set.",
        "flow of the jet x gross heating value",
        ("jet", *inputs[1:]),
        JET,
        "common practice",
    )
    r.answer(
        "jet_gas_pressure",
        needed,
        "gas_pressure",
        "Gas pressure for high fire",
        "Gas pressure at which the jet drill gives the firing rate.",
        "pressure at which the jet passes the gas flow",
        ("jet", *inputs),
        JET,
        "common practice",
    )
    low = jet.needed_Pa(r.rate_W * d.low_fire, drill.diameter_m, _low_down_Pa(d, r)) if drill else None
    r.answer(
        "jet_gas_pressure_low",
        low,
        "gas_pressure",
        "Gas pressure for low fire",
        "Gas pressure at which the jet drill gives low fire, air turned down too.",
        "pressure at which the jet passes the gas of low fire",
        ("jet", "low_fire", *inputs),
        JET,
        "common practice",
    )
    choked = jet.flows and gas_jet.is_choked(jet.ambient_Pa + jet.gauge_Pa, jet.down_Pa, jet.ratio)
    r.answer(
        "jet_regime",
        "choked" if choked else "not choked",
        "word",
        "Flow in the jet",
        "Choked: the gas leaves at the speed of sound and its flow follows the absolute pressure before the jet alone.",
        "mixture pressure over gas pressure, absolute, below (2 / (k + 1)) to the power k / (k - 1)",
        ("gas_pressure", "mixture_pressure"),
        "gas dynamics",
        "published",
    )
    rows = tuple(
        (
            one.family,
            one.name,
            one.diameter_m,
            jet.rate_W(one.diameter_m, d.gas_pressure),
            d.equivalence_ratio * jet.rate_W(one.diameter_m, d.gas_pressure) / r.rate_W,
            jet.needed_Pa(r.rate_W, one.diameter_m),
        )
        for one in near
    )
    r.add_table(
        Table(
            "jet_drills",
            "Drills next to the jet, each at the gas pressure as set",
            (
                Column("family", "Family", "word"),
                Column("drill", "Drill", "word"),
                Column("diameter", "Diameter", "drill_length"),
                Column("firing_rate", "Firing rate", "power"),
                Column("equivalence_ratio", "Equivalence ratio", "ratio"),
                Column("gas_pressure", "Pressure for the rate", "gas_pressure"),
            ),
            rows,
            JET,
        )
    )


def _low_down_Pa(d, r):
    return r.ambient_pressure_Pa + r.burner_drop_Pa(r.mixture_flow_m3_s * d.low_fire)


def _round_step(value):
    """The nearest of 1, 2, 5 x 10^n at or below a number."""
    power = 10 ** floor(log10(value))
    return max(step for step in (1, 2, 5) if step * power <= value * (1 + 1e-9)) * power


def _card_pressures(d, r, jet):
    """Round gauge pressures as the regulator's dial shows them, over the mixtures that burn well."""
    unit = shown_unit("gas_pressure", d.units)
    scale, _ = conversion(unit, "Pa")
    low, high = (
        jet.needed_Pa(r.rate_W * phi / d.equivalence_ratio, r.jet_drill.diameter_m) / scale for phi in CARD_RATIOS
    )
    step = _round_step((high - low) / 8)
    return [step * i * scale for i in range(ceil(low / step), int(high / step) + 1)]


def _card(d, r, jet):
    rows = []
    if r.jet_drill:
        for gauge in _card_pressures(d, r, jet):
            rate = jet.rate_W(r.jet_drill.diameter_m, gauge)
            phi = d.equivalence_ratio * rate / r.rate_W
            rows.append((gauge, rate, phi, combustion.atmosphere(phi)))
    r.add_table(
        Table(
            "regulator_card",
            "Regulator card: what the jet drill gives, air as set for high fire",
            (
                Column("gas_pressure", "Gas pressure", "gas_pressure"),
                Column("firing_rate", "Firing rate", "power"),
                Column("equivalence_ratio", "Equivalence ratio", "ratio"),
                Column("atmosphere", "Atmosphere", "word"),
            ),
            tuple(rows),
            JET,
        )
    )


def _card_chart(d, r, jet):
    rows = r.tables["regulator_card"].rows
    pressures, rates = tuple(row[0] for row in rows), tuple(row[1] for row in rows)
    mark = (r["jet_gas_pressure"], r.rate_W) if r.jet_drill else ()
    return Chart(
        "jet_card",
        "Firing rate by gas pressure",
        Axis("gas pressure", "gas_pressure", 0, max(pressures, default=d.gas_pressure)),
        Axis("firing rate", "power", 0, 1.1 * max((*rates, r.rate_W))),
        (Series("rate", "this jet", pressures, rates),),
        mark,
        f"The jet gives the firing rate at {show(mark[0], 'gas_pressure', d.units)}."
        if mark
        else "No jet passes gas at this pressure.",
    )


def _said(d, gauge_Pa):
    """A gas pressure in the regulator's unit, a weak one in that of the blower, as the trade says it."""
    return show(gauge_Pa, "gas_pressure" if gauge_Pa >= WEAK_PA else "pressure", d.units)


def _gas_pressure_check(d, r, jet):
    gas, mixture = _said(d, d.gas_pressure), show(r["mixture_pressure"], "pressure", d.units)
    changes = (("gas_pressure", "raise"),)
    if not jet.flows:
        r.check(
            "gas_pressure",
            "stop",
            d.gas_pressure,
            r["mixture_pressure"],
            "gas_pressure",
            "Gas pressure",
            f"Gas at {gas} cannot enter the mix pipe, where the blower holds {mixture}: no gas flows. Raise the "
            "gas pressure, or ease the way through the burner (larger ports or pipe).",
            JET,
            "published",
            (*changes, ("port_diameter", "raise"), ("mix_pipe", "raise")),
        )
        return
    verdict, words = (
        "good",
        (
            f"Gas at {gas} stands well over the {mixture} in the mix pipe"
            + (", and chokes in the jet: its flow follows the regulator alone." if r["jet_regime"] == "choked" else ".")
        ),
    )
    if r["orifice_diameter"] > JET_OF_PIPE * pipes.pipe(d.mix_pipe).bore_m:
        verdict, changes = "stop", (("gas_pressure", "raise"), ("mix_pipe", "raise"), ("firing_rate", "lower"))
        words = (
            f"Gas at {gas} is too weak for this rate: the jet would need a hole of "
            f"{show(r['orifice_diameter'], 'drill_length', d.units)}, more than a quarter of the mix pipe's bore. Raise "
            "the gas pressure" + (" (ask the gas company)" if r.liquid is None else "") + ", or less fire."
        )
    elif d.gas_pressure < 4 * r["mixture_pressure"]:
        verdict = "caution"
        words = (
            f"Gas at {gas} is not far above the {mixture} in the mix pipe: every change of air moves the gas as "
            "well. More gas pressure is steadier."
        )
    elif r.liquid is None and d.gas_pressure > HOUSE_MOST_PA:
        verdict, changes = "caution", (("gas_pressure", "lower"),)
        words = (
            f"{gas} is more than a house line carries: {show(HOUSE_PA, 'pressure', d.units)} is usual, "
            f"{show(HOUSE_MOST_PA, 'gas_pressure', d.units)} the most. Set what your meter gives."
        )
    elif r.liquid is not None and d.gas_pressure > REGULATOR_MOST_PA:
        verdict, changes = "caution", (("gas_pressure", "lower"),)
        words = (
            f"{gas} is more than an adjustable LP regulator gives "
            f"({show(REGULATOR_MOST_PA, 'gas_pressure', d.units)}); use a larger jet."
        )
    r.check(
        "gas_pressure",
        verdict,
        d.gas_pressure,
        r["mixture_pressure"],
        "gas_pressure",
        "Gas pressure",
        words,
        JET + "; limits are common practice",
        "common practice",
        changes,
    )


def _no_drill_check(d, r):
    """A jet that no drill comes near; where no gas flows at all, the gas pressure has said so."""
    if r["orifice_diameter"] is None:
        return
    small = r["orifice_diameter"] < min(drill.diameter_m for drill in drills.drills("number"))
    r.check(
        "jet",
        "stop",
        r["orifice_diameter"],
        None,
        "drill_length",
        "Jet",
        f"No drill comes near the {show(r['orifice_diameter'], 'drill_length', d.units)} of this jet: "
        + ("less gas pressure makes it larger." if small else "more gas pressure makes it smaller."),
        JET,
        "common practice",
        (("gas_pressure", "lower" if small else "raise"),),
    )


def _jet_checks(d, r, jet):
    if r.jet_drill is None:
        _no_drill_check(d, r)
        return
    name, needed, rate = r.jet_drill.name, r["jet_gas_pressure"], r["jet_firing_rate"]
    share = rate / r.rate_W
    turn = needed / d.gas_pressure
    at, now = _said(d, needed), _said(d, d.gas_pressure)
    if r.liquid is None:
        good, stop = RATE_SHORT
        verdict = "good" if share >= good else "caution" if share >= stop else "stop"
        short = (
            f", short of {show(r.rate_W, 'power', d.units)}: the line cannot carry the rate through it. Use a "
            "larger drill."
        )
        fits = f"; throttle to {at} for high fire." if share > 1 / good else ", as wanted."
        text = f"Jet {name} passes {show(rate, 'power', d.units)} at {now}" + (fits if verdict == "good" else short)
    else:
        in_reach = REGULATOR_LEAST_PA <= needed <= REGULATOR_MOST_PA
        verdict = "good" if 1 / JET_TURN <= turn <= JET_TURN else "caution" if in_reach else "stop"
        text = (
            f"Jet {name} gives the firing rate at {at}"
            + {
                "good": ".",
                "caution": f", not at the {now} as set: turn the regulator or change the drill.",
                "stop": f", out of reach of a regulator: use a {'larger' if turn > 1 else 'smaller'} drill.",
            }[verdict]
        )
    r.check(
        "jet",
        verdict,
        share,
        1.0,
        "ratio",
        "Jet",
        text,
        JET,
        "common practice",
        (("jet_drill", "choose"), ("gas_pressure", "choose")),
    )

    low, need = r["jet_gas_pressure_low"], r.burner_drop_Pa(r.mixture_flow_m3_s * d.low_fire)
    least = REGULATOR_LEAST_PA if r.liquid else 1.5 * need
    verdict = "good" if low >= least else "caution"
    r.check(
        "gas_low_fire",
        verdict,
        low,
        least,
        "gas_pressure",
        "Gas at low fire",
        f"Low fire asks for {_said(d, low)} before the jet"
        + (
            "."
            if verdict == "good"
            else f"; below {_said(d, least)} it is hard to hold. A smaller jet at more pressure helps."
        ),
        "common practice, no published source",
        "common practice",
        (("gas_pressure", "raise"), ("low_fire", "raise")),
    )


@lru_cache(maxsize=64)
def _run(vessel, liquid_kg, species, air_temp_K, inlet_Pa, draw_W, heating_J_kg):
    return (
        cylinder.draw_limit_W(vessel, liquid_kg, species, air_temp_K, inlet_Pa, heating_J_kg),
        cylinder.run_down(vessel, liquid_kg, species, air_temp_K, inlet_Pa, draw_W, heating_J_kg, 100),
    )


def _vessel(d):
    if d.cylinder == "tank":
        return cylinder.lying_tank(d.tank_diameter, d.tank_length)
    return cylinder.upright_cylinder(f"{d.cylinder} lb")


def _less(d):
    """What asks less of the cylinder's pressure: the jet's own pressure, or the regulator's need where that is more."""
    return (
        "less gas pressure with a larger jet"
        if d.gas_pressure > d.regulator_inlet_pressure
        else "a regulator that needs less"
    )


def _cylinder(d, r):
    limit = run = None
    if r.liquid is not None:
        vessel = _vessel(d)
        liquid_kg = vessel.capacity_kg * d.cylinder_fill
        inlet_Pa = r.ambient_pressure_Pa + max(d.regulator_inlet_pressure, d.gas_pressure)
        each, run = _run(
            vessel,
            liquid_kg,
            r.liquid,
            d.ambient_temperature,
            inlet_Pa,
            r.rate_W / d.cylinder_count,
            fuels.gross_heating_value_J_kg(r.fuel),
        )
        limit = each * d.cylinder_count
    inputs = (
        "cylinder",
        "cylinder_count",
        "cylinder_fill",
        "ambient_temperature",
        "regulator_inlet_pressure",
        "gas_pressure",
        "fuel",
    )
    source = (
        "heat through the wetted wall; coefficient fitted to a published table of 100 lb cylinders (an "
        "engine-generator manual of 2011); sizes of cylinders from memory"
    )
    r.answer(
        "cylinder_draw_limit",
        limit,
        "power",
        "Steady draw of the cylinders",
        "Firing rate that the cylinders at this fill can keep up without chilling further; none for gas from a line.",
        "wall coefficient x wetted wall x (air - liquid temperature at the regulator's least inlet pressure) x "
        "heating value / heat of "
        "vaporisation",
        inputs,
        source,
        "memory",
        () if limit is None else (0.9 * limit, 1.1 * limit),
    )
    r.answer(
        "run_time",
        run.run_time_s if run else None,
        "time",
        "Run time",
        "Hours at high fire until the cylinders are empty or too cold to feed the regulator.",
        "heat balance of the liquid and its steel, step by step",
        (*inputs, "firing_rate"),
        source,
        "memory",
    )
    r.answer(
        "run_ended_by",
        run.ended_by if run else None,
        "word",
        "What ends the run",
        "Empty, or cold: the pressure falls below what the regulator needs.",
        "heat balance of the liquid and its steel, step by step",
        (*inputs, "firing_rate"),
        source,
        "memory",
    )
    r.answer(
        "frost_time",
        run.frost_time_s if run else None,
        "time",
        "Time to frost",
        "Hours at high fire until the wetted wall is at the freezing point; none if it never is.",
        "heat balance of the liquid and its steel, step by step",
        (*inputs, "firing_rate"),
        source,
        "memory",
    )
    if run is None:
        return
    left = run.left_kg / vessel.capacity_kg
    good, stop = LEFT_SHARE
    cold = run.ended_by != "empty"
    verdict = (
        "stop"
        if cold and (left > stop or run.run_time_s < LEAST_RUN_S)
        else "caution"
        if cold and left > good
        else "good"
    )
    rate, can = show(r.rate_W, "power", d.units), show(limit, "power", d.units)
    hours = show(run.run_time_s, "time", d.units, 2)
    if run.ended_by == "empty":
        text = f"The cylinders feed {rate} for {hours} until they are empty; steady draw at this fill {can}."
    elif run.run_time_s == 0:
        needed = show(max(d.regulator_inlet_pressure, d.gas_pressure), "gas_pressure", d.units)
        text = (
            f"It is too cold: at {show(d.ambient_temperature, 'temperature', d.units)} the cylinder's own pressure "
            f"is less than the regulator needs ({needed}). Warmer, or {_less(d)}."
        )
    else:
        text = (
            f"At {rate} the cold ends it after {hours} with {100 * left:.0f} % of a full charge still in; steady "
            f"draw at this fill is {can}." + ("" if verdict == "good" else f" More or larger cylinders, or {_less(d)}.")
        )
    needs = "gas_pressure" if d.gas_pressure > d.regulator_inlet_pressure else "regulator_inlet_pressure"
    more = () if run.run_time_s == 0 else (("cylinder_count", "raise"), ("cylinder", "choose"))
    r.check(
        "cylinder",
        verdict,
        left,
        good,
        "fraction",
        "Cylinder",
        text,
        source + "; limits are common practice",
        "common practice",
        (*more, (needs, "lower"), ("ambient_temperature", "raise")),
    )


def _cost(d, r):
    flow = combustion.gas_flow_kg_s(r.fuel, r.rate_W)
    r.answer(
        "fuel_cost_per_hour",
        flow * 3600 * d.fuel_price,
        "money",
        "Fuel an hour",
        "What an hour at high fire costs, in the money of the price.",
        "gas flow x price by weight",
        ("firing_rate", "fuel", "fuel_price"),
        "gas flow from the gross heating value",
    )
