"""The three common kinds of burner side by side, for the chamber as set."""

from .. import need
from ..physics import aspirated, combustion, fuels, gas_jet, pipes
from ..result import Column, Table
from ..tables import read_table
from ..units import show

GROUP = "heat"
MOMENTUM = "momentum of jet and mixture (Lawn 2003; Prigg)"
PRACTICE = "common practice, no published source"
EXCESS_AIR = {
    "aspirated": "aspirated_excess_air",
    "blown_single": "blown_excess_air",
    "blown_multi_port": "multi_port_excess_air",
}
JET = (
    "aspirated_pressure",
    "aspirated_jet",
    "aspirated_throat",
    "aspirated_inlet_loss",
    "aspirated_outlet_loss",
    "jet_discharge_coefficient",
    "fuel",
    "fuel_blend",
    "ambient_temperature",
    "altitude",
)


def solve(d, r):
    mix = _aspirated_mix(d, r)
    r.answer(
        "aspirated_equivalence_ratio",
        mix.equivalence_ratio,
        "ratio",
        "Aspirated: mixture",
        "Equivalence ratio that the gas jet makes with the air it pulls into its throat; above 1 it pulls too little.",
        "air to just burn the gas / air pulled in, from the momentum that the jet hands to the mixture",
        JET,
        MOMENTUM,
        "published",
    )
    r.answer(
        "aspirated_rate",
        mix.gas_flow_kg_s * fuels.gross_heating_value_J_kg(r.fuel),
        "power",
        "Aspirated: firing rate",
        "Gross heat of one aspirated burner with this jet and gas pressure.",
        "gas flow of the jet x gross heating value by weight",
        JET,
        MOMENTUM,
        "published",
    )
    r.add_table(_table(d, r))


def _aspirated_mix(d, r):
    return aspirated.aspirated_mix(
        gas_gauge_Pa=d.aspirated_pressure,
        jet_diameter_m=d.aspirated_jet,
        discharge_coefficient=d.jet_discharge_coefficient,
        throat_diameter_m=pipes.pipe(d.aspirated_throat, "aspirated_throat").bore_m,
        stoichiometric_ratio_volume=fuels.stoichiometric_air_mol_mol(r.fuel),
        molar_mass_kg_mol=fuels.molar_mass_kg_mol(r.fuel),
        heat_capacity_ratio=gas_jet.heat_capacity_ratio(r.fuel),
        gas_temp_K=d.ambient_temperature,
        air_temp_K=d.ambient_temperature,
        ambient_Pa=r.ambient_pressure_Pa,
        inlet_loss=d.aspirated_inlet_loss,
        outlet_loss=d.aspirated_outlet_loss,
    )


def _table(d, r):
    rows = []
    for kind in read_table("burner_kinds"):
        excess = d.value(EXCESS_AIR[kind["key"]])
        firing = need.firing(d.value, 1 / (1 + excess))
        rows.append(
            (
                kind["name"],
                excess,
                firing and firing.available_fraction,
                firing and firing.working_rate_W,
                firing and combustion.gas_flow_kg_s(r.fuel, firing.working_rate_W),
                _gas_supply(d, r, kind),
                f"{kind['mains_power_W']:g} W for the blower" if kind["mains_power_W"] else "none",
                kind["wears"],
                f"{kind['turndown']:g} to 1",
                kind["power_cut"],
            )
        )
    return Table(
        "burner_kinds",
        "Three kinds of burner for this chamber, while it works",
        (
            Column("kind", "Kind", "word"),
            Column("excess_air", "Excess air", "fraction"),
            Column("available_heat", "Available heat", "fraction"),
            Column("working_rate", "Firing rate to work", "power"),
            Column("fuel_per_hour", "Gas while working", "mass_flow"),
            Column("gas_supply", "Gas pressure", "word"),
            Column("mains_power", "Mains power", "word"),
            Column("wears", "What wears", "word"),
            Column("turndown", "Turndown", "word"),
            Column("power_cut", "In a power cut", "word"),
        ),
        tuple(rows),
        PRACTICE,
    )


def _gas_supply(d, r, kind):
    low, high = (show(1e3 * kind[end], "gas_pressure", d.units, 2) for end in ("gas_low_kPa", "gas_high_kPa"))
    said = kind["gas_supply"].format(low=low, high=high)
    if kind["key"] != "aspirated":
        return said
    return (
        f"{said}; at {show(d.aspirated_pressure, 'gas_pressure', d.units)} this jet and throat make equivalence ratio "
        f"{r['aspirated_equivalence_ratio']:.2f}"
    )
