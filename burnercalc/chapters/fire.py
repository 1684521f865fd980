"""Fuel, mixture, flame and flue gas: what one volume of gas is worth, what it burns with and what comes out."""

from math import ceil

from .. import need
from ..physics import combustion, fuels, ventilation
from ..physics.equilibrium import EquilibriumError
from ..result import Axis, Chart, Column, Series, Table
from ..units import show

GROUP = "heat"
STOICHIOMETRY = "atom balance; dry air with 20.95 % oxygen (US Standard Atmosphere 1976)"
HEATING_VALUE = "enthalpies of formation, NASA polynomials (NASA TM-4513); metering state 15 °C, 101 325 Pa (ISO 13443)"
EQUILIBRIUM = "chemical equilibrium, NASA polynomials (NASA TM-4513) by the method of NASA RP-1311"
FREEZING = EQUILIBRIUM + "; composition frozen below 1700 K (common practice)"
PRACTICE = "common practice, no published source"

LEANEST_GOOD = 0.9  # below it the air scales the work and carries heat away; common practice
LEAST_AVAILABLE_GOOD = 0.1  # below it a small slip of the mixture loses the chamber; common practice
CO_LIMIT_FRACTION = 1e-6 * next(row["limit_ppm"] for row in ventilation.co_limits() if row["name"] == "NIOSH REL")
CHART_RATIOS = tuple(0.5 + 0.05 * n for n in range(23))
FLUE_NAMES = {
    "CO2": "carbon dioxide",
    "H2O": "water vapour",
    "N2": "nitrogen",
    "O2": "oxygen",
    "CO": "carbon monoxide",
    "H2": "hydrogen",
    "OH": "hydroxyl",
    "H": "atomic hydrogen",
    "O": "atomic oxygen",
    "NO": "nitric oxide",
    "CH4": "methane",
}
LEAST_SHOWN = 1e-6  # mole fraction below which the table leaves a species out


def solve(d, r):
    r.fuel = need.fuel(d.value)
    r.ambient_pressure_Pa = need.ambient_pressure_Pa(d.value)
    r.heat_split = need.heat_split(d.value)
    flame, flue = _burned(d, r, d.equivalence_ratio)
    r.rate_W = need.rate_W(d.value)  # a rule refuses auto where the chamber cannot say
    _fuel(d, r)
    _mixture(d, r)
    _flows(d, r)
    _flame(d, r, flame, flue)
    _checks(d, r, flame, flue)
    r.charts["flame_by_ratio"] = lambda: _flame_chart(d, r)
    r.charts["flue_by_ratio"] = lambda: _flue_chart(d, r)
    r.charts["available_by_temperature"] = lambda: _available_chart(d, r)


def _burned(d, r, equivalence_ratio):
    """(Equilibrium of the flame, FlueGas) with gas and air from the shop; None for both when there is no solution."""
    inlet = (d.ambient_temperature, d.ambient_temperature, r.ambient_pressure_Pa)
    try:
        return (
            combustion.flame(r.fuel, equivalence_ratio, *inlet),
            combustion.flue_gas(r.fuel, equivalence_ratio, d.chamber_temperature, *inlet),
        )
    except EquilibriumError:
        return None, None


def _fuel(d, r):
    inputs = ("fuel", "fuel_blend")
    r.answer(
        "gross_heating_value",
        fuels.gross_heating_value_J_m3(r.fuel),
        "energy_per_volume",
        "Gross heating value",
        "Heat of one volume of gas as an ideal gas at 15 °C and sea level, its water condensed; firing rates count this one.",
        "net heating value + heat of the condensed water",
        inputs,
        HEATING_VALUE,
        "published",
    )
    r.answer(
        "net_heating_value",
        fuels.net_heating_value_J_m3(r.fuel),
        "energy_per_volume",
        "Net heating value",
        "Heat of one volume of gas at 15 °C and sea level with its water left as vapour.",
        "enthalpy of gas and oxygen - enthalpy of carbon dioxide and water vapour, at 25 °C",
        inputs,
        HEATING_VALUE,
        "published",
    )
    r.answer(
        "gross_heating_value_mass",
        fuels.gross_heating_value_J_kg(r.fuel),
        "energy_per_mass",
        "Gross heating value, weight",
        "Heat of one weight of gas, its water condensed.",
        "gross heating value / density of the gas",
        inputs,
        HEATING_VALUE,
        "published",
    )
    r.answer(
        "net_heating_value_mass",
        fuels.net_heating_value_J_kg(r.fuel),
        "energy_per_mass",
        "Net heating value, weight",
        "Heat of one weight of gas with its water left as vapour.",
        "net heating value / density of the gas",
        inputs,
        HEATING_VALUE,
        "published",
    )
    r.answer(
        "wobbe_index",
        fuels.wobbe_index_J_m3(r.fuel),
        "energy_per_volume",
        "Wobbe index",
        "Gases of one Wobbe index give one heat through the same jet at the same pressure.",
        "gross heating value / square root of (density of the gas / density of air)",
        inputs,
        "ISO 6976:2016, for ideal gases",
        "memory",
    )


def _mixture(d, r):
    phi, inputs = d.equivalence_ratio, ("fuel", "fuel_blend", "equivalence_ratio")
    r.answer(
        "air_fuel_ratio_volume",
        combustion.air_fuel_ratio_volume(r.fuel, phi),
        "ratio",
        "Air to gas by volume",
        "Volumes of air for one volume of gas, as mixed.",
        "air that just burns the gas / equivalence ratio",
        inputs,
        STOICHIOMETRY,
        "published",
    )
    r.answer(
        "air_fuel_ratio_mass",
        combustion.air_fuel_ratio_mass(r.fuel, phi),
        "ratio",
        "Air to gas by weight",
        "Weight of air for one weight of gas, as mixed.",
        "air to gas by volume x molar mass of air / molar mass of gas",
        inputs,
        STOICHIOMETRY,
        "published",
    )
    r.answer(
        "excess_air",
        combustion.excess_air_fraction(phi),
        "fraction",
        "Excess air",
        "Air beyond what just burns the gas; below zero when rich.",
        "1 / equivalence ratio - 1",
        ("equivalence_ratio",),
        "definition",
    )
    r.answer(
        "atmosphere",
        combustion.atmosphere(phi),
        "word",
        "Atmosphere",
        "Oxidising: oxygen is left over. Reducing: carbon monoxide and hydrogen are, and they poison. Neutral: within 0.02 of "
        "equivalence ratio 1. Hot steel scales a little even in a reducing flame.",
        "equivalence ratio against 1 ± 0.02",
        ("equivalence_ratio",),
        PRACTICE,
        "common practice",
    )


def _flows(d, r):
    r.answer(
        "firing_rate_gross",
        r.rate_W,
        "power",
        "Firing rate, gross",
        "Heat of the gas that this burner is designed for at high fire, gross; as set, or its share of what the chamber needs.",
        "firing rate, or firing rate needed / burners when it is auto",
        ("firing_rate", "firing_rate_needed", "burner_count"),
        "definition",
    )
    r.answer(
        "firing_rate_net",
        r.rate_W * r["net_heating_value"] / r["gross_heating_value"],
        "power",
        "Firing rate, net",
        "The same fire counted by the net heating value, as some countries do.",
        "firing rate, gross x net heating value / gross heating value",
        ("firing_rate_gross", "net_heating_value", "gross_heating_value"),
        HEATING_VALUE,
        "published",
    )
    r.answer(
        "gas_flow",
        combustion.gas_flow_m3_s(r.fuel, r.rate_W),
        "gas_flow",
        "Gas flow",
        "Fuel gas burned at high fire, as it would fill a meter at 15 °C and sea level.",
        "firing rate / gross heating value",
        ("firing_rate_gross", "gross_heating_value"),
        HEATING_VALUE,
        "published",
    )
    r.answer(
        "air_flow",
        combustion.air_flow_m3_s(r.fuel, d.equivalence_ratio, r.rate_W),
        "air_flow",
        "Air flow",
        "Air that the blower brings at high fire, at 15 °C and sea level.",
        "gas flow x air to burn one volume of gas / equivalence ratio",
        ("gas_flow", "air_fuel_ratio_volume"),
        STOICHIOMETRY,
        "published",
    )
    r.answer(
        "mixture_flow",
        r["gas_flow"] + r["air_flow"],
        "air_flow",
        "Mixture flow",
        "Gas and air together on their way to the ports, at 15 °C and sea level.",
        "gas flow + air flow",
        ("gas_flow", "air_flow"),
        STOICHIOMETRY,
        "calculated",
    )


def _flame(d, r, flame, flue):
    inputs = ("fuel", "fuel_blend", "equivalence_ratio", "ambient_temperature", "altitude")
    r.answer(
        "flame_temperature",
        flame and flame.temp_K,
        "temperature",
        "Flame temperature",
        "Hottest that the flame can be, no heat lost, gas and air from the shop.",
        "temperature at which the burned gas at equilibrium holds all the heat of gas and air",
        inputs,
        EQUILIBRIUM,
        "published",
    )
    inputs += ("chamber_temperature",)
    r.answer(
        "flue_co_dry",
        flue and flue.co_dry,
        "gas_share",
        "Carbon monoxide, dry",
        "Share of the dry gas that leaves the chamber, before air at the door burns any of it.",
        "equilibrium at the chamber temperature, not below 1700 K",
        inputs,
        FREEZING,
        "common practice",
    )
    r.answer(
        "flue_o2_dry",
        flue and flue.o2_dry,
        "gas_share",
        "Oxygen, dry",
        "Share of the dry gas that leaves the chamber, before air at the door mixes in.",
        "equilibrium at the chamber temperature, not below 1700 K",
        inputs,
        FREEZING,
        "common practice",
    )
    r.answer(
        "flue_dew_point",
        flue and flue.dew_point_K,
        "temperature",
        "Dew point of the flue gas",
        "Below it water runs down whatever the flue gas meets.",
        "temperature whose steam pressure is that of the water in the flue gas",
        inputs,
        "IAPWS R7-97(2012)",
        "memory",
    )
    r.answer(
        "available_heat",
        r.heat_split and r.heat_split.available,
        "fraction",
        "Available heat",
        "Share of the gross heat that stays in the chamber when the gas leaves as hot as the chamber; what leaves unburned is "
        "counted as lost.",
        "(enthalpy of gas and air - enthalpy of the flue gas at chamber temperature) / gross heating value",
        inputs,
        "energy balance; " + FREEZING,
        "common practice",
    )
    r.answer(
        "fresh_air",
        flue and _fresh_air_m3_s(d, r, flue),
        "air_flow",
        "Fresh air against CO",
        "What would keep a well-mixed room at 35 ppm of carbon monoxide if all flue gas of all burners stayed in it; a hood that "
        "draws it outdoors needs far less, and no figure stands in for an alarm.",
        "dry flue gas x its share of carbon monoxide / 35 ppm",
        ("firing_rate_gross", "burner_count", "flue_co_dry"),
        "mass balance; NIOSH REL (criteria document 1972); " + FREEZING,
        "common practice",
    )
    wet, dry = (dict(flue.wet), dict(flue.dry)) if flue else ({}, {})
    r.add_table(
        Table(
            "flue_gas",
            "Flue gas as it leaves the chamber, shares by volume",
            (Column("species", "Gas", "word"), Column("wet", "Wet", "gas_share"), Column("dry", "Dry", "gas_share")),
            tuple(
                (FLUE_NAMES[name], x, dry.get(name))
                for name, x in sorted(wet.items(), key=lambda pair: -pair[1])
                if x >= LEAST_SHOWN
            ),
            FREEZING,
        )
    )


def _checks(d, r, flame, flue):
    phi, available = d.equivalence_ratio, r["available_heat"]
    chamber = show(d.chamber_temperature, "temperature", d.units)
    if available is None:
        verdict, text = (
            "stop",
            "No flame was found for this mixture of gas and air: move the equivalence ratio towards 1.",
        )
    elif available <= need.LEAST_AVAILABLE:
        verdict = "stop"
        text = (
            f"The flame cannot hold {chamber}: at {show(r['flame_temperature'], 'temperature', d.units)} it would leave nothing in "
            "the chamber. Lower the chamber temperature, or bring the equivalence ratio nearer to 1."
        )
    else:
        verdict = "good" if available >= LEAST_AVAILABLE_GOOD else "caution"
        text = f"At {chamber} {show(available, 'fraction', d.units)} of the gross heat stays in the chamber" + (
            "."
            if verdict == "good"
            else "; with so little a small slip of the mixture loses it. Lower the chamber temperature, or "
            "bring the equivalence ratio nearer to 1."
        )
    r.check(
        "flame_holds",
        verdict,
        available,
        LEAST_AVAILABLE_GOOD,
        "fraction",
        "Heat left by the flame",
        text,
        "energy balance; limit: common practice",
        "common practice",
        (("chamber_temperature", "lower"), ("equivalence_ratio", "raise" if phi < 1 else "lower")),
    )

    word = r["atmosphere"]
    air = (
        ""
        if flue is None
        else (
            f"; if all of it stayed in the room, {show(r['fresh_air'], 'air_flow', d.units)} of fresh air would be "
            "needed"
        )
    )
    if word == "reducing":
        verdict = "caution"
        text = (
            "Rich: the gas that leaves holds "
            + ("" if flue is None else show(flue.co_dry, "gas_share", d.units) + " ")
            + (
                f"carbon monoxide, a deadly poison without smell{air}. Draw it outdoors under a hood, hang a carbon monoxide alarm, never "
                "run this in a closed room. A lower equivalence ratio makes far less."
            )
        )
    elif phi < LEANEST_GOOD:
        verdict = "caution"
        text = (
            f"Lean: {show(r['excess_air'], 'fraction', d.units)} more air than burns. It scales the work and carries heat out of the "
            f"door: raise the equivalence ratio to {LEANEST_GOOD:g} or more."
        )
    else:
        verdict = "good"
        text = (
            f"Neutral mixture, next to nothing left over. It still makes some carbon monoxide{air}: ventilate, and hang an alarm."
            if word == "neutral"
            else "A little lean: it scales the work somewhat and makes little carbon monoxide. Ventilate all the same."
        )
    r.check(
        "mixture",
        verdict,
        phi,
        LEANEST_GOOD if phi < 1 else 1 + combustion.NEUTRAL_BAND,
        "ratio",
        "Mixture",
        text,
        PRACTICE,
        "common practice",
        (("equivalence_ratio", "raise" if phi < 1 else "lower"),),
    )


def _fresh_air_m3_s(d, r, flue):
    dry_mol = sum(amount for name, amount in flue.amounts_mol if name != "H2O")
    gas_m3_s = combustion.gas_flow_m3_s(r.fuel, r.rate_W * d.burner_count)
    return ventilation.co_dilution_flow_m3_s(gas_m3_s * dry_mol, flue.co_dry, CO_LIMIT_FRACTION)


def _by_ratio(d, r, pick):
    """Values over CHART_RATIOS, the ratios without a solution left out: (ratios, values)."""
    found = [(phi, pick(*_burned(d, r, phi))) for phi in CHART_RATIOS if _burned(d, r, phi)[0]]
    return tuple(phi for phi, _ in found), tuple(value for _, value in found)


def _flame_chart(d, r):
    ratios, temps = _by_ratio(d, r, lambda flame, flue: flame.temp_K)
    hottest = max(zip(temps, ratios), default=(None, None))
    mark = (d.equivalence_ratio, r["flame_temperature"])
    return Chart(
        "flame_by_ratio",
        "Flame temperature, by equivalence ratio",
        Axis("equivalence ratio", "ratio", CHART_RATIOS[0], CHART_RATIOS[-1]),
        Axis("flame temperature", "temperature", 50 * (min(temps) // 50), 50 * ceil(max(temps) / 50)),
        (Series("flame", "flame, no heat lost", ratios, temps),),
        mark if mark[1] is not None else (),
        f"Hottest near {hottest[1]:.2f}, at {show(hottest[0], 'temperature', d.units)}; both air and gas in excess cool the flame.",
    )


def _flue_chart(d, r):
    ratios, co = _by_ratio(d, r, lambda flame, flue: flue.co_dry)
    _, o2 = _by_ratio(d, r, lambda flame, flue: flue.o2_dry)
    rich = r["atmosphere"] == "reducing"
    mark = (d.equivalence_ratio, r["flue_co_dry" if rich else "flue_o2_dry"])
    return Chart(
        "flue_by_ratio",
        "Carbon monoxide and oxygen in the dry flue gas",
        Axis("equivalence ratio", "ratio", CHART_RATIOS[0], CHART_RATIOS[-1]),
        Axis("share of the dry flue gas", "fraction", 0, max((*co, *o2)) * 1.05),
        (Series("co", "carbon monoxide", ratios, co, verdict="stop"), Series("o2", "oxygen", ratios, o2)),
        mark if mark[1] is not None else (),
        "Oxygen is left over when lean, carbon monoxide when rich; an oxygen reading of the flue tells the mixture.",
    )


def _available_chart(d, r):
    low, high = 478.15, 2033.15  # range of chamber_temperature
    temps = tuple(low + (high - low) * n / 24 for n in range(25))
    splits = [need.heat_split(d.value, chamber_temp_K=temp) for temp in temps]
    found = [(temp, split.available) for temp, split in zip(temps, splits) if split]
    reach = next((temp for temp, share in found if share <= need.LEAST_AVAILABLE), None)
    mark = (d.chamber_temperature, r["available_heat"])
    return Chart(
        "available_by_temperature",
        "Available heat, by chamber temperature",
        Axis("chamber temperature", "temperature", low, high),
        Axis("share of the gross heat that stays", "fraction", min(0.0, *(share for _, share in found)), 1.0),
        (Series("available", "this mixture", tuple(temp for temp, _ in found), tuple(share for _, share in found)),),
        mark if mark[1] is not None else (),
        "The hotter the chamber, the more heat leaves with the flue gas"
        + ("." if reach is None else f"; nothing is left at about {show(reach, 'temperature', d.units)}."),
    )
